// Where things fall along the track: positions only, before any part is made.
#pragma once

#include <vector>

#include "bed/track.h"
#include "params/kit.h"
#include "params/order.h"

namespace bedwright {

// Everything of the track but its standoff and the head's travel, which wait for
// frame and head.
Track plan_track(const Order& order, const Kit& kit);

// n even spaces from `from` to `to`, none over `most`.
std::vector<Mm> evenly(Mm from, Mm to, Mm most);

}  // namespace bedwright
