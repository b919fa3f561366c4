// How much steel lies under a head, nut or washer.
#pragma once

#include "rules/cut/edge.h"

namespace bedwright {

// A ring that bears: a washer, or a head or nut by its flats about its bolt.
struct Footprint {
  Mm inside = 0, outside = 0;
};

// Area of the ring about `centre` that lies within the steel and on no hole, in the
// coordinates of the face: by slices, to two thousandths of the ring's area.
Mm2 bearing_area(const Outline& steel, const std::vector<Hole>& holes, Vec2 centre, const Footprint& ring);

// The same where the bolt may lie anywhere its own hole lets it: the least, of the middle
// and the furthest places along and across. `which`: the bolt's own hole among `holes`.
Mm2 least_bearing(const Outline& steel, const std::vector<Hole>& holes, std::size_t which, Mm bolt_diameter,
                  const Footprint& ring);

}  // namespace bedwright
