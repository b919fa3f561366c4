// Checks of what a frame file says of a frame that stands: where its tabs, jacks and axle are,
// how high its tabs are, what was done to it and what is still to be done.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "params/cross_check.h"
#include "units/print.h"
#include "yaml/key_path.h"

namespace bedwright {
namespace {

constexpr const char* yet_to_be_made = "is of a frame that stands, and this one is yet to be made";
constexpr const char* leave_it_out = "leave it out, or say standing: true and list the tabs that stand";

bool is_among(const std::vector<Mm>& places, Mm at) {
  return std::any_of(places.begin(), places.end(), [&](Mm x) { return std::abs(x - at) < same_place; });
}

Mm nearest_of(const std::vector<Mm>& places, Mm at) {
  return *std::min_element(places.begin(), places.end(),
                           [&](Mm a, Mm b) { return std::abs(a - at) < std::abs(b - at); });
}

}  // namespace

void CrossCheck::check_existing() {
  const FrameFile& frame = job_.frame;
  if (sound(frame_, {"tabs.existing"}) && given(frame_, "tabs.existing") && frame.tabs.existing.empty()) {
    problem(frame_, "tabs.existing", "lists no tab",
            "list the tab holes of the frame, or leave the key out to put a tab under every track hole");
  }
  check_ascending(frame_, "tabs.existing", frame.tabs.existing);
  check_ascending(frame_, "cross_member.existing", frame.cross_member.existing);
  if (sound(frame_, {"tabs.existing", "tabs.existing_line", "main.length"})) {
    const bool listed = !frame.tabs.existing.empty();
    if (listed && !frame.tabs.existing_line)
      problem(frame_, "tabs.existing",
              "says where the tabs' holes are along the mains, and nothing says where across",
              "measure from the back of the main's web out to the middle of the holes and add it as "
              "tabs.existing_line");
    if (!listed && frame.tabs.existing_line)
      problem(frame_, "tabs.existing_line",
              "is for tabs of a frame that exists, and tabs.existing lists none",
              "list the tab holes, or leave this key out");
    if (listed && !frame.main.length)
      problem(frame_, "tabs.existing",
              "is of a frame that exists, and main.length does not say how long its mains are",
              "measure a main and add it as main.length");
  }
  if (sound(frame_, {"standing", "tabs.existing"}) && stands(frame) && frame.tabs.existing.empty())
    problem(frame_, "standing", "says that the frame stands, and nothing says where its tabs are",
            "measure from the mains' front end to each tab's hole, and list them as tabs.existing");
  check_changes();
  check_heights();
  check_jacks();
  if (frame.axle.existing && sound(frame_, {"standing", "tabs.existing"}) && !stands(frame))
    problem(frame_, "axle.existing", yet_to_be_made, leave_it_out);
  if (!frame.main.length) return;
  if (frame.axle.existing)
    check_order(frame_, "axle.existing", *frame.axle.existing, "main.length", *frame.main.length);
  on_the_mains("cross_member.existing", frame.cross_member.existing);
  on_the_mains("tabs.existing", frame.tabs.existing);
}

// No further behind the mains' front end than their rear one.
void CrossCheck::on_the_mains(const std::string& list, const std::vector<Mm>& places) {
  if (!job_.frame.main.length) return;
  for (std::size_t i = 0; i < places.size(); ++i)
    check_order(frame_, path_to(list, i + 1), places[i], "main.length", *job_.frame.main.length);
}

void CrossCheck::check_jacks() {
  const FrameJack& jack = job_.frame.jack;
  check_ascending(frame_, "jack.existing", jack.existing);
  if (!sound(frame_, {"standing", "tabs.existing", "jack"})) return;
  for (const auto& [key, any] :
       {std::pair("jack.existing", !jack.existing.empty()),
        std::pair("jack.old_holes", !jack.old_holes.empty()),
        std::pair("jack.to_move", !jack.to_move.empty()), std::pair("jack.to_add", !jack.to_add.empty())})
    if (any && !stands(job_.frame)) problem(frame_, key, yet_to_be_made, leave_it_out);
  on_the_mains("jack.existing", jack.existing);
  on_the_mains("jack.old_holes", jack.old_holes);
  on_the_mains("jack.to_add", jack.to_add);
  for (std::size_t i = 0; i < jack.to_move.size(); ++i) {
    const std::string entry = path_to("jack.to_move", i + 1);
    if (jack.existing.empty())
      problem(frame_, entry + ".from", "moves jacks, and jack.existing does not say where they are",
              "measure to the middle of each pair's plates and list them as jack.existing");
    else if (!is_among(jack.existing, jack.to_move[i].from))
      problem(frame_, entry + ".from",
              fmt::format("{}: no jacks stand there", both_units(Dimension::length, jack.to_move[i].from)),
              fmt::format("give the place as jack.existing lists it; the nearest is {}",
                          both_units(Dimension::length, nearest_of(jack.existing, jack.to_move[i].from))));
    if (job_.frame.main.length)
      check_order(frame_, entry + ".to", jack.to_move[i].to, "main.length", *job_.frame.main.length);
  }
}

// Work listed under `where` ("tabs", "tabs.left"), on tabs that must stand on each of `sides`.
void CrossCheck::check_work(const std::string& where, const TabWork& work,
                            const std::vector<SideOfTabs>& sides) {
  const FrameTabs& t = job_.frame.tabs;
  for (const auto& [list, any] :
       {std::pair(".filed", !work.filed.empty()), std::pair(".to_file", !work.to_file.empty()),
        std::pair(".to_cut_off", !work.to_cut_off.empty()), std::pair(".to_add", !work.to_add.empty()),
        std::pair(".to_replace", !work.to_replace.empty())})
    if (any && (!stands(job_.frame) || t.existing.empty()))
      problem(frame_, where + list, yet_to_be_made, leave_it_out);
  const auto stands_at = [&](const std::string& key, Mm at) {
    for (const SideOfTabs& side : sides) {
      if (side.places.empty() || is_among(side.places, at)) continue;
      const bool alike = !t.left && !t.right;
      problem(frame_, key,
              fmt::format("{}: no tab stands there{}", both_units(Dimension::length, at),
                          alike ? "" : fmt::format(" on the {}", side.name)),
              fmt::format("give the place as tabs.existing lists it; the nearest is {}{}",
                          both_units(Dimension::length, nearest_of(side.places, at)),
                          sides.size() > 1 && !alike
                              ? "; work on one side alone stands under tabs.left or tabs.right"
                              : ""));
      return;
    }
  };
  for (const auto& [list, all] : {std::pair(".filed", &work.filed), std::pair(".to_file", &work.to_file)})
    for (std::size_t i = 0; i < all->size(); ++i) {
      const TabFiled& f = (*all)[i];
      const std::string entry = path_to(where + list, i + 1);
      stands_at(entry + ".at", f.at);
      if (f.slot_length <= t.slot_length + same_place || f.slot_length > t.length)
        problem(frame_, entry + ".slot_length",
                fmt::format("{} is no filed slot's length: the slot was {} and the tab is {} long",
                            both_units(Dimension::length, f.slot_length),
                            both_units(Dimension::length, t.slot_length),
                            both_units(Dimension::length, t.length)),
                "give the slot's length overall once it is filed");
    }
  for (std::size_t i = 0; i < work.to_cut_off.size(); ++i)
    stands_at(path_to(where + ".to_cut_off", i + 1), work.to_cut_off[i]);
  for (std::size_t i = 0; i < work.to_replace.size(); ++i) {
    const std::string entry = path_to(where + ".to_replace", i + 1);
    stands_at(entry + ".at", work.to_replace[i].at);
    if (job_.frame.main.length)
      check_order(frame_, entry + ".with", work.to_replace[i].with, "main.length", *job_.frame.main.length);
  }
  on_the_mains(where + ".to_add", work.to_add);
}

void CrossCheck::check_changes() {
  const FrameTabs& t = job_.frame.tabs;
  if (!sound(frame_, {"standing", "tabs"})) return;
  const SideOfTabs left{"left", one_side(t, t.left).existing}, right{"right", one_side(t, t.right).existing};
  check_work("tabs", t, {left, right});
  for (const auto& [own, side] : {std::pair(&t.left, &left), std::pair(&t.right, &right)}) {
    if (!*own) continue;
    const std::string where = std::string("tabs.") + side->name;
    check_work(where, **own, {*side});
    if (!(*own)->existing.empty() && t.existing.empty()) problem(frame_, where, yet_to_be_made, leave_it_out);
    check_ascending(frame_, where + ".existing", (*own)->existing);
    on_the_mains(where + ".existing", (*own)->existing);
  }
}

// Heights are of use only when none is missing: the rails lie on the highest.
void CrossCheck::check_heights() {
  const FrameTabs& t = job_.frame.tabs;
  if (t.heights.empty() || !sound(frame_, {"standing", "tabs"})) return;
  if (!stands(job_.frame)) return problem(frame_, "tabs.heights", yet_to_be_made, leave_it_out);
  const auto look = [&](const char* side, const std::vector<Mm>& places,
                        const std::optional<Mm> TabHeight::*height) {
    std::vector<Mm> seen;
    for (std::size_t i = 0; i < t.heights.size(); ++i) {
      const TabHeight& h = t.heights[i];
      if (!(h.*height)) continue;
      const std::string key = path_to("tabs.heights", i + 1);
      if (!is_among(places, h.at))
        problem(frame_, key + ".at",
                fmt::format("{}: no tab stands there on the {}", both_units(Dimension::length, h.at), side),
                fmt::format("give the place as tabs.existing lists it; the nearest is {}",
                            both_units(Dimension::length, nearest_of(places, h.at))));
      if (is_among(seen, h.at))
        problem(frame_, key + ".at",
                fmt::format("{}: the {} tab there has a height already", both_units(Dimension::length, h.at),
                            side),
                "leave one of the two out");
      seen.push_back(h.at);
    }
    for (const Mm at : places)
      if (!is_among(seen, at))
        return problem(frame_, "tabs.heights",
                       fmt::format("does not say how high the {} tab at {} stands", side,
                                   both_units(Dimension::length, at)),
                       "measure every tab that stands, on both sides, or leave heights out");
  };
  look("left", one_side(t, t.left).existing, &TabHeight::left);
  look("right", one_side(t, t.right).existing, &TabHeight::right);
}

}  // namespace bedwright
