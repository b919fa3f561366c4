// What an examination found, as JSON: in report.json, in `check --json` and in a browser
// the same keys with the same words (packet/report.h says what each is).
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <vector>

#include "examine/examine.h"

namespace bedwright {

// A figure as the files for programs hold it: to 1e-6 of its unit, and no "-0".
double to_a_millionth(double value);

nlohmann::ordered_json findings_json(const std::vector<Finding>& findings);

// {"stop", "warn", "note"}, whole numbers.
nlohmann::ordered_json counts_json(const std::vector<Finding>& findings);

// A list of {"file", "line", "column", "key", "what", "would_do", "text"}; the last is all
// of it on a line, as the commands print it.
nlohmann::ordered_json problems_json(const std::vector<Problem>& problems);

// Of an examination that was given no judge: {"problems"}, or {"stopped", "open",
// "counts", "findings"}. "open" counts the warnings that only a judge could make a stop
// of, or take back: a bed that nothing stops goes together for sure where it is 0.
nlohmann::ordered_json unjudged_json(const Examination& examination);

}  // namespace bedwright
