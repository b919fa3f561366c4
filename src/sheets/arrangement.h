// The whole bed in three views and a picture, for the general arrangement. The
// views come from outside: this room knows no kernel.
#pragma once

#include "drawing/views.h"

namespace bedwright {

// From above, front at the left, kerb side up; from the road side, front at the
// left; from the rear, kerb side at the right.
inline constexpr ViewDirection plan_direction{{0, 0, 1}, {0, 1, 0}};
inline constexpr ViewDirection side_direction{{0, -1, 0}, {0, 0, 1}};
inline constexpr ViewDirection rear_direction{{1, 0, 0}, {0, 0, 1}};

struct BedViews {
  View plan, side, rear, isometric;
};

// Where a place of the bed lies in a view of views.h: x right, y up, millimetres
// of the bed, the world's origin at (0, 0).
Vec2 place_in_view(const ViewDirection& direction, Vec3 place);

}  // namespace bedwright
