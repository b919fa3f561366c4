// Shims by tab: where the heights of a standing frame's tabs were measured, how thick a pack
// each wants so that the rails lie straight.
#pragma once

#include <vector>

#include "units/units.h"

namespace bedwright {

// A tab that stays: its hole along the bed and its top over the line it was measured from.
struct TabTop {
  Mm x = 0, height = 0;
};

// Gaps between each tab's top and a straight rail that touches the highest, in the order given.
// Both rails have one slope along the bed, which the jacks take out: the one with the least
// widest gap. Formula: least over s of the greater of max(h - s x) - min(h - s x) of either
// side; it falls to one valley, so it is searched for by thirds.
struct RailGaps {
  std::vector<Mm> left, right;
};
RailGaps rail_gaps(const std::vector<TabTop>& left, const std::vector<TabTop>& right);

// To the nearest whole number of the thinnest shims; less than half of one is none.
Mm pack_for(Mm gap, Mm thinnest);

}  // namespace bedwright
