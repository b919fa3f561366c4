// The tongue: two channels under the mains, their welds, and the plate its jack stands on.
#include <cmath>

#include "bed/tongue_lap.h"
#include "layout/builder.h"

namespace bedwright {
namespace {

// Each channel to the main it lies under, and to the front member, which it crosses
// askew.
void lay_tongue_welds(Builder& b, int item, Side side) {
  const FrameTongue& t = b.frame.tongue;
  const Section &s = b.section(t.section), &main = b.main_section(),
                &nose = b.section(b.frame.front_member.section);
  const Mm leg = tongue_leg(s, b.frame.welds.of(b.frame.welds.tongue), b.order.order.figures().step());
  const TongueLap lap =
      tongue_lap({t.length, t.back, t.angle}, s, main, b.main_start(), b.main_end(), b.frame.main.spacing);
  const std::vector<LapRun> runs = lap_runs(lap, leg);
  const double out = outward(side);
  const auto run_at = [&](const LapRun& r, Mm z) {
    return WeldRun{
        {r.from.x, out * r.from.y, z}, {r.to.x, out * r.to.y, z}, {0, 0, -1}, {r.out.x, out * r.out.y, 0}};
  };
  const int over = b.main(side);
  // A rolled flange is thinnest where it ends: at the weld the thinner steel is the toe.
  const Mm toe = toe_thickness(s);
  const Builder::WeldSteel steel{std::min(toe, flange_steel(main)), toe};
  for (const LapRun& run : runs) b.weld(item, over, leg, run.what, steel, {run_at(run, -main.depth)});
  // Wanted all the same, so that WELD-CONTACT stops it.
  if (runs.empty()) b.weld(item, over, leg, WeldLine::under_main, steel, {});
  // Both edges, where they cross the front member and leave the fillet a ledge on it.
  std::vector<WeldRun> crossing;
  const Mm z = -main.depth / 2 - nose.depth / 2, askew = leg * std::sin(t.angle);
  for (const double edge : {1.0, -1.0}) {  // outer, inner
    const auto at = [&](Mm x) {
      return Vec2{x, lap.web_at_front + (x - lap.front) * std::tan(lap.angle) - (edge < 0 ? lap.toe : 0)};
    };
    const Mm from = b.main_start() - nose.flange + outer_corner(nose),
             to = b.main_start() - outer_corner(nose);
    crossing.push_back(
        run_at({WeldLine::flange_edges, at(edge > 0 ? from + askew : from), at(edge > 0 ? to : to - askew),
                edge * Vec2{-std::sin(t.angle), std::cos(t.angle)}},
               z));
  }
  b.weld(item, b.bed.item({Kind::front_member}), leg, WeldLine::flange_edges,
         {std::min(toe, flange_steel(nose)), toe}, crossing);
}

// Two channels under the frame, toes inward, both ends cut square to the bed.
// Left and right are one part: a channel is even about mid depth.
void lay_channels(Builder& b) {
  const FrameTongue& t = b.frame.tongue;
  const Section& s = b.section(t.section);
  const double cosine = std::cos(t.angle), sine = std::sin(t.angle);
  const Mm front = b.main_start() - t.length;
  const Mm web_at_front = s.flange / cosine + tongue_toe_gap;
  const Mm length = tidy((t.length + t.back) / cosine);
  const int part =
      b.add({Kind::tongue}, b.frame.grade, Origin::made, Member{s, length, -t.angle, -t.angle, {}});
  for (Side side : both_sides) {
    const double out = outward(side);
    const int item = b.place(part, {Kind::tongue, side},
                             {{front, out * web_at_front, -b.main_section().depth - s.depth / 2},
                              {cosine, out * sine, 0},
                              {sine, -out * cosine, 0}});
    lay_tongue_welds(b, item, side);
  }
}

// Three bolt holes and the tube's, on a plate across the tongue.
void lay_tongue_plate(Builder& b) {
  const FrameTongue& t = b.frame.tongue;
  const FrameTongueJack& j = b.frame.tongue_jack;
  const Section& s = b.section(t.section);
  const double slope = std::tan(t.angle);
  const Mm web_at_front = s.flange / std::cos(t.angle) + tongue_toe_gap;
  const auto half_width = [&](Mm behind) {
    return web_at_front + behind * slope - plate_ledge(b.frame.welds.of(b.frame.welds.tongue_plate));
  };
  const Mm near = half_width(j.behind_front - j.plate_length / 2),
           far = half_width(j.behind_front + j.plate_length / 2);
  if (near <= j.centre_hole) {
    b.problem("frame.tongue_jack.behind_front", "the tongue is too narrow there for the jack's plate",
              "put the jack further back");
    return;
  }
  Plate plate;
  plate.thickness = j.plate_thickness;
  const Mm half = j.plate_length / 2;
  plate.outline = polygon({{-half, tidy(-near)}, {half, tidy(-far)}, {half, tidy(far)}, {-half, tidy(near)}});
  plate.holes.push_back({{0, 0}, j.centre_hole, j.centre_hole, 0, Process::cut, Kind::jack_tube});
  for (double turn : {60.0, 180.0, 300.0}) {
    const Vec2 at{tidy(j.bolt_circle / 2 * std::cos(turn * degree)),
                  tidy(j.bolt_circle / 2 * std::sin(turn * degree))};
    plate.holes.push_back({at, j.hole.diameter, j.hole.slot.value_or(j.hole.diameter), 0, Process::cut,
                           Kind::tongue_jack_bolt});
  }
  const int part = b.add({Kind::tongue_plate}, b.frame.grade, Origin::made, plate);
  const int item = b.place(
      part, {Kind::tongue_plate},
      {{b.main_start() - t.length + j.behind_front, 0, -b.main_section().depth}, {1, 0, 0}, {0, 1, 0}});
  const Vec3 middle = b.bed.items[item].placement.origin;
  for (Side side : both_sides) {
    const double out = outward(side);
    const WeldRun edge{middle + Vec3{-half, out * near, 0},
                       middle + Vec3{half, out * far, 0},
                       {0, 0, 1},
                       {-std::sin(t.angle), out * std::cos(t.angle), 0}};
    b.weld(item, b.bed.item({Kind::tongue, side}), b.frame.welds.of(b.frame.welds.tongue_plate),
           WeldLine::outer_edge, {std::min(j.plate_thickness, s.flange_thickness), j.plate_thickness},
           {edge});
  }
}

}  // namespace

void lay_tongue(Builder& b) {
  lay_channels(b);
  lay_tongue_plate(b);
}

}  // namespace bedwright
