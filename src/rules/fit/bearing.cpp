// Slices a ring into chords, and takes off each what is air under it.
#include "rules/fit/bearing.h"

#include <numbers>

namespace bedwright {
namespace {

constexpr int slices = 128;
// Outlines' arcs as chords, in a sum of areas.
constexpr Mm chord_error = 0.02;

struct Span {
  Mm from = 0, to = 0;
  bool has(Mm x) const { return x > from && x < to; }
};

// A disc on the line at height `y`.
std::optional<Span> on_disc(Vec2 centre, Mm radius, Mm y) {
  const Mm off = y - centre.y;
  if (radius <= std::abs(off)) return std::nullopt;
  const Mm half = std::sqrt(radius * radius - off * off);
  return Span{centre.x - half, centre.x + half};
}

void join(std::optional<Span>& all, const std::optional<Span>& more) {
  if (!more) return;
  all = all ? Span{std::min(all->from, more->from), std::max(all->to, more->to)} : *more;
}

// The x at which from + slope x lies between low and high.
Span between(double from, double slope, Mm low, Mm high) {
  constexpr Mm far = std::numeric_limits<Mm>::infinity();
  if (std::abs(slope) < 1e-12) return from > low && from < high ? Span{-far, far} : Span{0, 0};
  const Mm a = (low - from) / slope, b = (high - from) / slope;
  return {std::min(a, b), std::max(a, b)};
}

// A hole on the line: its two end arcs and the straight run between them, convex.
std::optional<Span> on_hole(const Hole& hole, Mm y) {
  const auto [a, b] = arc_centres(hole);
  const Mm r = hole.diameter / 2, length = norm(b - a);
  std::optional<Span> all = on_disc(a, r, y);
  if (length <= same_place) return all;
  join(all, on_disc(b, r, y));
  const Vec2 u = (1 / length) * (b - a);
  const Vec2 at_zero = Vec2{0, y} - a;
  const Span along = between(dot(at_zero, u), u.x, 0, length), off = between(cross(u, at_zero), -u.y, -r, r);
  const Span run{std::max(along.from, off.from), std::min(along.to, off.to)};
  if (run.from < run.to) join(all, run);
  return all;
}

// What the slices look at, turned so that none runs along a slot or an edge: chords then
// change steadily from slice to slice. Parts and slots lie square to each other.
struct Turned {
  std::vector<Vec2> steel;
  std::vector<Hole> holes;
  Vec2 centre;
};

Turned turned(const Outline& steel, const std::vector<Hole>& holes, Vec2 centre, Mm radius) {
  constexpr Radians askew = 0.5;
  const double c = std::cos(askew), s = std::sin(askew);
  const auto turn = [&](Vec2 p) { return Vec2{c * p.x - s * p.y, s * p.x + c * p.y}; };
  Turned all{flattened(steel, chord_error), {}, turn(centre)};
  for (Vec2& p : all.steel) p = turn(p);
  for (Hole h : holes) {
    if (norm(h.at - centre) >= radius + std::max(h.length, h.diameter) / 2) continue;
    h.at = turn(h.at);
    h.angle += askew;
    all.holes.push_back(h);
  }
  return all;
}

// One line's worth of work, kept between slices.
struct Line {
  std::vector<Span> air;
  std::vector<Mm> edges, breaks;
};

Mm steel_on_line(const Turned& all, const Span& ring, const std::optional<Span>& inside, Mm y, Line& line) {
  line.air.clear();
  line.edges.clear();
  line.breaks.assign({ring.from, ring.to});
  if (inside) line.air.push_back(*inside);
  for (const Hole& hole : all.holes)
    if (const auto span = on_hole(hole, y)) line.air.push_back(*span);
  for (std::size_t i = 0; i < all.steel.size(); ++i) {
    const Vec2 a = all.steel[i], b = all.steel[(i + 1) % all.steel.size()];
    if ((a.y > y) != (b.y > y)) line.edges.push_back(a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x));
  }
  const auto add = [&](Mm x) {
    if (ring.has(x)) line.breaks.push_back(x);
  };
  for (const Span& s : line.air) add(s.from), add(s.to);
  for (const Mm x : line.edges) add(x);
  std::sort(line.breaks.begin(), line.breaks.end());
  Mm length = 0;
  for (std::size_t i = 0; i + 1 < line.breaks.size(); ++i) {
    const Mm middle = (line.breaks[i] + line.breaks[i + 1]) / 2;
    const auto left = std::count_if(line.edges.begin(), line.edges.end(), [&](Mm x) { return x < middle; });
    const bool in_air =
        std::any_of(line.air.begin(), line.air.end(), [&](const Span& s) { return s.has(middle); });
    if (left % 2 == 1 && !in_air) length += line.breaks[i + 1] - line.breaks[i];
  }
  return length;
}

}  // namespace

Mm2 bearing_area(const Outline& steel, const std::vector<Hole>& holes, Vec2 centre, const Footprint& ring) {
  const Mm r = ring.outside / 2;
  const Turned all = turned(steel, holes, centre, r);
  Line line;
  Mm2 area = 0;
  // Slices at even turns stand closer toward the ring's top and bottom, where chords change fastest.
  for (int i = 0; i < slices; ++i) {
    const Radians turn = std::numbers::pi * (i + 0.5) / slices, half = std::numbers::pi / slices / 2;
    const Mm thick = r * (std::cos(turn - half) - std::cos(turn + half));
    const Mm y = all.centre.y + r * std::cos(turn);
    if (const auto disc = on_disc(all.centre, r, y))
      area += thick * steel_on_line(all, *disc, on_disc(all.centre, ring.inside / 2, y), y, line);
  }
  return area;
}

Mm2 least_bearing(const Outline& steel, const std::vector<Hole>& holes, std::size_t which, Mm bolt_diameter,
                  const Footprint& ring) {
  const Hole& own = holes.at(which);
  const Vec2 u{std::cos(own.angle), std::sin(own.angle)}, v{-u.y, u.x};
  const Mm across = std::max(0.0, (own.diameter - bolt_diameter) / 2),
           along = across + (own.slotted() ? (own.length - own.diameter) / 2 : 0);
  Mm2 least = std::numeric_limits<Mm2>::infinity();
  for (const Vec2& off : {Vec2{}, along * u, -along * u, across * v, -across * v})
    least = std::min(least, bearing_area(steel, holes, own.at + off, ring));
  return least;
}

Mm to_cover(const Bolt& bolt, const HoleInWorld& hole) {
  const Vec3 off = bolt.seat - hole.centre, flat = off - dot(off, bolt.direction) * bolt.direction;
  const Mm along = dot(flat, hole.slot_axis), across = norm(flat - along * hole.slot_axis),
           half = (hole.hole.length - hole.hole.diameter) / 2;
  return 2 * std::hypot(std::abs(along) + half, across) + hole.hole.diameter;
}

Mm width_under_nut(const Bolt& bolt) {
  return bolt.under_nut.empty() ? bolt.size.nut_flats : bolt.under_nut.front().outside;
}

}  // namespace bedwright
