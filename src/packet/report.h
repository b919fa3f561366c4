// The report of one run: report.json for programs, report.txt for people.
//
// report.json, version 1. An object with these keys, in this order:
//   format    "bedwright report"
//   version   1; raised when a key changes its meaning or goes away. Keys may be
//             added without raising it.
//   program   {"name": "bedwright", "version": text}
//   order     {"number", "customer", "date", "revision", "kit", "frame"}, all text; kit and
//             frame by the names their files give them, wherever those lie
//   state     "released": nothing stops it; "draft": written for discussion, with
//             stops or on request; "stopped": nothing to cut or drill written
//   counts    {"stop", "warn", "note"}, whole numbers
//   findings  list, in the order of the table (severity, code, what they are about):
//     code, severity ("stop", "warn", "note"), subjects (list of names, the first
//     the one it is about), place {"x", "y", "z"} in mm, measured, limit, margin
//     (numbers, negative margin fails) in `unit`, message, remedy (text, "" when
//     none), changes (list of {"key", "value", "brings"}; each alone was tried
//     and clears the finding; "brings" counts the stops it would bring instead)
//   track     the track's account, lengths in mm: rail_length (the longest),
//             rail_lengths (where they are not alike), bunk_pitch (0: the kit's own holes),
//             total_length, sections, bunks, remainder, joints, bunk_positions,
//             standoff, gauge, head_from, head_to, head_lock
//   rules     list of {"code", "family", "asks", "formula", "limit", "source",
//             "change"}: every rule that was run
//   datum     {"pinned", "recommended" ("front", "middle", "rear"), "front",
//             "middle", "rear": {"margin" (mm, of the tightest track hole in the worst case were
//             the track pinned there), "bolt"}, or null where no track bolt is in place}
//   bolts     list by size of {"size", "now", "fewest" (the least set of
//             lengths that serves every hole), "in_kit", "kit_serves", "holes": list of {"bolt",
//             "length", "suits", "fewest", "from_kit" (null where none does)}}, lengths in mm
//   loads     masses kg, forces N, moments N mm, stresses
//             MPa, places and lengths mm, inertias kg m2:
//     conditions list of {"name", "judged", "mass", "centre" {"x","y","z"}, "inertia" {"roll",
//             "pitch","yaw"}, "tongue", "share" (of the mass), "axle", "tyre", "jack" (uncoupled, on the
//             tongue jack), "axle_from", "axle_to" (places of the axle within the share limits),
//             "main_stress", "above_road" (the centre of mass), "rolls_at" (g sideways), "rolls_parked"
//             (rise over run of a side slope, uncoupled)}
//     axle    {"x", "from", "to" (for every judged condition), "tips_behind" (uncoupled on wheels
//             and tongue jack it tips back with the head behind this; null for a weightless head),
//             "places" (recommended, best first)}
//     size    {"width", "length", "height"} standing on its tyres
//     tongue  {"coupler", "moment", "stress", "allowed", "weld", "braking_coupler", "braking_push",
//             "braking_stress", "braking_weld", "standing"}
//     stand   {"log_mass", "log_y", "bunk_load", "main_unbraced", "log_position", "side", "head_x", "sag",
//     "sag_limit", "sag_x",
//             "main_sag", "rail_sag", "slope", "main_moment", "main_shear", "main_stress",
//             "main_allowed", "web_stress", "web_allowed", "rail_stress", "bunk_stress", "kit_allowed",
//             "tab_load", "push_factor", "roll_on_factor" (null where nothing tips it); "jacks": list of
//             {"name", "x", "least", "most", "drawn", "lifts"}; "curve": {"x", and "down",
//             "slope", "moment", "shear": {"drawn", "least", "most"}}, lists of one length;
//             "drawn" is with head and log where a main sags most}
//     tabs    {"bolts", "shear", "tension", "vertical", "bolt_shear", "bolt_tension",
//             "bolt_shear_allowed", "bolt_tension_allowed", "tab_stress",
//             "tab_stress_at_work", "tab_allowed", "weld", "weld_allowed" (N/mm),
//             "weld_at_work", "weld_at_work_allowed", "wheel_off", "held" (part of the wheels' moment
//             that the bunks hold), "turning", "turning_at_work" (the rest), "bunk_bolt", "rail_torsion"}
//     fatigue {"cycles", "swing" (of the load at rest); "details": list of {"what", "category",
//             "range", "allowed"}}
//     margins list of {"code", "what", "used"}: measured over limit, 1 just at it
//     assumptions, worked  lists of text
// Numbers are rounded to 1e-6 of their unit; there is no "-0". Lengths are always
// millimetres here, whatever the order prints in. UTF-8, two-space indents, one
// newline at the end: the same run gives the same bytes.
#pragma once

#include <string>
#include <vector>

#include "examine/examine.h"
#include "packet/state.h"

namespace bedwright {

struct Report {
  std::string program_version;
  PacketState state = PacketState::stopped;
  const Examined& examined;
};

std::string report_json(const Report& report);

// Heading, state, the track's account, the findings' table, where to pin the track, the
// bolts by length and the loads, 100 columns wide.
std::string report_text(const Report& report);

}  // namespace bedwright
