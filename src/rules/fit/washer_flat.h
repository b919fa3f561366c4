// Whether a head, nut or washer lies flat, clear of the root of the section it bears on.
#pragma once

#include "rules/scene.h"

namespace bedwright {

struct EndOfBolt {
  const char* what = "";  // "washer under the head"
  Mm outside = 0;         // across
  Vec3 out;               // unit, world: away from the steel
};

// Adds a stop where the piece lies on the side of an angle or a channel on which the other
// leg, web or flange stands, and reaches into it or into the fillet beside it.
void lies_flat(const Scene& scene, const Bolt& bolt, const Ply& ply, const EndOfBolt& end,
               std::vector<Finding>& findings);

}  // namespace bedwright
