// Rounds lengths to the tape's marks.
#include "units/tape.h"

#include <stdexcept>

namespace bedwright {
namespace {

void require(Mm length, Mm mark) {
  if (!std::isfinite(length)) throw std::invalid_argument("a length to lay out is not finite");
  if (!(mark > 0)) throw std::invalid_argument("a tape's mark must be longer than nothing");
}

}  // namespace

Mm on_tape(Mm length, Mm mark) {
  require(length, mark);
  return tidy(std::round(length / mark) * mark) + 0.0;
}

Mm down_to_tape(Mm length, Mm mark) {
  require(length, mark);
  return tidy(std::floor(length / mark + 1e-6) * mark) + 0.0;
}

}  // namespace bedwright
