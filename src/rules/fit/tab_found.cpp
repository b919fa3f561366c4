// TAB-FOUND: tabs that stand elsewhere than they were laid out. What is laid out from
// them holds for the frame they were measured on and no other.
#include <fmt/format.h>

#include <cmath>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {

void check_tab_found(const Scene& scene, std::vector<Finding>& findings) {
  if (!scene.input.job) return;
  const Figures& say = scene.figures;
  for (const TabFound& t : scene.input.job->order.tabs_found) {
    const Mm off = std::hypot(t.x, t.y);
    if (off <= same_place) continue;
    const int item = scene.bed.item(tab_called(t.tab.text));
    Finding f = finding_of("TAB-FOUND", Severity::note, scene.bed.items[item],
                           0.5 * (scene.boxes[item].low + scene.boxes[item].high));
    f.measured = off;
    f.limit = 0;
    f.margin = -off;
    const auto part = [&](Mm by, const char* plus, const char* minus) {
      return std::abs(by) <= same_place ? ""
                                        : fmt::format("{} {}", say.say(std::abs(by)), by > 0 ? plus : minus);
    };
    const std::string along = part(t.x, "rearward", "forward"), across = part(t.y, "outward", "inward");
    f.message = fmt::format(
        "it stands {}{}{} of where it was laid out, as measured on this frame; lists and sheets show it "
        "where it stands",
        along, along.empty() || across.empty() ? "" : " and ", across);
    f.remedy = "build no other frame from this packet: leave tabs_found out of an order for a new one";
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
