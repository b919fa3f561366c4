// Where a tongue's channel laps the main over it: the straight runs a fillet can lie
// along. Plan coordinates of the right-hand side, millimetres: x rearward, y outward.
#pragma once

#include <vector>

#include "bed/bed.h"
#include "catalog/section.h"

namespace bedwright {

struct TongueLap {
  Mm front = 0, rear = 0;            // the channel's square-cut ends, along the bed
  Mm web_at_front = 0;               // outer face of its web from the centre line, at the front end
  Mm toe = 0;                        // its flange's width, measured across the bed
  Radians angle = 0;                 // off the centre line
  Mm main_front = 0, main_rear = 0;  // the main's ends
  Mm main_web = 0, main_flange = 0;  // its web back and flange: the flat of a tube's underside
};

// Gap left between the two tongue channels' toes at the coupler: room for the
// weld's root, and for a channel a little wide of its nominal flange.
inline constexpr Mm tongue_toe_gap = 3;

// A tongue `ahead` of the mains' front ends and `back` under them, toes to the centre
// line, its ends square to the bed. `spacing`: main's web back to web back.
struct TongueShape {
  Mm ahead = 0, back = 0;
  Radians angle = 0;
};
TongueLap tongue_lap(const TongueShape& tongue, const Section& channel, const Section& main, Mm main_front,
                     Mm main_rear, Mm spacing);

struct LapRun {
  WeldLine what = WeldLine::none;  // lap_outer, lap_inner or lap_rear
  Vec2 from, to;
  Vec2 out;  // unit, square to the run, away from the channel
  Mm length() const { return norm(to - from); }
};

// A channel's flange at its free edge, where it is thinnest.
Mm toe_thickness(const Section& channel);

// The fillet along the tongue's flanges: `leg`, or what its toe stands, in whole `step`s. An
// edge under 1/4 in takes no larger leg than it is thick (AISC 360 section J2.2b).
Mm tongue_leg(const Section& tongue, Mm leg, Mm step);

// A fillet shorter than this many legs is not counted on (AISC 360 J2.2b).
inline constexpr double least_fillet_legs = 4;

// Where a fillet of this leg has the main's flange to lie on, in that order; those as long
// as least_fillet_legs.
std::vector<LapRun> lap_runs(const TongueLap& lap, Mm leg);

}  // namespace bedwright
