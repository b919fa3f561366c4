// Words the work on standing tabs, with places from the mains' front end.
#include "rules/fit/standing_work.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "units/tape.h"

namespace bedwright {
namespace {

// Of a place in the bed, from the mains' front end, at a mark of the tape.
Mm from_front_end(const Job& job, Mm x, Mm mark) { return on_tape(x + job.frame.main.front_overhang, mark); }

bool has_room(const RoomOnMain& room, Mm at) {
  return at >= room.from - same_place && at <= room.to + same_place;
}

// The tab that stands so near that a new one has no place beside it, with room for both
// their fillets.
std::optional<Mm> in_the_way(const FrameTabs& tabs, Side side, Mm at) {
  const OneSideTabs there = tabs_on(tabs, side);
  for (const Mm x : there.existing) {
    const auto gone = [&](const auto& work) { return std::abs(place_of(work) - x) < same_place; };
    if (std::abs(x - at) < tabs.length + 2 * tabs.weld_leg - same_place &&
        std::none_of(there.to_cut_off.begin(), there.to_cut_off.end(), gone) &&
        std::none_of(there.to_replace.begin(), there.to_replace.end(), gone))
      return x;
  }
  return std::nullopt;
}

// "both tabs at 35 in", "the left tab at 35 in", behind the mains' front end.
std::string tabs_at(const Figures& say, bool both, Side side, Mm at) {
  const char* which = both ? "both tabs" : side == Side::left ? "the left tab" : "the right tab";
  return fmt::format("{} at {} behind the mains' front end", which, say.say(at));
}

const FrameTabs& tabs_of(const Scene& scene) {
  static const FrameTabs none;  // a bed without a job: no frame's file
  return scene.input.job ? scene.input.job->frame.tabs : none;
}

}  // namespace

OneSideTabs tabs_on(const FrameTabs& tabs, Side side) {
  return one_side(tabs, side == Side::left ? tabs.left : tabs.right);
}

RoomOnMain room_on_main(const FrameFile& frame) {
  const Mm end = frame.tabs.length / 2 + frame.tabs.weld_leg;
  return {end, frame.main.length.value_or(0) - end};
}

bool is_into_standing_tab(const Scene& scene, const Bolt& bolt) {
  return scene.input.job && bolt.id.kind == Kind::track_bolt && !bolt.plies.empty() &&
         scene.bed.part_of(bolt.plies.back().item).origin == Origin::standing;
}

StandingWork::StandingWork(const Scene& scene)
    : scene_(scene),
      file_("to_file", &TabWork::to_file, tabs_of(scene)),
      replace_("to_replace", &TabWork::to_replace, tabs_of(scene)),
      add_("to_add", &TabWork::to_add, tabs_of(scene)) {
  const Job* job = scene.input.job;
  if (!job || !stands(job->frame)) return;
  const RoomOnMain room = room_on_main(job->frame);
  for (const Bolt& bolt : scene.bed.bolts) {
    if (bolt.in_place || bolt.id.kind != Kind::track_bolt) continue;
    const Mm at = from_front_end(*job, bolt.seat.x, scene.figures.mark);
    if (!has_room(room, at)) continue;
    if (const auto old = in_the_way(job->frame.tabs, bolt.id.side, at))
      replace_.want(bolt.id.side, {*old, at});
    else
      add_.want(bolt.id.side, at);
  }
}

Mm StandingWork::place_of_tab(const Bolt& bolt) const {
  return tidy(hole_in_world(scene_.bed, bolt.plies.back()).centre.x +
              scene_.input.job->frame.main.front_overhang);
}

void StandingWork::add(const Bolt& bolt, std::optional<Mm> filed) {
  const Mm at = place_of_tab(bolt);
  const Side side = bolt.id.side;
  if (!filed) {
    file_.drop(side, at);
    replace_.want(side, {at, from_front_end(*scene_.input.job, bolt.seat.x, scene_.figures.mark)});
    return;
  }
  if (replace_.find(side, at)) return;
  const TabFiled* known = file_.find(side, at);
  // Both tabs at one place are filed alike.
  const Side other = side == Side::left ? Side::right : Side::left;
  const TabFiled* across = file_.find(other, at);
  const Mm length = std::max({*filed, known ? known->slot_length : 0, across ? across->slot_length : 0});
  file_.want_instead(side, {at, length});
  if (across) file_.want_instead(other, {at, length});
}

void StandingWork::suggest_replaced(Side side, const TabReplaced& tab, Finding& f) const {
  const bool both = replace_.is_for_both(tab.at);
  const Figures& say = scene_.figures;
  f.remedy =
      fmt::format("cut off {} and weld {} on with {} at {}", tabs_at(say, both, side, tab.at),
                  both ? "new ones" : "a new one", both ? "their holes" : "its hole", say.say(tab.with));
  f.changes.push_back(replace_.change(say, side, tab.at));
}

void StandingWork::renew(Side side, Mm at, Finding& f) {
  replace_.want(side, {at, at});
  suggest_replaced(side, *replace_.find(side, at), f);
}

void StandingWork::suggest(const Bolt& bolt, Finding& f) const {
  const Figures& say = scene_.figures;
  const Mm at = place_of_tab(bolt);
  const Side side = bolt.id.side;
  if (const TabReplaced* replaced = replace_.find(side, at)) return suggest_replaced(side, *replaced, f);
  const TabFiled* filed = file_.find(side, at);
  if (!filed) throw std::logic_error("work on a tab that nobody asked for");
  const bool both = file_.is_for_both(at);
  f.remedy = fmt::format("file the slot{} of {} to {} over all", both ? "s" : "",
                         tabs_at(say, both, side, at), say.say(filed->slot_length));
  f.changes.push_back(file_.change(say, side, at));
}

void StandingWork::suggest_new_tab(const Bolt& bolt, Finding& f) const {
  const Job& job = *scene_.input.job;
  const Figures& say = scene_.figures;
  const Side side = bolt.id.side;
  const Mm at = from_front_end(job, bolt.seat.x, say.mark);
  const RoomOnMain room = room_on_main(job.frame);
  if (!has_room(room, at)) {
    const bool behind = at > room.to;
    f.remedy = fmt::format(
        "the track runs {} too far {} these mains, which stand: their tabs can have holes from {} to {} "
        "behind the mains' front end; other rails, or another frame",
        say.say(behind ? at - room.to : room.from - at), behind ? "behind" : "ahead of", say.say(room.from),
        say.say(room.to));
    return;
  }
  if (const auto old = in_the_way(job.frame.tabs, side, at)) {
    const TabReplaced* replaced = replace_.find(side, *old);
    if (!replaced) throw std::logic_error("a tab in the way that nobody asked to be replaced");
    return suggest_replaced(side, *replaced, f);
  }
  const bool both = add_.is_for_both(at);
  f.remedy = fmt::format("weld {}, with {} {} behind the mains' front end",
                         both                 ? "new tabs on, both sides"
                         : side == Side::left ? "a new tab on, left side"
                                              : "a new tab on, right side",
                         both ? "their holes" : "its hole", say.say(at));
  f.changes.push_back(add_.change(say, side, at));
}

TabsInTheWay::TabsInTheWay(const Scene& scene)
    : scene_(scene), off_("to_cut_off", &TabWork::to_cut_off, tabs_of(scene)) {}

std::optional<Mm> TabsInTheWay::place_of_tab(int item) const {
  const Job* job = scene_.input.job;
  const Identity& id = scene_.bed.items[static_cast<std::size_t>(item)].id;
  if (!job || (id.kind != Kind::tab && id.kind != Kind::tab_pad) ||
      scene_.bed.part_of(item).origin != Origin::standing)
    return std::nullopt;
  // Numbered front to rear as they stand.
  return tabs_on(job->frame.tabs, id.side).existing.at(static_cast<std::size_t>(id.number) - 1);
}

bool TabsInTheWay::add(int item) {
  const auto at = place_of_tab(item);
  if (!at) return false;
  const Identity& id = scene_.bed.items[static_cast<std::size_t>(item)].id;
  const int tab = scene_.bed.item({Kind::tab, id.side, id.number});
  for (const Bolt& bolt : scene_.bed.bolts)
    if (bolt.in_place && bolt.id.kind == Kind::track_bolt && bolt.plies.back().item == tab) return false;
  off_.want(id.side, *at);
  return true;
}

std::optional<int> TabsInTheWay::add_both(int a, int b) {
  if (add(a)) return a;
  return add(b) ? std::optional(b) : std::nullopt;
}

void TabsInTheWay::suggest(int item, Finding& f) const {
  const auto at = place_of_tab(item);
  const Side side = scene_.bed.items[static_cast<std::size_t>(item)].id.side;
  if (!at || !off_.find(side, *at)) throw std::logic_error("a tab to be cut off that nobody asked for");
  const bool both = off_.is_for_both(*at);
  f.remedy += fmt::format("{}cut off {}, which {} no track bolt", f.remedy.empty() ? "" : "; or ",
                          tabs_at(scene_.figures, both, side, *at), both ? "carry" : "carries");
  f.changes.push_back(off_.change(scene_.figures, side, *at));
}

}  // namespace bedwright
