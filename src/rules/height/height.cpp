// RAIL-SHIM and TIP-HEIGHT: what the errors of height add up to, under the rails and at
// the bolts' tips.
#include "rules/height/height.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "loads/loads.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {

Mm bow_along(Mm bow, Mm length, Mm part) { return bow * (part / length) * (part / length); }

namespace {

// A mill states a bar's bow for each 5 ft of it (ASTM A6).
constexpr Mm bow_is_for = 5 * foot;

// Most from one tab to the next on a side.
Mm tab_pitch(const Bed& bed) {
  std::vector<Mm> at;
  for (const TabPlace& tab : tab_places(bed))
    if (tab.side == Side::right) at.push_back(tab.x);
  std::sort(at.begin(), at.end());
  Mm most = 0;
  for (std::size_t i = 1; i < at.size(); ++i) most = std::max(most, at[i] - at[i - 1]);
  return most;
}

// The tabs of a side under one rail section, less the two the rail rests on.
int tabs_to_shim(const Bed& bed, Side side, int section) {
  int tabs = 0;
  const Item& rail = bed.items[bed.item({Kind::rail, side, section + 1})];
  for (const Bolt& bolt : bed.bolts)
    if (bolt.in_place && bolt.id.kind == Kind::track_bolt && bolt.plies.front().item >= 0 &&
        bed.items[bolt.plies.front().item].id == rail.id)
      ++tabs;
  return std::max(0, tabs - 2);
}

// Track bolts in place whose tab was measured, and those whose tab is yet to be made.
bool is_measured(const Bed& bed) {
  return std::any_of(bed.bolts.begin(), bed.bolts.end(), [](const Bolt& b) { return b.shim.has_value(); });
}
int new_tabs_in_use(const Bed& bed) {
  return static_cast<int>(std::count_if(bed.bolts.begin(), bed.bolts.end(), [](const Bolt& b) {
    return b.in_place && b.id.kind == Kind::track_bolt && !b.shim;
  }));
}

// The least shim some track bolt takes and still has its thread past the nut, the
// longest that takes it, and which bolt that is.
struct BoltRoom {
  Mm takes = 0;
  int bolt = -1;
};

BoltRoom least_room(const Scene& scene) {
  BoltRoom least{std::numeric_limits<Mm>::infinity(), -1};
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i) {
    const Bolt& bolt = scene.bed.bolts[i];
    if (!bolt.in_place || bolt.id.kind != Kind::track_bolt) continue;
    const Mm takes = scene.stacks[i].past_nut - bolt.size.tolerance(bolt.length).minus -
                     scene.limits.threads_past_nut * bolt.size.pitch;
    if (takes < least.takes) least = {std::max(takes, 0.0), static_cast<int>(i)};
  }
  return least;
}

// "; where a tab wants more than 3/16 in, 2-1/2 in bolts", or nothing.
std::string longer_bolts(const Scene& scene, Mm shim) {
  const BoltRoom room = least_room(scene);
  if (room.bolt < 0 || room.takes >= shim - same_place) return "";
  const Bolt& bolt = scene.bed.bolts[static_cast<std::size_t>(room.bolt)];
  const Mm wanted = bolt.length + shim - room.takes;
  for (const Mm length : bolt.size.lengths)
    if (length >= wanted - same_place)
      return fmt::format("; where a tab wants more than {}, a {} bolt in place of the {}",
                         scene.figures.say(room.takes), bolt_length_text(bolt.size, length),
                         bolt_length_text(bolt.size, bolt.length));
  return fmt::format("; the {} bolts take {} of it, and no longer ones are in stock",
                     bolt_length_text(bolt.size, bolt.length), scene.figures.say(room.takes));
}

bool rides_on_rail(const Bolt& bolt) {
  return bolt.in_place && bolt.direction.z < -0.99 &&
         (bolt.id.kind == Kind::bunk_bolt || bolt.id.kind == Kind::stop_bolt);
}

}  // namespace

TabHeights tab_heights(const Job& job, const Bed& bed) {
  const Tolerances& t = job.order.tolerances;
  TabHeights h;
  if (job.frame.tabs.style == TabStyle::plate) {
    const int plates = job.frame.tabs.plate->pad_thickness > same_place ? 2 : 1;
    h.over = plates * t.plate_over + t.weld_pull;
    h.under = plates * t.plate_under + t.weld_pull;
  } else {
    h.over = h.under = t.clip_height + t.weld_pull;
  }
  const Mm length = main_end(job, bed) - main_start(job), bow = t.main_camber * length / bow_is_for;
  h.section_bow = bow_along(bow, length, std::min(length, bed.track.rail_length));  // the longest
  h.pitch_bow = bow_along(bow, length, std::min(length, tab_pitch(bed)));
  return h;
}

std::vector<Mm> shims_of(Mm pack, Mm thinnest) {
  std::vector<Mm> all;
  Mm thickness = thinnest;
  while (2 * thickness <= pack + same_place) thickness *= 2;
  for (; thickness >= thinnest - same_place; thickness /= 2)
    for (; pack >= thickness - same_place; pack -= thickness) all.push_back(thickness);
  return all;
}

std::vector<Shim> shims(const Job& job, const Bed& bed) {
  const Mm most = tab_heights(job, bed).most_shim(), step = job.order.order.figures().shim_step();
  const bool measured = is_measured(bed);
  int tabs = 0;  // that may want any pack up to the worst
  if (measured)
    tabs = new_tabs_in_use(bed);
  else
    for (const Side side : both_sides)
      for (int s = 0; s < bed.track.sections; ++s) tabs += tabs_to_shim(bed, side, s);
  std::map<long, Shim> by_thickness;  // in steps
  for (const Bolt& bolt : bed.bolts)
    for (const Mm thickness : shims_of(bolt.shim.value_or(0), step)) {
      Shim& shim = by_thickness[std::lround(thickness / step)];
      shim = {job.kit.mounting.hole.bolt.text, thickness, shim.count + 1};
    }
  std::vector<Shim> all;
  for (const auto& [steps, shim] : by_thickness) all.push_back(shim);
  if (tabs == 0) return all;
  // What is less than half of the thinnest is none.
  for (Mm thickness = step, sum = step / 2; sum < most; sum += thickness, thickness *= 2) {
    Shim& shim = by_thickness[std::lround(thickness / step)];
    shim = {job.kit.mounting.hole.bolt.text, thickness, shim.count + tabs};
  }
  all.clear();
  for (const auto& [steps, shim] : by_thickness) all.push_back(shim);
  return all;
}

void check_rail_shim(const Scene& scene, std::vector<Finding>& findings) {
  const Job* job = scene.input.job;
  if (!job || scene.bed.track.sections == 0) return;
  const Figures& say = scene.figures;
  const bool standing = stands(job->frame);
  if (is_measured(scene.bed)) {
    check_measured_shims(scene, findings);
    if (new_tabs_in_use(scene.bed) == 0) return;
  }
  const TabHeights h = tab_heights(*job, scene.bed);
  const Mm shim = h.most_shim(), limit = scene.limits.most_shim;
  if (shim <= same_place) return;
  const bool too_much = shim > limit + same_place;
  Finding f = finding_of("RAIL-SHIM", too_much ? Severity::stop : Severity::note, Identity{Kind::rail},
                         {0, 0, scene.bed.track.standoff});
  f.measured = shim;
  f.limit = limit;
  f.margin = limit - shim;
  const std::string parts =
      fmt::format("each tab's top may be {} high or {} low and a main bows {} under one rail",
                  say.small(h.over), say.small(h.under), say.small(h.section_bow));
  if (!too_much) {
    f.message =
        fmt::format("a rail may want up to {} of shim at one tab: {} (worst case)", say.say(shim), parts);
    f.remedy = fmt::format(
        "lay each rail on its tabs, shim under it where it stands clear until it no longer rocks, then draw "
        "up its bolts{}{}",
        longer_bolts(scene, shim),
        standing && !is_measured(scene.bed)
            ? "; or measure how high each tab stands and write it down as tabs.heights: then each has its own"
            : "");
    findings.push_back(std::move(f));
    return;
  }
  f.message = limit > same_place
                  ? fmt::format("a rail may want {} of shim at one tab and {} is the most: {} (worst case)",
                                say.say(shim), say.say(limit), parts)
                  : fmt::format("without shims a rail may rock by {} on its tabs: {} (worst case)",
                                say.say(shim), parts);
  const Mm without_bow = h.over + h.under, without_pull = shim - 2 * job->order.tolerances.weld_pull;
  // What is bowed and welded already is measured, not asked to be better.
  if (standing)
    f.remedy = "measure how high each tab of this frame stands and write it down as tabs.heights";
  else if (h.section_bow > same_place && without_bow < limit) {
    const Mm camber = job->order.tolerances.main_camber * (limit - without_bow) / h.section_bow;
    f.changes.push_back({"tolerances.main_camber", say.set_at_most(camber)});
    f.remedy = fmt::format("mains bowed no more than {} in each 5 ft", say.small(camber));
  }
  if (!standing && without_pull < limit) {
    const Mm pull = (limit - without_pull) / 2;
    f.changes.push_back({"tolerances.weld_pull", say.set_at_most(pull)});
    f.remedy += fmt::format("{}tabs held so that their welds pull them {} at most",
                            f.remedy.empty() ? "" : "; or ", say.small(pull));
  }
  f.remedy += fmt::format("{}shims up to {} allowed (limits.most_shim)", f.remedy.empty() ? "" : "; or ",
                          say.say(say.round_up(shim)));
  f.changes.push_back({"limits.most_shim", say.set(say.round_up(shim))});
  findings.push_back(std::move(f));
}

void check_tip_height(const Scene& scene, std::vector<Finding>& findings) {
  const Job* job = scene.input.job;
  if (!job || scene.bed.track.sections == 0) return;
  const Figures& say = scene.figures;
  const Mm loss = tab_heights(*job, scene.bed).standoff_loss();
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i) {
    const Bolt& bolt = scene.bed.bolts[i];
    const Beyond& beyond = scene.beyond[i];
    if (!rides_on_rail(bolt) || beyond.item < 0 || beyond.distance <= same_place) continue;
    // What a rail lies on comes down with it; TIP tells of a tip that is too near as drawn.
    if (tip_is_too_close(scene, static_cast<int>(i))) continue;
    const Mm drawn = tip_clearance(scene.stacks[i], bolt, bolt.length, beyond.distance);
    if (drawn - loss >= -same_place) continue;
    Finding f = finding_of("TIP-HEIGHT", Severity::stop, bolt,
                           bolt.seat + (scene.stacks[i].plies + beyond.distance) * bolt.direction);
    f.subjects.emplace_back(scene.bed.items[beyond.item]);
    f.measured = drawn - loss;
    f.margin = f.measured;
    f.message = fmt::format(
        "the tip of the {} bolt has {} to {} as drawn, and the rail may lie {} lower: thin plates, weld pull "
        "and the main's bow",
        bolt_length_text(bolt.size, bolt.length), say.say(drawn), f.subjects[1].name, say.say(loss));
    const Mm rise = say.round_up(loss - drawn);
    const FrameTabs& tabs = job->frame.tabs;
    f.remedy = fmt::format("raise the standoff by {}, or a shorter bolt", say.say(rise));
    if (tabs.style == TabStyle::clip)
      f.changes.push_back({"frame.tabs.clip.standoff", say.set(tabs.clip->standoff + rise)});
    else
      f.changes.push_back({"frame.tabs.plate.pad_thickness", say.set(tabs.plate->pad_thickness + rise)});
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
