// Mass, centre and inertia of parts, and the bed as a list of weights.
#pragma once

#include <Eigen/Core>
#include <vector>

#include "bed/bed.h"

namespace bedwright {

// `second` is the integral of r r^T over the mass, about the centre, in the axes
// the body is given in: kg mm2. The inertia tensor is trace(second) 1 - second.
struct Body {
  Kg mass = 0;
  Vec3 centre;
  Eigen::Matrix3d second = Eigen::Matrix3d::Zero();
};

// In the part's own frame. Mass and centre as bed.h states them; the second
// moments of plates and members in closed form over their outline as a polygon
// (arcs within 0.01 mm) and their true end cuts, holes taken out as points; a
// bought item's mass is spread evenly through its envelope; hardware is a point.
Body body_of(const Part& part);
Body placed(const Body& body, const Placement& placement);
// `a` and `b` as one.
Body together(const Body& a, const Body& b);
// About the body's centre, kg m2: about x (roll), y (pitch) and z (yaw).
Vec3 inertia(const Body& body);

enum class Carried {
  frame,  // made parts, coupler, jacks
  track,  // rails, bunks and what sits on them
  head,
  gear,  // axles and wheels: on the ground when towed, hung from the mains on jacks
};

// One shown item as a weight. A long one is spread evenly from `from` to `to`.
struct Weight {
  Carried carried = Carried::frame;
  Kg mass = 0;
  Vec3 centre;
  Mm from = 0, to = 0;
};

struct BedWeights {
  std::vector<Weight> weights;    // hardware of one bolt and items at one place are one weight
  Body frame, track, head, gear;  // the head where the order locks it
};

BedWeights weigh(const Bed& bed);

}  // namespace bedwright
