// The whole bed in three views and a picture, for the general arrangement. The
// views come from outside: this folder knows no kernel.
#pragma once

#include "draw/view.h"

namespace bedwright {

// Where a place of the bed lies in a view: x right, y up, millimetres
// of the bed, the world's origin at (0, 0).
Vec2 place_in_view(const ViewDirection& direction, Vec3 place);

}  // namespace bedwright
