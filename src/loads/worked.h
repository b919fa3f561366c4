// Sums a person can follow, and how near each limit is.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "loads/loads.h"

namespace bedwright {

// How near each limit is, whether it is kept or not: 1 is just at it. For
// comparing variants.
struct LoadMargin {
  std::string code;                       // of the rule
  std::string figure;                     // "tongue share"
  double used = 0;                        // measured over limit
  std::optional<TravelCase> travel = {};  // where it is one for each way of travelling
};
// "tongue share, head locked front"; where a column has little room, "tongue share, head front".
std::string name(const LoadMargin& margin, bool brief = false);

std::vector<LoadMargin> load_margins(const Job& job, const LoadsResult& result);

// The sums behind the figures, one line each, in the order's units: a person can
// follow them with a pocket calculator.
std::vector<std::string> worked_lines(const Job& job, const Bed& bed, const LoadsResult& result);

}  // namespace bedwright
