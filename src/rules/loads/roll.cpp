// Rules about rolling over: on the road, and parked across a slope.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "loads/travel_name.h"
#include "rules/loads/judge.h"

namespace bedwright {
namespace {

// Across a slope steeper than that nobody parks: common practice, no published source.
constexpr Radians steepest_side = 15 * degree;

void judge_road(const LoadJudge& j, const TowCondition& c) {
  const double limit = roll_limit(j.job);
  if (c.rolls_at >= limit) return;
  const Tow& tow = j.loads.tow;
  Finding& f = j.add("ROLL-OVER", Severity::stop, in_travel(Kind::bed, c.travel), {tow.axle_x, 0, 0});
  f.measured = c.rolls_at;
  f.limit = limit;
  f.margin = c.rolls_at - limit;
  f.unit = "g";
  f.message = fmt::format(
      "{}, its weight {} above the road and its tyres {} apart, it rolls over at {:.2f} g sideways or across "
      "a "
      "slope of {:.0f} degrees; {:.2f} g is asked",
      name(c.travel), j.figures.place(c.above_road), j.figures.place(2 * tow.half_track), c.rolls_at,
      std::atan(c.rolls_at) / degree, limit);
  // Tyres so far apart that what holds it is enough.
  const Mm half = (limit * (c.above_road - c.share * tow.ball_above) + std::abs(c.centre.y)) / (1 - c.share);
  const Mm step = j.figures.setting_step(), width = j.job.frame.axle.tyre_width,
           inside = std::ceil((2 * half - width) / step - 1e-9) * step;
  f.changes.push_back({"frame.axle.tyre_inside", j.figures.set(inside)});
  f.remedy = fmt::format("an axle whose tyres stand {} apart inside", j.figures.say(inside));
  const Kg head = j.loads.weights.head.mass;
  if (c.travel.head == HeadAt::off || head <= 0) return;
  // Lower by so much: what holds it stays.
  const Mm lower = (c.above_road - c.share * tow.ball_above) * (1 - c.rolls_at / limit) * c.mass / head;
  f.remedy +=
      fmt::format("; or the head's weight carried {} lower", j.figures.say(j.figures.round_up(lower)));
}

// Uncoupled it stands on three points.
void judge_parked(const LoadJudge& j, const TowCondition& c) {
  const Radians at = std::atan(c.rolls_parked);
  if (at >= steepest_side) return;
  Finding& f =
      j.add("ROLL-SLOPE", Severity::warn, in_travel(Kind::tongue_jack, c.travel), {j.loads.tow.jack_x, 0, 0});
  f.measured = at / degree;
  f.limit = steepest_side / degree;
  f.margin = f.measured - f.limit;
  f.unit = "deg";
  f.message = fmt::format(
      "uncoupled on wheels and tongue jack, {}, it rolls over across a slope of {:.0f} degrees, a grade of "
      "{:.0f} %",
      name(c.travel), at / degree, 100 * c.rolls_parked);
  f.remedy = fmt::format(
      "run the jacks down on both sides before it is uncoupled, and park it up and down a slope of {:.0f} "
      "degrees and more",
      std::floor(at / degree));
}

}  // namespace

void judge_roll(const LoadJudge& j) {
  for (const TowCondition& c : j.loads.tow.conditions) {
    if (!c.judged) continue;
    judge_road(j, c);
    judge_parked(j, c);
  }
}

}  // namespace bedwright
