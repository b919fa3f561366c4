// A prism with slanting ends, made face by face: a Boolean cut of the same takes
// some twenty times as long.
#pragma once

#include <TopoDS_Solid.hxx>

#include "geometry/outline.h"

namespace bedwright {

// The outline, in (y, z), swept along X between the planes x = start * y and
// x = length + end * y. Throws std::runtime_error when the planes cross within
// the outline.
TopoDS_Solid slanted_prism(const Outline& outline, Mm length, double start, double end);

}  // namespace bedwright
