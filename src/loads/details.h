// Details of the frame under its loads: where jacks and tongue sit on the mains, the ground
// under a foot, and what a life on the road does to welds and channels.
#pragma once

#include <vector>

#include "bed/bed.h"
#include "params/job.h"

namespace bedwright {

struct Tow;
struct TongueLoads;
struct TabLoads;
struct Stand;
struct JackLoad;

// The plate of the most loaded jack. Its post stands `arm` out from the back of the main's
// web; the four bolts take the load as shear alike, and its moment as a pull on the upper or
// lower two. The main hands the moment, with that of a log's load on the bunks' bolts
// further in, to its cross members; one is taken to carry all of it.
struct JackSeat {
  Identity jack;
  Newton load = 0;
  Mm arm = 0;
  double turning = 0;  // N mm, about the back of the web
  Mpa bolt_shear = 0, bolt_tension = 0, bolt_shear_allowed = 0, bolt_tension_allowed = 0;
  double twisting = 0;  // N mm, on one cross member
  Mpa cross_member = 0, cross_member_allowed = 0;
};

// The front member's flange over one tongue channel, which the coupler's load levers against
// it about the end of its lap under the main; as the bed rebounds it pulls.
struct TongueSeat {
  Mm lap = 0, arm = 0;
  Newton front = 0;
  Newton allowed = 0;  // AISC 360 section J10.1: 6.25 Fy tf^2 / 1.67, half near the member's end
};

// The foot of the most loaded jack, and the square of timber it wants under it on ground that
// bears 1500 lb/ft2 (International Building Code table 1806.2, clay, sandy clay and silt: the
// least it lists; from memory).
struct JackFoot {
  Mm side = 0;
  bool stated = false;  // else the post's own width
  Newton load = 0;      // at rest and as a log lands, whichever is more
  Mpa pressure = 0;
  Mm pad = 0;
};
inline constexpr Mpa soft_ground = 1500 * pound_force / (foot * foot);

// A life on the road as one range of load, `swing` of the load at rest, so many times: see
// road_life() in details.cpp for what it stands for. `allowed`: AISC 360 appendix 3.
struct FatigueDetail {
  Identity where;
  const char* what = "";
  char category = 'E';
  Mpa range = 0, allowed = 0;
};
struct Fatigue {
  double cycles = 0, swing = 0;
  std::vector<FatigueDetail> details;
};

JackSeat jack_seat(const Job& job, const Stand& stand);
TongueSeat tongue_seat(const Job& job, const TongueLoads& tongue);
JackFoot jack_foot(const Job& job, const Stand& stand);
Fatigue fatigue(const Job& job, const Tow& tow, const TongueLoads& tongue, const TabLoads& tabs);

// Stress range a detail of AISC 360 appendix 3 (table) bears so many times: categories
// A to E by equation A-3-1 and its threshold, F (a fillet's throat) by A-3-2. Throws
// std::invalid_argument for another letter.
Mpa allowed_range(char category, double cycles);

}  // namespace bedwright
