// Pictures of the whole bed with hidden lines taken out. Plain data; the kernel
// stays behind it.
#pragma once

#include <memory>
#include <vector>

#include "bed/bed.h"

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
};

using View = std::vector<ViewLine>;

// Makes views of the shown items, bolt hardware left out, members drawn with
// sharp corners and holes not drawn: at the scale of a whole bed they are specks.
// Shapes are kept from one view to the next.
class Viewer {
 public:
  // Reads `bed` for as long as it lives. Arcs are given as chords that stray at
  // most about `deviation` from them.
  explicit Viewer(const Bed& bed, Mm deviation = 0.5);
  ~Viewer();
  Viewer(Viewer&&) noexcept;
  Viewer& operator=(Viewer&&) noexcept;

  // Visible lines come first; hidden ones only `with_hidden`. The same bed makes
  // the same lines in the same order. Throws std::invalid_argument for a
  // direction that is none, std::runtime_error when a part cannot be made or
  // projected.
  View view(const ViewDirection& direction, bool with_hidden = false);

 private:
  struct Inside;
  std::unique_ptr<Inside> inside_;
};

}  // namespace bedwright
