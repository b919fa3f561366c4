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

// Where a new tab's hole may be, from the mains' front end: its plate and the fillets at
// both its ends lie on the main.
struct Room {
  Mm from = 0, to = 0;
};
Room room_on_main(const FrameFile& frame) {
  const Mm end = frame.tabs.length / 2 + frame.tabs.weld_leg;
  return {end, frame.main.length.value_or(0) - end};
}

bool has_room(const Room& room, Mm at) { return at >= room.from - same_place && at <= room.to + same_place; }

std::string list_of(const Figures& say, const std::vector<Mm>& places) {
  std::string text;
  for (const Mm at : places) text += (text.empty() ? "" : ", ") + say.set(at);
  return "[" + text + "]";
}

// Those already asked for and one under every hole that has none and main enough.
std::vector<Mm> all_to_add(const Scene& scene) {
  const Job& job = *scene.input.job;
  std::vector<Mm> places = job.frame.tabs.to_add;
  const Room room = room_on_main(job.frame);
  for (const Bolt& bolt : scene.bed.bolts) {
    if (bolt.in_place || bolt.id.kind != Kind::track_bolt) continue;
    const Mm at = from_front_end(job, bolt.seat.x, scene.figures.mark);
    const bool known =
        std::any_of(places.begin(), places.end(), [&](Mm p) { return std::abs(p - at) < same_place; });
    if (!known && has_room(room, at)) places.push_back(at);
  }
  std::sort(places.begin(), places.end());
  return places;
}

}  // namespace

bool is_into_standing_tab(const Scene& scene, const Bolt& bolt) {
  return scene.input.job && bolt.id.kind == Kind::track_bolt && !bolt.plies.empty() &&
         scene.bed.part_of(bolt.plies.back().item).origin == Origin::standing;
}

void suggest_new_tab(const Scene& scene, const Bolt& bolt, Finding& f) {
  const Job& job = *scene.input.job;
  const Figures& say = scene.figures;
  const Mm at = from_front_end(job, bolt.seat.x, say.mark);
  const Room room = room_on_main(job.frame);
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
  f.remedy = fmt::format("weld new tabs on, both sides, with their holes {} behind the mains' front end",
                         say.say(at));
  f.changes.push_back({"frame.tabs.to_add", list_of(say, all_to_add(scene))});
}

StandingWork::StandingWork(const Scene& scene) : scene_(scene) {
  if (!scene.input.job) return;
  file_ = scene.input.job->frame.tabs.to_file;
  replace_ = scene.input.job->frame.tabs.to_replace;
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
    if (std::none_of(replace_.begin(), replace_.end(), there))
      replace_.push_back({at, from_front_end(*scene_.input.job, bolt.seat.x, scene_.figures.mark)});
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
  f.remedy = fmt::format(
      "cut both tabs at {} behind the mains' front end off and weld new ones on with their holes at {}",
      say.say(at), say.say(replaced->with));
  for (const TabReplaced& t : replace_)
    list += fmt::format("{}{{at: {}, with: {}}}", list.empty() ? "" : ", ", say.set(t.at), say.set(t.with));
  f.changes.push_back({"frame.tabs.to_replace", "[" + list + "]"});
}

}  // namespace bedwright
