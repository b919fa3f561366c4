// RAIL-SHIM where the heights of a standing frame's tabs were measured: the thickest pack, and
// which tab would have to go were it too thick.
#include <fmt/format.h>

#include <algorithm>

#include "bed/rail_gaps.h"
#include "rules/fit/standing_work.h"
#include "rules/height/height.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// A tab that stands under the rails, with its top as measured.
struct Measured {
  Side side = Side::middle;
  int number = 0;
  Mm at = 0;  // its hole, from the mains' front end
  TabTop top;
};

std::vector<Measured> measured_tabs(const Scene& scene) {
  const FrameFile& frame = scene.input.job->frame;
  std::vector<Measured> all;
  for (const TabPlace& tab : tab_places(scene.bed)) {
    const Identity& id = scene.bed.items[static_cast<std::size_t>(tab.item)].id;
    if (scene.bed.part_of(tab.item).origin != Origin::standing) continue;
    const Mm at = tabs_on(frame.tabs, id.side).existing.at(static_cast<std::size_t>(id.number) - 1);
    const Mm half = frame.tabs.length / 2;
    if (tab.x <= -half || tab.x >= scene.bed.track.total_length + half) continue;
    for (const TabHeight& h : frame.tabs.heights)
      if (const auto& height = id.side == Side::left ? h.left : h.right;
          std::abs(h.at - at) < same_place && height)
        all.push_back({id.side, id.number, at, {tab.x, *height}});
  }
  return all;
}

// The thickest pack were the one tab not there.
Mm thickest_without(const std::vector<Measured>& tabs, const Measured& one, Mm thinnest) {
  std::vector<TabTop> left, right;
  for (const Measured& tab : tabs)
    if (&tab != &one) (tab.side == Side::left ? left : right).push_back(tab.top);
  const RailGaps gaps = rail_gaps(left, right);
  Mm most = 0;
  for (const std::vector<Mm>* side : {&gaps.left, &gaps.right})
    for (const Mm gap : *side) most = std::max(most, pack_for(gap, thinnest));
  return most;
}

// The tab whose going leaves the thinnest packs, where they are then thin enough: cut off,
// and where a rail's hole is over it, a new one at its place.
void suggest_without(const Scene& scene, Finding& f) {
  const Figures& say = scene.figures;
  const std::vector<Measured> tabs = measured_tabs(scene);
  const Measured* best = nullptr;
  Mm least = scene.limits.most_shim;
  for (const Measured& tab : tabs)
    if (const Mm most = thickest_without(tabs, tab, say.shim_step());
        most < least - same_place || (!best && most <= least + same_place)) {
      best = &tab;
      least = most;
    }
  if (!best) return;
  const int item = scene.bed.item({Kind::tab, best->side, best->number});
  TabsInTheWay unused(scene);
  if (unused.add(item)) {
    unused.suggest(item, f);
    return;
  }
  StandingWork work(scene);
  work.renew(best->side, best->at, f);
}

}  // namespace

void check_measured_shims(const Scene& scene, std::vector<Finding>& findings) {
  const Figures& say = scene.figures;
  const Bolt* worst = nullptr;
  int wanting = 0, all = 0;
  for (const Bolt& bolt : scene.bed.bolts) {
    if (!bolt.in_place || !bolt.shim) continue;
    ++all;
    if (*bolt.shim > same_place) ++wanting;
    if (!worst || *bolt.shim > *worst->shim + same_place) worst = &bolt;
  }
  if (!worst || wanting == 0) return;
  const Mm limit = scene.limits.most_shim, pack = *worst->shim;
  const bool too_much = pack > limit + same_place;
  const Item& tab = scene.bed.items[static_cast<std::size_t>(worst->plies.back().item)];
  Finding f = finding_of("RAIL-SHIM", too_much ? Severity::stop : Severity::note, tab, worst->seat);
  f.measured = pack;
  f.limit = limit;
  f.margin = limit - pack;
  if (!too_much) {
    f.message = fmt::format(
        "as the tabs were measured both rails lie straight with shims under {} of {}, at most {} at {}",
        wanting, all, say.say(pack), f.subjects[0].name);
    f.remedy = "put each pack under its tab as sheet CHANGES TO THE FRAME lists it, then draw up the bolts";
    findings.push_back(std::move(f));
    return;
  }
  f.message = fmt::format(
      "as the tabs were measured {} wants {} of shim for the rails to lie straight, and {} is the most",
      f.subjects[0].name, say.say(pack), say.say(limit));
  suggest_without(scene, f);
  f.remedy += fmt::format("{}shims up to {} allowed (limits.most_shim)", f.remedy.empty() ? "" : "; or ",
                          say.say(say.round_up(pack)));
  f.changes.push_back({"limits.most_shim", say.set(say.round_up(pack))});
  findings.push_back(std::move(f));
}

}  // namespace bedwright
