// The report of one run: report.json for programs, report.txt for people.
//
// report.json, version 1. An object with these keys, in this order:
//   format    "bedwright report"
//   version   1; raised when a key changes its meaning or goes away. Keys may be
//             added without raising it.
//   program   {"name": "bedwright", "version": text}
//   order     {"number", "customer", "date", "revision", "kit", "frame"}, all text
//   state     "released": nothing stops it; "draft": written for discussion, with
//             stops or on request; "stopped": nothing to cut or drill written
//   counts    {"stop", "warn", "note"}, whole numbers
//   findings  list, in the order of the table (severity, code, name):
//     code, severity ("stop", "warn", "note"), subjects (list of names, the first
//     the one it is about), place {"x", "y", "z"} in mm, measured, limit, margin
//     (numbers, negative margin fails) in `unit`, message, remedy (text, "" when
//     none), changes (list of {"key", "value", "brings"}; each alone was tried
//     and clears the finding; "brings" counts the stops it would bring instead)
//   track     the track's account, lengths in mm: rail_length, bunk_pitch,
//             total_length, sections, bunks, remainder, joints, bunk_positions,
//             standoff, gauge, head_from, head_to, head_lock
//   rules     list of {"code", "family", "asks", "formula", "limit", "source",
//             "change"}: every rule that was run
// Numbers are rounded to 1e-6 of their unit; there is no "-0". Lengths are always
// millimetres here, whatever the order prints in. UTF-8, two-space indents, one
// newline at the end: the same run gives the same bytes.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "checks/finding.h"
#include "export/state.h"
#include "params/order.h"

namespace bedwright {

struct Report {
  std::string program_version;
  const Order& order;
  PacketState state = PacketState::stopped;
  const Bed& bed;
  const std::vector<Finding>& findings;
};

std::string report_json(const Report& report);

// Heading, state, the track's account and the findings' table, 100 columns wide.
std::string report_text(const Report& report);

}  // namespace bedwright
