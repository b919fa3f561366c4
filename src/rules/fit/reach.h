// What gets on a bolt's head or nut, and turns it.
#pragma once

#include "rules/scene.h"

namespace bedwright {

// Worst first.
enum class Grip {
  none,
  held,         // an open-end wrench goes on but does not swing: it holds, no more
  short_swing,  // it swings 30 degrees, which turns it when it is flipped each time
  swing,        // it swings 60 degrees, a flat at a time
  socket,       // a socket goes straight on
};

enum class BoltEnd { head, nut };

// Tools as catalog/fastener.h has them, against everything that is there when the
// bed is bolted together; what moves is moved out of the way. Without a judge's
// exactness: by convex pieces, so on the safe side.
// `try_first`: the position of the handle to try first (0 to 11), and where it was
// found free; like bolts are free alike, and the answer does not depend on it.
Grip grip_on(const Scene& scene, int bolt, BoltEnd end, int& try_first);

}  // namespace bedwright
