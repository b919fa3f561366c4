// Nearest edges, distances between holes, and which bolts pass through each hole.
#include "rules/cut/edge.h"

#include <fmt/format.h>

#include <numbers>

namespace bedwright {
namespace {

constexpr double pi = std::numbers::pi;

Vec2 closest_on_segment(Vec2 a, Vec2 b, Vec2 p) {
  const Vec2 run = b - a;
  const double length2 = dot(run, run);
  const double t = length2 > 0 ? std::clamp(dot(p - a, run) / length2, 0.0, 1.0) : 0.0;
  return a + t * run;
}

// On the arc from `a` to `b`: the point of its circle on the ray from the centre
// through `p` when the arc passes there, else the nearer end.
Vec2 closest_on_arc(Vec2 a, Vec2 b, double bulge, Vec2 p) {
  const double turn = 4 * std::atan(bulge);
  const Vec2 chord = b - a;
  const Mm radius = norm(chord) / (2 * std::sin(turn / 2));  // signed with the turn
  const double heading = std::atan2(chord.y, chord.x) - turn / 2;
  const Vec2 centre = a + radius * Vec2{-std::sin(heading), std::cos(heading)};
  const Vec2 from = a - centre, to = p - centre;
  double swept = std::atan2(cross(from, to), dot(from, to));  // from a, the short way
  if (turn > 0 && swept < 0) swept += 2 * pi;
  if (turn < 0 && swept > 0) swept -= 2 * pi;
  if (norm(to) > 0 && std::abs(swept) <= std::abs(turn)) return centre + (std::abs(radius) / norm(to)) * to;
  return norm(p - a) < norm(p - b) ? a : b;
}

// Whether the point lies between an arc and its chord. A bulge above 0 lies to the
// right of its chord, as seen from the run's start.
bool between_arc_and_chord(Vec2 a, Vec2 b, double bulge, Vec2 p) {
  const RunArc arc = run_arc(a, b, bulge);
  const double side = cross(b - a, p - a) * bulge;
  // On the chord itself: to one of the two runs that share it (a circle is two half circles).
  return norm(p - arc.centre) < arc.radius && (side < 0 || (side == 0 && a.x + a.y < b.x + b.y));
}

// By the crossings of a ray, each arc changing the answer beside its chord.
bool is_inside(const Outline& outline, Vec2 p) {
  bool inside = false;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i].at, b = outline[(i + 1) % outline.size()].at;
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (p.y - a.y) / (b.y - a.y) * (b.x - a.x)) inside = !inside;
    if (outline[i].bulge != 0 && between_arc_and_chord(a, b, outline[i].bulge, p)) inside = !inside;
  }
  return inside;
}

// The way out of the outline where the point lies on it: the right of the run.
Vec2 outward_of(Vec2 a, Vec2 b) { return (1 / norm(b - a)) * Vec2{b.y - a.y, a.x - b.x}; }

constexpr Mm infinity = std::numeric_limits<Mm>::infinity();

}  // namespace

NearestEdge nearest_edge(const Outline& outline, Vec2 from) {
  NearestEdge best{infinity, {}};
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i].at, b = outline[(i + 1) % outline.size()].at;
    const double bulge = outline[i].bulge;
    const Vec2 on_edge = bulge == 0 ? closest_on_segment(a, b, from) : closest_on_arc(a, b, bulge, from);
    const Mm d = norm(on_edge - from);
    if (d < best.distance) best = {d, d > same_place ? (1 / d) * (on_edge - from) : outward_of(a, b)};
  }
  if (best.distance <= same_place || is_inside(outline, from)) return best;
  return {-best.distance, -1.0 * best.toward};
}

NearestEdge nearest_edge(const Member& member, Face face, Vec2 from) {
  const Section& s = member.section;
  const double start = std::tan(member.start_mitre), end = std::tan(member.end_mitre);
  const bool upright = face == Face::web || face == Face::standing_leg;
  // A mitred end cuts an upright face (at y from 0 to its thickness) square; the
  // shorter of its two sides counts. Other faces it crosses at an angle.
  const Mm shorter_start = upright ? std::max(0.0, s.web * start) : from.y * start;
  const Mm shorter_end = member.length + (upright ? std::min(0.0, s.web * end) : from.y * end);
  const double square_start = upright ? 1 : std::cos(member.start_mitre);
  const double square_end = upright ? 1 : std::cos(member.end_mitre);
  NearestEdge best{(from.x - shorter_start) * square_start, {-1, 0}};
  const Mm to_end = (shorter_end - from.x) * square_end;
  if (to_end < best.distance) best = {to_end, {1, 0}};
  const bool free_edge = face != Face::web && !is_closed(s);
  const Mm to_free = (face == Face::standing_leg ? s.depth : s.flange) - from.y;
  if (free_edge && to_free < best.distance) best = {to_free, {0, 1}};
  return best;
}

std::pair<Vec2, Vec2> arc_centres(const Hole& hole) {
  const Mm half = hole.slotted() ? (hole.length - hole.diameter) / 2 : 0;
  const Vec2 run = half * Vec2{std::cos(hole.angle), std::sin(hole.angle)};
  return {hole.at - run, hole.at + run};
}

std::string hole_text(const Part& part, std::size_t index, const Hole& hole) {
  return fmt::format("hole {} of {} ({})", index + 1, name(part),
                     hole.purpose == Kind::none ? "no purpose given" : word(hole.purpose));
}

Mm segment_distance(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const double side_c = cross(b - a, c - a), side_d = cross(b - a, d - a);
  const double side_a = cross(d - c, a - c), side_b = cross(d - c, b - c);
  if (side_c * side_d < 0 && side_a * side_b < 0) return 0;
  return std::min({norm(closest_on_segment(a, b, c) - c), norm(closest_on_segment(a, b, d) - d),
                   norm(closest_on_segment(c, d, a) - a), norm(closest_on_segment(c, d, b) - b)});
}

std::vector<std::vector<const BoltSize*>> bolts_through(const Bed& bed) {
  std::vector<std::vector<const BoltSize*>> through(bed.parts.size());
  for (const Bolt& bolt : bed.bolts) {
    for (const Ply& ply : bolt.plies) {
      if (ply.item < 0 || ply.hole < 0) continue;
      auto& holes = through[bed.items[ply.item].part];
      if (holes.size() <= static_cast<std::size_t>(ply.hole)) holes.resize(ply.hole + 1, nullptr);
      const BoltSize*& largest = holes[ply.hole];
      if (!largest || bolt.size.diameter > largest->diameter) largest = &bolt.size;
    }
  }
  return through;
}

}  // namespace bedwright
