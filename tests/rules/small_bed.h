// Beds of a few parts, made by hand, to plant faults in.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/rule.h"
#include "units/parse.h"

namespace bedwright {

// Figures of the size of a half inch bolt's; from memory, only to test with.
inline BoltSize half_inch() {
  BoltSize s;
  s.name = "1/2 in";
  s.diameter = inch / 2;
  s.pitch = inch / 13;
  s.head_flats = s.nut_flats = s.wrench = 0.75 * inch;
  s.head_height = 8, s.nut_height = 11;
  s.flat = {13.5, 34.9, 2.5};
  s.lock = {12.9, 22.0, 3.2};
  s.standard_hole = 9 * inch / 16, s.oversize_hole = 5 * inch / 8;
  s.edge_minimum = 0.75 * inch;
  s.thread_length = 1.25 * inch;
  s.tolerances = {{100, 0.5, 1.0}};
  for (int quarters = 3; quarters <= 16; ++quarters) s.lengths.push_back(quarters * inch / 4);
  return s;
}

inline Hole round_hole(Vec2 at, Mm diameter) {
  return {at, diameter, diameter, 0, Process::cut, Kind::bunk_bolt};
}
inline Hole slot(Vec2 at, Mm width, Mm length, Radians angle) {
  return {at, width, length, angle, Process::cut, Kind::track_bolt};
}

// Something the shop makes, where it does not matter what.
inline Identity some(int number) { return {Kind::cross_member, Side::middle, number}; }

inline constexpr Identity bunk_bolt_r1{Kind::bunk_bolt, Side::right, 1};
inline constexpr Identity track_bolt_r1{Kind::track_bolt, Side::right, 1};
inline constexpr Identity tab_r1{Kind::tab, Side::right, 1};
inline constexpr Identity rail_r1{Kind::rail, Side::right, 1};
inline constexpr Identity main_r{Kind::main, Side::right};

struct SmallBed {
  Bed bed;
  Limits limits;
  Figures figures;
  const Job* job = nullptr;
  PairJudge* judge = nullptr;

  int add(Part part, const Identity& id, Placement at) {
    Item item;
    item.part = bed.add_part(std::move(part));
    item.id = id;
    item.placement = at;
    return bed.add_item(std::move(item));
  }

  // A rectangle centred on `at`, its underside there.
  int plate(const Identity& id, Vec3 at, Vec2 size, Mm thickness, std::vector<Hole> holes = {},
            Origin origin = Origin::made) {
    const Vec2 half = 0.5 * size;
    return add({id, "A36", origin, Plate{rectangle(-1 * half, half), thickness, std::move(holes)}}, id, {at});
  }

  int box(const Identity& id, Vec3 low, Vec3 high, bool moving = false) {
    Bought bought;
    bought.envelope.push_back({Placement{}, low, high, 0});
    const int item = add({id, "", Origin::bought, std::move(bought)}, id, {});
    bed.items[item].moving = moving;
    return item;
  }

  // A bolt straight down through hole 0 of each item, seated on the first at
  // its hole, with a flat washer under head and nut; its hardware is placed too.
  int bolt(const Identity& id, const std::vector<int>& items, Mm length, const BoltSize& size = half_inch()) {
    Bolt b;
    b.id = id;
    b.size = size;
    b.length = length;
    b.direction = {0, 0, -1};
    b.under_head = {size.flat};
    b.under_nut = {size.flat};
    Mm depth = 0;
    for (const int item : items) {
      b.plies.push_back(ply_through(bed, item, 0));
      depth += b.plies.back().thickness;
    }
    b.seat = hole_in_world(bed, b.plies[0]).centre;
    b.seat.z += b.plies[0].thickness;
    const int index = static_cast<int>(bed.bolts.size());
    const auto put = [&](HardwareKind kind, Piece piece, Mm below, Mm shank) {
      Identity of_piece = id;
      of_piece.piece = piece;
      const int item = add({{Kind::hardware}, "", Origin::bought, Hardware{kind, size, shank}}, of_piece,
                           {b.seat - Vec3{0, 0, below}});
      bed.items[item].bolt = index;
    };
    const Mm washer = size.flat.thickness;
    put(HardwareKind::bolt, Piece::whole, -washer, length);
    put(HardwareKind::flat_washer, Piece::head_washer, -washer, 0);
    put(HardwareKind::flat_washer, Piece::lower_washer, depth, 0);
    put(HardwareKind::nut, Piece::nut, depth + washer, 0);
    bed.bolts.push_back(std::move(b));
    return index;
  }

  std::vector<Finding> run() const { return run_checks({bed, limits, job, judge, figures}); }

  // Without the notes, which say of a good bed what may be done with it.
  std::vector<Finding> faults() const {
    std::vector<Finding> found;
    for (Finding& f : run())
      if (f.severity != Severity::note) found.push_back(std::move(f));
    return found;
  }

  std::vector<Finding> of(const std::string& code) const {
    std::vector<Finding> found;
    for (const Finding& f : run())
      if (f.code == code) found.push_back(f);
    return found;
  }
};

// The things a finding is about, by identity.
inline std::vector<Identity> about(const Finding& finding) {
  std::vector<Identity> ids;
  for (const Subject& s : finding.subjects) ids.push_back(s.id);
  return ids;
}

// Every change's value reads back as a length; returns the one with this key.
inline double change_of(const Finding& finding, const std::string& key) {
  for (const Change& c : finding.changes) {
    const ParsedQuantity parsed = parse_quantity(Dimension::length, c.value);
    EXPECT_TRUE(parsed.value.has_value()) << c.key << "=" << c.value << ": " << parsed.what;
    if (c.key == key && parsed.value) return *parsed.value;
  }
  ADD_FAILURE() << finding.code << " offers no " << key << " (" << finding.remedy << ")";
  return 0;
}

inline bool offers(const Finding& finding, const std::string& key) {
  for (const Change& c : finding.changes)
    if (c.key == key) return true;
  return false;
}

// A plate on a main, and a post that a bolt holds to the plate beside it. The weld is out
// by 1/16 in and half a sixteenth of tape; the bolt's holes have 0.5 mm each, and it need
// take up nothing. Post to main: 2.38 + 0.5 + 0.5.
inline SmallBed post_beside_main(Mm gap) {
  SmallBed s;
  const int main = s.plate(main_r, {0, 0, -10}, {1000, 100}, 10);
  const int tab = s.plate(tab_r1, {0, 60, 0}, {100, 120}, 10, {round_hole({0, 40}, 14)});
  s.bed.welds.push_back({tab,
                         main,
                         6,
                         50,
                         WeldLine::across_flange,
                         10,
                         10,
                         {{{-50, 0, 0}, {-50, 50, 0}, {0, 0, 1}, {-1, 0, 0}}}});
  const int post = s.plate(some(1), {0, 100, -30}, {40, 2 * (50 - gap)}, 30, {round_hole({}, 14)});
  s.bolt(track_bolt_r1, {tab, post}, 60);
  return s;
}

}  // namespace bedwright
