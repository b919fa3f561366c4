// The smallest set of changes that clears every stop.
//
// Single changes are all tried. A set of two or three is made of changes to
// different parameters that bring progress, the most promising first: first
// those of which each stop left by the others is cleared by one alone, then, as
// far as the tries allow, any that bring progress further. Each set is laid out
// and checked as a whole; what is offered has passed the exact check too.
//
// So a single change that does is always found. A pair or three is found when
// its changes clear the stops between them; one whose changes do nothing each
// for itself is found only if the tries reach it.
#pragma once

#include <functional>
#include <optional>
#include <vector>

#include "advice/advice.h"
#include "advice/free.h"
#include "advice/stops.h"

namespace bedwright {

struct Suggestion {
  std::vector<Change> changes;  // empty: nothing found
  int tries = 0;
  bool gave_up = false;  // the tries ran out before every set was ruled out
  // Nothing found: the set that leaves the fewest stops, and those.
  std::vector<Change> nearest;
  std::vector<Finding> left;
};

struct SearchSettings {
  int most_changes = 3;
  int most_tries = 5'000;  // some fifteen seconds
  int most_exact = 60;   // tries with the kernel, which take longest
};

// `cheap` checks without the kernel (what it cannot decide is no stop); `exact`
// with it. `now` are the findings of the order as it is.
Suggestion suggest(const std::vector<FreeValue>& free, const std::vector<Finding>& now, const Retry& cheap, const Retry& exact,
                   const SearchSettings& settings = {});

}  // namespace bedwright
