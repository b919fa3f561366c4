// TAB-LINE: whether the kit's mounting holes lie over the tab holes of a frame that stands.
#include "rules/fit/tab_line.h"

#include <fmt/format.h>

#include "rules/fit/hole_fit.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {

std::optional<TabLine> tab_line(const Scene& scene) {
  const Job* job = scene.input.job;
  if (!job || !job->frame.tabs.existing_line) return std::nullopt;
  TabLine line;
  line.tabs = *job->frame.tabs.existing_line;
  line.track = job->kit.gauge / 2 - job->kit.mounting.line - job->frame.main.spacing / 2;
  line.takes = std::numeric_limits<Mm>::infinity();
  for (const Bolt& bolt : scene.bed.bolts) {
    if (!bolt.in_place || bolt.id.kind != Kind::track_bolt || bolt.plies.size() < 2) continue;
    const BoltAxes axes = axes_of(bolt.direction);  // u along the bed, v across
    const auto clearance = [&](const Ply& ply) {
      return clearance_of(hole_in_world(scene.bed, ply), bolt.size.diameter, axes);
    };
    for (std::size_t i = 1; i < bolt.plies.size(); ++i)
      line.takes =
          std::min(line.takes, float_along(clearance(bolt.plies[0]) + clearance(bolt.plies[i]), 1, 0));
  }
  return line;
}

void check_tab_line(const Scene& scene, std::vector<Finding>& findings) {
  const auto line = tab_line(scene);
  if (!line || line->fits()) return;
  const Figures& say = scene.figures;
  const Mm off = line->track - line->tabs;
  const FrameMain& main = scene.input.job->frame.main;
  const Kit& kit = scene.input.job->kit;
  Finding f = finding_of("TAB-LINE", Severity::stop, Identity{Kind::track},
                         {0, main.spacing / 2 + line->tabs, scene.bed.track.standoff});
  f.measured = std::abs(off);
  f.limit = line->takes;
  f.margin = f.limit - f.measured;
  f.message = fmt::format(
      "this kit does not fit this frame: its mounting holes lie {} out from the back of the mains' webs and "
      "the "
      "standing tabs' holes {}, {} apart on each side, and the holes take {}",
      say.say(line->track), say.say(line->tabs), say.say(std::abs(off)), say.say(line->takes));
  f.remedy = fmt::format(
      "a kit with its mounting holes {} apart across the bed (this one: {}), or another frame, or new tabs "
      "with "
      "their holes {} out in place of those that stand",
      say.say(main.spacing + 2 * line->tabs), say.say(kit.gauge - 2 * kit.mounting.line),
      say.say(line->track));
  findings.push_back(std::move(f));
}

}  // namespace bedwright
