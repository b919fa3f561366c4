// What adds up along the track from the place where it is pinned.
#pragma once

#include <vector>

#include "bed/bed.h"

namespace bedwright {

// Sections and joints between the pinned place and a hole, fractions where one
// is shared (see params/datum.h), and what each may be out.
struct FromDatum {
  double sections = 0, joints = 0;
  int direction = 0;  // +1 rearward of the datum, -1 ahead of it, 0 in the pinned section
  Mm length_tolerance = 0;
  Mm gap_plus = 0;  // a joint is never closed by less than nothing: one way only
};

// One entry for each section and each joint, because a root sum square is over separate
// errors. All are marked from_datum.
std::vector<Contribution> along_track(const FromDatum& from);

}  // namespace bedwright
