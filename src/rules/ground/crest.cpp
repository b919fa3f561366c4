// CREST: the bed clears a rise in the road between its own wheels and the tow vehicle's.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "loads/loads.h"
#include "rules/ground/ground.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// A drive's grade may fall by a tenth over its crest (ITE's guide to driveways, from memory).
const Radians least_crest = std::atan(0.10);
// Rear wheels of a pick-up or van ahead of its ball: from memory, no published source.
constexpr Mm tow_wheels_ahead = 48 * inch;

// What is between the wheels, `rear` behind the tow vehicle's and `ahead` of its own, and how
// high: the two grades meet under it.
Radians crest(Mm rear, Mm ahead, Mm above) { return std::atan2(above, rear) + std::atan2(above, ahead); }

}  // namespace

void check_crest(const Scene& scene, std::vector<Finding>& findings) {
  const std::optional<Mm> ground = ground_level(scene.bed);
  if (!ground || !scene.input.job) return;
  const Job& job = *scene.input.job;
  const Mm tow = main_start(job) - job.frame.tongue.length - job.frame.coupler.ball_ahead - tow_wheels_ahead;
  const RoadWheels wheels = road_wheels(scene.bed);
  const Mm own = wheels.foremost, radius = wheels.radius;
  int worst = -1;
  Box3 low;
  Mm at = 0;
  Radians least = 90 * degree;
  for (int i = 0; i < static_cast<int>(scene.bed.items.size()); ++i)
    for (const Box3& box : boxes_over_road(scene, i))
      // What is within the wheel's own reach never meets the road; under it is told by ROAD-CLEAR.
      for (Mm x : {box.low.x, box.high.x, std::clamp((own + tow) / 2, box.low.x, box.high.x)}) {
        const Mm above = box.low.z - *ground;
        if (x <= tow || x >= own - radius || above <= 0) continue;
        const Radians angle = crest(x - tow, own - x, above);
        if (angle < least) least = angle, worst = i, low = box, at = x;
      }
  if (worst < 0 || least >= least_crest - 1e-9) return;
  const Item& item = scene.bed.items[worst];
  Finding f = finding_of("CREST", Severity::warn,
                         item.bolt >= 0 ? Subject(scene.bed.bolts[item.bolt]) : Subject(item),
                         {at, item.placement.origin.y, low.low.z});
  f.measured = least / degree;
  f.limit = least_crest / degree;
  f.margin = f.measured - f.limit;
  f.unit = "deg";
  const Figures& say = scene.figures;
  f.message = fmt::format(
      "{} drags on a crest between its wheels and the tow vehicle's where the road turns down by more than "
      "{:.1f} degrees; "
      "{:.1f} is asked",
      f.subjects[0].name, f.measured, f.limit);
  Mm up = 0;
  while (crest(at - tow, own - at, low.low.z - *ground + up) < least_crest) up += say.setting_step();
  f.remedy = fmt::format("{} {} higher, or that much more height under the mains (axle, tyres)",
                         item.id.kind == Kind::jack ? "jacks that draw up or fold" : "what hangs there",
                         say.say(up));
  if (item.id.kind == Kind::jack)
    f.changes.push_back({"frame.jack.post_bottom", say.set(job.frame.jack.post_bottom + up)});
  f.changes.push_back({"frame.axle.below", say.set(job.frame.axle.below + up)});
  findings.push_back(std::move(f));
}

}  // namespace bedwright
