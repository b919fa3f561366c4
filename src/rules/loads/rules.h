// The rules about loads: does it tow, does it stand. Their entries stand in the
// same kind of table as the rules over a Bed (rules/rule.h); `check` is empty,
// because they read a LoadsResult and not a Scene.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "loads/loads.h"
#include "rules/rule.h"

namespace bedwright {

const std::vector<Rule>& load_rules();

// Whether the rule is one of those.
bool is_about_loads(const std::string& code);

// Rules over a Bed, then the rules about loads: what explain and the report list.
const std::vector<Rule>& all_rules();

// What the result says against the order's limits and the ratings, with remedies.
// Sorted as run_checks sorts.
//
// Remedies that take a sum of their own for each try (a further pair of jacks, a
// smaller log) are looked for only when `remedies`: they cost many times the rest,
// and a search that tries variants asks only whether they stop.
std::vector<Finding> load_findings(const Job& job, const Bed& bed, const LoadsResult& result,
                                   const Figures& figures, bool remedies = true);

}  // namespace bedwright
