// Bunks, joint gussets and track stops, with their bolts.
#include "layout/builder.h"

namespace bedwright {
namespace {

int rail_item(const Builder& b, Side side, int section) {
  return b.bed.item({Kind::rail, side, section + 1});
}

// A bunk runs from the road side to the kerb side, its standing leg rearward,
// its holes in the middle of the flat leg.
//
// Its two bolts are drawn up loosely first: along the bed it moves and turns a hair until
// both of its holes are over the rails', so only what is out across the bed counts.
void lay_bunk_row(Builder& b) {
  const KitBunk& k = b.kit.bunk;
  const Mm end = b.kit.rail.thickness + k.end_clearance;  // from the heel
  const Mm length = tidy(b.kit.gauge - 2 * end), hole = k.line - end, middle = k.flat_leg / 2;
  if (length <= 0 || hole <= 0) {
    b.problem("kit.bunk.line", "the bunk's holes fall beyond its ends",
              "move the line in or cut the end clearance");
    return;
  }
  const Member bunk{kit_angle("bunk", k),
                    length,
                    0,
                    0,
                    {{Face::flat_leg, bought_hole({hole, middle}, k.hole, 0, Kind::bunk_bolt)},
                     {Face::flat_leg, bought_hole({length - hole, middle}, k.hole, 0, Kind::bunk_bolt)}}};
  const int part = b.add({Kind::bunk}, "steel", Origin::kit, bunk);
  const Mm tolerance = b.kit.rail.hole_tolerance;
  int number = 0;
  for (const BunkPlace& p : b.track().bunks) {
    ++number;
    const int item = b.place(part, {Kind::bunk, Side::middle, number},
                             {{p.x + middle, -length / 2, b.rail_seat()}, {0, 1, 0}, {-1, 0, 0}});
    for (Side side : both_sides) {
      BoltPlan bolt;
      bolt.id = {Kind::bunk_bolt, side, number};
      for_hole(bolt, k.hole);
      bolt.length = b.order.bolts.bunk;
      bolt.seat = {p.x, b.line(side, k.line), b.rail_seat() + k.thickness};
      bolt.direction = {0, 0, -1};
      // The bunk runs from left to right.
      bolt.plies = {{item, side == Side::left ? 0 : 1},
                    {rail_item(b, side, p.section), b.rail_holes.of(side, p.section).bunk_sets[p.set]}};
      bolt.stack_up = {either_way("hole in the bunk", tolerance, tolerance),
                       either_way("hole in the rail", tolerance, tolerance)};
      bolt.finds_its_place = true;
      // The bunk sets the gauge where the rails' slots across let them follow.
      if (b.kit.mounting.slot_along != SlotAlong::width || !b.kit.mounting.hole.slot)
        bolt.stack_up.push_back(either_way("gauge", 0, b.order.tolerances.gauge / 2));
      b.bolt(bolt);
    }
  }
}

// On the outer face of the standing legs; heads inside, nuts out, where there is
// room for them beside the bunk ends.
void lay_gussets(Builder& b) {
  const KitGusset& g = b.kit.gusset;
  Plate plate;
  plate.thickness = g.thickness;
  plate.outline = rectangle({-g.length / 2, 0}, {g.length / 2, g.height});
  for (Mm x : g.bolts)
    for (double way : {-1.0, 1.0}) {
      Hole h = bought_hole({way * x, g.height / 2}, g.hole, 0, Kind::gusset_bolt);
      plate.holes.push_back(h);
    }
  const int part = b.add({Kind::joint_gusset}, "steel", Origin::kit, plate);
  for (Side side : both_sides) {
    const double out = outward(side);
    for (std::size_t j = 0; j < b.track().joints.size(); ++j) {
      const Mm joint = b.track().joints[j];
      const int item = b.place(
          part, {Kind::joint_gusset, side, static_cast<int>(j) + 1},
          {{joint, b.heel(side) + out * g.thickness, b.standoff() + g.bottom}, {out, 0, 0}, {0, 0, 1}});
      int number = 0;
      for (double way : {-1.0, 1.0})
        for (std::size_t k = 0; k < g.bolts.size(); ++k) {
          const Mm from_joint = g.bolts[k];
          BoltPlan bolt;
          bolt.id = {Kind::gusset_bolt, side, static_cast<int>(j) + 1, ++number};
          for_hole(bolt, g.hole);
          bolt.length = b.order.bolts.gusset;
          bolt.seat = {joint + way * from_joint, b.line(side, b.kit.rail.thickness),
                       b.standoff() + g.bottom + g.height / 2};
          bolt.direction = {0, out, 0};
          // Behind the joint lies the front end of the next section. The gusset's own x runs
          // rearward on the right, forward on the left.
          const int section = static_cast<int>(j) + (way > 0 ? 1 : 0);
          bolt.plies = {
              {rail_item(b, side, section), b.rail_holes.of(side, section).gusset[k][way > 0 ? 0 : 1]},
              {item, static_cast<int>(2 * k) + (way * out > 0 ? 1 : 0)}};
          // A joint left open parts the rails; the gusset shares that between its two sides.
          const Mm open = b.kit.rail.joint_gap_plus / 2, hole = b.kit.rail.hole_tolerance;
          bolt.stack_up = {either_way("hole in the rail", hole, 0, hole),
                           either_way("hole in the gusset", hole, 0, hole)};
          if (open > 0)
            bolt.stack_up.push_back(
                {"joint gap, half to each side", way > 0 ? open : 0, way > 0 ? 0 : open, 0, 0, 0, 0});
          b.bolt(bolt);
        }
    }
  }
}

// A foot on the rail's flat leg and an upright face toward the head.
void lay_track_stops(Builder& b) {
  const KitStop& k = b.kit.track_stop;
  Bought stop;
  const Mm half_length = k.foot_length / 2, half_width = k.foot_width / 2;
  stop.envelope = {{{}, {-half_length, -half_width, 0}, {half_length, half_width, k.foot_thickness}, 0},
                   {{},
                    {half_length - k.face_thickness, -half_width, k.foot_thickness},
                    {half_length, half_width, k.height},
                    0}};
  stop.lugs = {{{0, 0, k.foot_thickness},
                {0, 0, -1},
                k.foot_thickness,
                bought_hole({0, 0}, k.hole, 0, Kind::stop_bolt)}};
  stop.mass = k.mass;
  stop.centre_of_mass = {half_length / 2, 0, k.height / 3};
  const int part = b.add({Kind::track_stop}, "", Origin::kit, stop);
  for (Side side : both_sides)
    for (bool rear : {false, true}) {
      const End end = rear ? End::rear : End::front;
      const Mm x = rear ? b.track().total_length - k.from_end : k.from_end;
      const double toward_head = rear ? -1 : 1;
      const Vec3 foot{x, b.line(side, k.line), b.rail_seat()};
      const int item = b.place(part, {Kind::track_stop, side, 0, 0, end},
                               {foot, {toward_head, 0, 0}, {0, toward_head, 0}});
      BoltPlan bolt;
      bolt.id = {Kind::stop_bolt, side, 0, 0, end};
      for_hole(bolt, k.hole);
      bolt.length = b.order.bolts.stop;
      bolt.seat = foot + Vec3{0, 0, k.foot_thickness};
      bolt.direction = {0, 0, -1};
      const int section = rear ? b.track().sections - 1 : 0;
      bolt.plies = {{item, 0},
                    {rail_item(b, side, section), b.rail_holes.of(side, section).stop[rear ? 1 : 0]}};
      bolt.stack_up = {either_way("hole in the rail", b.kit.rail.hole_tolerance, b.kit.rail.hole_tolerance)};
      b.bolt(bolt);
    }
}

}  // namespace

void lay_bunks(Builder& b) {
  lay_bunk_row(b);
  lay_gussets(b);
  lay_track_stops(b);
}

}  // namespace bedwright
