// The smallest set of changes that clears every stop.
//
// Every single change is tried. Then come sets of two or three changes to different
// parameters whose changes, each as it works alone, clear every stop between them:
// those that bring the fewest other stops first, then the least costly. Next come pairs
// that one finding's rule proposes, whatever each change does alone; then, as far as
// the tries allow, any set that makes progress.
//
// Sets are tried without the kernel first, which can only miss stops. What is clear
// without it is checked with it, the least costly first, before it is offered; the
// search goes on with what the kernel found.
//
// So a single change that is enough is always found. A pair or three is found when its
// changes clear the stops between them. A set whose changes each do nothing alone is
// found only if the tries reach it, and threes of the first kind come before pairs of
// the second. Where no such set is enough, or single changes show that so few cannot
// be, the nearest set is added to, one change at a time, each time the change that
// leaves the fewest stops. That finds many small mistakes in one order, but not always
// with the fewest changes.
//
// The search sees an order only through two functions that check a set of overrides,
// one without the kernel and one with it, so it is tested on made-up beds.
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
