// Paths for a table that does not allow for its kerf itself: beside the finished
// edge by half the cut's width, in the steel that is thrown away.
#pragma once

#include "bed/bed.h"

namespace bedwright {

// The path at `by` outside a counter-clockwise outline: its runs moved out, exact
// lines and arcs, an arc about each convex corner, runs cut back to where they meet
// at a concave one. 0 gives the outline itself. Throws std::invalid_argument when
// `by` is negative or closes a notch or a hollow.
Outline outside(const Outline& outline, Mm by);

// The hole whose edge is `by` inside the hole's own. Throws std::invalid_argument
// when nothing would be left of it.
Hole inside(Hole hole, Mm by);

}  // namespace bedwright
