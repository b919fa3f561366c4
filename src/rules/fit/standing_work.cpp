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

std::string list_of(const Figures& say, const std::vector<Mm>& places) {
  std::string text;
  for (const Mm at : places) text += (text.empty() ? "" : ", ") + say.set(at);
  return "[" + text + "]";
}

// The tab that stands so near that a new one has no place beside it, with room for both
// their fillets.
std::optional<Mm> in_the_way(const FrameTabs& tabs, Mm at) {
  for (const Mm there : tabs.existing) {
    const auto gone = [&](Mm off) { return std::abs(off - there) < same_place; };
    if (std::abs(there - at) < tabs.length + 2 * tabs.weld_leg - same_place &&
        std::none_of(tabs.to_cut_off.begin(), tabs.to_cut_off.end(), gone))
      return there;
  }
  return std::nullopt;
}

// Those already asked for and one under every hole that has none, main enough and nothing
// in the way.
std::vector<Mm> all_to_add(const Scene& scene) {
  const Job& job = *scene.input.job;
  std::vector<Mm> places = job.frame.tabs.to_add;
  const RoomOnMain room = room_on_main(job.frame);
  for (const Bolt& bolt : scene.bed.bolts) {
    if (bolt.in_place || bolt.id.kind != Kind::track_bolt) continue;
    const Mm at = from_front_end(job, bolt.seat.x, scene.figures.mark);
    const bool known =
        std::any_of(places.begin(), places.end(), [&](Mm p) { return std::abs(p - at) < same_place; });
    if (!known && has_room(room, at) && !in_the_way(job.frame.tabs, at)) places.push_back(at);
  }
  std::sort(places.begin(), places.end());
  return places;
}

std::string replaced_list(const Figures& say, const std::vector<TabReplaced>& all) {
  std::string list;
  for (const TabReplaced& t : all)
    list += fmt::format("{}{{at: {}, with: {}}}", list.empty() ? "" : ", ", say.set(t.at), say.set(t.with));
  return "[" + list + "]";
}

void put_replaced(std::vector<TabReplaced>& all, TabReplaced fresh) {
  if (std::none_of(all.begin(), all.end(),
                   [&](const TabReplaced& t) { return std::abs(t.at - fresh.at) < same_place; }))
    all.push_back(fresh);
}

// Those already asked for and every tab that stands in the way of one a hole lacks.
std::vector<TabReplaced> all_in_the_way(const Scene& scene) {
  const Job& job = *scene.input.job;
  std::vector<TabReplaced> all = job.frame.tabs.to_replace;
  const RoomOnMain room = room_on_main(job.frame);
  for (const Bolt& bolt : scene.bed.bolts) {
    if (bolt.in_place || bolt.id.kind != Kind::track_bolt) continue;
    const Mm at = from_front_end(job, bolt.seat.x, scene.figures.mark);
    if (const auto old = in_the_way(job.frame.tabs, at); old && has_room(room, at))
      put_replaced(all, {*old, at});
  }
  return all;
}

std::string cut_off_and_weld(const Figures& say, Mm old, Mm fresh) {
  return fmt::format(
      "cut both tabs at {} behind the mains' front end off and weld new ones on with their holes at {}",
      say.say(old), say.say(fresh));
}

}  // namespace

RoomOnMain room_on_main(const FrameFile& frame) {
  const Mm end = frame.tabs.length / 2 + frame.tabs.weld_leg;
  return {end, frame.main.length.value_or(0) - end};
}

bool is_into_standing_tab(const Scene& scene, const Bolt& bolt) {
  return scene.input.job && bolt.id.kind == Kind::track_bolt && !bolt.plies.empty() &&
         scene.bed.part_of(bolt.plies.back().item).origin == Origin::standing;
}

void suggest_new_tab(const Scene& scene, const Bolt& bolt, Finding& f) {
  const Job& job = *scene.input.job;
  const Figures& say = scene.figures;
  const Mm at = from_front_end(job, bolt.seat.x, say.mark);
  const RoomOnMain room = room_on_main(job.frame);
  if (!has_room(room, at)) {
    const bool behind = at > room.to;
    f.remedy = fmt::format(
        "the track runs {} too far {} these mains, which stand: their tabs can have holes from {} to {} "
        "behind "
        "the mains' front end; other rails, or another frame",
        say.say(behind ? at - room.to : room.from - at), behind ? "behind" : "ahead of", say.say(room.from),
        say.say(room.to));
    return;
  }
  if (const auto old = in_the_way(job.frame.tabs, at)) {
    f.remedy = cut_off_and_weld(say, *old, at);
    f.changes.push_back({"frame.tabs.to_replace", replaced_list(say, all_in_the_way(scene))});
    return;
  }
  f.remedy = fmt::format("weld new tabs on, both sides, with their holes {} behind the mains' front end",
                         say.say(at));
  f.changes.push_back({"frame.tabs.to_add", list_of(say, all_to_add(scene))});
}

StandingWork::StandingWork(const Scene& scene) : scene_(scene) {
  if (!scene.input.job) return;
  file_ = scene.input.job->frame.tabs.to_file;
  replace_ = all_in_the_way(scene);
}

Mm StandingWork::place_of(const Bolt& bolt) const {
  return tidy(hole_in_world(scene_.bed, bolt.plies.back()).centre.x +
              scene_.input.job->frame.main.front_overhang);
}

void StandingWork::add(const Bolt& bolt, std::optional<Mm> filed) {
  const Mm at = place_of(bolt);
  const auto there = [&](const auto& work) { return std::abs(work.at - at) < same_place; };
  if (!filed) {
    std::erase_if(file_, there);
    put_replaced(replace_, {at, from_front_end(*scene_.input.job, bolt.seat.x, scene_.figures.mark)});
    return;
  }
  if (std::any_of(replace_.begin(), replace_.end(), there)) return;
  const auto known = std::find_if(file_.begin(), file_.end(), there);
  if (known == file_.end())
    file_.push_back({at, *filed});
  else
    known->slot_length = std::max(known->slot_length, *filed);
}

void StandingWork::suggest(const Bolt& bolt, Finding& f) const {
  const Figures& say = scene_.figures;
  const Mm at = place_of(bolt);
  const auto there = [&](const auto& work) { return std::abs(work.at - at) < same_place; };
  std::string list;
  if (const auto filed = std::find_if(file_.begin(), file_.end(), there); filed != file_.end()) {
    f.remedy = fmt::format("file the slots of both tabs at {} behind the mains' front end to {} over all",
                           say.say(at), say.say(filed->slot_length));
    for (const TabFiled& t : file_)
      list += fmt::format("{}{{at: {}, slot_length: {}}}", list.empty() ? "" : ", ", say.set(t.at),
                          say.set(t.slot_length));
    f.changes.push_back({"frame.tabs.to_file", "[" + list + "]"});
    return;
  }
  const auto replaced = std::find_if(replace_.begin(), replace_.end(), there);
  if (replaced == replace_.end()) throw std::logic_error("work on a tab that nobody asked for");
  f.remedy = cut_off_and_weld(say, at, replaced->with);
  f.changes.push_back({"frame.tabs.to_replace", replaced_list(say, replace_)});
}

}  // namespace bedwright
