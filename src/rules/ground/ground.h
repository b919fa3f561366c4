// The road under a bed that stands level on its tyres.
#pragma once

#include <optional>

#include "bed/bed.h"

namespace bedwright {

// World z of the tyres' lowest point; nothing for a bed without wheels.
std::optional<Mm> ground_level(const Bed& bed);

// How far the wheels travel up to their bump stops; 0 where they have none.
Mm bump_travel(const Bed& bed);

}  // namespace bedwright
