// Each item as a few convex solids that together contain it.
#pragma once

#include <vector>

#include "bed/bed.h"
#include "geometry/convex.h"

namespace bedwright {

// World coordinates.
std::vector<Convex> convex_pieces(const Bed& bed, int item);

// In the part's own, for callers that place one part many times.
std::vector<Convex> local_pieces(const Form& form);

}  // namespace bedwright
