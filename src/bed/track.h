// The track as laid out: where its sections, joints, holes and bunks fall.
#pragma once

#include <algorithm>
#include <cmath>
#include <vector>

#include "bed/identity.h"
#include "units/units.h"

namespace bedwright {

struct BunkPlace {
  int section = 0;  // from 0
  int set = 0;      // of the section's bunk holes: index into SectionHoles::bunk_sets
  Mm within = 0;    // of its bolts from the section's front end
  Mm x = 0;
};

// Holes within one section, from its front end: mounting holes of the two sides (alike but for
// rails that are turned end for end), every bunk set drilled, holes for stops.
struct SectionHoles {
  std::vector<Mm> mounting_left, mounting_right, bunk_sets, stop_holes;
  const std::vector<Mm>& mounting(Side side) const {
    return side == Side::right ? mounting_right : mounting_left;
  }
  friend bool operator==(const SectionHoles&, const SectionHoles&) = default;
};

struct Track {
  Mm rail_length = 0;  // of the longest section; of each, `lengths`
  Mm bunk_pitch = 0;   // 0 where the kit lists its bunk holes
  Mm total_length = 0;
  Mm remainder = 0;  // what a section has over whole pitches, the most of them
  int sections = 0;
  std::vector<Mm> lengths;          // of each section
  std::vector<Mm> starts;           // x of each section's front end
  std::vector<Mm> joints;           // x of the middle of each joint
  std::vector<SectionHoles> holes;  // of each section
  std::vector<BunkPlace> bunks;     // from the front
  Mm gauge = 0;
  Mm standoff = 0;                // rail underside above the mains
  Mm head_from = 0, head_to = 0;  // travel of the head's centre
  Mm head_lock = 0;
  Mm wheel_base = 0;  // of the head, front wheel to rear wheel on one rail

  int bunk_count() const { return static_cast<int>(bunks.size()); }
  bool sections_alike() const {
    return std::all_of(lengths.begin(), lengths.end(),
                       [&](Mm length) { return std::abs(length - rail_length) < same_place; });
  }
  // From one bunk to the next, at most.
  Mm bunk_spacing() const {
    if (bunk_pitch > 0) return bunk_pitch;
    Mm most = 0;
    for (std::size_t i = 1; i < bunks.size(); ++i) most = std::max(most, bunks[i].x - bunks[i - 1].x);
    return most;
  }
  Mm shortest() const {
    return lengths.empty() ? rail_length : *std::min_element(lengths.begin(), lengths.end());
  }
};

}  // namespace bedwright
