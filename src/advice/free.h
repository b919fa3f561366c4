// What may be changed about an order to make it go together, and how willingly.
#pragma once

#include <set>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "params/job.h"
#include "params/vary.h"
#include "rules/finding.h"

namespace bedwright {

struct FreeValue {
  Change change;
  // How unwillingly: first by what is changed (a hundred for each kind), then by how far.
  // A clamp on another bunk costs less than a longer slot, and that less than
  // another rail length.
  int cost = 0;
  // Findings whose rule proposes it, by number: two values of one finding are tried
  // together, whatever each does alone.
  std::set<int> proposed_by = {};
};

// The order's own `free` list; where it has none the usual parameters in steps
// about their present values, nearest first (for a bolt whose
// length the order does not name, the shortest first). The frame's tabs stay as they are where the frame
// exists already.
std::vector<FreeValue> free_values(const Job& job, int bunks);

// The same with what the rules themselves propose for the stops in `findings`: what a
// rule puts first, the place with most room, comes before the usual steps of that
// parameter. `advised`: those findings after advise(), which has found more changes
// that work, perhaps further away than the usual steps go. Tabs that exist stay as they
// are. Where the order has its own `free` list, nothing else is added.
std::vector<FreeValue> free_values(const Job& job, int bunks, const std::vector<Finding>& findings,
                                   const std::vector<Finding>& advised = {});

// What the customer ordered (the log) and what was measured on the frame: taken as
// it is, never changed to make a bed go together, unless the order's `free` list names it.
bool ordered_or_measured(std::string_view key);

}  // namespace bedwright
