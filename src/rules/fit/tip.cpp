// TIP: room between each bolt's tip and whatever is beyond it.
#include <fmt/format.h>

#include <numbers>

#include "rules/fit/standing_work.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

bool rides_on_rail(const Bolt& bolt) {
  return bolt.direction.z < -0.99 && (bolt.id.kind == Kind::bunk_bolt || bolt.id.kind == Kind::stop_bolt);
}

// A tab or pad the rail itself lies on: a higher standoff lifts it along, so only
// moving it clears the bolt.
bool bears_the_rail(const Beyond& beyond) { return beyond.distance <= same_place; }

bool standoff_helps(const Bolt& bolt, const Beyond& beyond) {
  return rides_on_rail(bolt) && !bears_the_rail(beyond);
}

// The shorter way along the bed that takes the thing in the way out from under the nut.
void suggest_moving_it(const Scene& scene, const Bolt& bolt, const Beyond& beyond, Finding& finding) {
  const Box3& box = scene.boxes[beyond.item];
  const Mm nut = bolt.size.nut_flats / std::numbers::sqrt3;  // to its corners
  const Mm forward = box.high.x - (bolt.seat.x - nut), rearward = bolt.seat.x + nut - box.low.x;
  const Figures& say = scene.figures;
  finding.remedy += "; or move ";
  add_name(finding, scene.bed.items[beyond.item]);
  finding.remedy += fmt::format(" {} {}", say.say(say.round_up(std::min(forward, rearward))),
                                forward < rearward ? "forward" : "rearward");
}

// The tab's own value that lifts the rail by `rise`.
void suggest_standoff(const Scene& scene, Mm rise, Finding& finding) {
  rise = scene.figures.round_up(rise);
  finding.remedy += fmt::format("; or raise the standoff by {}", scene.figures.say(rise));
  const Job* job = scene.input.job;
  if (!job) return;
  const FrameTabs& tabs = job->frame.tabs;
  if (tabs.style == TabStyle::clip && tabs.clip)
    finding.changes.push_back({"frame.tabs.clip.standoff", scene.figures.set(tabs.clip->standoff + rise)});
  if (tabs.style == TabStyle::plate && tabs.plate)
    finding.changes.push_back(
        {"frame.tabs.plate.pad_thickness", scene.figures.set(tabs.plate->pad_thickness + rise)});
}

Finding describe_tip(const Scene& scene, std::size_t index, Mm clearance) {
  const Bolt& bolt = scene.bed.bolts[index];
  const Beyond& beyond = scene.beyond[index];
  const Figures& say = scene.figures;
  Finding f = finding_of("TIP", Severity::stop, bolt,
                         bolt.seat + (scene.stacks[index].plies + beyond.distance) * bolt.direction);
  f.subjects.push_back(scene.bed.items[beyond.item]);
  const std::string other = f.subjects[1].name;
  f.measured = clearance;
  f.limit = scene.limits.tip_clearance;
  f.margin = f.measured - f.limit;
  if (clearance < 0 && rides_on_rail(bolt))
    f.message = fmt::format("the tip of the {} bolt meets {} and lifts the rail by {}",
                            bolt_length_text(bolt.size, bolt.length), other, say.say(-clearance));
  else if (clearance < 0)
    f.message = fmt::format("the tip of the {} bolt runs {} into {}",
                            bolt_length_text(bolt.size, bolt.length), say.say(-clearance), other);
  else
    f.message =
        fmt::format("the tip of the {} bolt clears {} by {}; {} is asked",
                    bolt_length_text(bolt.size, bolt.length), other, say.say(clearance), say.say(f.limit));
  return f;
}

}  // namespace

bool tip_is_too_close(const Scene& scene, int bolt) {
  const Bolt& b = scene.bed.bolts[bolt];
  const Beyond& beyond = scene.beyond[bolt];
  return b.in_place && beyond.item >= 0 &&
         tip_clearance(scene.stacks[bolt], b, b.length, beyond.distance) <
             scene.limits.tip_clearance - same_place;
}

void check_tip(const Scene& scene, std::vector<Finding>& findings) {
  const std::size_t first = findings.size();
  std::vector<std::size_t> failing;
  Mm rise = 0;
  const bool standing = scene.input.job && stands(scene.input.job->frame);
  TabsInTheWay tabs(scene);
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i) {
    const Bolt& bolt = scene.bed.bolts[i];
    if (!tip_is_too_close(scene, static_cast<int>(i))) continue;
    const Mm clearance = tip_clearance(scene.stacks[i], bolt, bolt.length, scene.beyond[i].distance);
    failing.push_back(i);
    findings.push_back(describe_tip(scene, i, clearance));
    tabs.add(scene.beyond[i].item);
    if (standoff_helps(bolt, scene.beyond[i])) rise = std::max(rise, scene.limits.tip_clearance - clearance);
  }
  for (std::size_t k = 0; k < failing.size(); ++k) {
    const Bolt& bolt = scene.bed.bolts[failing[k]];
    suggest_length(scene, bolt, true, findings[first + k]);
    // The standoff of tabs that stand is what it is, and they stay where they are.
    if (const int beyond = scene.beyond[failing[k]].item; standing) {
      if (!tabs.add(beyond)) continue;
      if (findings[first + k].changes.empty()) findings[first + k].remedy.clear();  // no bolt that would do
      tabs.suggest(beyond, findings[first + k]);
      continue;
    }
    // One standoff for the whole bed: what the worst bolt needs.
    if (standoff_helps(bolt, scene.beyond[failing[k]])) suggest_standoff(scene, rise, findings[first + k]);
    if (rides_on_rail(bolt) && bears_the_rail(scene.beyond[failing[k]]))
      suggest_moving_it(scene, bolt, scene.beyond[failing[k]], findings[first + k]);
  }
}

}  // namespace bedwright
