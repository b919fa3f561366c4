// Paths for a table that does not allow for its kerf itself: beside the finished
// edge by half the cut's width, in the steel that is thrown away.
#pragma once

#include "geometry/outline.h"

namespace bedwright {

// The path at `by` outside a counter-clockwise outline: its runs moved out, exact
// lines and arcs, an arc about each convex corner, runs cut back to where they meet
// at a concave one. 0 gives the outline itself. Throws std::invalid_argument when
// `by` is negative or closes a notch or a hollow.
Outline outside(const Outline& outline, Mm by);

}  // namespace bedwright
