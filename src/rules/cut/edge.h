// Distances from holes to edges and to each other.
#pragma once

#include "rules/scene.h"

namespace bedwright {

// Distance from a point to a closed outline, to straight runs and true arcs: positive
// inside it, negative outside.
struct NearestEdge {
  Mm distance = 0;
  Vec2 toward;  // unit, the way the steel ends: out of the outline through its nearest point
};
NearestEdge nearest_edge(const Outline& outline, Vec2 from);

// The same to the free edges of a member's face: both end cuts and the free edge
// of a flange or leg. The root is no edge, nor are a web's flanges.
NearestEdge nearest_edge(const Member& member, Face face, Vec2 from);

// A hole of a part in the coordinates of the face it goes through. A bought item's lug
// has them along the item's own axes, the first along its X where it can be.
struct HoleOnFace {
  Hole hole;
  std::optional<Face> face;  // members only
  int index = 0;
  Vec3 first, second;  // unit, in the part's frame
};
std::vector<HoleOnFace> holes_on_faces(const Part& part);

// From the hole's centre (a slot: of its nearer end arc) to the nearest free edge.
// Throws std::logic_error for a lug that is no part of its item's envelope.
NearestEdge nearest_edge_of(const Part& part, const HoleOnFace& hole);

// All of the face the hole goes through, round to the outside of its root. Throws as above.
Outline steel_of(const Part& part, const HoleOnFace& hole);

// What stands up from the face beside a hole: the other leg, a flange, a jack's post.
struct Raised {
  Mm distance = 0;  // from the hole's rim; negative where the hole runs into it
  Vec2 toward;      // unit, from the hole
  const char* what = "";
  bool is_fillet = false;  // only the fillet beside it
};
// The nearest, a hole in the fillet alone told as such; nothing on a flat plate.
std::optional<Raised> nearest_raised(const Part& part, const HoleOnFace& hole);

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
