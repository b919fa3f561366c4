// WASHER-COVER: a head or nut must not be able to pull through its hole.
#include <fmt/format.h>

#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// A bolt may lie against one side of a hole of width h; its washer, centred on
// the bolt of diameter d, must still reach past the other side: half its outside
// diameter >= h - d / 2.
void check_end(const Scene& scene, const Bolt& bolt, const Ply& ply, const Washer& washer, const char* end,
               std::vector<Finding>& findings) {
  const Hole hole = hole_in_world(scene.bed, ply).hole;
  const Mm needed = 2 * hole.diameter - bolt.size.diameter;
  if (washer.outside >= needed - same_place) return;
  Finding f = finding_of("WASHER-COVER", Severity::stop, bolt, bolt.seat);
  f.subjects.push_back(scene.bed.items[ply.item]);
  f.measured = washer.outside;
  f.limit = needed;
  f.margin = washer.outside - needed;
  const Figures& say = scene.figures;
  f.message = fmt::format(
      "the washer under the {} is {} across and does not cover a hole {} wide in {} with the bolt to one "
      "side",
      end, say.say(washer.outside), say.say(hole.diameter), f.subjects[1].name);
  f.remedy = fmt::format("make the hole at most {} wide, or use a washer {} across",
                         say.say((washer.outside + bolt.size.diameter) / 2), say.say(needed));
  findings.push_back(std::move(f));
}

}  // namespace

void check_washer_cover(const Scene& scene, std::vector<Finding>& findings) {
  for (const Bolt& bolt : scene.bed.bolts) {
    if (!bolt.in_place || bolt.plies.empty()) continue;
    // The washer against the steel: the last under the head, the first under the nut.
    if (!bolt.under_head.empty())
      check_end(scene, bolt, bolt.plies.front(), bolt.under_head.back(), "head", findings);
    if (!bolt.under_nut.empty())
      check_end(scene, bolt, bolt.plies.back(), bolt.under_nut.front(), "nut", findings);
  }
}

}  // namespace bedwright
