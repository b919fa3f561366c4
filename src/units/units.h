// Units: every length inside the program is a millimetre, every mass a
// kilogram, every force a newton, every stress a megapascal, every angle a
// radian. The aliases below say so in the types; conversion happens only where
// a parameter is read or a figure is printed.
#pragma once

#include <numbers>

namespace bedwright {

using Mm = double;
using Mm2 = double;
using Mm3 = double;
using Mm4 = double;
using Kg = double;
using Newton = double;
using Mpa = double;
using Radians = double;

// The international inch and pound (exact by definition since 1959).
inline constexpr Mm inch = 25.4;
inline constexpr Mm foot = 12 * inch;
inline constexpr Kg pound = 0.45359237;
// Standard gravity, ISO 80000-3 (exact).
inline constexpr double gravity = 9.80665;
inline constexpr Newton pound_force = pound * gravity;
inline constexpr Mpa ksi = 1000 * pound_force / (inch * inch);
inline constexpr Radians degree = std::numbers::pi / 180;

// Two places in the model closer than this are the same place. A hundredth of
// the smallest figure a sheet prints (0.01 mm), and far above the rounding of a
// double over a 20 m bed.
inline constexpr Mm same_place = 1e-4;

}  // namespace bedwright
