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

// How wide a washer about the bolt as laid out must be to cover a hole from end to end: twice
// from the bolt to the furthest point of the arc at the further end.
Mm to_cover(const Bolt& bolt, const HoleInWorld& hole);

// How wide what bears under the bolt's nut is: its first washer, or the nut by its flats.
Mm width_under_nut(const Bolt& bolt);

}  // namespace bedwright
