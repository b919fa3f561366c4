// DEPARTURE and BALL-HEIGHT: the bed behind its wheels clears a drive's foot, and it runs
// level on the ball that tows it.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "loads/loads.h"
#include "rules/ground/ground.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// A bed off level by more loads one axle of a group more than the other, and lowers one
// end by an inch in five feet: common practice, no published source.
constexpr Radians most_off_level = 1 * degree;

// Of a road that rises behind a wheel whose middle is at `r` above it, the steepest that
// still misses what is `dx` behind that middle and `h` above the road: the line touches
// the tyre, so the turned point stands r off the middle.
Radians steepest(Mm r, Mm dx, Mm h) {
  return std::asin(std::min(1.0, r / std::hypot(dx, r - h))) - std::atan2(r - h, dx);
}

std::string grade(Radians angle) {
  return fmt::format("{:.1f} degrees, a grade of {:.0f} %", angle / degree, 100 * std::tan(angle));
}

}  // namespace

void check_departure(const Scene& scene, std::vector<Finding>& findings) {
  const std::optional<Mm> ground = ground_level(scene.bed);
  if (!ground) return;
  const RoadWheels wheels = road_wheels(scene.bed);
  const Mm axle = wheels.rearmost, radius = wheels.radius;
  int worst = -1;
  Box3 low;  // of that item, what comes nearest
  Radians least = 90 * degree;
  for (int i = 0; i < static_cast<int>(scene.bed.items.size()); ++i)
    for (const Box3& box : boxes_over_road(scene, i)) {
      const Mm behind = box.high.x - axle, above = box.low.z - *ground;
      // What is under the road is told of by ROAD-CLEAR; what is within the wheel's own reach never
      // meets it.
      if (behind <= radius || above <= 0) continue;
      const Radians angle = steepest(radius, behind, above);
      if (angle < least) least = angle, worst = i, low = box;
    }
  const Radians limit = scene.limits.departure;
  if (worst < 0 || least >= limit - 1e-9) return;
  const Item& item = scene.bed.items[worst];
  Finding f = finding_of("DEPARTURE", Severity::warn,
                         item.bolt >= 0 ? Subject(scene.bed.bolts[item.bolt]) : Subject(item),
                         {low.high.x, item.placement.origin.y, low.low.z});
  f.measured = least / degree;
  f.limit = limit / degree;
  f.margin = f.measured - f.limit;
  f.unit = "deg";
  const Figures& say = scene.figures;
  f.message = fmt::format("{} drags where a drive rises behind the wheels by more than {}; {} is asked",
                          f.subjects[0].name, grade(least), grade(limit));
  // How much higher: the steepest grows with height, so it is sought in steps a welder sets.
  Mm up = 0;
  while (steepest(radius, low.high.x - axle, low.low.z - *ground + up) < limit) up += say.setting_step();
  f.remedy = fmt::format("{} {} higher, or that much more height under the mains (axle, tyres)",
                         item.id.kind == Kind::jack ? "jacks that draw up or fold" : "what hangs there",
                         say.say(up));
  if (const Job* job = scene.input.job) {
    if (item.id.kind == Kind::jack)
      f.changes.push_back({"frame.jack.post_bottom", say.set(job->frame.jack.post_bottom + up)});
    f.changes.push_back({"frame.axle.below", say.set(job->frame.axle.below + up)});
  }
  findings.push_back(std::move(f));
}

void check_ball_height(const Scene& scene, std::vector<Finding>& findings) {
  const std::optional<Mm> ground = ground_level(scene.bed);
  const auto coupler = scene.bed.find_item({Kind::coupler});
  if (!ground || !coupler || !scene.input.job) return;
  const Job& job = *scene.input.job;
  const Figures& say = scene.figures;
  const Box3 box = bounds(scene.bed, *coupler);
  const Mm level = (box.low.z + box.high.z) / 2 - *ground;
  const Mm ball = main_start(job) - job.frame.tongue.length - job.frame.coupler.ball_ahead;
  const Mm base = job.order.axle.position - ball;
  if (base <= same_place) return;
  const auto& stated = job.order.road.ball_height;
  const Radians off = stated ? std::atan((*stated - level) / base) : 0;
  if (stated && std::abs(off) <= most_off_level + 1e-9) return;
  Finding f = finding_of("BALL-HEIGHT", stated ? Severity::warn : Severity::note, scene.bed.items[*coupler],
                         {ball, 0, box.low.z});
  f.measured = std::abs(off) / degree;
  f.limit = most_off_level / degree;
  f.margin = f.limit - f.measured;
  f.unit = "deg";
  const Mm most = base * std::tan(most_off_level);
  if (!stated) {
    f.message = fmt::format(
        "the bed stands level with its ball's middle {} above the road, and how high the towing ball is, is "
        "not stated (road.ball_height)",
        say.say(level));
    f.remedy =
        fmt::format("a ball mount that puts the ball's middle {} above the road, {} either way, laden",
                    say.say(level), say.say(std::floor(most / say.setting_step()) * say.setting_step()));
  } else {
    f.message = fmt::format(
        "on a ball {} above the road the bed runs {:.1f} degrees nose {}; {:.0f} is the most",
        say.say(*stated), std::abs(off) / degree, off > 0 ? "up" : "down", most_off_level / degree);
    f.remedy =
        fmt::format("a ball mount {} {}", say.say(std::abs(*stated - level)), off > 0 ? "lower" : "higher");
    f.changes.push_back({"road.ball_height", say.set(level)});
  }
  findings.push_back(std::move(f));
}

}  // namespace bedwright
