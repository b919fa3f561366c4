// Remedies that are tried, not guessed.
//
// A rule proposes changes from its own figures. Here each is tried: the order is
// laid out and checked again with that one change. A change that does not clear
// its finding is dropped; one that does is kept with the number of stops it
// would bring in exchange. Findings whose rule cannot know the answer (a clamp
// under the head, a jack in a tab's way) get candidates from the order's own
// free places, nearest first.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "examine/examine.h"

namespace bedwright {

// The findings of the same order with these overrides added; nothing when it
// then does not read or cannot be laid out.
using Retry = std::function<std::optional<std::vector<Finding>>(const std::vector<std::string>& more_sets)>;

// Examines the order again and again: each time with what it is given added to `sets`.
// The store outlives it.
Retry retry_with(FileStore& store, std::string order_path, std::vector<std::string> sets,
                 ExamineOptions options);

// How many different changes one run tries at most; past it, changes not tried
// are dropped and the remedy's text stands alone. A bed with so many different
// faults wants another plan, not a longer list.
inline constexpr int most_tries = 120;

// Rewrites the changes of every stop among its findings, best first: those that bring
// no other stop, in the order proposed, then the rest by how many they bring.
void advise(const Job& job, int bunks, const Retry& retry, std::vector<Finding>& findings);

// The changes worth trying for a finding, nearest first, that its rule does not
// propose itself.
std::vector<Change> candidates(const Job& job, int bunks, const Finding& finding);

}  // namespace bedwright
