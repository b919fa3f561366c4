// Splits the text of a quantity into figures and unit words. Only parse.cpp
// needs it.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace bedwright {

// One figure with the word behind it.
struct QuantityTerm {
  double figure = 0;
  bool whole = false;      // no point, no fraction
  bool fraction = false;   // has a fraction
  std::string text, unit;  // the figure as written; the unit, empty when there is none
};

struct ScannedQuantity {
  bool negative = false;
  std::vector<QuantityTerm> terms;
  std::string what, would_do;  // set when the text is no quantity at all
};

ScannedQuantity scan_quantity(std::string_view text);

}  // namespace bedwright
