// JACK-REACH and ROAD-CLEAR: every jack reaches the ground with the bed level, and
// nothing that hangs low meets the road.
#include "rules/ground/ground.h"

#include <fmt/format.h>

#include <map>

#include "loads/loads.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {

std::optional<Mm> ground_level(const Bed& bed) {
  std::optional<Mm> lowest;
  for (const int wheel : bed.items_of(Kind::wheel))
    if (bed.items[wheel].shown) {
      const Mm z = bounds(bed, wheel).low.z;
      lowest = lowest ? std::min(*lowest, z) : z;
    }
  return lowest;
}

Mm bump_travel(const Bed& bed) {
  Mm most = 0;
  for (const int wheel : bed.items_of(Kind::wheel)) {
    Identity raised = bed.items[wheel].id;
    if (raised.pose != Pose::none) continue;
    raised.pose = Pose::full_bump;
    if (const auto at_bump = bed.find_item(raised))
      most = std::max(most, bounds(bed, *at_bump).high.z - bounds(bed, wheel).high.z);
  }
  return most;
}

RoadWheels road_wheels(const Bed& bed) {
  RoadWheels wheels;
  for (const int wheel : bed.items_of(Kind::wheel))
    if (bed.items[wheel].shown) {
      const Box3 box = bounds(bed, wheel);
      const Mm middle = (box.low.x + box.high.x) / 2;
      wheels.foremost = std::min(wheels.foremost, middle);
      wheels.rearmost = std::max(wheels.rearmost, middle);
      wheels.radius = (box.high.z - box.low.z) / 2;
    }
  return wheels;
}

std::vector<Box3> boxes_over_road(const Scene& scene, int index) {
  const Item& item = scene.bed.items[index];
  if (!item.shown || item.id.kind == Kind::wheel || item.id.kind == Kind::axle) return {};
  const bool bought = std::holds_alternative<Bought>(scene.bed.part_of(index).form);
  return bought ? block_bounds(scene.bed, index) : std::vector<Box3>{scene.boxes[index]};
}

namespace {

struct JackKeys {
  const char *travel, *foot;
  Mm now;       // travel
  Mm foot_at;   // as the foot's key has it
  double down;  // 1: the key's value grows downward
};

std::optional<JackKeys> keys_of(const Scene& scene, Kind kind) {
  const Job* job = scene.input.job;
  if (!job) return std::nullopt;
  const FrameFile& f = job->frame;
  if (kind == Kind::jack)
    return JackKeys{"frame.jack.travel", "frame.jack.post_bottom", f.jack.travel, f.jack.post_bottom, -1};
  return JackKeys{"frame.tongue_jack.travel", "frame.tongue_jack.below", f.tongue_jack.travel,
                  f.tongue_jack.below, 1};
}

void check_jack(const Scene& scene, int jack, Mm ground, std::vector<Finding>& findings) {
  const Bed& bed = scene.bed;
  const Figures& say = scene.figures;
  Identity down = bed.items[jack].id;
  down.pose = Pose::run_down;
  Mm foot = bounds(bed, jack).low.z;
  if (const auto run_down = bed.find_item(down)) foot = std::min(foot, bounds(bed, *run_down).low.z);
  const Mm left = ground - foot, limit = scene.limits.jack_travel_left;
  if (left >= limit - same_place) return;
  Finding f = finding_of("JACK-REACH", Severity::stop, bed.items[jack], bed.items[jack].placement.origin);
  f.measured = left;
  f.limit = limit;
  f.margin = left - limit;
  f.message =
      left < 0 ? fmt::format("run all the way down, {} stops {} above the ground, the bed level on its tyres",
                             f.subjects[0].name, say.say(-left))
               : fmt::format("{} has {} of travel left with its foot on level ground; {} is asked",
                             f.subjects[0].name, say.say(left), say.say(limit));
  if (const auto keys = keys_of(scene, bed.items[jack].id.kind)) {
    const Mm step = say.travel_step(),
             travel = std::ceil((keys->now + limit - left) / step - same_place) * step;
    f.remedy = fmt::format("a jack with {} of travel, it has {}; or one whose foot starts {} lower",
                           say.say(travel), say.say(keys->now), say.say(say.round_up(limit - left)));
    f.changes.push_back({keys->travel, say.set(travel)});
    f.changes.push_back({keys->foot, say.set(keys->foot_at + keys->down * say.round_up(limit - left))});
  } else {
    f.remedy = fmt::format("a jack with {} more travel", say.say(say.round_up(limit - left)));
  }
  findings.push_back(std::move(f));
}

// How far what is at x comes down with the springs at their bump stops: the bed turns
// about the ball, which the towing car holds where it is.
Mm comes_down(const Scene& scene, Mm x, Mm bump) {
  const Job* job = scene.input.job;
  if (!job) return bump;
  const Mm ball = main_start(*job) - job->frame.tongue.length - job->frame.coupler.ball_ahead,
           axle = job->order.axle.position;
  return axle - ball > same_place ? bump * std::max(0.0, (x - ball) / (axle - ball)) : bump;
}

struct Hanging {
  int item = -1;
  Mm at_rest = 0, at_bump = 0;  // above the road
};

void report_low(const Scene& scene, const Hanging& low, Mm bump, std::vector<Finding>& findings) {
  const Figures& say = scene.figures;
  const Item& item = scene.bed.items[low.item];
  const Mm limit = scene.limits.road_clearance;
  const Box3& box = scene.boxes[low.item];
  const bool strikes = low.at_bump < -same_place, drags = low.at_rest < limit - same_place;
  Finding f = finding_of("ROAD-CLEAR", strikes || drags ? Severity::stop : Severity::warn,
                         item.bolt >= 0 ? Subject(scene.bed.bolts[item.bolt]) : Subject(item),
                         {box.high.x, item.placement.origin.y, box.low.z});
  f.measured = low.at_bump;
  f.limit = limit;
  f.margin = low.at_bump - limit;
  const std::string& name = f.subjects[0].name;
  if (low.at_rest < 0)
    f.message = fmt::format("{} reaches {} under the road the tyres stand on", name, say.say(-low.at_rest));
  else if (strikes)
    f.message = fmt::format(
        "{} is {} above the road at rest and strikes it by {} with the springs at their bump stops", name,
        say.say(low.at_rest), say.say(-low.at_bump));
  else
    f.message = fmt::format(
        "{} is {} above the road at rest and {} with the springs at their bump stops; {} is asked", name,
        say.say(low.at_rest), say.say(low.at_bump), say.say(limit));
  const Mm up = say.round_up(limit - low.at_bump);
  f.remedy =
      fmt::format("{} {} higher, or larger tyres",
                  item.id.kind == Kind::jack || item.id.kind == Kind::tongue_jack ? "a jack that draws up"
                                                                                  : "what hangs there",
                  say.say(up));
  if (const auto keys = item.id.kind == Kind::jack || item.id.kind == Kind::tongue_jack
                            ? keys_of(scene, item.id.kind)
                            : std::nullopt)
    f.changes.push_back({keys->foot, say.set(keys->foot_at - keys->down * up)});
  if (const Job* job = scene.input.job) {
    f.changes.push_back({"frame.axle.below", say.set(job->frame.axle.below + up)});
    if (bump > up) f.changes.push_back({"frame.axle.bump", say.set(bump - up)});
  }
  findings.push_back(std::move(f));
}

}  // namespace

void check_jack_reach(const Scene& scene, std::vector<Finding>& findings) {
  const std::optional<Mm> ground = ground_level(scene.bed);
  if (!ground) return;
  for (const Kind kind : {Kind::jack, Kind::tongue_jack})
    for (const int jack : scene.bed.items_of(kind))
      if (scene.bed.items[jack].shown) check_jack(scene, jack, *ground, findings);
}

void check_road_clear(const Scene& scene, std::vector<Finding>& findings) {
  const std::optional<Mm> ground = ground_level(scene.bed);
  if (!ground) return;
  const Mm bump = bump_travel(scene.bed);
  // The lowest of each kind: what is alike hangs alike.
  std::map<Kind, Hanging> lowest;
  for (int i = 0; i < static_cast<int>(scene.bed.items.size()); ++i) {
    const Item& item = scene.bed.items[i];
    // The wheels stand on the road, and the axle keeps its height.
    if (!item.shown || item.id.kind == Kind::wheel) continue;
    const Mm at_rest = scene.boxes[i].low.z - *ground;
    const Mm at_bump =
        item.id.kind == Kind::axle ? at_rest : at_rest - comes_down(scene, scene.boxes[i].high.x, bump);
    const auto [at, first] = lowest.try_emplace(item.id.kind, Hanging{i, at_rest, at_bump});
    if (!first && at_bump < at->second.at_bump) at->second = {i, at_rest, at_bump};
  }
  for (const auto& [kind, low] : lowest)
    if (low.at_bump < scene.limits.road_clearance - same_place) report_low(scene, low, bump, findings);
}

}  // namespace bedwright
