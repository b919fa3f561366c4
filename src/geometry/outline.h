// Closed outlines in a plane: straight runs and circular arcs, the same form a
// cut file carries. Counter-clockwise is positive.
#pragma once

#include <vector>

#include "geometry/vectors.h"

namespace bedwright {

// A vertex and the run that leaves it. bulge = tan(quarter of the arc's
// included angle): 0 straight, positive turning left, 1 a half circle.
struct Vertex {
  Vec2 at;
  double bulge = 0;
  friend bool operator==(const Vertex&, const Vertex&) = default;
};

// The last vertex's run returns to the first. No repeated vertices.
using Outline = std::vector<Vertex>;

// Second moments are about the axes through the centroid, parallel to x and y.
struct AreaProperties {
  Mm2 area = 0;
  Vec2 centroid;
  Mm4 about_x = 0;  // integral of (y - yc)^2
  Mm4 about_y = 0;  // integral of (x - xc)^2
};

// Exact for straight runs and arcs (Green's theorem, closed form per run).
AreaProperties area_properties(const Outline& outline);

// Length of the closed path.
Mm perimeter(const Outline& outline);

// Same path mirrored in the y axis (x becomes -x), kept counter-clockwise.
Outline mirrored(const Outline& outline);

Outline rectangle(Vec2 low, Vec2 high);
// Straight polygon through the points given.
Outline polygon(std::initializer_list<Vec2> points);
Outline straight(const std::vector<Vec2>& points);
// A round hole (two half-circle runs) or a slot of overall length `length`,
// end radius diameter / 2, its long axis at `angle` from x.
Outline hole_outline(Vec2 centre, Mm diameter, Mm length, Radians angle);
// Rounds the corner at vertex `index` (both its runs straight) by `radius`.
// Throws std::invalid_argument when the runs are too short for the arc.
void round_corner(Outline& outline, std::size_t index, Mm radius);

// The corners of the points' convex hull, counter-clockwise (monotone chain).
std::vector<Vec2> convex_hull(std::vector<Vec2> points);

// Straight chords with at most `deviation` between chord and arc; for pictures
// and coarse tests only, never for cutting.
std::vector<Vec2> flattened(const Outline& outline, Mm deviation);

// The arc of a bulged run from `from` to `to`. Bulge must not be 0.
struct RunArc {
  Vec2 centre;
  Mm radius = 0;
  Radians start = 0, sweep = 0;  // start angle at `from`; sweep signed as the bulge
};
RunArc run_arc(Vec2 from, Vec2 to, double bulge);

}  // namespace bedwright
