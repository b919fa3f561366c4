// Lengths as the drill drawings and the lists print them.
#pragma once

#include <string>

#include "params/order.h"

namespace bedwright {

// A layout distance to the tape's mark without its unit: "77-1/2", or
// millimetres with at most one decimal, "1968.5".
std::string tape_figure(Mm length, const Heading& heading);

// A hole's size to 1/64 in without its unit, or millimetres: "9/16", "14.3".
std::string size_figure(Mm size, const Heading& heading);

// The same two with the unit of the order's printing: "77-1/2 in", "1968.5 mm".
std::string tape_length(Mm length, const Heading& heading);
std::string size_length(Mm size, const Heading& heading);

// Millimetres with one decimal, none where it is 0: "1968.5", "1968".
std::string mm_figure(Mm length);

// Inches with three decimals: "77.500".
std::string inch_figure(Mm length);

}  // namespace bedwright
