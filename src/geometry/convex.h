// Convex solids: the cheap test of whether two things can touch.
#pragma once

#include <limits>
#include <vector>

#include "geometry/vectors.h"

namespace bedwright {

struct Convex {
  std::vector<Vec3> corners;
  std::vector<Vec3> normals;  // unit, outward, one for each face
  std::vector<Vec3> edges;    // unit, distinct directions
  Box3 bounds;
  bool exact = true;    // the piece is steel throughout: no hole, fillet or round it only approximates
  bool shank = false;   // the part of a bolt that lies inside its plies
  bool fillet = false;  // covers the fillet in a rolled section's corner, or a tube's round corner
};

Convex placed(Convex piece, const Placement& placement);

// A prism whose base corners are `base` and top corners `top`, in step, the base
// counter-clockwise seen from the top. Side faces must be flat.
Convex frustum(const std::vector<Vec3>& base, const std::vector<Vec3>& top, Vec3 base_normal,
               Vec3 top_normal);

// A prism from a polygon (counter-clockwise seen from +axis) swept from
// `from` to `to` along the placement's Z.
Convex prism(const std::vector<Vec2>& polygon, Mm from, Mm to, const Placement& placement = {});

// Separating-axis test. Positive: a lower bound on the distance between the
// pieces. Negative: minus the least overlap depth (exact for convex polyhedra).
// `enough`: the search may stop at the first axis that shows more than this.
Mm separation(const Convex& a, const Convex& b, Mm enough = std::numeric_limits<Mm>::infinity());

// How far `a` must move along `direction` (unit) to leave `b`; 0 when they do
// not overlap. Exact for convex polyhedra.
Mm exit_distance(const Convex& a, const Convex& b, Vec3 direction);

// Distance along `direction` (unit) from `from` to the piece; infinity when the
// ray misses; 0 when it starts inside.
Mm ray_hit(const Convex& piece, Vec3 from, Vec3 direction);

}  // namespace bedwright
