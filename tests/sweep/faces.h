// The flat steel that holes lie in and that heads, nuts and washers bear on.
#pragma once

#include <numbers>
#include <vector>

#include "sweep/solids.h"

namespace bedwright::sweep {

// Convex, counter-clockwise, in the coordinates its holes are given in.
struct FlatSteel {
  std::vector<Vec2> edge;
  std::vector<Hole> holes;  // with their places
  // Positive inside, from the nearest edge.
  Mm to_edge(Vec2 p) const {
    Mm least = 1e30;
    for (std::size_t i = 0; i < edge.size(); ++i) {
      const Vec2 along = edge[(i + 1) % edge.size()] - edge[i];
      if (norm(along) > 1e-9) least = std::min(least, cross(along, p - edge[i]) / norm(along));
    }
    return least;
  }
};

inline Mm from_line(const Line2& l, Vec2 p) {
  const Vec2 along = l.b - l.a;
  const double length = norm(along);
  if (length < 1e-9) return norm(p - l.a);
  const double at = std::clamp(dot(p - l.a, along) / length, 0.0, length);
  return norm(p - l.a - (at / length) * along);
}

inline Mm between(const Line2& p, const Line2& q) {
  const auto side = [](const Line2& l, Vec2 v) { return cross(l.b - l.a, v - l.a); };
  if (side(p, q.a) * side(p, q.b) < 0 && side(q, p.a) * side(q, p.b) < 0) return 0;
  return std::min({from_line(p, q.a), from_line(p, q.b), from_line(q, p.a), from_line(q, p.b)});
}

// `hole`: steel through the part's whole thickness, what a hole must lie in. The others:
// the face on the side of a channel's or an angle's inner corners, clear of the fillet,
// and the one away from them.
enum class Where { hole, inner_face, outer_face };

inline FlatSteel steel_of(const Member& m, Face face, Where where) {
  const Section& s = m.section;
  const double from = std::tan(m.start_mitre), to = std::tan(m.end_mitre);
  const bool angle = s.shape == Shape::angle;
  // A fillet's tangent point from the corner: r tan(half the turn); an angle turns 90
  // degrees, a channel's flange 2 in 12 less.
  const double turn = std::numbers::pi / 2 - (angle ? 0 : std::atan(s.flange_slope));
  const Mm fillet = where == Where::inner_face ? s.root_radius * std::tan(turn / 2) : 0;
  FlatSteel steel;
  if (s.shape == Shape::tube) {  // flat between its round corners, all walls alike
    const Mm corner = s.web + s.root_radius, wide = face == Face::web ? s.depth : s.flange,
             low = face == Face::web ? -wide / 2 : 0;
    steel.edge = box_of({0, low + corner}, {m.length, low + wide - corner});
  } else if (face == Face::web || face == Face::standing_leg) {
    Mm low = 0, high = s.depth;
    if (angle && where != Where::outer_face) low = s.web + fillet;
    if (angle && where == Where::inner_face) high -= s.toe_radius;
    if (!angle) {
      high = s.depth / 2 - (where == Where::outer_face ? 0 : flange_at(s, s.web) + fillet);
      low = -high;
    }
    const Mm x0 = std::max(0.0, s.web * from), x1 = m.length + std::min(0.0, s.web * to);
    steel.edge = box_of({x0, low}, {x1, high});
  } else {
    const Mm low = where == Where::outer_face ? 0 : s.web + fillet,
             high = s.flange - (where == Where::inner_face ? s.toe_radius : 0);
    steel.edge = {
        {low * from, low}, {m.length + low * to, low}, {m.length + high * to, high}, {high * from, high}};
  }
  for (const FaceHole& h : m.holes)
    if (h.face == face) steel.holes.push_back(h.hole);
  return steel;
}

inline FlatSteel steel_of(const Plate& p) { return {convex_hull(flattened(p.outline, 0.02)), p.holes}; }

// The block's face a lug's hole starts on; none where the lug lies on no block.
inline FlatSteel steel_of(const Bought& b, const Lug& lug) {
  const bool up = std::abs(lug.direction.z) > 0.5;
  const auto flat = [&](Vec3 v) { return up ? Vec2{v.x, v.y} : Vec2{v.x, v.z}; };
  FlatSteel steel;
  for (const Block& k : b.envelope) {
    if (k.radius > 0 || !k.base.empty()) continue;
    const Vec3 in = lug.at + (0.5 * lug.thickness) * lug.direction;
    const auto within = [](Mm low, Mm v, Mm high) { return low - 1e-6 < v && v < high + 1e-6; };
    const Mm deep = up ? in.z : in.y;
    if (!within(up ? k.low.z : k.low.y, deep, up ? k.high.z : k.high.y)) continue;
    const FlatSteel here{box_of(flat(k.low), flat(k.high)), {}};
    if (steel.edge.empty() || here.to_edge(flat(lug.at)) > steel.to_edge(flat(lug.at))) steel = here;
  }
  for (const Lug& l : b.lugs)
    if (std::abs(dot(l.at - lug.at, lug.direction)) < 1e-6) {
      Hole h = l.hole;
      h.at = flat(l.at);
      steel.holes.push_back(h);
    }
  return steel;
}

// How a ring bears on steel: the share of it that has steel under it, and how far its rim
// lies past the steel's edge and a hole under it past its rim.
struct Bearing {
  double share = 0;
  Mm overhang = 0, uncovered = 0;
};

inline Bearing bearing(const FlatSteel& steel, Vec2 centre, Mm inside, Mm outside) {
  constexpr int around = 120, across = 8;
  int on = 0;
  Bearing b;
  std::vector<Hole> near;
  for (const Hole& h : steel.holes)
    if (const Line2 l = middle_line(h); from_line(l, centre) < (h.diameter + outside) / 2) {
      near.push_back(h);
      const Mm furthest = std::max(norm(l.a - centre), norm(l.b - centre)) + h.diameter / 2;
      b.uncovered = std::max(b.uncovered, furthest - outside / 2);
    }
  for (int i = 0; i < around; ++i) {
    const double a = 2 * std::numbers::pi * i / around;
    for (int k = 0; k < across; ++k) {
      // Rings of like area.
      const double part = (k + 0.5) / across;
      const Mm r = std::sqrt(inside * inside + part * (outside * outside - inside * inside)) / 2;
      const Vec2 p = centre + r * Vec2{std::cos(a), std::sin(a)};
      bool steel_here = steel.to_edge(p) > -1e-6;
      for (const Hole& h : near) steel_here = steel_here && from_line(middle_line(h), p) > h.diameter / 2;
      on += steel_here;
    }
    b.overhang =
        std::max(b.overhang, -steel.to_edge(centre + (outside / 2) * Vec2{std::cos(a), std::sin(a)}));
  }
  b.share = static_cast<double>(on) / (around * across);
  return b;
}

}  // namespace bedwright::sweep
