// JOINT-CLAMP, JOINT-GAP, JOINT-STEP, GUSSET-BOLTS, TRACK-LENGTH: what the kit's tolerances do
// at the rail joints and over the whole track.
#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <set>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// One finding stands for all joints: they are alike.
Finding at_first_joint(const Scene& scene, const char* code, Severity severity) {
  const Track& t = scene.bed.track;
  return finding_of(code, severity, {{Kind::joints}, fmt::format("{} rail joints a side", t.joints.size())},
                    {t.joints.front(), 0, t.standoff});
}

// A clamp's slide along the bed, and how far from it the nearest joint is; negative
// inside it.
struct Slide {
  Mm from = 0, to = 0;
};

Slide moved(Slide s, Mm by) { return {s.from + by, s.to + by}; }

// The nearest joint and how far from the slide it is.
std::pair<Mm, Mm> nearest_joint(const Scene& scene, const Slide& s) {
  std::pair<Mm, Mm> nearest{0, std::numeric_limits<Mm>::infinity()};
  for (const Mm joint : scene.bed.track.joints)
    if (const Mm far = std::max(s.from - joint, joint - s.to); far < nearest.second) nearest = {joint, far};
  return nearest;
}

// Bunks whose joint is far enough for this clamp, nearest first; not those that
// other clamps and log stops have.
std::vector<int> bunks_away_from_joints(const Scene& scene, const Slide& slide, int own) {
  const TrackOrder& order = scene.input.job->order.track;
  std::set<int> taken(order.log_stops.begin(), order.log_stops.end());
  for (const ClampPlace& c : order.clamps) taken.insert(c.bunk);
  const std::vector<BunkPlace>& bunks = scene.bed.track.bunks;
  std::vector<int> all;
  for (int bunk = 1; bunk <= scene.bed.track.bunk_count(); ++bunk)
    if (!taken.contains(bunk) &&
        nearest_joint(scene, moved(slide, bunks[bunk - 1].x - bunks[own - 1].x)).second >=
            scene.limits.joint_to_clamp)
      all.push_back(bunk);
  std::stable_sort(all.begin(), all.end(),
                   [&](int a, int b) { return std::abs(a - own) < std::abs(b - own); });
  return all;
}

}  // namespace

void check_joint_clamp(const Scene& scene, std::vector<Finding>& findings) {
  if (!scene.input.job) return;
  const Figures& say = scene.figures;
  int number = 0;
  for (const ClampPlace& place : scene.input.job->order.track.clamps) {
    // Along the bed its foot is the same in every pose.
    const Identity pose{Kind::clamp, Side::middle, ++number, 0, End::none, place.bunk, Pose::in_outer};
    const Box3& box = scene.boxes[scene.bed.item(pose)];
    const Slide slide{box.low.x, box.high.x};
    const auto [joint, far] = nearest_joint(scene, slide);
    const Mm limit = scene.limits.joint_to_clamp;
    if (far >= limit - same_place) continue;
    Finding f =
        finding_of("JOINT-CLAMP", Severity::warn, whole_thing(pose), {joint, 0, scene.bed.track.standoff});
    f.measured = far;
    f.limit = limit;
    f.margin = far - limit;
    f.message = far > 0 ? fmt::format("{} slides {} from the rail joint at {}; {} is asked",
                                      f.subjects[0].name, say.say(far), say.say(joint), say.say(limit))
                        : fmt::format("{} slides across the rail joint at {}; {} clear of it is asked",
                                      f.subjects[0].name, say.say(joint), say.say(limit));
    const std::vector<int> bunks = bunks_away_from_joints(scene, slide, place.bunk);
    f.remedy = bunks.empty()
                   ? "no free bunk is further from a joint; another rail length or bunk pitch moves them"
                   : fmt::format("put the clamp on bunk {}", bunks.front());
    for (const int bunk : bunks)
      f.changes.push_back({fmt::format("track.clamps[{}].bunk", number), std::to_string(bunk)});
    findings.push_back(std::move(f));
  }
}

void check_joint_gap(const Scene& scene, std::vector<Finding>& findings) {
  if (!scene.input.job || scene.bed.track.joints.empty()) return;
  const KitRail& rail = scene.input.job->kit.rail;
  const Mm gap = rail.joint_gap + rail.joint_gap_plus, limit = scene.limits.joint_gap;
  if (gap <= limit + same_place) return;
  Finding f = at_first_joint(scene, "JOINT-GAP", Severity::stop);
  f.measured = gap;
  f.limit = limit;
  f.margin = limit - gap;
  const Figures& say = scene.figures;
  f.message = fmt::format(
      "a rail joint may stand {} open ({} as laid out, {} more by the kit's tolerance); at most {} is "
      "allowed",
      say.say(gap), say.say(rail.joint_gap), say.say(rail.joint_gap_plus), say.say(limit));
  if (rail.joint_gap <= limit) {
    f.remedy = fmt::format("draw the joints up to within {} of each other", say.say(limit));
    f.changes.push_back({"kit.rail.joint_gap_plus", say.set_at_most(limit - rail.joint_gap)});
  } else {
    f.remedy = fmt::format("lay the joints out {} apart or less, and draw them up", say.say(limit));
  }
  findings.push_back(std::move(f));
}

void check_joint_step(const Scene& scene, std::vector<Finding>& findings) {
  if (!scene.input.job || scene.bed.track.joints.empty()) return;
  // One rail tall, the next short. Across, the gusset draws both to one face.
  const Mm step = 2 * scene.input.job->kit.rail.height_tolerance, limit = scene.limits.joint_step;
  if (step <= limit + same_place) return;
  Finding f = at_first_joint(scene, "JOINT-STEP", Severity::warn);
  f.measured = step;
  f.limit = limit;
  f.margin = limit - step;
  const Figures& say = scene.figures;
  f.message = fmt::format("two rails may differ {} in height where they meet; at most {} is asked",
                          say.say(step), say.say(limit));
  f.remedy = fmt::format(
      "sort the sections by height so that neighbours are within {}, or grind the step down", say.say(limit));
  f.changes.push_back({"kit.rail.height_tolerance", say.set_at_most(limit / 2)});
  findings.push_back(std::move(f));
}

void check_gusset_bolts(const Scene& scene, std::vector<Finding>& findings) {
  const Track& track = scene.bed.track;
  for (std::size_t k = 0; k < track.joints.size(); ++k) {
    for (const Side side : both_sides) {
      // Half way to the neighbouring joint at most, so that each bolt counts once.
      const Mm reach = track.shortest() / 2;
      int ahead = 0, behind = 0;
      for (const Bolt& b : scene.bed.bolts) {
        if (b.id.kind != Kind::gusset_bolt || !b.in_place || b.id.side != side ||
            std::abs(b.seat.x - track.joints[k]) > reach)
          continue;
        ++(b.seat.x < track.joints[k] ? ahead : behind);
      }
      const int least = std::min(ahead, behind), limit = scene.limits.gusset_bolts;
      if (least >= limit) continue;
      Finding f =
          finding_of("GUSSET-BOLTS", Severity::stop, Identity{Kind::joint, side, static_cast<int>(k) + 1},
                     {track.joints[k], outward(side) * track.gauge / 2, track.standoff});
      f.measured = least;
      f.limit = limit;
      f.margin = least - limit;
      f.unit = "bolts";
      f.message = fmt::format(
          "the rail joint's gusset has {} bolt{} in the rail ahead and {} in the rail behind; {} each are "
          "asked",
          ahead, ahead == 1 ? "" : "s", behind, limit);
      f.remedy = fmt::format("use a gusset with {} bolts each side of the joint", limit);
      findings.push_back(std::move(f));
    }
  }
}

void check_track_length(const Scene& scene, std::vector<Finding>& findings) {
  if (!scene.input.job) return;
  const KitRail& rail = scene.input.job->kit.rail;
  const Track& track = scene.bed.track;
  const double joints = static_cast<double>(track.joints.size());
  const Mm rails = track.sections * rail.length_tolerance, error = rails + joints * rail.joint_gap_plus;
  const Mm limit = scene.limits.track_length_error;
  if (error <= limit + same_place) return;
  Finding f = finding_of("TRACK-LENGTH", Severity::warn, Identity{Kind::track},
                         {track.total_length, 0, track.standoff});
  f.measured = error;
  f.limit = limit;
  f.margin = limit - error;
  const Figures& say = scene.figures;
  f.message =
      fmt::format("{} rail sections and {} joints may make the track {} too long; at most {} is asked",
                  track.sections, track.joints.size(), say.say(error), say.say(limit));
  if (joints > 0 && rails < limit) {
    const Mm gap = (limit - rails) / joints;
    f.remedy = fmt::format("draw the joints up to within {} of closed", say.say(gap));
    f.changes.push_back({"kit.rail.joint_gap_plus", say.set_at_most(gap)});
  } else {
    const Mm each = std::max(0.0, limit - joints * rail.joint_gap_plus) / track.sections;
    f.remedy = fmt::format("take rails that hold their length to {}", say.say(each));
    f.changes.push_back({"kit.rail.length_tolerance", say.set_at_most(each)});
  }
  findings.push_back(std::move(f));
}

}  // namespace bedwright
