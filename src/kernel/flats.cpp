// Distances between holes and to a face's border, arcs taken as chords.
#include "kernel/flats.h"

#include <optional>

namespace bedwright {

namespace {

// Chords stray this far from the arcs they stand for; borders keep off by as much.
constexpr Mm chord_error = 0.01;

// What is left of a hole when its radius is taken off: a point, or a slot's middle line.
struct Spine {
  Vec2 from, to;
};

Spine spine(const Hole& hole) {
  const Mm half = hole.slotted() ? (hole.length - hole.diameter) / 2 : 0;
  const Vec2 along = half * Vec2{std::cos(hole.angle), std::sin(hole.angle)};
  return {hole.at - along, hole.at + along};
}

Mm distance(Vec2 p, const Spine& s) {
  const Vec2 run = s.to - s.from;
  const double length2 = dot(run, run);
  const double t = length2 > 0 ? std::clamp(dot(p - s.from, run) / length2, 0.0, 1.0) : 0.0;
  return norm(p - s.from - t * run);
}

bool cross_over(const Spine& a, const Spine& b) {
  const auto side = [](const Spine& s, Vec2 p) { return cross(s.to - s.from, p - s.from); };
  return side(a, b.from) * side(a, b.to) < 0 && side(b, a.from) * side(b, a.to) < 0;
}

Mm distance(const Spine& a, const Spine& b) {
  if (cross_over(a, b)) return 0;
  return std::min({distance(a.from, b), distance(a.to, b), distance(b.from, a), distance(b.to, a)});
}

bool inside(Vec2 p, const std::vector<Vec2>& border) {
  bool in = false;
  for (std::size_t i = 0, j = border.size() - 1; i < border.size(); j = i++) {
    const Vec2 a = border[i], b = border[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y)) in = !in;
  }
  return in;
}

bool clear_of_border(const Hole& hole, const std::vector<Vec2>& border) {
  const Spine s = spine(hole);
  if (!inside(hole.at, border)) return false;
  for (std::size_t i = 0, j = border.size() - 1; i < border.size(); j = i++) {
    if (distance(s, {border[i], border[j]}) < hole.diameter / 2 + 2 * chord_error) return false;
  }
  return true;
}

struct Range {
  Mm low, high;
};

// The straight run of a profile on which one coordinate has a given value, as
// the range of the other coordinate.
std::optional<Range> straight_run(const Outline& outline, double Vec2::*fixed, double Vec2::*free, Mm value) {
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i].at, b = outline[(i + 1) % outline.size()].at;
    if (outline[i].bulge != 0 || std::abs(a.*fixed - value) > same_place ||
        std::abs(b.*fixed - value) > same_place) {
      continue;
    }
    return Range{std::min(a.*free, b.*free), std::max(a.*free, b.*free)};
  }
  return std::nullopt;
}

}  // namespace

std::vector<bool> clear_holes(const Outline& region, const std::vector<Hole>& holes) {
  std::vector<bool> clear(holes.size(), false);
  if (region.empty()) return clear;
  const std::vector<Vec2> border = flattened(region, chord_error);
  for (std::size_t i = 0; i < holes.size(); ++i) clear[i] = clear_of_border(holes[i], border);
  for (std::size_t i = 0; i < holes.size(); ++i) {
    for (std::size_t j = 0; j < i; ++j) {
      const Mm touch = (holes[i].diameter + holes[j].diameter) / 2 + chord_error;
      if (distance(spine(holes[i]), spine(holes[j])) < touch) clear[i] = clear[j] = false;
    }
  }
  return clear;
}

Outline flat_region(const Member& member, Face face) {
  if (face == Face::top_flange || face == Face::bottom_flange) return {};
  const bool flat_leg = face == Face::flat_leg;
  const auto fixed = flat_leg ? &Vec2::y : &Vec2::x;  // profile x is y in space, profile y is z
  const auto free = flat_leg ? &Vec2::x : &Vec2::y;
  const Outline outline = profile(member.section);
  const auto outer = straight_run(outline, fixed, free, 0);
  const auto inner = straight_run(outline, fixed, free, member.section.web);
  if (!outer || !inner) return {};
  const Mm low = std::max(outer->low, inner->low), high = std::min(outer->high, inner->high);
  const double start = std::tan(member.start_mitre), end = std::tan(member.end_mitre);
  if (flat_leg) {
    return polygon({{low * start, low},
                    {member.length + low * end, low},
                    {member.length + high * end, high},
                    {high * start, high}});
  }
  const Mm thick = member.section.web;
  return rectangle({std::max(0.0, thick * start), low}, {member.length + std::min(0.0, thick * end), high});
}

}  // namespace bedwright
