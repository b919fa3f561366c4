// DXF release 12 (AC1009), ASCII: the oldest form every plasma table, nesting
// program and viewer reads.
//
// Release 12 has no header variable for units, so the units are stated in
// comments (group 999) at the head of the file, one to each line of
// List2d::comments, and in the text a drawing itself carries.
#pragma once

#include <string>

#include "draw/list2d.h"

namespace bedwright {

// The file's bytes: lines end in CR LF, numbers have at most eight decimals and
// a point whatever the locale, never "-0". Closed outlines become POLYLINE with
// the closed flag and bulges, Paths open POLYLINEs. Characters beyond ASCII are
// written as \U+XXXX; control characters as spaces. `scale` multiplies every
// coordinate, radius and height (1 / inch writes a millimetre list in inches).
// Throws std::invalid_argument for a layer name release 12 does not allow, a
// figure that is not finite, or an entity of no size (the message says which).
std::string dxf(const List2d& list, double scale = 1);

// The number as the writer prints it.
std::string dxf_number(double value);

}  // namespace bedwright
