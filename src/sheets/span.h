// Pieces that pictures of the bed share: a dimension between two places, an item
// cut across the bed, a label with a leader.
#pragma once

#include <string>

#include "bed/bed.h"
#include "sheets/sheet.h"

namespace bedwright {

// A level dimension from `from` to `to` at height `y`, extension lines up (or down)
// to `edge`, arrowheads, the label over the middle, or beside the right end where
// it is wider than the dimension.
void level_span(List2d& list, Mm from, Mm to, Mm edge, Mm y, const std::string& label, Mm height);

// The item cut by a plane across the bed, in world y and z: a member along the bed
// by its profile, a tube's hollow after it, anything else by its box.
std::vector<Outline> cut_across(const Bed& bed, int item);

// The outline at 1 : `scale`, its origin at (0, 0).
Outline shrunk(Outline outline, double scale);

// A level text from `at` on (before it when `left`), a thin line from `to` to it.
void leader(List2d& list, Vec2 to, Vec2 at, const std::string& label, Mm height, bool left = false);

}  // namespace bedwright
