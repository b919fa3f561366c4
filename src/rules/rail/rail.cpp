// RAIL-REMAINDER, JOINT-SUPPORT, HOLE-NO-TAB: the track's sections against its
// bunks and the frame's tabs.
#include <fmt/format.h>

#include "rules/fit/standing_work.h"
#include "rules/rule_list.h"
#include "rules/scene.h"
#include "units/print.h"
#include "units/tape.h"

namespace bedwright {
namespace {

// The tape's marks nearest `pitch` that go into the rail a whole number of times,
// one on each side where there is one within the limits of params/order.h.
std::vector<Mm> dividing_pitches(Mm rail, Mm pitch, Mm mark) {
  constexpr Mm least = 6 * inch, most = 10 * foot;
  Mm below = 0, above = 0;
  for (int n = static_cast<int>(std::ceil(rail / most)); n >= 1 && rail / n >= least; ++n) {
    const Mm candidate = rail / n;
    if (candidate > most || std::abs(candidate - on_tape(candidate, mark)) > same_place / n) continue;
    if (candidate > pitch) above = candidate;
    if (candidate < pitch && below == 0) below = candidate;
  }
  std::vector<Mm> found;
  if (below > 0) found.push_back(below);
  if (above > 0) found.push_back(above);
  std::sort(found.begin(), found.end(),
            [&](Mm a, Mm b) { return std::abs(a - pitch) < std::abs(b - pitch); });
  return found;
}

const TabPlace* nearest_tab(const std::vector<TabPlace>& tabs, Side side, Mm x) {
  const TabPlace* best = nullptr;
  for (const TabPlace& tab : tabs)
    if (tab.side == side && (!best || std::abs(tab.x - x) < std::abs(best->x - x))) best = &tab;
  return best;
}

const char* toward(Mm dx) { return dx > 0 ? "rearward" : "forward"; }

}  // namespace

namespace {

// What a length has over whole pitches; a remainder a rounding short of a whole pitch is none.
Mm over_whole_pitches(Mm length, Mm pitch) {
  const Mm over = length - std::floor((length + same_place) / pitch) * pitch;
  return std::min(std::abs(over), std::abs(pitch - over)) <= same_place ? 0 : over;
}

// Of the sections as long as this one, from 1; the key that sets the length.
void remainder_of(const Scene& scene, Mm length, const std::string& whose, const std::string& key,
                  std::vector<Finding>& findings) {
  const Track& track = scene.bed.track;
  const Figures& figures = scene.figures;
  const Mm over = over_whole_pitches(length, track.bunk_pitch);
  if (over == 0) return;
  // A hair added: a rail a rounding short of n pitches holds n.
  const int pitches = static_cast<int>(std::floor((length + same_place) / track.bunk_pitch));
  Finding f = finding_of("RAIL-REMAINDER", Severity::stop, Identity{Kind::rail}, {length, 0, track.standoff});
  f.measured = over;
  f.limit = 0;
  f.margin = -std::min(over, track.bunk_pitch - over);  // to the nearest whole number of pitches, either way
  f.message = fmt::format(
      "{} of {} holds {} bunk pitches of {} and {} is left over, so the pitch breaks at each joint", whose,
      figures.say(length), pitches, figures.say(track.bunk_pitch), figures.say(over));
  std::string lengths, divisors;
  std::vector<Mm> rails;
  if (pitches >= 1) rails.push_back(pitches * track.bunk_pitch);
  rails.push_back((pitches + 1) * track.bunk_pitch);
  std::stable_sort(rails.begin(), rails.end(),
                   [&](Mm a, Mm b) { return std::abs(a - length) < std::abs(b - length); });
  for (const Mm rail : rails) {
    lengths += (lengths.empty() ? "" : " or ") + figures.say(rail);
    f.changes.push_back({key, figures.set(rail)});
  }
  for (const Mm pitch : dividing_pitches(length, track.bunk_pitch, figures.mark)) {
    divisors += (divisors.empty() ? "" : " or ") + figures.say(pitch);
    f.changes.push_back({"track.bunk_pitch", figures.set(pitch)});
  }
  f.remedy = fmt::format("make the rail {}", lengths);
  f.remedy += divisors.empty() ? "; no pitch on the tape's marks divides this rail"
                               : fmt::format(", or the bunk pitch {}", divisors);
  findings.push_back(std::move(f));
}

}  // namespace

void check_rail_remainder(const Scene& scene, std::vector<Finding>& findings) {
  const Track& track = scene.bed.track;
  if (track.bunk_pitch <= 0) return;  // the kit lists its bunk holes
  if (track.sections_alike())
    return remainder_of(scene, track.rail_length, "a rail", "track.rail_length", findings);
  for (std::size_t s = 0; s < track.lengths.size(); ++s)
    remainder_of(scene, track.lengths[s], fmt::format("section {}", s + 1),
                 fmt::format("track.rail_lengths[{}]", s + 1), findings);
}

void check_joint_support(const Scene& scene, std::vector<Finding>& findings) {
  const std::vector<TabPlace> tabs = tab_places(scene.bed);
  const Figures& figures = scene.figures;
  int number = 0;
  for (const Mm x : scene.bed.track.joints) {
    ++number;
    for (const Side side : both_sides) {
      const TabPlace* tab = nearest_tab(tabs, side, x);
      const Mm far = tab ? std::abs(tab->x - x) : scene.bed.track.total_length;
      if (far <= scene.limits.joint_to_support + same_place) continue;
      Finding f = finding_of("JOINT-SUPPORT", Severity::warn, Identity{Kind::joint, side, number},
                             {x, outward(side) * scene.bed.track.gauge / 2, scene.bed.track.standoff});
      f.measured = far;
      f.limit = scene.limits.joint_to_support;
      f.margin = f.limit - f.measured;
      if (tab) f.subjects.push_back(scene.bed.items[tab->item]);
      f.message = tab ? fmt::format("the rail joint at {} is {} from the nearest tab; at most {} is asked",
                                    figures.say(x), figures.say(far), figures.say(f.limit))
                      : fmt::format("the rail joint at {} has no tab on its side", figures.say(x));
      f.remedy = fmt::format("weld a tab between {} and {} from the front of the track",
                             figures.say(x - f.limit), figures.say(x + f.limit));
      findings.push_back(std::move(f));
    }
  }
}

void check_hole_no_tab(const Scene& scene, std::vector<Finding>& findings) {
  const std::vector<TabPlace> tabs = tab_places(scene.bed);
  const Figures& figures = scene.figures;
  const StandingWork work(scene);
  for (const Bolt& bolt : scene.bed.bolts) {
    if (bolt.in_place || bolt.id.kind != Kind::track_bolt) continue;
    const TabPlace* tab = nearest_tab(tabs, bolt.id.side, bolt.seat.x);
    Finding f = finding_of("HOLE-NO-TAB", Severity::stop, bolt, bolt.seat);
    f.measured = 0;
    f.limit = 1;
    f.margin = -1;
    f.unit = "tabs";
    f.message = fmt::format("the rail's hole at {} has no tab under it", figures.say(bolt.seat.x));
    if (tab) {
      const Mm dx = tab->x - bolt.seat.x;
      f.subjects.push_back(scene.bed.items[tab->item]);
      f.message += fmt::format("; the nearest, {}, is {} {}", f.subjects[1].name, figures.say(std::abs(dx)),
                               toward(dx));
    }
    if (scene.input.job && stands(scene.input.job->frame))
      work.suggest_new_tab(bolt, f);
    else
      f.remedy = fmt::format("weld a tab with its hole at {} from the front of the track",
                             figures.say(on_tape(bolt.seat.x, figures.mark)));
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
