// Where things fall along the track: positions only, before any part is made.
#pragma once

#include <vector>

#include "params/datum.h"
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

// n even spaces from `from` to `to`, none over `most`.
std::vector<Mm> evenly(Mm from, Mm to, Mm most);

}  // namespace bedwright
