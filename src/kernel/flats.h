// Which holes lie wholly in the flat of a face, clear of its edges and of each
// other, so that they can be put in as face wires.
#pragma once

#include <vector>

#include "bed/bed.h"

namespace bedwright {

// One entry for each hole: true when the hole is inside `region` and clear of its
// border and of every other hole.
std::vector<bool> clear_holes(const Outline& region, const std::vector<Hole>& holes);

// The flat of a member's face as a region in the face's coordinates, common to
// both sides of the steel. Empty where the two sides are not parallel (a
// channel's flanges). Throws std::invalid_argument with profile().
Outline flat_region(const Member& member, Face face);

}  // namespace bedwright
