// Figures as the comparison prints them: in the order's own units, for reading.
#pragma once

#include <string>

#include "rules/figures.h"

namespace bedwright {

// Short where the tape has a mark for it ("118 in"), else as a finding says it
// ("about 25-53/64 in (656.2 mm)"); millimetres to a tenth.
std::string figure_text(const Figures& figures, Mm length);

std::string mass_text(const Figures& figures, Kg mass);

}  // namespace bedwright
