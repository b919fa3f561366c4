// Which part a number on the general arrangement points at, and from which view.
#pragma once

#include <vector>

#include "bed/bed.h"
#include "draw/list2d.h"
#include "sheets/arrangement/arrangement.h"

namespace bedwright {

// One part that is not bolt hardware, and a place of one of its items to point at.
struct Balloon {
  int number = 0;  // in the parts table, from 1
  int part = 0;
  Vec3 tip;
  bool in_plan = true;  // else in the side view
};

// By part. The tip lies on an item that nothing covers, by boxes around things, in
// plan or else from the road side; where all of a part is covered, on its first item.
std::vector<Balloon> balloons(const Bed& bed);

// A number in a circle, its leader ending in a dot (ISO 6433).
struct BalloonPlace {
  Vec2 tip;
  int number = 0;
};
inline constexpr Mm balloon_radius = 3.6;
// Circles in a row, their middles at `y`, in the order of their tips along x.
void balloon_row(List2d& list, std::vector<BalloonPlace> places, Mm y);

}  // namespace bedwright
