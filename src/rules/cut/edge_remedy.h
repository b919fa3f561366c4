// What would give a hole the steel it lacks: the sizes that could be another, in words
// and as changes to try.
#pragma once

#include "rules/scene.h"

namespace bedwright {

// A hole `by` short of steel toward a side.
struct HoleShort {
  int item = -1;
  const Part& part;
  Hole hole;
  Vec3 toward;  // unit, world
  Mm by = 0;
};

// Short of steel to the edge on that side.
void suggest_edge(const Scene& scene, const HoleShort& lack, Finding& finding);

// Into what stands up on that side.
void suggest_away(const Scene& scene, const HoleShort& lack, Finding& finding);

}  // namespace bedwright
