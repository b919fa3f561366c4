// How far two convex solids are apart when each may be a little out of its place.
#pragma once

#include "geometry/convex.h"

namespace bedwright {

// As separation, of pieces that may come nearer by up to `slack` along each of the world's
// axes at once: positive where some axis keeps them apart all the same.
Mm separation_with_slack(const Convex& a, const Convex& b, Vec3 slack);

}  // namespace bedwright
