// HOLE-FIT: whether each bolt goes through all its plies, nominal offset and
// tolerances together.
//
// What two holes take is the sum of their clearances: each round end gives
// (hole - bolt) / 2 in every direction, each slot its straight length along its axis.
// What they need is the offset as laid out plus the stack-up, worst case and root sum
// square, in each direction. A bolt through several plies must pass every pair of them,
// which is less than the sum over all plies allows: two holes on opposite sides of a
// third do not lend each other their play. So every pair is tested, then all holes
// together. (hole_fit.h has the geometry.)
#include <fmt/format.h>

#include "rules/fit/bearing.h"
#include "rules/fit/bolt_fit.h"
#include "rules/fit/datum.h"
#include "rules/fit/standing_work.h"
#include "rules/fit/tab_line.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// The basis the finding is about: the order's, or the worst case when only that fails.
FitBasis basis_of(const Scene& scene, const BoltFit& fit) {
  return scene.limits.fit_basis == FitBasis::root_sum_square && !fit.fits_rss ? FitBasis::root_sum_square
                                                                              : FitBasis::worst_case;
}

void find_tightest(BoltFit& fit, FitBasis basis) {
  Mm least = std::numeric_limits<Mm>::infinity();
  for (const HolePair& pair : fit.pairs) {
    for (int axis = 0; axis < 2; ++axis) {
      if (pair.margin(basis, axis) >= least) continue;
      least = pair.margin(basis, axis);
      fit.pair = &pair;
      fit.axis = axis;
    }
  }
}

const char* axis_name(const BoltFit& fit, int axis) {
  const Vec3 a = axis == 0 ? fit.axes.u : fit.axes.v;
  if (std::abs(a.x) > 0.9) return "along the bed";
  if (std::abs(a.y) > 0.9) return "across the bed";
  return std::abs(a.z) > 0.9 ? "up and down" : "square to the bolt";
}

// The overall slot length, in every ply but the first, that lets the bolt in when
// only the first axis is short; nothing when no slot along it would do.
std::optional<Mm> slot_needed(const BoltFit& fit, const Bolt& bolt, const Scene& scene, FitBasis basis) {
  if (bolt.id.kind != Kind::track_bolt || std::abs(fit.axes.u.x) < 0.999) return std::nullopt;
  Mm length = 0;
  for (const HolePair& pair : fit.pairs) {
    if (pair.i != 0) continue;
    const Range2& range = pair.range(basis);
    const Mm r = pair.clearance.radius;
    const Mm residual = std::max(range.need(1) - pair.clearance.travel[1], 0.0);
    if (residual > r) return std::nullopt;
    const Mm travel = range.need(0) - std::sqrt(r * r - residual * residual) - fit.holes[0].travel[0];
    const Mm width = hole_in_world(scene.bed, bolt.plies[pair.j]).hole.diameter;
    length = std::max(length, width + 2 * std::max(travel, fit.holes[pair.j].travel[0]));
  }
  return length;
}

// Whether the bolt would go in were the holes of every ply but the first changed.
template <class Alter>
bool fits_with(BoltFit fit, const Bolt& bolt, FitBasis basis, Alter alter) {
  for (std::size_t j = 1; j < fit.holes.size(); ++j) alter(fit.holes[j], fit.widths[j]);
  for (HolePair& pair : fit.pairs) pair = pair_of(fit, pair.i, pair.j, bolt);
  return fits(fit, bolt, basis);
}

bool fits_with_slot(const BoltFit& fit, const Bolt& bolt, FitBasis basis, Mm slot) {
  return fits_with(fit, bolt, basis, [&](Clearance& hole, Mm width) {
    hole.travel[0] = std::max(hole.travel[0], (slot - width) / 2);
  });
}

// Tabs' holes narrower than the bolt's standard hole, and the bolt goes in once they
// have its width.
void suggest_width(const Scene& scene, const BoltFit& fit, const Bolt& bolt, FitBasis basis, Finding& f) {
  if (!scene.input.job || bolt.id.kind != Kind::track_bolt) return;
  const FrameTabs& tabs = scene.input.job->frame.tabs;
  const Mm width = bolt.size.standard_hole, wider = (width - tabs.hole_diameter) / 2;
  if (wider < same_place || width > tabs.slot_length + same_place) return;
  // The slot's length stays: what it gains in width it loses in straight run.
  const auto widen = [&](Clearance& hole, Mm) {
    hole.radius += wider;
    hole.travel[0] = std::max(0.0, hole.travel[0] - wider);
  };
  if (!fits_with(fit, bolt, basis, widen)) return;
  f.remedy += fmt::format("{}make the tabs' holes {} wide", f.remedy.empty() ? "" : "; or ",
                          scene.figures.say(width));
  f.changes.push_back({"frame.tabs.hole_diameter", scene.figures.set(width)});
}

// The longest slot a tab takes with steel enough left beyond its ends, and that the washer
// covers; EDGE or WASHER-COVER would stop a longer one.
Mm longest_slot(const Scene& scene, const Bolt& bolt) {
  if (!scene.input.job) return std::numeric_limits<Mm>::infinity();
  const FrameTabs& tabs = scene.input.job->frame.tabs;
  return std::min(tabs.length - 2 * bolt.size.edge_minimum + tabs.hole_diameter, bolt.size.flat.outside);
}

// Whether the washer under the nut covers its slot once that is moved along the tight axis.
bool washer_covers(const Scene& scene, const BoltFit& fit, const Bolt& bolt, Mm shift) {
  HoleInWorld hole = hole_in_world(scene.bed, bolt.plies.back());
  hole.centre = hole.centre + shift * (fit.axis == 0 ? fit.axes.u : fit.axes.v);
  return !hole.hole.slotted() || to_cover(bolt, hole) <= width_under_nut(bolt) + same_place;
}

// A move of all later plies' holes along the tight axis that lets the bolt in,
// back toward the first ply's hole and no further; 0 when none does. Signed along the axis.
Mm shift_needed(const Scene& scene, const BoltFit& fit, const Bolt& bolt, FitBasis basis) {
  const Mm offset = fit.pair->offset[fit.axis];
  const Mm most = std::abs(offset),
           least = std::min(scene.figures.round_up(-fit.pair->margin(basis, fit.axis)), most);
  const Mm shift = std::copysign(least, offset);
  BoltFit moved = fit;
  for (std::size_t j = 1; j < moved.centres.size(); ++j)
    (fit.axis == 0 ? moved.centres[j].x : moved.centres[j].y) += shift;
  for (HolePair& pair : moved.pairs) pair = pair_of(moved, pair.i, pair.j, bolt);
  if (!fits(moved, bolt, basis)) return 0;
  // A little further, where its washer then covers the slot too, so that one move is enough.
  for (Mm size = least;; size = std::min(size + scene.figures.step(), most)) {
    if (washer_covers(scene, fit, bolt, std::copysign(size, offset))) return std::copysign(size, offset);
    if (size > most - same_place) return shift;
  }
}

// The order's entry for the tab found out of place under this bolt, counted from 1; 0 when none.
int found_entry(const Scene& scene, const Bolt& bolt) {
  if (!scene.input.job || bolt.id.kind != Kind::track_bolt) return 0;
  const auto& found = scene.input.job->order.tabs_found;
  const Identity& tab = scene.bed.items[bolt.plies.back().item].id;
  for (std::size_t i = 0; i < found.size(); ++i)
    if (tab == tab_called(found[i].tab.text)) return static_cast<int>(i) + 1;
  return 0;
}

void add_shift_change(const Scene& scene, const Bolt& bolt, int entry, bool lengthwise, Mm shift,
                      Finding& f) {
  const TabFound& found = scene.input.job->order.tabs_found[entry - 1];
  const Mm was = lengthwise ? found.x : found.y;
  const Mm left = was + (lengthwise ? shift : outward(bolt.id.side) * shift);
  // Only back toward where it was laid out; past it would be another fault.
  if (std::abs(left) > std::abs(was) || left * was < -same_place) return;
  f.changes.push_back(
      {fmt::format("tabs_found[{}].{}", entry, lengthwise ? "x" : "y"), scene.figures.set(left)});
}

void suggest_shift(const Scene& scene, const BoltFit& fit, FitBasis basis, Finding& f) {
  const Bolt& bolt = scene.bed.bolts[fit.bolt];
  const Mm shift = shift_needed(scene, fit, bolt, basis);
  if (shift == 0) return;
  const Vec3 axis = fit.axis == 0 ? fit.axes.u : fit.axes.v;
  const bool lengthwise = std::abs(axis.x) > 0.999, crosswise = std::abs(axis.y) > 0.999;
  const char* way = lengthwise  ? (shift > 0 ? "rearward" : "forward")
                    : crosswise ? ((shift > 0) == (bolt.seat.y > 0) ? "outward" : "inward")
                                : (shift > 0 ? "up" : "down");
  // On a frame that stands it is one that is yet to be welded on.
  const bool fresh = scene.input.job && bolt.id.kind == Kind::track_bolt && stands(scene.input.job->frame);
  f.remedy += fmt::format("{}{} ", f.remedy.empty() ? "" : "; or ", fresh ? "set new" : "move");
  add_name(f, scene.bed.items[bolt.plies.back().item]);
  f.remedy += fmt::format(" {} {}", scene.figures.say(std::abs(shift)), way);
  const int entry = found_entry(scene, bolt);
  if (entry == 0) return;
  if (lengthwise || crosswise) add_shift_change(scene, bolt, entry, lengthwise, shift, f);
  // The frame is welded: what a file takes off one slot does as much as moving its tab, where
  // the washer covers the slot as it is.
  const FrameTabs& tabs = scene.input.job->frame.tabs;
  if (!lengthwise || !washer_covers(scene, fit, bolt, 0) ||
      tabs.slot_length / 2 + std::abs(shift) > longest_slot(scene, bolt) / 2)
    return;
  const bool has_pad = tabs.style == TabStyle::plate && tabs.plate && tabs.plate->pad_thickness > same_place;
  f.remedy += fmt::format("; or, on this frame alone, file {} {} longer at the {} end",
                          has_pad ? "the slots of the tab and its pad" : "the tab's slot",
                          scene.figures.say(std::abs(shift)), shift > 0 ? "rear" : "front");
}

// Whether it is the rail's hole that is short, and along the bed: all that the place of
// the pin changes.
bool only_the_rail_is_short(const BoltFit& fit, FitBasis basis) {
  for (const HolePair& pair : fit.pairs)
    for (int axis = 0; axis < 2; ++axis) {
      const Vec3 a = axis == 0 ? fit.axes.u : fit.axes.v;
      if (pair.margin(basis, axis) < 0 && (pair.i != 0 || std::abs(a.x) < 0.999)) return false;
    }
  return true;
}

// Whether every track bolt goes in with the track pinned at its middle: a pin there of
// no use is no remedy.
bool middle_would_do(const Scene& scene) {
  const Job* job = scene.input.job;
  if (!job || job->order.track.datum == Datum::middle || scene.bed.track.sections < 2) return false;
  return datum_margins(scene, *job)[static_cast<std::size_t>(Datum::middle)].margin >= 0;
}

void suggest_datum(const Scene& scene, const BoltFit& fit, const Bolt& bolt, FitBasis basis, Finding& f) {
  if (bolt.id.kind != Kind::track_bolt || !only_the_rail_is_short(fit, basis)) return;
  const int sections = scene.bed.track.sections;
  f.remedy +=
      fmt::format("{}pin the track at its middle, so that the errors of at most {} sections add up, not {}",
                  f.remedy.empty() ? "" : "; or ", (sections + 1) / 2, sections);
  f.changes.push_back({"track.datum", datum_word(Datum::middle)});
}

// The slot of a tab that stands, filed so long that the bolt goes in; none where tab or
// washer leave no room for it.
std::optional<Mm> filed_slot(const Scene& scene, const BoltFit& fit, const Bolt& bolt) {
  const FitBasis basis = basis_of(scene, fit);
  const auto needed = slot_needed(fit, bolt, scene, basis);
  if (!needed) return std::nullopt;
  const Mm filed = scene.figures.round_up(*needed);
  const bool would_do =
      filed <= longest_slot(scene, bolt) + same_place && fits_with_slot(fit, bolt, basis, filed);
  return would_do ? std::optional(filed) : std::nullopt;
}

Finding describe(const Scene& scene, const BoltFit& fit, FitBasis basis) {
  const Bolt& bolt = scene.bed.bolts[fit.bolt];
  const HolePair& pair = *fit.pair;
  const Figures& say = scene.figures;
  const bool stop = basis == scene.limits.fit_basis;
  Finding f = finding_of("HOLE-FIT", stop ? Severity::stop : Severity::warn, bolt, bolt.seat);
  f.subjects.push_back(scene.bed.items[bolt.plies[pair.i].item]);
  f.subjects.push_back(scene.bed.items[bolt.plies[pair.j].item]);
  f.measured = pair.range(basis).need(fit.axis);
  f.limit = pair.room(basis, fit.axis);
  f.margin = f.limit - f.measured;
  if (f.margin >= -fit_hair) {
    f.message =
        fmt::format("any two of the {} holes take the bolt but all together do not", bolt.plies.size());
    f.remedy = fmt::format("open the rounder holes by {}", say.say(say.round_up(say.step() / 2)));
    return f;
  }
  const FitBasis both[] = {FitBasis::worst_case, FitBasis::root_sum_square};
  f.message = fmt::format(
      "{} and {} are out of line {} by {} as laid out and up to {} in the worst case; the holes take {} "
      "(margin {}); "
      "by root sum square up to {} of {} (margin {})",
      f.subjects[1].name, f.subjects[2].name, axis_name(fit, fit.axis),
      say.say(std::abs(pair.offset[fit.axis])), say.say(pair.range(both[0]).need(fit.axis)),
      say.say(pair.room(both[0], fit.axis)), say.say(pair.margin(both[0], fit.axis)),
      say.say(pair.range(both[1]).need(fit.axis)), say.say(pair.room(both[1], fit.axis)),
      say.say(pair.margin(both[1], fit.axis)));
  return f;
}

}  // namespace

void check_hole_fit(const Scene& scene, std::vector<Finding>& findings) {
  check_narrow_holes(scene, findings);
  std::vector<BoltFit> failing;
  // A kit whose holes lie on another line than the tabs' has one fault, which TAB-LINE tells.
  const auto line = tab_line(scene);
  const bool track_is_off = line && !line->fits();
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i) {
    const Bolt& bolt = scene.bed.bolts[i];
    if (!bolt.in_place || bolt.plies.size() < 2 || has_narrow_hole(scene, bolt)) continue;
    if (track_is_off && bolt.id.kind == Kind::track_bolt) continue;
    BoltFit fit = measure_fit(scene, i);
    if (!fit.fits_worst || (scene.limits.fit_basis == FitBasis::root_sum_square && !fit.fits_rss))
      failing.push_back(std::move(fit));
  }
  Mm slot = 0;  // one slot length for all tabs: what the worst bolt needs
  for (const BoltFit& fit : failing)
    slot =
        std::max(slot, slot_needed(fit, scene.bed.bolts[fit.bolt], scene, basis_of(scene, fit)).value_or(0));
  slot = scene.figures.round_up(slot);
  const bool at_middle = !failing.empty() && middle_would_do(scene);
  StandingWork work(scene);
  for (const BoltFit& fit : failing)
    if (const Bolt& bolt = scene.bed.bolts[fit.bolt]; is_into_standing_tab(scene, bolt))
      work.add(bolt, filed_slot(scene, fit, bolt));
  for (BoltFit& fit : failing) {
    const Bolt& bolt = scene.bed.bolts[fit.bolt];
    const FitBasis basis = basis_of(scene, fit);
    find_tightest(fit, basis);
    Finding f = describe(scene, fit, basis);
    if (f.margin < -fit_hair && is_into_standing_tab(scene, bolt)) {
      work.suggest(bolt, f);
    } else if (f.margin < -fit_hair) {
      if (slot_needed(fit, bolt, scene, basis) && slot <= longest_slot(scene, bolt) &&
          fits_with_slot(fit, bolt, basis, slot)) {
        f.remedy = fmt::format("make the tabs' slots {} long", scene.figures.say(slot));
        f.changes.push_back({"frame.tabs.slot_length", scene.figures.set(slot)});
      }
      suggest_width(scene, fit, bolt, basis, f);
      suggest_shift(scene, fit, basis, f);
      if (at_middle) suggest_datum(scene, fit, bolt, basis, f);
      if (f.remedy.empty())
        f.remedy =
            fmt::format("open one of the holes by {} {}",
                        scene.figures.say(scene.figures.round_up(-2 * f.margin)), axis_name(fit, fit.axis));
    }
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
