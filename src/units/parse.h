// Quantities as people write them: "6 ft 5-1/2 in", "1968.5 mm", "850 lb",
// "36 ksi", "25 deg".
//
// A quantity always names its unit. Imperial figures may be decimals, fractions
// or a whole with a fraction (77.5 in, 3/16 in, 77-1/2 in, 77 1/2 in); feet may
// be followed by inches under twelve. Metric figures are decimals. A minus in
// front holds for the whole quantity. Nine digits before the point and twelve
// behind it are the most, so nothing can overflow.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "units/units.h"

namespace bedwright {

enum class Dimension { length, mass, stress, angle };

// Either a value, in the program's own unit (mm, kg, MPa, rad), or what is wrong
// with the text and what would do instead.
struct ParsedQuantity {
  std::optional<double> value;
  std::string what, would_do;
};

ParsedQuantity parse_quantity(Dimension dimension, std::string_view text);

// The texts parse_quantity takes, as a regular expression (the common subset of
// ECMAScript and Python). Exact but for what no expression can weigh: that a
// fraction behind a whole is less than one, and a fraction behind feet less than 12.
const std::string& quantity_pattern(Dimension dimension);

}  // namespace bedwright
