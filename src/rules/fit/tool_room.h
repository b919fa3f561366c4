// Room for a tool: whether a convex envelope is clear of the bed.
#pragma once

#include <vector>

#include "rules/scene.h"

namespace bedwright {

// Pieces that may be in the way of tools used about one place, found once.
class Obstacles {
 public:
  // `counts(item)`: whether an item is there when the tool is used.
  template <class Counts>
  Obstacles(const Scene& scene, const Box3& about, Counts counts) {
    scene.near.for_each(about, [&](int item) {
      if (!counts(item)) return;
      for (const Convex& piece : scene.pieces[item])
        if (piece.bounds.overlaps(about)) pieces_.push_back({&piece, item});
    });
  }

  // A tool is given as a prism's outline, from `from` to `to` along the frame's Z: a
  // solid is only made of it where something is near enough to ask.
  struct Gap {
    Mm distance = std::numeric_limits<Mm>::infinity();  // negative: overlap
    int item = -1;
  };
  // Distance from the tool to the nearest piece, as far as it matters: anything
  // beyond `enough` may be reported as `enough` or more.
  Gap nearest(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame, Mm enough) const;
  // Touching is clear.
  bool clear(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame) const;
  // How far the tool must move along `way` (unit) to be clear of what it meets.
  Mm way_out(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame, Vec3 way) const;
  // Whether any piece's box meets this one; when none does, no tool within it meets a piece.
  bool any_in(const Box3& box, Mm grow = 0) const;

 private:
  struct Piece {
    const Convex* convex;
    int item;
  };
  std::vector<Piece> pieces_;
};

// A frame with its origin there and its Z along `axis` (unit); `toward` fixes its X
// where it is not along the axis.
Placement frame_along(Vec3 origin, Vec3 axis, Vec3 toward = {1, 0, 0});

// Outline of a prism that holds a cylinder about the frame's Z (at most 3.6 % more
// radius at its corners).
std::vector<Vec2> round_outline(Mm radius);

// Box around the prism.
Box3 box_of(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame);

}  // namespace bedwright
