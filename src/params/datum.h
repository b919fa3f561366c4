// Where the track is pinned, and what adds up from there.
#pragma once

#include "params/kit.h"
#include "params/order.h"

namespace bedwright {

// Rail sections and joints that lie between the pinned datum and a hole in
// section `index` (0 first): how much of each tolerance has added up there. The
// hole's place is held from one end of its section (`from_rear_end`: the rear
// one), so the section's own length counts when that end is the far one. A track
// pinned at its middle shares an odd count's middle section, or an even count's
// middle joint, between both ends.
struct Accumulated {
  double sections = 0, joints = 0;
  int direction = 0;  // +1 rearward of the datum, -1 ahead of it, 0 in the pinned section
};
Accumulated accumulated(Datum datum, int sections, int index, bool from_rear_end);

// Whether a mounting hole `within` a section is held from the section's rear end:
// listed holes are held from the front end (the rear one, of a rail that lies `turned` end for
// end), the others from their nearer one.
bool held_from_rear_end(const KitMounting& mounting, bool turned, Mm within, Mm rail_length);

}  // namespace bedwright
