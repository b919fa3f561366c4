// The bed's items as convex solids with their holes, made for the inspection alone: what
// is rounded is taken smaller than it is, so that two solids found in one place are so.
#pragma once

#include <numbers>
#include <vector>

#include "bed/bed.h"

namespace bedwright::sweep {

struct Hull {
  std::vector<Vec3> corners, normals, edges;  // normals and edges unit
  std::vector<double> reach;                  // of each face along its normal
  Box3 box;
  bool shank = false;  // of a bolt: in its plies by design
};

// A hole's space: a slot's middle line from `a` to `b`, its axis, how deep.
struct Tube {
  Vec3 a, b, axis;
  Mm radius = 0, depth = 0;
};

struct Body {
  std::vector<Hull> hulls;
  std::vector<Tube> tubes;
  Box3 box;
};

inline void add_distinct(std::vector<Vec3>& all, Vec3 v) {
  for (const Vec3& w : all)
    if (norm(cross(v, w)) < 1e-9) return;
  all.push_back(v);
}

// A prism along x on a polygon in (y, z), counter-clockwise seen from +x; its ends run
// x = from + y * lean. `at` says where its axes go.
inline Hull prism_along(const std::vector<Vec2>& polygon, Mm from, double from_lean, Mm to, double to_lean,
                        const Placement& at) {
  Hull hull;
  for (const bool end : {false, true})
    for (const Vec2& p : polygon)
      hull.corners.push_back(at.point({end ? to + p.x * to_lean : from + p.x * from_lean, p.x, p.y}));
  hull.normals = {at.direction(unit({-1, from_lean, 0})), at.direction(unit({1, -to_lean, 0}))};
  add_distinct(hull.edges, at.x_axis);
  const std::size_t n = polygon.size();
  for (std::size_t i = 0; i < n; ++i) {
    const Vec2 along = polygon[(i + 1) % n] - polygon[i];
    if (norm(along) < 1e-9) continue;
    hull.normals.push_back(at.direction(unit({0, along.y, -along.x})));
    for (const std::size_t k : {i, i + n})
      add_distinct(hull.edges, unit(hull.corners[k < n ? (i + 1) % n : n + (i + 1) % n] - hull.corners[k]));
  }
  for (const Vec3& c : hull.corners) hull.box.add(c);
  for (const Vec3& m : hull.normals) {
    double most = -1e30;
    for (const Vec3& c : hull.corners) most = std::max(most, dot(m, c));
    hull.reach.push_back(most);
  }
  return hull;
}

// The same along z of the frame, on a polygon in its (x, y).
inline Hull prism_up(const std::vector<Vec2>& polygon, Mm from, Mm to, const Placement& at) {
  return prism_along(polygon, from, 0, to, 0, {at.origin, at.z_axis(), at.x_axis});
}

inline std::vector<Vec2> ngon(Mm radius, int sides) {
  std::vector<Vec2> all;
  for (int i = 0; i < sides; ++i) {
    const double a = 2 * std::numbers::pi * i / sides;
    all.push_back({radius * std::cos(a), radius * std::sin(a)});
  }
  return all;
}

inline std::vector<Vec2> box_of(Vec2 low, Vec2 high) { return {low, {high.x, low.y}, high, {low.x, high.y}}; }

// The middle line of a slot, in its face's coordinates.
struct Line2 {
  Vec2 a, b;
};
inline Line2 middle_line(const Hole& h) {
  const Mm half = std::max(0.0, h.length - h.diameter) / 2;
  const Vec2 way{std::cos(h.angle) * half, std::sin(h.angle) * half};
  return {h.at - way, h.at + way};
}

// --- each form, at a placement ------------------------------------------------

inline void add_body(Body& body, const Plate& p, const Placement& at) {
  std::vector<Vec2> points = flattened(p.outline, 0.05);
  body.hulls.push_back(prism_up(convex_hull(points), 0, p.thickness, at));
  for (const Hole& h : p.holes) {
    const Line2 l = middle_line(h);
    body.tubes.push_back(
        {at.point({l.a.x, l.a.y, 0}), at.point({l.b.x, l.b.y, 0}), at.z_axis(), h.diameter / 2, p.thickness});
  }
}

// Thickness of a channel's flange `y` from the web's back.
inline Mm flange_at(const Section& s, Mm y) {
  const Mm at = s.thickness_at > 0 ? s.thickness_at : (s.flange + s.web) / 2;
  return s.flange_thickness + (at - y) * s.flange_slope;
}

inline void add_body(Body& body, const Member& m, const Placement& at) {
  const Section& s = m.section;
  const double from = std::tan(m.start_mitre), to = std::tan(m.end_mitre);
  const auto add = [&](const std::vector<Vec2>& polygon) {
    body.hulls.push_back(prism_along(polygon, 0, from, m.length, to, at));
  };
  // The largest triangle within a fillet.
  const Mm in_fillet = s.root_radius * (2 - std::numbers::sqrt2), r = s.toe_radius;
  if (s.shape == Shape::tube) {  // its walls, the corners left out
    const Mm h = s.depth / 2, t = s.web, corner = s.root_radius + t;
    add(box_of({0, corner - h}, {t, h - corner}));
    add(box_of({s.flange - t, corner - h}, {s.flange, h - corner}));
    add(box_of({corner, h - t}, {s.flange - corner, h}));
    add(box_of({corner, -h}, {s.flange - corner, t - h}));
  } else if (s.shape == Shape::channel) {
    const Mm h = s.depth / 2, root = flange_at(s, s.web), toe = flange_at(s, s.flange);
    const Mm past = flange_at(s, s.flange - r);
    add(box_of({0, -h}, {s.web, h}));
    add({{s.web, h - root},
         {s.flange - r, h - past},
         {s.flange, std::min(h, h - toe + r)},
         {s.flange, h},
         {s.web, h}});
    add({{s.web, -h},
         {s.flange, -h},
         {s.flange, std::max(-h, toe - h - r)},
         {s.flange - r, past - h},
         {s.web, root - h}});
    if (in_fillet > 0) {
      add({{s.web, h - root}, {s.web, h - root - in_fillet}, {s.web + in_fillet, h - root}});
      add({{s.web, root - h}, {s.web + in_fillet, root - h}, {s.web, root - h + in_fillet}});
    }
  } else {
    const Mm t = s.web;
    add({{0, 0}, {s.flange, 0}, {s.flange, std::max(0.0, t - r)}, {s.flange - r, t}, {0, t}});
    add({{0, t}, {t, t}, {t, s.depth - r}, {std::max(0.0, t - r), s.depth}, {0, s.depth}});
    if (in_fillet > 0) add({{t, t}, {t + in_fillet, t}, {t, t + in_fillet}});
  }
  for (const FaceHole& f : m.holes) {
    const Line2 l = middle_line(f.hole);
    const bool upright = f.face == Face::web || f.face == Face::standing_leg;
    const bool flange = f.face == Face::top_flange || f.face == Face::bottom_flange;
    const double up = f.face == Face::top_flange ? 1 : -1;
    const auto point = [&](Vec2 p) {
      return at.point(upright ? Vec3{p.x, 0, p.y} : Vec3{p.x, p.y, flange ? up * s.depth / 2 : 0});
    };
    const Vec3 axis = upright ? Vec3{0, 1, 0} : Vec3{0, 0, flange ? -up : 1.0};
    body.tubes.push_back({point(l.a), point(l.b), at.direction(axis), f.hole.diameter / 2,
                          flange && s.shape != Shape::tube ? flange_at(s, s.web) : s.web});
  }
}

inline void add_body(Body& body, const Bought& b, const Placement& at) {
  for (const Block& k : b.envelope) {
    const Placement frame{at.point(k.frame.origin), at.direction(k.frame.x_axis),
                          at.direction(k.frame.y_axis)};
    body.hulls.push_back(prism_up(k.radius > 0      ? ngon(k.radius, 24)
                                  : !k.base.empty() ? k.base
                                                    : box_of({k.low.x, k.low.y}, {k.high.x, k.high.y}),
                                  k.low.z, k.high.z, frame));
  }
  for (const Lug& l : b.lugs) {
    const Line2 line = middle_line({{l.at.x, l.at.y}, l.hole.diameter, l.hole.length, l.hole.angle});
    body.tubes.push_back({at.point({line.a.x, line.a.y, l.at.z}), at.point({line.b.x, line.b.y, l.at.z}),
                          at.direction(l.direction), l.hole.diameter / 2, l.thickness});
  }
}

inline void add_body(Body& body, const Hardware& h, const Placement& at) {
  const BoltSize& s = h.size;
  const auto add = [&](Mm diameter, Mm from, Mm to) {
    body.hulls.push_back(prism_up(ngon(diameter / 2, 12), from, to, at));
  };
  switch (h.kind) {
    case HardwareKind::bolt:
      add(s.head_flats, 0, s.head_height);
      add(s.diameter, -h.length, 0);
      body.hulls.back().shank = true;
      break;
    case HardwareKind::nut:
      add(s.nut_flats, -s.nut_height, 0);
      break;
    case HardwareKind::flat_washer:
      add(s.flat.outside, -s.flat.thickness, 0);
      break;
    case HardwareKind::lock_washer:
      add(s.lock.outside, -s.lock.thickness, 0);
      break;
  }
}

inline Body body_of(const Bed& bed, std::size_t item) {
  Body body;
  const Item& it = bed.items[item];
  std::visit([&](const auto& form) { add_body(body, form, it.placement); },
             bed.parts[static_cast<std::size_t>(it.part)].form);
  for (const Hull& h : body.hulls) {
    body.box.add(h.box.low);
    body.box.add(h.box.high);
  }
  return body;
}

// --- two of them ----------------------------------------------------------------

inline bool holds(const Hull& h, Vec3 p, Mm within = 0) {
  for (std::size_t i = 0; i < h.normals.size(); ++i)
    if (dot(h.normals[i], p) > h.reach[i] - within) return false;
  return true;
}

inline bool in_hole(const Body& body, Vec3 p) {
  for (const Tube& t : body.tubes) {
    const Vec3 from = p - t.a;
    const double deep = dot(from, t.axis);
    if (deep < -1e-6 || deep > t.depth + 1e-6) continue;
    const Vec3 flat = from - deep * t.axis, line = t.b - t.a;
    const double length = norm(line);
    const double along = length > 1e-9 ? std::clamp(dot(flat, line) / length, 0.0, length) : 0;
    const Vec3 nearest = length > 1e-9 ? (along / length) * line : Vec3{};
    if (norm(flat - nearest) < t.radius) return true;
  }
  return false;
}

inline bool is_steel(const Body& body, Vec3 p, Mm within = 0) {
  return std::any_of(body.hulls.begin(), body.hulls.end(),
                     [&](const Hull& h) { return holds(h, p, within); }) &&
         !in_hole(body, p);
}

// How far two hulls are apart along the axis that parts them best; negative: how deep
// one is in the other. Past `enough` the search ends.
inline Mm apart(const Hull& a, const Hull& b, Mm enough) {
  Mm best = -1e30;
  const auto along = [&](Vec3 axis) {
    double a_low = 1e30, a_high = -1e30, b_low = 1e30, b_high = -1e30;
    for (const Vec3& c : a.corners)
      a_low = std::min(a_low, dot(axis, c)), a_high = std::max(a_high, dot(axis, c));
    for (const Vec3& c : b.corners)
      b_low = std::min(b_low, dot(axis, c)), b_high = std::max(b_high, dot(axis, c));
    best = std::max(best, std::max(a_low - b_high, b_low - a_high));
    return best > enough;
  };
  for (const Vec3& n : a.normals)
    if (along(n)) return best;
  for (const Vec3& n : b.normals)
    if (along(n)) return best;
  for (const Vec3& p : a.edges)
    for (const Vec3& q : b.edges) {
      const Vec3 axis = cross(p, q);
      if (norm(axis) > 1e-6 && along(unit(axis))) return best;
    }
  return best;
}

}  // namespace bedwright::sweep
