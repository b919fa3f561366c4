// The smallest set of changes that clears every stop.
//
// Single changes are all tried. Of sets of two or three changes to different parameters
// those come first whose changes, each as it does alone, clear every stop between them:
// what brings fewest other stops, then the least costly. Then two that one finding's
// rule proposes, whatever each does alone; then, as far as the tries allow, any that
// bring progress.
//
// Sets are tried without the kernel first, which can only tell too few stops; whatever
// it finds clear is checked with the kernel, the least costly first, before it is
// offered, and goes on with what the kernel found.
//
// So a single change that does is always found. A pair or three is found when its
// changes clear the stops between them; one whose changes do nothing each for itself is
// found only if the tries reach it, and three of the former come before two of the
// latter. Where no such set does, or single changes tell that so few will not, the
// nearest is added to, one change at a time, each the one that leaves the fewest
// stops: that finds many small mistakes in one order,
// but not always the fewest changes.
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
  bool fewer_might_do = false;  // not every smaller set that might do was tried
  int tries = 0;
  bool gave_up = false;  // the tries ran out before every set was ruled out
  // Nothing found: the set that leaves the fewest stops, and those.
  std::vector<Change> nearest;
  std::vector<Finding> left;
};

struct SearchSettings {
  int most_changes = 3;
  int most_tries = 5'000;  // of sets up to that size; some twenty seconds
  int most_exact = 1'000;  // of those with the kernel, which take longest
  int most_added = 0;      // changes in all, where they are added one at a time; 0: they are not
  int most_adding_tries = 2'000;
  int most_unlikely_tries = 1'000;  // where single changes tell that so few will not do
};

// `cheap` checks without the kernel (what it cannot decide is no stop); `exact`
// with it. `now` are the findings of the order as it is.
Suggestion suggest(const std::vector<FreeValue>& free, const std::vector<Finding>& now, const Retry& cheap,
                   const Retry& exact, const SearchSettings& settings = {});

}  // namespace bedwright
