// EDGE and SPACING: steel left between a hole and the edge, and between holes.
#include <fmt/format.h>

#include "rules/cut/edge.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

// From memory, common practice: for a hole that no bolt of this bed goes through.
constexpr double plain_hole_edge = 1.25;
// AISC 360 section J3.3: centres no nearer than 2-2/3 nominal diameters.
constexpr double least_spacing = 8.0 / 3.0;

// A hole as both rules need it.
struct Placed {
  Hole hole;
  std::optional<Face> face;  // members only
  int index = 0;
};

std::vector<Placed> holes_of(const Part& part) {
  std::vector<Placed> all;
  int index = 0;
  if (const auto* plate = std::get_if<Plate>(&part.form))
    for (const Hole& h : plate->holes) all.push_back({h, std::nullopt, index++});
  if (const auto* member = std::get_if<Member>(&part.form))
    for (const FaceHole& h : member->holes) all.push_back({h.hole, h.face, index++});
  return all;
}

const BoltSize* bolt_in(const std::vector<const BoltSize*>& through, int hole) {
  return static_cast<std::size_t>(hole) < through.size() ? through[hole] : nullptr;
}

int first_item(const Bed& bed, int part) {
  for (std::size_t i = 0; i < bed.items.size(); ++i)
    if (bed.items[i].part == part) return static_cast<int>(i);
  return -1;
}

Vec3 in_world(const Bed& bed, int item, const Placed& hole) {
  return hole_in_world(bed, Ply{item, hole.index, 0, 0}).centre;
}

Vec3 local_direction(const Placed& hole, Vec2 v) {
  const bool upright = hole.face == Face::web || hole.face == Face::standing_leg;
  return upright ? Vec3{v.x, 0, v.y} : Vec3{v.x, v.y, 0};
}

NearestEdge nearest_edge_of(const Part& part, const Placed& hole) {
  const auto from = [&](Vec2 at) {
    if (const auto* plate = std::get_if<Plate>(&part.form)) return nearest_edge(plate->outline, at);
    return nearest_edge(std::get<Member>(part.form), *hole.face, at);
  };
  const auto [a, b] = arc_centres(hole.hole);
  const NearestEdge first = from(a), second = from(b);
  return first.distance <= second.distance ? first : second;
}

// A mounting tab's own length is the order's to set; other edges are for the drawing.
void suggest_edge(const Scene& scene, int item, Vec3 toward, Mm short_by, Finding& f) {
  const Figures& figures = scene.figures;
  if (scene.bed.items[item].id.kind != Kind::tab || std::abs(toward.x) < 0.999) {
    f.remedy = fmt::format("move the hole {} from the edge, or the edge from the hole",
                           figures.say(figures.round_up(short_by)));
    return;
  }
  // The hole is in the tab's middle: both ends move.
  const Mm now = scene.boxes[item].high.x - scene.boxes[item].low.x;
  const Mm length = figures.round_up(now + 2 * short_by);
  f.remedy = fmt::format("make the tabs {} long", figures.say(length));
  f.changes.push_back({"frame.tabs.length", figures.set(length)});
}

// How much wider than a standard hole this one is, to each side. An oversize
// hole or a wide slot must leave the steel a standard one would.
Mm wider_by(const Hole& hole, const BoltSize& bolt) {
  return std::max(0.0, (hole.diameter - bolt.standard_hole) / 2);
}

void edge_of(const Scene& scene, int item, const Part& part, const Placed& hole, const BoltSize* bolt,
             std::vector<Finding>& findings) {
  const NearestEdge edge = nearest_edge_of(part, hole);
  const Mm limit =
      bolt ? bolt->edge_minimum + wider_by(hole.hole, *bolt) : plain_hole_edge * hole.hole.diameter;
  if (edge.distance >= limit - same_place) return;
  Finding f =
      finding_of("EDGE", bolt ? Severity::stop : Severity::warn, part, in_world(scene.bed, item, hole));
  f.subjects.push_back(scene.bed.items[item]);
  f.measured = edge.distance;
  f.limit = limit;
  f.margin = f.measured - f.limit;
  const Figures& say = scene.figures;
  f.message = fmt::format("{} is {} from the edge; {} asks {}", hole_text(part, hole.index, hole.hole),
                          say.say(edge.distance), bolt ? "a " + bolt->name + " bolt" : "a hole of this size",
                          say.say(limit));
  suggest_edge(scene, item, scene.bed.items[item].placement.direction(local_direction(hole, edge.toward)),
               limit - edge.distance, f);
  findings.push_back(std::move(f));
}

// Two bolt holes: the bolts' own spacing, and where holes are wider than standard
// as much more. A hole no bolt goes through counts by its size: the web left
// between must be what its own edge distance would leave (from memory, common
// practice).
Mm spacing_limit(const Hole& p, const BoltSize* a, const Hole& q, const BoltSize* b) {
  if (a && b) return least_spacing * std::max(a->diameter, b->diameter) + wider_by(p, *a) + wider_by(q, *b);
  const Mm web = (plain_hole_edge - 0.5) * std::min(p.diameter, q.diameter);
  return (p.diameter + q.diameter) / 2 + web;
}

void spacing_of(const Scene& scene, int item, const Part& part, const Placed& p, const Placed& q, Mm limit,
                std::vector<Finding>& findings) {
  const auto [a, b] = arc_centres(p.hole);
  const auto [c, d] = arc_centres(q.hole);
  const Mm apart = segment_distance(a, b, c, d);
  if (apart >= limit - same_place) return;
  const Severity severity = part.origin == Origin::made ? Severity::stop : Severity::warn;
  Finding f = finding_of("SPACING", severity, part, in_world(scene.bed, item, p));
  f.subjects.push_back(scene.bed.items[item]);
  f.measured = apart;
  f.limit = limit;
  f.margin = apart - limit;
  const Figures& say = scene.figures;
  f.message = fmt::format("holes {} and {} of {} are {} apart, centre to centre; holes of their size ask {}",
                          p.index + 1, q.index + 1, name(part), say.say(apart), say.say(limit));
  f.remedy = fmt::format("move them {} further apart", say.say(say.round_up(limit - apart)));
  findings.push_back(std::move(f));
}

}  // namespace

void check_edge(const Scene& scene, std::vector<Finding>& findings) {
  const auto through = bolts_through(scene.bed);
  for (std::size_t p = 0; p < scene.bed.parts.size(); ++p) {
    const Part& part = scene.bed.parts[p];
    const int item = first_item(scene.bed, static_cast<int>(p));
    if (part.origin != Origin::made || item < 0) continue;
    for (const Placed& hole : holes_of(part))
      edge_of(scene, item, part, hole, bolt_in(through[p], hole.index), findings);
  }
}

void check_spacing(const Scene& scene, std::vector<Finding>& findings) {
  const auto through = bolts_through(scene.bed);
  for (std::size_t p = 0; p < scene.bed.parts.size(); ++p) {
    const Part& part = scene.bed.parts[p];
    const int item = first_item(scene.bed, static_cast<int>(p));
    if (item < 0) continue;
    const std::vector<Placed> holes = holes_of(part);
    for (std::size_t i = 0; i < holes.size(); ++i) {
      for (std::size_t j = i + 1; j < holes.size(); ++j) {
        const BoltSize* a = bolt_in(through[p], holes[i].index);
        const BoltSize* b = bolt_in(through[p], holes[j].index);
        if (holes[i].face == holes[j].face)
          spacing_of(scene, item, part, holes[i], holes[j], spacing_limit(holes[i].hole, a, holes[j].hole, b),
                     findings);
      }
    }
  }
}

}  // namespace bedwright
