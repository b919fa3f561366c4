// Pictures in plan: x of the bed to the right, the kerb side up, on paper at 1 : n.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "sheets/sheet.h"

namespace bedwright {

// The first round reduction of ISO 5455 and its usual steps at which `length` fits.
int reduction(Mm length, Mm space);

// Short labels level in a row at `y`, apart by their width, each with a thin line
// from the place it names at `edge`. `up`: the row is above the edge.
struct Tag {
  Mm at = 0;
  std::string label;
};
void tag_row(List2d& list, std::vector<Tag> tags, Mm edge, Mm y, Mm height, int layer);

// Of running numbers too many for a row of that length: the first, every n-th and the
// last are left. Returns n, 1 where all have room.
int thin_out(std::vector<Tag>& tags, Mm height, Mm room);

// ", every 5th"; nothing for 1.
std::string every_words(int n);

// Plan outline of an item: the footprint of its part, counter-clockwise or not.
std::vector<Vec2> footprint(const Bed& bed, int item);

void turn_counter_clockwise(std::vector<Vec2>& outline);

// What two convex outlines cover together, counter-clockwise; empty when nothing.
std::vector<Vec2> common(std::vector<Vec2> a, std::vector<Vec2> b);

}  // namespace bedwright
