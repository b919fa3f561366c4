// Runs road, tongue, stand and tabs in their order, and lists what is assumed.
#include <fmt/format.h>

#include <stdexcept>

#include "loads/loads.h"
#include "loads/steel.h"

namespace bedwright {

Mm main_start(const Job& job) { return -job.frame.main.front_overhang; }

Mm main_end(const Job& job, const Bed& bed) {
  const FrameMain& m = job.frame.main;
  return main_start(job) + m.length.value_or(bed.track.total_length + m.front_overhang + m.rear_overhang);
}

Mm head_locked(const Job& job, const Bed& bed, HeadAt at) {
  const Mm offset = job.kit.head.lock_offset;
  switch (at) {
    case HeadAt::front:
      return offset;
    case HeadAt::rear:
      return bed.track.total_length - offset;
    case HeadAt::off:
      break;
  }
  throw std::invalid_argument("a head that is off is locked nowhere");
}

Mm rail_seat(const Job& job, const Bed& bed) { return bed.track.standoff + job.kit.rail.thickness; }
Mm rail_top(const Job& job, const Bed& bed) { return bed.track.standoff + job.kit.rail.standing_leg; }

namespace {

std::vector<std::string> assumptions_of(const Job& job) {
  const RoadOrder& road = job.order.road;
  std::vector<std::string> all = {
      "Masses: steel at 7850 kg/m3 from the true profiles, less holes; bought items as their files state.",
      "The trailer stands level; the coupler carries its load at the ball's centre.",
      "Axles of a group are equalised: each carries the same.",
      fmt::format("Over a bump loads count {:g} times (common practice, no published source), on mains, "
                  "tongue and tabs alike.",
                  road.bump),
      fmt::format("Braking {:g} g and cornering {:g} g: the forces of 49 CFR 393.102(a); rebound {:g} g "
                  "upward (common practice).",
                  road.braking, road.cornering, road.rebound),
      "At work the bed stands on its jacks alone, the tongue jack off the ground; jacks only push, and what "
      "a foot "
      "that sinks costs is in a table.",
      "Each main is a beam of its own; a load between them is shared by the lever rule. The frame's twist is "
      "not counted on.",
      "The rails do not help the mains; their sag between tabs is added to the mains'.",
      "Each rail section bends by itself, held by its bolts; the joint gussets are not counted on.",
      "The log is stiff, crooked and tapered, a fifth heavier than its kind's mean (or as the catalogue "
      "says), and lies "
      "against its stops; turned belly down or up it presses on the bunks as on equal springs that only "
      "push. One longer "
      "than the bunks lies with its middle near theirs.",
      fmt::format(
          "Sag, moments and jack loads are the most over {} places of the head and up to {} of the log; each "
          "way the log lies is tried at every other place of the head, as it lands at every fourth; under a "
          "wheel and at a jack they are exact.",
          stand_head_places, stand_log_places),
      fmt::format(
          "Stress: yield over {:g} (work.safety_factor), AISC 360. Mains, tongue, rails and bunks are held "
          "sideways by what is "
          "welded or bolted to them, so they bend about the level axis; no stress of the welding is counted.",
          job.order.work.safety_factor),
      fmt::format("A log lands with {:g} times its weight (a load that comes on at once, without a drop): "
                  "bunks, rails, tabs, "
                  "welds, mains and jacks stand that. Sag and lift are at rest.",
                  job.order.work.landing),
      "Coupled, the ball lets the bed roll: it rolls over about the line from ball to outer tyres, as a "
      "stiff body; the limit "
      "leaves a fifth for springs and tyres.",
      "Not looked at: the mains' twist between cross members, hangers and springs, the coupler and ball "
      "themselves, the "
      "head's lock, the stress of the welding, wind.",
      "Rails and bunks: 36 ksi (248 MPa) yield, the kit states no grade. Track bolts: ASTM A307. Welds: E70.",
      "A push on bolts falls on one rail section's bolts: slots along the bed may leave the others idle. The "
      "weight at rest "
      "is not counted against lift.",
  };
  if (job.frame.yield_strength <= 0 && !yield_of_grade(job.frame.grade))
    all.push_back(
        fmt::format("Grade {} has no known yield strength: 36 ksi (248 MPa) is taken.", job.frame.grade));
  if (road.cargo)
    all.push_back("The cargo is lashed down by itself; the track bolts hold its push, not its overturning.");
  if (job.frame.axle.count > 1)
    all.push_back(
        "Equalised springs share alike on level ground only: over a kerb one axle carries more for a "
        "moment.");
  if (job.kit.head.wheel_base < 1)
    all.push_back("The kit states no wheel base: the head stands on one wheel each side.");
  return all;
}

}  // namespace

LoadsResult run_loads(const Job& job, const Bed& bed) {
  LoadsResult r;
  r.weights = weigh(bed);
  r.tow = tow_loads(job, bed, r.weights);
  r.tongue = tongue_loads(job, r.tow);
  r.stand = stand_loads(job, bed, r.weights);
  r.tabs = tab_loads(job, bed, r.weights, r.stand);
  if (r.stand.jacks_enough && !r.stand.tips) {
    r.jack_seat = jack_seat(job, r.stand);
    r.jack_foot = jack_foot(job, r.stand);
  }
  r.tongue_seat = tongue_seat(job, r.tongue);
  r.fatigue = fatigue(job, r.tow, r.tongue, r.tabs);
  r.assumptions = assumptions_of(job);
  return r;
}

}  // namespace bedwright
