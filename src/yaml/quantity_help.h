// What messages and schemas say about a quantity: examples and limits.
#pragma once

#include <string>
#include <vector>

#include "units/parse.h"
#include "yaml/describe.h"

namespace bedwright {

// A describe() Range in the program's own unit: angles are described in degrees.
Range own_range(Dimension dimension, Range described);

// One or two everyday quantities within the range (in the program's own unit), as a person writes them.
std::vector<std::string> example_quantities(Dimension dimension, Range own);

// "a length such as 80 in or 2032 mm".
std::string such_as(Dimension dimension, Range own);

// "304.8 mm (12 in) to 12192 mm (480 in)".
std::string limits_text(Dimension dimension, Range own);

// Whether a value is within the range, the limits included up to rounding in the conversion of units.
bool within(double value, Range range);

}  // namespace bedwright
