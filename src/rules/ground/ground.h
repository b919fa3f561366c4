// The road under a bed that stands level on its tyres.
#pragma once

#include <optional>
#include <vector>

#include "bed/bed.h"
#include "rules/scene.h"

namespace bedwright {

// World z of the tyres' lowest point; nothing for a bed without wheels.
std::optional<Mm> ground_level(const Bed& bed);

// How far the wheels travel up to their bump stops; 0 where they have none.
Mm bump_travel(const Bed& bed);

// Where the wheels that are shown touch the road.
struct RoadWheels {
  Mm foremost = 1e9, rearmost = -1e9;  // x of their middles
  Mm radius = 0;
};
RoadWheels road_wheels(const Bed& bed);

// The boxes of an item that may meet a road that bends; none of wheels and axles, which go with
// it. A bought item block by block: a jack's foot does not reach as far back as its plate.
std::vector<Box3> boxes_over_road(const Scene& scene, int item);

}  // namespace bedwright
