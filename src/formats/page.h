// A printed page: a list whose coordinates are millimetres on paper, from the
// page's lower left corner, x right and y up.
#pragma once

#include <string>

#include "draw/list2d.h"

namespace bedwright {

struct Page {
  List2d list;
  Mm width = 420, height = 297;
  std::string title;  // its bookmark
};

struct Rgb {
  double red = 0, green = 0, blue = 0;  // 0 to 1
};

// The colour a layer prints in, from its DXF colour index: 7 is black; the bright
// ones are darkened so that they read on white paper; indices past the first nine
// print black, 250 to 255 grey.
Rgb printed_colour(int index);

// Dash and gap lengths on paper; none for a continuous line. ISO 128: a hidden
// line is dashed, a centre line long-dashed dotted.
std::vector<double> dashes(LineKind kind);

}  // namespace bedwright
