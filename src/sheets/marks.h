// What drawings carry beside outlines: running dimensions, weld symbols, labels
// that find a clear place.
#pragma once

#include <string>
#include <vector>

#include "draw/list2d.h"
#include "sheets/sheet.h"

namespace bedwright {

// A place measured from a datum and how it is printed.
struct Running {
  Mm at = 0;  // on paper, along x (or y)
  std::string label;
};

// Running dimensions over (`up`) or under a picture whose edge is at `edge`:
// extension lines, and labels turned to be read from the right, set apart so that
// none meets another (ISO 129-1, running dimensioning from one origin). Returns
// how far the labels reach along y.
Mm running_along(List2d& list, std::vector<Running> places, Mm edge, bool up, Mm height);

// The same along y, labels level, to the right of `edge` (or left of it).
Mm running_across(List2d& list, std::vector<Running> places, Mm edge, bool right, Mm height);

// A size between two places: extension lines from `edge`, the dimension line with
// its arrows at `at`, the label above it, or beyond its end where it is too wide.
void dimension_along(List2d& list, Mm from, Mm to, Mm edge, Mm at, const std::string& label, Mm height);
// The same along y, its label turned to be read from the right.
void dimension_up(List2d& list, Mm from, Mm to, Mm edge, Mm at, const std::string& label, Mm height);

// A fillet weld symbol in the order of AWS A2.4: size at the left of the
// triangle, length at its right; arrow side below the reference line, other side
// above.
struct WeldMark {
  std::string size, length, tail;
  bool both_sides = false;
};
// The arrow's tip, and the knee where the reference line starts, to the right.
void weld_symbol(List2d& list, const WeldMark& mark, Vec2 tip, Vec2 knee, Mm height);
Mm weld_symbol_width(const WeldMark& mark, Mm height);

}  // namespace bedwright
