// Each form as convex solids that together contain it. Whatever is rounded or
// pierced is covered by a larger solid and marked as not exact.
#include "bed/pieces.h"

#include <numbers>

namespace bedwright {
namespace {

constexpr double pi = std::numbers::pi;

// Regular polygon whose sides touch the circle from outside: it contains it.
// The first corner lies on the x axis.
std::vector<Vec2> around_circle(Mm radius, int sides) {
  std::vector<Vec2> polygon;
  const Mm r = radius / std::cos(pi / sides);
  for (int i = 0; i < sides; ++i) {
    const double a = 2 * pi * i / sides;
    polygon.push_back({r * std::cos(a), r * std::sin(a)});
  }
  return polygon;
}

// --- plates ------------------------------------------------------------------

// Points whose hull contains the run from `a` to `b`: for an arc that bulges
// outward, where the tangents at its ends and at steps between them meet.
void add_run(std::vector<Vec2>& points, const Vertex& a, Vec2 b) {
  points.push_back(a.at);
  if (a.bulge <= 0) return;  // straight, or hollow: the chord covers it
  const double turn = 4 * std::atan(a.bulge);
  const Vec2 chord = b - a.at;
  const Mm radius = norm(chord) / (2 * std::sin(turn / 2));
  const double heading = std::atan2(chord.y, chord.x) - turn / 2;  // of the path at a
  const Vec2 centre = a.at + radius * Vec2{-std::sin(heading), std::cos(heading)};
  const int steps = static_cast<int>(std::ceil(turn / (pi / 6) - 1e-9));
  const double start = heading - pi / 2, step = turn / steps;
  for (int i = 0; i < steps; ++i) {
    const double angle = start + (i + 0.5) * step;
    points.push_back(centre + (radius / std::cos(step / 2)) * Vec2{std::cos(angle), std::sin(angle)});
  }
}

bool is_convex_polygon(const Outline& outline) {
  const std::size_t n = outline.size();
  for (std::size_t i = 0; i < n; ++i) {
    if (outline[i].bulge != 0) return false;
    const Vec2 a = outline[i].at, b = outline[(i + 1) % n].at, c = outline[(i + 2) % n].at;
    if (cross(b - a, c - b) < -1e-9) return false;
  }
  return true;
}

std::vector<Convex> pieces_of(const Plate& plate) {
  std::vector<Vec2> points;
  for (std::size_t i = 0; i < plate.outline.size(); ++i)
    add_run(points, plate.outline[i], plate.outline[(i + 1) % plate.outline.size()].at);
  Convex piece = prism(convex_hull(points), 0, plate.thickness);
  piece.exact = plate.holes.empty() && is_convex_polygon(plate.outline);
  return {piece};
}

// --- members -----------------------------------------------------------------

bool pierced(const Member& member, Face face) {
  return std::any_of(member.holes.begin(), member.holes.end(),
                     [&](const FaceHole& h) { return h.face == face; });
}

// A polygon in the profile's (y, z) run along the member between its end cuts.
Convex along(const Member& member, const std::vector<Vec2>& polygon, bool exact) {
  const double s = std::tan(member.start_mitre), e = std::tan(member.end_mitre);
  std::vector<Vec3> base, top;
  for (const Vec2& p : polygon) {
    base.push_back({p.x * s, p.x, p.y});
    top.push_back({member.length + p.x * e, p.x, p.y});
  }
  Convex piece = frustum(base, top, unit({-1, s, 0}), unit({1, -e, 0}));
  piece.exact = exact;
  return piece;
}

// The fillet in the corner between two faces that leave `corner` along the unit
// vectors `u` and `v`, covered by the triangle of corner and tangent points.
// `u` to `v` turns counter-clockwise.
std::vector<Vec2> fillet_triangle(Vec2 corner, Vec2 u, Vec2 v, Mm radius) {
  const double angle = std::acos(std::clamp(dot(u, v), -1.0, 1.0));
  const Mm tangent = radius / std::tan(angle / 2);
  return {corner, corner + tangent * u, corner + tangent * v};
}

Convex fillet_along(const Member& member, const std::vector<Vec2>& triangle) {
  Convex piece = along(member, triangle, false);
  piece.fillet = true;
  return piece;
}

std::vector<Convex> channel_pieces(const Member& m) {
  const Section& s = m.section;
  const Mm half = s.depth / 2;
  const Mm root = flange_thickness_at(s, s.web), toe = flange_thickness_at(s, s.flange);
  const bool sharp = s.toe_radius == 0;
  std::vector<Convex> pieces;
  pieces.push_back(along(m, {{0, -half}, {s.web, -half}, {s.web, half}, {0, half}}, !pierced(m, Face::web)));
  pieces.push_back(along(m, {{s.web, half - root}, {s.flange, half - toe}, {s.flange, half}, {s.web, half}},
                         sharp && !pierced(m, Face::top_flange)));
  pieces.push_back(along(m, {{s.web, -half}, {s.flange, -half}, {s.flange, toe - half}, {s.web, root - half}},
                         sharp && !pierced(m, Face::bottom_flange)));
  if (s.root_radius > 0) {
    const double n = std::hypot(1.0, s.flange_slope);
    const Vec2 up{1 / n, s.flange_slope / n}, down{1 / n, -s.flange_slope / n};
    pieces.push_back(fillet_along(m, fillet_triangle({s.web, half - root}, {0, -1}, up, s.root_radius)));
    pieces.push_back(fillet_along(m, fillet_triangle({s.web, root - half}, down, {0, 1}, s.root_radius)));
  }
  return pieces;
}

std::vector<Convex> angle_pieces(const Member& m) {
  const Section& s = m.section;
  const Mm t = s.web;
  const bool sharp = s.toe_radius == 0;
  std::vector<Convex> pieces;
  pieces.push_back(
      along(m, {{0, 0}, {s.flange, 0}, {s.flange, t}, {0, t}}, sharp && !pierced(m, Face::flat_leg)));
  pieces.push_back(
      along(m, {{0, 0}, {t, 0}, {t, s.depth}, {0, s.depth}}, sharp && !pierced(m, Face::standing_leg)));
  if (s.root_radius > 0)
    pieces.push_back(fillet_along(m, fillet_triangle({t, t}, {1, 0}, {0, 1}, s.root_radius)));
  return pieces;
}

// The four walls where they are flat, and each corner in the square around it.
std::vector<Convex> tube_pieces(const Member& m) {
  const Section& s = m.section;
  const Mm half = s.depth / 2, wide = s.flange, t = s.web, r = outer_corner(s);
  const auto box = [](Vec2 low, Vec2 high) {
    return std::vector<Vec2>{low, {high.x, low.y}, high, {low.x, high.y}};
  };
  std::vector<Convex> pieces{
      along(m, box({0, r - half}, {t, half - r}), !pierced(m, Face::web)),
      along(m, box({wide - t, r - half}, {wide, half - r}), true),
      along(m, box({r, half - t}, {wide - r, half}), !pierced(m, Face::top_flange)),
      along(m, box({r, -half}, {wide - r, t - half}), !pierced(m, Face::bottom_flange))};
  for (const Mm y : {0.0, wide - r})
    for (const Mm z : {-half, half - r}) pieces.push_back(fillet_along(m, box({y, z}, {y + r, z + r})));
  return pieces;
}

std::vector<Convex> pieces_of(const Member& member) {
  switch (member.section.shape) {
    case Shape::channel:
      return channel_pieces(member);
    case Shape::tube:
      return tube_pieces(member);
    case Shape::angle:
      break;
  }
  return angle_pieces(member);
}

// --- bought items and hardware -------------------------------------------------

std::vector<Convex> pieces_of(const Bought& bought) {
  std::vector<Convex> pieces;
  for (const Block& b : bought.envelope) {
    const bool round = b.radius > 0;
    const std::vector<Vec2> base =
        round ? around_circle(b.radius, 16)
        : !b.base.empty()
            ? b.base
            : std::vector<Vec2>{
                  {b.low.x, b.low.y}, {b.high.x, b.low.y}, {b.high.x, b.high.y}, {b.low.x, b.high.y}};
    pieces.push_back(placed(prism(base, b.low.z, b.high.z), b.frame));
    pieces.back().exact = !round;
  }
  return pieces;
}

std::vector<Convex> pieces_of(const Hardware& h) {
  std::vector<Convex> pieces;
  const auto add = [&](const std::vector<Vec2>& base, Mm from, Mm to, bool exact, bool shank) {
    pieces.push_back(prism(base, from, to));
    pieces.back().exact = exact;
    pieces.back().shank = shank;
  };
  switch (h.kind) {
    case HardwareKind::bolt:
      add(around_circle(h.size.head_flats / 2, 6), 0, h.size.head_height, true, false);
      add(around_circle(h.size.diameter / 2, 12), -h.length, 0, false, true);
      break;
    case HardwareKind::nut:
      add(around_circle(h.size.nut_flats / 2, 6), -h.size.nut_height, 0, false, false);
      break;
    case HardwareKind::flat_washer:
      add(around_circle(h.size.flat.outside / 2, 16), -h.size.flat.thickness, 0, false, false);
      break;
    case HardwareKind::lock_washer:
      add(around_circle(h.size.lock.outside / 2, 16), -h.size.lock.thickness, 0, false, false);
      break;
  }
  return pieces;
}

}  // namespace

std::vector<Convex> local_pieces(const Form& form) {
  return std::visit([](const auto& f) { return pieces_of(f); }, form);
}

std::vector<Convex> convex_pieces(const Bed& bed, int item) {
  std::vector<Convex> pieces = local_pieces(bed.part_of(item).form);
  for (Convex& piece : pieces) piece = placed(std::move(piece), bed.items[item].placement);
  return pieces;
}

}  // namespace bedwright
