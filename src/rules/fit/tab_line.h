// The line of the kit's mounting holes against that of a standing frame's tab holes.
#pragma once

#include <optional>

#include "rules/scene.h"

namespace bedwright {

// Outward from the back of the main's web, alike on both sides.
struct TabLine {
  Mm track = 0;  // the kit's holes
  Mm tabs = 0;   // the tabs', as measured
  Mm takes = 0;  // what rail's and tab's holes take across the bed, the least of all bolts
  bool fits() const { return std::abs(track - tabs) <= takes + same_place; }
};

// Nothing for a frame that is built for the track.
std::optional<TabLine> tab_line(const Scene& scene);

}  // namespace bedwright
