// Finds a clear place for a part's name inside its outline.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "drawing/list2d.h"

namespace bedwright {

// Letters keep this far from every hole and edge, and are at least this high:
// a scribed or plasma-marked letter smaller than that is not read (common
// practice, no published source).
inline constexpr Mm scribe_clearance = 3;
inline constexpr Mm scribe_least_height = 4;
inline constexpr Mm scribe_most_height = 12;

struct Lettering {
  Mm height = 0;
  Box2 box;  // around all the strokes
  std::vector<std::vector<Vec2>> strokes;
};

// The words on one, two or three lines, upright or turned a quarter, as large as
// fits, as near the middle as fits. Nothing when letters of the least height
// have no place.
std::optional<Lettering> scribe(const Plate& plate, const std::vector<std::string>& words);

}  // namespace bedwright
