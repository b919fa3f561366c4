// Where things fall along the track: positions only, before any part is made.
#pragma once

#include <vector>

#include "params/kit.h"
#include "params/order.h"

namespace bedwright {

struct TrackPlan {
  Mm rail_length = 0, pitch = 0, total = 0, remainder = 0;
  int sections = 0;
  std::vector<Mm> starts;     // x of each section's front end
  std::vector<Mm> joints;     // x of the middle of each joint
  std::vector<Mm> mounting;   // within a section, from its front end
  std::vector<Mm> bunk_sets;  // within a section, every set drilled
  struct Place {
    int section = 0;
    Mm within = 0;            // from the section's front end
    Mm x = 0;
  };
  std::vector<Place> bunks;
  std::vector<Mm> stop_holes; // within a section
};

TrackPlan plan_track(const Order& order, const Kit& kit);

// Rail sections and joints that lie between the pinned datum and a hole in
// section `index` (0 first): how much of each tolerance has added up there. The
// hole's place is held from one end of its section (`from_rear_end`: the rear
// one), so the section's own length counts when that end is the far one. A track
// pinned at its middle shares an odd count's middle section, or an even count's
// middle joint, between both ends.
struct Accumulated {
  double sections = 0, joints = 0;
  int direction = 0;          // +1 rearward of the datum, -1 ahead of it, 0 in the pinned section
};
Accumulated accumulated(Datum datum, int sections, int index, bool from_rear_end);

// n even spaces from `from` to `to`, none over `most`.
std::vector<Mm> evenly(Mm from, Mm to, Mm most);

}  // namespace bedwright
