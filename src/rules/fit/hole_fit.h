// Whether one bolt goes through several holes that are not quite in line.
//
// Seen along the bolt, a hole leaves its centre line a region to lie in: for a
// round hole a disc of radius (diameter - bolt) / 2 about the hole's centre; for
// a slot that disc run along a segment of half length (length - diameter) / 2.
// Two holes take the bolt when the offset of their centres lies in the Minkowski
// sum of both regions: the two discs' radii add, and so do segments along the
// same axis. The sum is convex, so a box of offsets (a tolerance on each axis)
// lies in it exactly when its four corners do.
//
// Slots along one of the two axes are exact. A slot at any other angle counts as
// a round hole of its width, which is on the safe side.
//
// Pairs are not enough for three holes (three discs may meet two by two and leave
// no common point), so more than two are also tried together.
#pragma once

#include <array>
#include <vector>

#include "bed/bed.h"

namespace bedwright {

// What one hole, or two in sum, takes: travel each way along the two axes, and
// the radius about it.
struct Clearance {
  Mm travel[2] = {0, 0};
  Mm radius = 0;
};

struct Range2 {
  Mm low[2] = {0, 0}, high[2] = {0, 0};
  Mm need(int axis) const { return std::max(std::abs(low[axis]), std::abs(high[axis])); }
};

// Where the first hole may come to lie from the other, along the two axes.
struct Reach {
  Range2 worst, rss;
};

// The two axes square to a bolt: as near world x and y as the bolt allows (for a
// bolt along y: x and z; along x: y and z).
struct BoltAxes {
  Vec3 u, v;
};
BoltAxes axes_of(Vec3 direction);

Clearance clearance_of(const HoleInWorld& hole, Mm bolt_diameter, const BoltAxes& axes);
Clearance operator+(const Clearance& a, const Clearance& b);

// Contributions added up along the two axes.
struct Shifts {
  Mm plus[2] = {0, 0}, minus[2] = {0, 0}, squares[2] = {0, 0};
  // `but_along_bed`: nothing of what they move along x.
  void add(const std::vector<Contribution>& more, const BoltAxes& axes, bool but_along_bed = false);
  // About an offset as laid out; see reach_of.
  Reach about(const std::array<Mm, 2>& offset) const;
};

// `offset`: nominal centre of the first hole less that of the other, along u and
// v; the contributions move the first. Worst case: all at their ends. Root sum
// square: each is taken about its own middle, (plus - minus) / 2, and the half
// ranges (plus + minus) / 2 add in squares.
Reach reach_of(const std::array<Mm, 2>& offset, const std::vector<Contribution>& stack_up,
               const BoltAxes& axes);

// The straight travel left on `axis` when the other axis needs `other_need`:
// travel + sqrt(radius^2 - residual^2), the residual being what the other axis
// needs beyond its own travel.
Mm float_along(const Clearance& clearance, int axis, Mm other_need);

// Least over the plane of (distance to the hole's segment - its radius), at its
// largest over the holes; <= 0 when one bolt goes through all. `centres` along u, v.
Mm joint_misfit(const std::vector<Clearance>& holes, const std::vector<Vec2>& centres);

}  // namespace bedwright
