// The track as laid out: where its sections, joints, holes and bunks fall.
#pragma once

#include <vector>

#include "units/units.h"

namespace bedwright {

struct BunkPlace {
  int section = 0;  // from 0
  int set = 0;      // of the section's bunk holes: index into Track::bunk_sets
  Mm within = 0;    // of its bolts from the section's front end
  Mm x = 0;
};

struct Track {
  Mm rail_length = 0, bunk_pitch = 0, total_length = 0;
  Mm remainder = 0;  // rail_length less whole pitches
  int sections = 0;
  std::vector<Mm> starts;  // x of each section's front end
  std::vector<Mm> joints;  // x of the middle of each joint
  // Within a section, from its front end: mounting holes, every bunk set drilled, holes for stops.
  std::vector<Mm> mounting, bunk_sets, stop_holes;
  std::vector<BunkPlace> bunks;  // from the front
  Mm gauge = 0;
  Mm standoff = 0;                // rail underside above the mains
  Mm head_from = 0, head_to = 0;  // travel of the head's centre
  Mm head_lock = 0;
  Mm wheel_base = 0;  // of the head, front wheel to rear wheel on one rail

  int bunk_count() const { return static_cast<int>(bunks.size()); }
};

}  // namespace bedwright
