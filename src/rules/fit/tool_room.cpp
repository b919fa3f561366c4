// Holds a tool's envelope against what stands around a bolt.
#include "rules/fit/tool_room.h"

#include <array>
#include <numbers>

namespace bedwright {
namespace {

constexpr int sides = 12;

// Corners of the regular polygon around the unit circle, its sides square to the axes.
std::array<Vec2, sides> ring() {
  std::array<Vec2, sides> all;
  const double corner = 1 / std::cos(std::numbers::pi / sides);
  for (int i = 0; i < sides; ++i) {
    const double a = (2 * i + 1) * std::numbers::pi / sides;
    all[i] = {corner * std::cos(a), corner * std::sin(a)};
  }
  return all;
}

}  // namespace

Obstacles::Gap Obstacles::nearest(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame,
                                  Mm enough) const {
  Gap gap{enough, -1};
  if (!any_in(box_of(outline, from, to, frame), enough)) return gap;
  const Convex tool = prism(outline, from, to, frame);
  for (const Piece& p : pieces_) {
    if (!tool.bounds.overlaps(p.convex->bounds, enough)) continue;
    const Mm apart = separation(tool, *p.convex, gap.distance);
    if (apart < gap.distance) gap = {apart, p.item};
  }
  return gap;
}

bool Obstacles::clear(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame) const {
  if (!any_in(box_of(outline, from, to, frame))) return true;
  const Convex tool = prism(outline, from, to, frame);
  for (const Piece& p : pieces_)
    if (tool.bounds.overlaps(p.convex->bounds) && separation(tool, *p.convex, -same_place) < -same_place)
      return false;
  return true;
}

Mm Obstacles::way_out(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame,
                      Vec3 way) const {
  Mm moved = 0;
  // A piece not met yet may be met on the way; each pass leaves one behind for good.
  for (std::size_t pass = 0; pass <= pieces_.size(); ++pass) {
    Placement at = frame;
    at.origin = at.origin + moved * way;
    const Convex tool = prism(outline, from, to, at);
    Mm more = 0;
    for (const Piece& p : pieces_) more = std::max(more, exit_distance(tool, *p.convex, way));
    if (more <= 1e-6) break;
    moved += more;
  }
  return moved;
}

bool Obstacles::any_in(const Box3& box, Mm grow) const {
  for (const Piece& p : pieces_)
    if (box.overlaps(p.convex->bounds, grow)) return true;
  return false;
}

Placement frame_along(Vec3 origin, Vec3 axis, Vec3 toward) {
  if (std::abs(dot(toward, axis)) > 0.99) toward = std::abs(axis.y) < 0.9 ? Vec3{0, 1, 0} : Vec3{0, 0, 1};
  const Vec3 x = unit(toward - dot(toward, axis) * axis);
  return {origin, x, cross(axis, x)};
}

std::vector<Vec2> round_outline(Mm radius) {
  static const std::array<Vec2, sides> unit_ring = ring();
  std::vector<Vec2> outline;
  outline.reserve(sides);
  for (const Vec2& p : unit_ring) outline.push_back(radius * p);
  return outline;
}

Box3 box_of(const std::vector<Vec2>& outline, Mm from, Mm to, const Placement& frame) {
  Box3 box;
  const Vec3 low = from * frame.z_axis(), high = to * frame.z_axis();
  for (const Vec2& p : outline) {
    const Vec3 at = frame.origin + p.x * frame.x_axis + p.y * frame.y_axis;
    box.add(at + low);
    box.add(at + high);
  }
  return box;
}

}  // namespace bedwright
