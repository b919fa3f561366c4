// How the head meets a track stop: what of the two lies in one line along the bed.
#pragma once

#include <algorithm>

#include "geometry/vectors.h"

namespace bedwright {

// Millimetres in common across the bed and up and down; negative: apart by so much.
struct Meet {
  Mm width = 0, height = 0;
  Mm least() const { return std::min(width, height); }
  bool touch() const { return least() > same_place; }
};

inline Meet meet_along(const Box3& a, const Box3& b) {
  return {std::min(a.high.y, b.high.y) - std::max(a.low.y, b.low.y),
          std::min(a.high.z, b.high.z) - std::max(a.low.z, b.low.z)};
}

}  // namespace bedwright
