// Logs and tyres as published tables state them.
#pragma once

#include <string>

#include "units/units.h"

namespace bedwright {

// A species of tree.
struct Species {
  std::string name;            // "northern red oak"
  double green_kg_per_m3 = 0;  // freshly felled, average of heartwood and sapwood
  double spread = 0.2;         // a single log may be so much heavier than that, over one
  double heaviest_kg_per_m3() const { return green_kg_per_m3 * (1 + spread); }
  std::string source;
};

// A trailer tyre of one size and load range, at the pressure that goes with it.
struct Tyre {
  std::string name;  // "ST205/75R15 C"
  Kg load = 0;       // one tyre, single
  std::string source;
};

}  // namespace bedwright
