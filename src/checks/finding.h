// What a rule says of a Bed.
#pragma once

#include <string>
#include <vector>

#include "units/units.h"

namespace bedwright {

enum class Severity { stop, warn, note };

// A change that would clear a finding, as the --set it amounts to.
struct Change {
  std::string key;    // "frame.tabs.slot_length"
  std::string value;  // "1-1/4 in"
  int brings = 0;     // stops that are not there now and that it would bring
};

struct Finding {
  std::string code;  // rule's code, e.g. "HOLE-FIT"
  Severity severity = Severity::stop;
  std::vector<std::string> subjects;           // items or bolts, by name
  Mm x = 0, y = 0, z = 0;                      // where, world
  double measured = 0, limit = 0, margin = 0;  // margin < 0 where it fails
  std::string unit;                            // "mm", "threads"
  std::string message;                         // one sentence with the figures
  std::string remedy;                          // one sentence with a number in it
  std::vector<Change> changes;                 // alternatives, cheapest first; each alone clears the finding
};

}  // namespace bedwright
