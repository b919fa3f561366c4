// Works out stacks and clearances before tips, and what the rules on bolts share.
#include "rules/scene.h"

#include <fmt/format.h>

#include "bed/pieces.h"

namespace bedwright {
namespace {

Mm thickness_of(const std::vector<Washer>& washers) {
  Mm sum = 0;
  for (const Washer& w : washers) sum += w.thickness;
  return sum;
}

bool passes_through(const Bolt& bolt, int item) {
  return std::any_of(bolt.plies.begin(), bolt.plies.end(), [&](const Ply& p) { return p.item == item; });
}

// The axis and eight lines on the shank's surface: a tip seldom meets an edge
// squarely, and the axis alone would miss one it clips.
std::vector<Vec3> tip_lines(const Bolt& bolt, Vec3 face) {
  const Vec3 across = std::abs(bolt.direction.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 u = unit(cross(bolt.direction, across)), v = cross(bolt.direction, u);
  std::vector<Vec3> lines{face};
  for (int i = 0; i < 8; ++i) {
    const double a = i * 45 * degree;
    lines.push_back(face + (bolt.size.diameter / 2) * (std::cos(a) * u + std::sin(a) * v));
  }
  return lines;
}

Beyond beyond_of(const Scene& scene, int bolt_index) {
  const Bolt& bolt = scene.bed.bolts[bolt_index];
  const Vec3 face = bolt.seat + scene.stacks[bolt_index].plies * bolt.direction;
  const std::vector<Vec3> lines = tip_lines(bolt, face);
  Box3 swept;
  for (const Vec3& from : lines) {
    swept.add(from);
    swept.add(from + tip_search * bolt.direction);
  }
  Beyond nearest{tip_search, -1};
  scene.near.for_each(swept, [&](int index) {
    const Item& item = scene.bed.items[index];
    if (!item.shown || item.bolt == bolt_index || passes_through(bolt, index)) return;
    for (const Convex& piece : scene.pieces[index]) {
      if (!swept.overlaps(piece.bounds)) continue;
      for (const Vec3& from : lines) {
        const Mm hit = ray_hit(piece, from, bolt.direction);
        // The lower index of two as near, in whatever order they are met.
        if (hit < nearest.distance || (hit == nearest.distance && nearest.item > index))
          nearest = {hit, index};
      }
    }
  });
  return nearest;
}

}  // namespace

bool length_suits(const Scene& scene, std::size_t bolt_index, Mm length) {
  const Bolt& bolt = scene.bed.bolts[bolt_index];
  const BoltSize& size = bolt.size;
  const Stack& stack = scene.stacks[bolt_index];
  const Mm past = length - stack.grip - size.nut_height;
  if (past - size.tolerance(length).minus < scene.limits.threads_past_nut * size.pitch - same_place)
    return false;
  if (past + size.tolerance(length).plus > scene.limits.most_past_nut + same_place) return false;
  if (length - size.thread_length > stack.grip + same_place) return false;
  const Beyond& beyond = scene.beyond[bolt_index];
  return beyond.item < 0 ||
         tip_clearance(stack, bolt, length, beyond.distance) >= scene.limits.tip_clearance - same_place;
}

Stack stack_of(const Bolt& bolt) {
  Stack stack;
  stack.head_washers = thickness_of(bolt.under_head);
  stack.nut_washers = thickness_of(bolt.under_nut);
  for (const Ply& ply : bolt.plies) stack.plies += ply.thickness;
  stack.grip = stack.head_washers + stack.plies + stack.nut_washers + bolt.shim.value_or(0);
  stack.past_nut = bolt.length - stack.grip - bolt.size.nut_height;
  return stack;
}

Mm tip_clearance(const Stack& stack, const Bolt& bolt, Mm bolt_length, Mm free) {
  const Mm beyond_plies = bolt_length + bolt.size.tolerance(bolt_length).plus - stack.head_washers -
                          stack.plies - bolt.shim.value_or(0);
  return free - beyond_plies;
}

Scene::Scene(const CheckInput& given)
    : input(given), bed(input.bed), limits(input.limits), figures(input.figures) {
  std::vector<std::vector<Convex>> by_part;
  for (const Part& part : bed.parts) by_part.push_back(local_pieces(part.form));
  for (const Item& item : bed.items) {
    std::vector<Convex>& list = pieces.emplace_back(by_part[item.part]);
    Box3 box;
    for (Convex& piece : list) {
      piece = placed(std::move(piece), item.placement);
      box.add(piece.bounds.low);
      box.add(piece.bounds.high);
    }
    boxes.push_back(box);
  }
  near = NearIndex(boxes);
  for (const Bolt& bolt : bed.bolts) stacks.push_back(stack_of(bolt));
  for (std::size_t i = 0; i < bed.bolts.size(); ++i)
    beyond.push_back(bed.bolts[i].in_place ? beyond_of(*this, static_cast<int>(i)) : Beyond{tip_search, -1});
}

std::vector<Mm> suiting_lengths(const Scene& scene, Kind bolts, const BoltSize& size) {
  std::vector<Mm> lengths;
  for (const Mm length : size.lengths) {
    bool all = true;
    for (std::size_t i = 0; i < scene.bed.bolts.size() && all; ++i) {
      const Bolt& bolt = scene.bed.bolts[i];
      if (bolt.in_place && bolt.id.kind == bolts)
        all = bolt.size.name == size.name && length_suits(scene, i, length);
    }
    if (all) lengths.push_back(length);
  }
  return lengths;
}

const BoltUse& bolt_use(Kind bolts) {
  static const BoltUse uses[] = {
      {Kind::track_bolt, "track", "track", "kit.mounting.hole", true, &BoltLengths::track},
      {Kind::bunk_bolt, "bunk", "bunk", "kit.bunk.hole", true, &BoltLengths::bunk},
      {Kind::gusset_bolt, "gusset", "gusset", "kit.gusset.hole", true, &BoltLengths::gusset},
      {Kind::stop_bolt, "track stop", "stop", "kit.track_stop.hole", true, &BoltLengths::stop},
      {Kind::jack_bolt, "jack", "jack", "frame.jack.hole", false, &BoltLengths::jack},
      {Kind::tongue_jack_bolt, "tongue jack", "tongue_jack", "frame.tongue_jack.hole", false,
       &BoltLengths::tongue_jack},
  };
  for (const BoltUse& use : uses)
    if (use.kind == bolts) return use;
  throw std::invalid_argument("no bolts are " + word(bolts));
}

std::string bolts_key(Kind bolts) { return std::string("bolts.") + bolt_use(bolts).key; }

void suggest_length(const Scene& scene, const Bolt& bolt, bool longest, Finding& finding) {
  const std::vector<Mm> lengths = suiting_lengths(scene, bolt.id.kind, bolt.size);
  if (lengths.empty()) {
    finding.remedy += fmt::format("no stock length of {} suits every bolt of this kind", bolt.size.name);
    return;
  }
  const std::string text = bolt_length_text(bolt.size, longest ? lengths.back() : lengths.front());
  finding.remedy += fmt::format("use {} x {} bolts", bolt.size.name, text);
  finding.changes.push_back({bolts_key(bolt.id.kind), text});
}

std::vector<TabPlace> tab_places(const Bed& bed) {
  std::vector<TabPlace> places;
  for (const int i : bed.items_of(Kind::tab))
    if (hole_count(bed.part_of(i)) > 0)
      places.push_back({i, bed.items[i].id.side, hole_in_world(bed, ply_through(bed, i, 0)).centre.x});
  return places;
}

Finding finding_of(const char* code, Severity severity, Subject subject, Vec3 at) {
  Finding finding;
  finding.code = code;
  finding.severity = severity;
  finding.subjects.push_back(std::move(subject));
  finding.x = at.x;
  finding.y = at.y;
  finding.z = at.z;
  finding.unit = "mm";
  return finding;
}

std::string way_of(Vec3 shift) {
  if (shift.x != 0) return shift.x > 0 ? "rearward" : "forward";
  if (shift.y != 0) return shift.y > 0 ? "toward the right side" : "toward the left side";
  return shift.z > 0 ? "up" : "down";
}

void add_name(Finding& finding, const Subject& named) {
  if (std::find(finding.subjects.begin(), finding.subjects.end(), named) != finding.subjects.end())
    finding.names_in_remedy.push_back({finding.remedy.size(), named.name.size()});
  finding.remedy += named.name;
}

}  // namespace bedwright
