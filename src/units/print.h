// Figures as sheets, lists and messages print them. Every function takes a
// finite figure (std::invalid_argument otherwise) and never prints a minus before
// a zero; fractions of an inch round halves away from zero. What is printed parses back
// (units/parse.h).
#pragma once

#include <string>

#include "units/parse.h"
#include "units/units.h"

namespace bedwright {

// Inches with a reduced fraction: tape(1968.5, 16) is "77-1/2 in". `denominator`
// is the finest fraction, at least 1.
std::string tape(Mm length, int denominator);

// The same with feet once there is a whole one: "6 ft 5-1/2 in", "6 ft 0 in", "5-1/2 in".
std::string feet_tape(Mm length, int denominator);

// Inches with three decimals: "77.500 in".
std::string decimal_inch(Mm length);

// Millimetres with so many decimals: "1968.5 mm".
std::string millimetres(Mm length, int decimals);

// A figure with up to four decimals and no zeros at its end: "304.8", "12".
std::string plain_figure(double value);

// A quantity of the program's own unit with that unit and the trade's in
// brackets: "304.8 mm (12 in)", "386 kg (850.984 lb)", "250 MPa (36.2594 ksi)", "25 deg".
std::string both_units(Dimension dimension, double value);

// A length, mass, stress or angle in the one unit it comes out roundest in,
// fit to be written in a parameter file.
std::string as_written(Dimension dimension, double value);

}  // namespace bedwright
