// What may be changed about an order to make it go together, and how willingly.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "checks/finding.h"
#include "params/job.h"
#include "params/vary.h"

namespace bedwright {

struct FreeValue {
  Change change;
  // How unwillingly: first by what is changed (a hundred a kind), then by how far.
  // A clamp on another bunk costs less than a longer slot, and that less than
  // another rail length.
  int cost = 0;
};

// The order's own `free` list; where it has none the usual parameters in steps
// about their present values, nearest first. The frame's tabs stay as they are
// where the frame exists already.
std::vector<FreeValue> free_values(const Job& job, int bunks);

}  // namespace bedwright
