// Lengths laid out or cut by a tape: to its marks, and only to those.
#pragma once

#include <cmath>

#include "units/units.h"

namespace bedwright {

// Removes the noise of adding and subtracting, so that equal parts compare equal.
inline Mm tidy(Mm x) { return std::round(x * 1e6) / 1e6; }

// The tape's nearest mark; half way, the one further from 0. Throws
// std::invalid_argument where the length is not finite or the mark not above 0.
Mm on_tape(Mm length, Mm mark);

// The mark at or below; a hair is added, for a length that is on the mark. Throws as
// on_tape does.
Mm down_to_tape(Mm length, Mm mark);

}  // namespace bedwright
