// Pictures of the whole bed with hidden lines taken out. Plain data; the kernel
// stays behind it.
#pragma once

#include <vector>

#include "geometry/vectors.h"

namespace bedwright {

// Parallel projection. `toward_eye` points from the bed to the viewer, `up` to
// the top of the picture (its part square to `toward_eye` counts). Any lengths;
// not parallel to each other.
struct ViewDirection {
  Vec3 toward_eye{0, 0, 1};
  Vec3 up{-1, 0, 0};
};

// Isometric, seen from the front, the kerb side and above.
inline constexpr ViewDirection isometric_view{{-1, 1, 1}, {0, 0, 1}};

enum class ViewEdge {
  sharp,    // two faces meet at an angle
  smooth,   // two faces run into each other
  outline,  // a rounded face turns out of sight
};

// One run of a visible (or hidden) edge. Picture coordinates: x right, y up,
// millimetres of the bed, the world's origin at (0, 0).
struct ViewLine {
  std::vector<Vec2> points;  // at least two
  bool visible = true;
  ViewEdge edge = ViewEdge::sharp;
  bool standing = false;  // of a part that stands: drawn thin
};

using View = std::vector<ViewLine>;

// From above, front at the left, kerb side up; from the road side, front at the
// left; from the rear, kerb side at the right.
inline constexpr ViewDirection plan_direction{{0, 0, 1}, {0, 1, 0}};
inline constexpr ViewDirection side_direction{{0, -1, 0}, {0, 0, 1}};
inline constexpr ViewDirection rear_direction{{1, 0, 0}, {0, 0, 1}};

// Those of the general arrangement.
struct BedViews {
  View plan, side, rear, isometric;
};

}  // namespace bedwright
