// TURN: the tow vehicle's rear corner clears tongue and frame in a tight turn.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "loads/loads.h"
#include "rules/ground/ground.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// A pick-up or van: its bumper 78 in wide, 8 in ahead of its ball, from memory; turned by 60
// degrees backing into a yard: common practice, no published source.
constexpr Mm half_bumper = 39 * inch, bumper_ahead = 8 * inch;
constexpr int tightest = 60;

// What of the bed is near its front, in plan behind the ball: boxes, and the tongue's outer edge.
struct Front {
  std::vector<Box3> boxes;
  Mm tongue_from = 0, tongue_to = 0, half_at_front = 0;
  double widens = 0;
  bool holds(Mm x, Mm y) const {
    if (x >= tongue_from && x <= tongue_to && y <= half_at_front + (x - tongue_from) * widens) return true;
    return std::any_of(boxes.begin(), boxes.end(), [&](const Box3& b) {
      return x >= b.low.x && x <= b.high.x && y >= b.low.y && y <= b.high.y;
    });
  }
};

// The least angle, in whole degrees, at which the bumper meets it; one past the tightest where
// it does not.
int meets_at(const Front& front) {
  for (int turned = 1; turned <= tightest; ++turned) {
    const double c = std::cos(turned * degree), s = std::sin(turned * degree);
    for (Mm along = 0; along <= half_bumper + same_place; along += inch) {
      // A point of the bumper on the inner side, in the bed's axes: behind the ball, and outward.
      const Mm x = -bumper_ahead * c + along * s, y = bumper_ahead * s + along * c;
      if (front.holds(x, y)) return turned;
    }
  }
  return tightest + 1;
}

}  // namespace

void check_turn(const Scene& scene, std::vector<Finding>& findings) {
  const auto tongue = scene.bed.find_item({Kind::tongue, Side::right});
  if (!scene.input.job || !tongue) return;  // of a bed without one there is nothing to meet
  const Job& job = *scene.input.job;
  const auto& t = job.frame.tongue;
  const Mm front_end = main_start(job), ball = front_end - t.length - job.frame.coupler.ball_ahead;
  const Mm reach = std::hypot(half_bumper, bumper_ahead);
  const auto front_with = [&](Mm more) {
    Front front;
    for (std::size_t i = 0; i < scene.bed.items.size(); ++i) {
      const Item& item = scene.bed.items[i];
      const Kind kind = item.id.kind;
      if (!item.shown || kind == Kind::tongue || kind == Kind::coupler || kind == Kind::tongue_jack ||
          kind == Kind::tongue_plate || item.bolt >= 0)
        continue;
      Box3 box = scene.boxes[i];
      box.low.x += more - ball, box.high.x += more - ball;
      if (box.low.x < reach && box.high.y > 0) front.boxes.push_back(box);
    }
    front.tongue_from = job.frame.coupler.ball_ahead;
    front.tongue_to = t.length + job.frame.coupler.ball_ahead + more;
    front.half_at_front = job.catalog.section(t.section.text)->flange / std::cos(t.angle);
    // A longer tongue is turned to end where it did.
    front.widens = std::tan(t.angle) * (t.length + t.back) / (t.length + t.back + more);
    return front;
  };
  const int at = meets_at(front_with(0));
  if (at > tightest) return;
  Finding f = finding_of("TURN", Severity::warn, scene.bed.items[*tongue], {front_end, 0, 0});
  f.measured = at;
  f.limit = tightest;
  f.margin = at - tightest;
  f.unit = "deg";
  f.message = fmt::format(
      "turned by {} degrees a tow vehicle's bumper, {} wide and {} ahead of the ball, meets the bed; {} is "
      "asked",
      at, scene.figures.say(2 * half_bumper), scene.figures.say(bumper_ahead), tightest);
  const Mm step = scene.figures.place_step();
  Mm more = step;
  while (more < 60 * inch && meets_at(front_with(more)) <= tightest) more += step;
  f.remedy = fmt::format("a tongue {} longer, or less turning when backing", scene.figures.say(more));
  findings.push_back(std::move(f));
}

}  // namespace bedwright
