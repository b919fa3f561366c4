// Cuts the tongue's runs to what lies under the main.
#include "bed/tongue_lap.h"

#include <algorithm>
#include <cmath>

namespace bedwright {
namespace {

// The part of the straight run inside the box; of no length when there is none.
LapRun inside(const LapRun& run, Vec2 low, Vec2 high) {
  double enter = 0, leave = 1;
  const Vec2 way = run.to - run.from;
  const auto side = [&](double delta, double room) {
    if (delta == 0) {
      if (room < 0) leave = 0;
    } else if (delta < 0) {
      enter = std::max(enter, room / delta);
    } else {
      leave = std::min(leave, room / delta);
    }
  };
  side(-way.x, run.from.x - low.x);
  side(way.x, high.x - run.from.x);
  side(-way.y, run.from.y - low.y);
  side(way.y, high.y - run.from.y);
  if (leave <= enter) return {run.what, run.from, run.from, run.out};
  return {run.what, run.from + enter * way, run.from + leave * way, run.out};
}

}  // namespace

TongueLap tongue_lap(const TongueShape& tongue, const Section& channel, const Section& main, Mm main_front,
                     Mm main_rear, Mm spacing) {
  const Mm toe = channel.flange / std::cos(tongue.angle);
  return {main_front - tongue.ahead,
          main_front + tongue.back,
          toe + tongue_toe_gap,
          toe,
          tongue.angle,
          main_front,
          main_rear,
          spacing / 2 - outer_corner(main),
          main.flange - 2 * outer_corner(main)};
}

Mm toe_thickness(const Section& s) { return flange_thickness_at(s, s.flange); }

Mm tongue_leg(const Section& tongue, Mm leg, Mm step) {
  const Mm toe = toe_thickness(tongue);
  if (leg <= toe || toe >= inch / 4) return leg;
  return std::floor(toe / step + same_place) * step;
}

std::vector<LapRun> lap_runs(const TongueLap& lap, Mm leg) {
  const Mm web_at_rear = lap.web_at_front + (lap.rear - lap.front) * std::tan(lap.angle);
  const Vec2 low{lap.main_front, lap.main_web - lap.main_flange}, high{lap.main_rear, lap.main_web};
  const Vec2 beside{-std::sin(lap.angle), std::cos(lap.angle)};
  std::vector<LapRun> runs;
  for (const LapRun& edge :
       {LapRun{WeldLine::lap_outer, {lap.front, lap.web_at_front}, {lap.rear, web_at_rear}, beside},
        LapRun{WeldLine::lap_inner,
               {lap.front, lap.web_at_front - lap.toe},
               {lap.rear, web_at_rear - lap.toe},
               -1 * beside},
        LapRun{WeldLine::lap_rear, {lap.rear, web_at_rear - lap.toe}, {lap.rear, web_at_rear}, {1, 0}}}) {
    // Both the root and the leg's far edge are to lie under the flange.
    const LapRun root = inside(edge, low, high);
    const Vec2 ledge = leg * edge.out;
    if (const LapRun run = inside(root, low - ledge, high - ledge); run.length() >= least_fillet_legs * leg)
      runs.push_back(run);
  }
  return runs;
}

}  // namespace bedwright
