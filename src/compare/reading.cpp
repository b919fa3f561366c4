// Lengths and masses as texts for the comparison.
#include "compare/reading.h"

#include <fmt/format.h>

#include <cmath>

#include "units/print.h"
#include "units/tape.h"

namespace bedwright {

std::string figure_text(const Figures& figures, Mm length) {
  constexpr Mm finest = inch / 64;
  const bool on_mark = std::abs(length - on_tape(length, finest)) < same_place / 2;
  return figures.printing == Printing::inches && on_mark ? tape(length, 64) : figures.say(length);
}

std::string mass_text(const Figures& figures, Kg mass) {
  return figures.printing == Printing::metric ? fmt::format("{:.1f} kg", mass)
                                              : fmt::format("{:.1f} lb", mass / pound);
}

}  // namespace bedwright
