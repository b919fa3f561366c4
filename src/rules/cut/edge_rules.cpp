// HOLE-STEEL, EDGE and SPACING: whether each hole lies in its part's steel, and the steel
// left beside it.
#include <fmt/format.h>

#include <map>

#include "rules/cut/edge.h"
#include "rules/cut/edge_remedy.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

// From memory, common practice: for a hole that no bolt of this bed goes through.
constexpr double plain_hole_edge = 1.25;
// AISC 360 section J3.3: centres no nearer than 2-2/3 nominal diameters.
constexpr double least_spacing = 8.0 / 3.0;
// EN 1993-1-8 table 3.3, from memory: no nearer than 1.2 widths of the hole to an edge, nor
// 2.2 from hole to hole. Less than AISC asks, and what not even a maker goes under.
constexpr double bought_edge = 1.2, bought_spacing = 2.2;
// Of the smaller hole, between two of which one has no bolt: common practice, no
// published source.
constexpr double least_plain_web = 0.5;

const BoltSize* bolt_in(const std::vector<const BoltSize*>& through, int hole) {
  return static_cast<std::size_t>(hole) < through.size() ? through[hole] : nullptr;
}

int first_item(const Bed& bed, int part) {
  for (std::size_t i = 0; i < bed.items.size(); ++i)
    if (bed.items[i].part == part) return static_cast<int>(i);
  return -1;
}

Vec3 in_world(const Bed& bed, int item, const HoleOnFace& hole) {
  return hole_in_world(bed, Ply{item, hole.index, 0, 0}).centre;
}

// Of holes alike in one part the worst stands for all.
class Worst {
 public:
  Worst(std::vector<Finding>& findings, const char* more) : findings_(findings), more_(more) {}
  ~Worst() {
    for (auto& [alike, f] : found_) {
      if (f.second > 0)
        f.first.message += fmt::format("; so {} {} more {}", f.second == 1 ? "is" : "are", f.second, more_);
      findings_.push_back(std::move(f.first));
    }
  }
  Worst(const Worst&) = delete;
  Worst& operator=(const Worst&) = delete;

  void add(int part, Kind purpose, Finding f) {
    const auto [at, fresh] = found_.try_emplace({part, purpose, f.severity}, f, 0);
    if (fresh) return;
    ++at->second.second;
    if (f.margin < at->second.first.margin) at->second.first = std::move(f);
  }

 private:
  std::vector<Finding>& findings_;
  const char* more_;
  std::map<std::tuple<int, Kind, Severity>, std::pair<Finding, int>> found_;
};

Vec3 to_world(const Scene& scene, int item, const HoleOnFace& hole, Vec2 v) {
  return scene.bed.items[item].placement.direction(v.x * hole.first + v.y * hole.second);
}

// How much wider than a standard hole this one is, to each side. An oversize
// hole or a wide slot must leave the steel a standard one would.
Mm wider_by(const Hole& hole, const BoltSize& bolt) {
  return std::max(0.0, (hole.diameter - bolt.standard_hole) / 2);
}

// Every hole of every part with an item to name, the bolt through it null where none goes.
template <class Use>
void for_each_hole(const Scene& scene, Use use) {
  const auto through = bolts_through(scene.bed);
  for (std::size_t p = 0; p < scene.bed.parts.size(); ++p) {
    const Part& part = scene.bed.parts[p];
    const int item = first_item(scene.bed, static_cast<int>(p));
    if (item < 0) continue;
    for (const HoleOnFace& hole : holes_on_faces(part))
      use(item, part, hole, bolt_in(through[p], hole.index));
  }
}

// Centre to edge, as EDGE asks it.
Mm edge_limit(const Hole& hole, const BoltSize* bolt) {
  return bolt ? bolt->edge_minimum + wider_by(hole, *bolt) : plain_hole_edge * hole.diameter;
}

// The rim from the nearest free edge; the hole is not wholly in the steel where it is negative.
Mm rim_to_edge(const NearestEdge& edge, const Hole& hole) { return edge.distance - hole.diameter / 2; }

bool runs_out(const NearestEdge& edge, const Hole& hole) { return rim_to_edge(edge, hole) < -same_place; }

Finding steel_finding(const Scene& scene, Severity severity, int item, const Part& part,
                      const HoleOnFace& hole, Mm distance) {
  Finding f = finding_of("HOLE-STEEL", severity, part, in_world(scene.bed, item, hole));
  f.subjects.push_back(scene.bed.items[item]);
  f.measured = distance;
  f.margin = distance;
  return f;
}

void edge_of(const Scene& scene, int item, const Part& part, const HoleOnFace& hole, const BoltSize* bolt,
             Worst& worst) {
  const NearestEdge edge = nearest_edge_of(part, hole);
  if (runs_out(edge, hole.hole)) return;  // HOLE-STEEL has said it
  const Mm limit = edge_limit(hole.hole, bolt);
  if (edge.distance >= limit - same_place) return;
  // In what is bought the shop only warns of less than its own table.
  const bool stop =
      bolt && (is_frame_steel(part) || edge.distance < bought_edge * hole.hole.diameter - same_place);
  Finding f =
      finding_of("EDGE", stop ? Severity::stop : Severity::warn, part, in_world(scene.bed, item, hole));
  f.subjects.push_back(scene.bed.items[item]);
  f.measured = edge.distance;
  f.limit = limit;
  f.margin = f.measured - f.limit;
  const Figures& say = scene.figures;
  f.message = fmt::format("{} is {} from the edge; {} asks {}", hole_text(part, hole.index, hole.hole),
                          say.say(edge.distance), bolt ? "a " + bolt->name + " bolt" : "a hole of this size",
                          say.say(limit));
  suggest_edge(scene,
               {item, part, hole.hole, to_world(scene, item, hole, edge.toward), limit - edge.distance}, f);
  worst.add(scene.bed.items[item].part, hole.hole.purpose, std::move(f));
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

// What not even a maker leaves between two holes.
Mm least_web(const Hole& p, const BoltSize* a, const Hole& q, const BoltSize* b) {
  return a && b ? (bought_spacing - 1) * std::max(p.diameter, q.diameter)
                : least_plain_web * std::min(p.diameter, q.diameter);
}

void spacing_of(const Scene& scene, int item, const Part& part, const HoleOnFace& p, const BoltSize* p_bolt,
                const HoleOnFace& q, const BoltSize* q_bolt, Worst& worst) {
  const auto [a, b] = arc_centres(p.hole);
  const auto [c, d] = arc_centres(q.hole);
  const Mm apart = segment_distance(a, b, c, d), radii = (p.hole.diameter + q.hole.diameter) / 2;
  const Mm limit = std::max(spacing_limit(p.hole, p_bolt, q.hole, q_bolt),
                            p_bolt && q_bolt ? radii + least_web(p.hole, p_bolt, q.hole, q_bolt) : 0.0);
  if (apart >= limit - same_place) return;
  const bool stop =
      is_frame_steel(part) || apart < radii + least_web(p.hole, p_bolt, q.hole, q_bolt) - same_place;
  Finding f =
      finding_of("SPACING", stop ? Severity::stop : Severity::warn, part, in_world(scene.bed, item, p));
  f.subjects.push_back(scene.bed.items[item]);
  f.measured = apart;
  f.limit = limit;
  f.margin = apart - limit;
  const Figures& say = scene.figures;
  const std::string which = fmt::format("holes {} ({}) and {} ({}) of {}", p.index + 1, word(p.hole.purpose),
                                        q.index + 1, word(q.hole.purpose), name(part));
  f.message = apart < radii - same_place
                  ? fmt::format("{} run into each other by {}", which, say.say(radii - apart))
                  : fmt::format("{} are {} apart, centre to centre; holes of their size ask {}", which,
                                say.say(apart), say.say(limit));
  f.remedy = fmt::format("move them {} further apart", say.say(say.round_up(limit - apart)));
  if (!is_frame_steel(part)) f.remedy += ", or check both against the maker's sheet";
  worst.add(scene.bed.items[item].part, p.hole.purpose, std::move(f));
}

}  // namespace

void check_hole_steel(const Scene& scene, std::vector<Finding>& findings) {
  Worst out(findings, "of its holes"), into(findings, "of its holes");
  const Figures& say = scene.figures;
  for_each_hole(scene, [&](int item, const Part& part, const HoleOnFace& hole, const BoltSize* bolt) {
    const std::string who = hole_text(part, hole.index, hole.hole);
    const int of = scene.bed.items[item].part;
    const NearestEdge edge = nearest_edge_of(part, hole);
    if (runs_out(edge, hole.hole)) {
      const Mm out_by = -rim_to_edge(edge, hole.hole);
      Finding f = steel_finding(scene, Severity::stop, item, part, hole, -out_by);
      f.message = fmt::format("{} runs {} out past the edge of its steel", who, say.say(out_by));
      // Far enough in for EDGE too.
      suggest_edge(scene,
                   {item, part, hole.hole, to_world(scene, item, hole, edge.toward),
                    edge_limit(hole.hole, bolt) - edge.distance},
                   f);
      out.add(of, hole.hole.purpose, std::move(f));
    }
    const std::optional<Raised> raised = nearest_raised(part, hole);
    if (!raised || raised->distance >= -same_place) return;
    const Mm by = -raised->distance;
    Finding f =
        steel_finding(scene, raised->is_fillet ? Severity::warn : Severity::stop, item, part, hole, -by);
    f.message = fmt::format("{} runs {} into {}{}", who, say.say(by),
                            raised->is_fillet ? "the fillet beside " : "", raised->what);
    suggest_away(scene, {item, part, hole.hole, to_world(scene, item, hole, raised->toward), by}, f);
    into.add(of, hole.hole.purpose, std::move(f));
  });
}

void check_edge(const Scene& scene, std::vector<Finding>& findings) {
  Worst worst(findings, "of its holes");
  for_each_hole(scene, [&](int item, const Part& part, const HoleOnFace& hole, const BoltSize* bolt) {
    edge_of(scene, item, part, hole, bolt, worst);
  });
}

void check_spacing(const Scene& scene, std::vector<Finding>& findings) {
  Worst worst(findings, "pairs of its holes");
  const auto through = bolts_through(scene.bed);
  for (std::size_t p = 0; p < scene.bed.parts.size(); ++p) {
    const Part& part = scene.bed.parts[p];
    const int item = first_item(scene.bed, static_cast<int>(p));
    if (item < 0) continue;
    const std::vector<HoleOnFace> holes = holes_on_faces(part);
    for (std::size_t i = 0; i < holes.size(); ++i)
      for (std::size_t j = i + 1; j < holes.size(); ++j)
        if (holes[i].face == holes[j].face)
          spacing_of(scene, item, part, holes[i], bolt_in(through[p], holes[i].index), holes[j],
                     bolt_in(through[p], holes[j].index), worst);
  }
}

}  // namespace bedwright
