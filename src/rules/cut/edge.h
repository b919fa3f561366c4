// Distances from holes to edges and to each other.
#pragma once

#include "rules/scene.h"

namespace bedwright {

// Distance from a point to a closed outline: to straight runs and true arcs.
struct NearestEdge {
  Mm distance = 0;
  Vec2 toward;  // unit, from the point to the edge
};
NearestEdge nearest_edge(const Outline& outline, Vec2 from);

// The same to the free edges of a member's face: both end cuts and the free edge
// of a flange or leg. The root is no edge, nor are a web's flanges.
NearestEdge nearest_edge(const Member& member, Face face, Vec2 from);

// Centres of a hole's end arcs (one and the same for a round hole).
std::pair<Vec2, Vec2> arc_centres(const Hole& hole);

// "hole 2 of tab plate (track bolt)"; `index` from 0.
std::string hole_text(const Part& part, std::size_t index, const Hole& hole);

// Distance between the nearest points of two segments.
Mm segment_distance(Vec2 a, Vec2 b, Vec2 c, Vec2 d);

// The largest bolt through each hole of each part: by part, by hole; null where
// none goes through.
std::vector<std::vector<const BoltSize*>> bolts_through(const Bed& bed);

}  // namespace bedwright
