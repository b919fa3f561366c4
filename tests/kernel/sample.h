// Parts and a whole bed made by hand, for the tests of the kernel rooms and the
// benchmark. The sections' figures are those of the AISC shapes of like names
// (from memory; nothing here depends on their being exact).
#pragma once

#include "bed/bed.h"

namespace bedwright::sample {

inline Section channel() {
  return {"C6x8.2",     Shape::channel, 6 * inch,    1.92 * inch, 0.2 * inch,
          0.343 * inch, 0.3 * inch,     0.15 * inch, {}};
}

inline Section angle() {
  return {"L3x3x1/4", Shape::angle, 3 * inch, 3 * inch, inch / 4, 0, 0.3125 * inch, 0.15 * inch, {}};
}

inline BoltSize half_inch() {
  BoltSize size;
  size.name = "1/2 in";
  size.diameter = inch / 2;
  size.pitch = inch / 13;
  size.head_flats = size.nut_flats = 0.75 * inch;
  size.head_height = 0.3125 * inch;
  size.nut_height = 0.4375 * inch;
  size.flat = {0.5625 * inch, 1.375 * inch, 0.109 * inch};
  size.lock = {0.512 * inch, 0.869 * inch, 0.125 * inch};
  return size;
}

inline Hole round_hole(Vec2 at, Mm diameter) {
  return {at, diameter, diameter, 0, Process::drilled, Kind::track_bolt};
}
inline Hole slot(Vec2 at, Mm diameter, Mm length, Radians angle) {
  return {at, diameter, length, angle, Process::cut, Kind::track_bolt};
}

// A tab: square with two rounded corners, one slot, one round hole.
inline Plate tab() {
  Plate plate;
  plate.outline = rectangle({0, 0}, {75, 75});
  round_corner(plate.outline, 2, 12);
  round_corner(plate.outline, 1, 12);
  plate.thickness = inch / 4;
  plate.holes = {slot({40, 37.5}, 14.3, 24, 90 * degree), round_hole({15, 37.5}, 9)};
  return plate;
}

// `holes` round holes along the web at a pitch.
inline Member main_member(Mm length, int holes) {
  Member member{channel(), length, 0, 0, {}};
  for (int i = 0; i < holes; ++i) {
    member.holes.push_back(
        {Face::web, round_hole({80 + i * (length - 160) / std::max(1, holes - 1), 20}, 14.3)});
  }
  return member;
}

inline Bought wheel() {
  Bought bought;
  const Placement across{{0, 0, 0}, {1, 0, 0}, {0, 0, 1}};  // local Z along -y
  bought.envelope = {{across, {0, 0, -100}, {0, 0, 100}, 330}, {{}, {-40, 90, -40}, {40, 700, 40}, 0}};
  bought.mass = 60;
  return bought;
}

inline Hardware hardware(HardwareKind kind, Mm length = 0) { return {kind, half_inch(), length}; }

// Adds one bolt with its washer and nut, head up, shank through `seat`.
inline void add_fastening(Bed& bed, const Identity& bolt, Vec3 seat, Mm stack) {
  const auto add = [&](Piece piece, Hardware form, Mm z) {
    Identity id = bolt;
    id.piece = piece;
    bed.add_item({bed.add_part({{Kind::hardware}, "steel", Origin::kit, form}), {{seat.x, seat.y, z}}, id});
  };
  add(Piece::whole, hardware(HardwareKind::bolt, 1.5 * inch), seat.z);
  add(Piece::lower_washer, hardware(HardwareKind::flat_washer), seat.z - stack);
  add(Piece::lock_washer, hardware(HardwareKind::lock_washer), seat.z - stack - half_inch().flat.thickness);
  add(Piece::nut, hardware(HardwareKind::nut),
      seat.z - stack - half_inch().flat.thickness - half_inch().lock.thickness);
}

// A bed of about the size of a long real one: `tabs` on each side, each with a
// fastening. 56 tabs on each side make 250 drawn items and 448 of hardware.
inline Bed bed(int tabs) {
  Bed bed;
  const Mm length = 10000, half_width = 700, gauge = 600;
  const int main = bed.add_part({{Kind::main}, "A36", Origin::made, main_member(length, tabs)});
  bed.add_item({main, {{0, -half_width, -76.2}}, {Kind::main, Side::left}});
  bed.add_item({main, {{length, half_width, -76.2}, {-1, 0, 0}, {0, -1, 0}}, {Kind::main, Side::right}});
  const int cross =
      bed.add_part({{Kind::cross_member}, "A36", Origin::made, Member{channel(), 1390, 0, 0, {}}});
  for (int i = 0; i < 12; ++i) {
    bed.add_item({cross,
                  {{300 + i * 850.0, -695, -76.2}, {0, 1, 0}, {-1, 0, 0}},
                  {Kind::cross_member, Side::middle, i + 1}});
  }
  Member arm{channel(), 1900, -60 * degree, 20 * degree, {}};
  const int tongue = bed.add_part({{Kind::tongue}, "A36", Origin::made, arm});
  bed.add_item(
      {tongue,
       {{-1700, -60, -76.2}, {std::cos(-0.35), std::sin(-0.35), 0}, {std::sin(0.35), std::cos(0.35), 0}},
       {Kind::tongue, Side::left}});
  const int plate = bed.add_part({{Kind::tab}, "A36", Origin::made, tab()});
  Member rail{angle(), 2495, 0, 0, {}};
  for (int i = 0; i < tabs / 4; ++i) {
    rail.holes.push_back(
        {Face::flat_leg, slot({60 + i * 2375.0 / std::max(1, tabs / 4 - 1), 45}, 14, 20, 0)});
  }
  const int rail_part = bed.add_part({{Kind::rail}, "kit steel", Origin::kit, rail});
  for (int i = 0; i < 4; ++i) {
    bed.add_item({rail_part, {{i * 2500.0, gauge, 60}}, {Kind::rail, Side::right, i + 1}});
    bed.add_item({rail_part,
                  {{i * 2500.0 + 2495, -gauge, 60}, {-1, 0, 0}, {0, -1, 0}},
                  {Kind::rail, Side::left, i + 1}});
  }
  for (int i = 0; i < tabs; ++i) {
    const Mm x = 60 + i * (length - 120) / std::max(1, tabs - 1);
    bed.add_item({plate, {{x - 40, 607.5, 53.65}}, {Kind::tab, Side::right, i + 1}});
    bed.add_item({plate, {{x - 40, -682.5, 53.65}}, {Kind::tab, Side::left, i + 1}});
    add_fastening(bed, {Kind::track_bolt, Side::right, i + 1}, {x, 645, 66.35}, 12.7);
    add_fastening(bed, {Kind::track_bolt, Side::left, i + 1}, {x, -645, 66.35}, 12.7);
  }
  Member bunk{angle(),
              1250,
              0,
              0,
              {{Face::flat_leg, round_hole({30, 40}, 14)}, {Face::flat_leg, round_hole({1220, 40}, 14)}}};
  const int bunk_part = bed.add_part({{Kind::bunk}, "kit steel", Origin::kit, bunk});
  Bought clamp;
  clamp.envelope = {{{}, {-30, -30, 0}, {30, 30, 250}, 0},
                    {{{0, 0, 200}, {1, 0, 0}, {0, 1, 0}}, {0, 0, 0}, {0, 0, 60}, 20}};
  clamp.mass = 4;
  const int clamp_part = bed.add_part({{Kind::clamp}, "", Origin::kit, clamp});
  for (int i = 0; i < 36; ++i) {
    const Mm x = 150 + i * 275.0;
    bed.add_item({bunk_part, {{x, -625, 66.4}, {0, 1, 0}, {-1, 0, 0}}, {Kind::bunk, Side::middle, i + 1}});
    bed.add_item({clamp_part, {{x - 40, 200, 72.8}}, {Kind::clamp, Side::right, i + 1}});
    bed.add_item({clamp_part, {{x - 40, -200, 72.8}}, {Kind::clamp, Side::left, i + 1}});
  }
  const int wheel_part = bed.add_part({{Kind::wheel}, "", Origin::bought, wheel()});
  for (int i = 0; i < 2; ++i) {
    bed.add_item({wheel_part, {{5600 + i * 800.0, -900, -350}}, {Kind::wheel, Side::left, i + 1}});
    bed.add_item({wheel_part,
                  {{5600 + i * 800.0, 900, -350}, {-1, 0, 0}, {0, -1, 0}},
                  {Kind::wheel, Side::right, i + 1}});
  }
  Item hidden{clamp_part, {{0, 0, 1000}}, {Kind::clamp, Side::right, 1, 0, End::none, 0, Pose::out_outer}};
  hidden.shown = false;
  bed.add_item(hidden);
  return bed;
}

}  // namespace bedwright::sample
