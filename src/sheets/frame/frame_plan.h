// The bare frame seen from above: what lies under something else is dashed.
#pragma once

#include <vector>

#include "bed/bed.h"
#include "draw/list2d.h"

namespace bedwright {

// Items the shop welds into the frame, tabs and their pads left out.
std::vector<int> frame_items(const Bed& bed);

// Outlines of the items in plan at 1 : `scale`, on the layers given.
void draw_plan(List2d& list, const Bed& bed, const std::vector<int>& items, int scale, int seen, int hidden);

}  // namespace bedwright
