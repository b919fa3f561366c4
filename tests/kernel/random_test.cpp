// Random parts against the closed forms: whatever the dimensions, the solid is
// valid, closed, and of the volume bed.h works out.
#include <gtest/gtest.h>
#include <rapidcheck.h>
#include <rapidcheck/gtest.h>

#include "kernel/measure.h"
#include "kernel/sample.h"
#include "kernel/shapes.h"

namespace bedwright {
namespace {

// A figure between two bounds in steps of a thousandth of the range: shrinks
// well, and never lands on a degenerate bound by accident of rounding.
rc::Gen<double> between(double low, double high) {
  return rc::gen::map(rc::gen::inRange(0, 1001), [=](int k) { return low + (high - low) * k / 1000; });
}

void check(const Form& form) {
  const Part part{{Kind::main}, "A36", Origin::made, form};
  const sample::Measured m = sample::measure(build_part(part));
  RC_ASSERT(m.valid);
  RC_ASSERT(m.closed);
  RC_ASSERT(std::abs(m.volume / volume(part) - 1) < 1e-9);
}

// A hole whose circumscribed circle fits a cell of the given half width.
Hole random_hole(Vec2 at, Mm reach) {
  const Mm diameter = *between(4, reach);
  const Mm length = *rc::gen::element(diameter, std::min(2 * reach - 1, diameter * 1.7));
  return {at, diameter, std::max(diameter, length), *between(-3, 3), Process::cut, Kind::none};
}

RC_GTEST_PROP(Random, plate, ()) {
  Plate plate;
  const int columns = *rc::gen::inRange(1, 5);
  const Mm cell = *between(20, 60);
  plate.outline = rectangle({0, 0}, {columns * cell, 1.2 * cell});
  if (*rc::gen::arbitrary<bool>()) round_corner(plate.outline, 2, *between(1, 5));
  plate.thickness = *between(3, 25);
  for (int i = 0; i < columns; ++i) {
    plate.holes.push_back(random_hole({(i + 0.5) * cell, 0.55 * cell}, cell / 2 - 6));
  }
  check(plate);
}

RC_GTEST_PROP(Random, channel, ()) {
  Section section = sample::channel();
  section.depth = *between(90, 300);
  section.flange = *between(35, 70);
  section.web = *between(4, 9);
  section.flange_thickness = *between(7.5, 11);
  section.root_radius = *between(4, 9);
  section.toe_radius = *between(0, 3);
  Member member{section, *between(500, 9000), 0, 0, {}};
  if (*rc::gen::arbitrary<bool>()) {
    member.start_mitre = *between(-1, 1);
    member.end_mitre = *between(-1, 1);
  }
  const int holes = *rc::gen::inRange(0, 6);
  for (int i = 0; i < holes; ++i) {
    member.holes.push_back({Face::web, random_hole({(i + 1.5) * member.length / 9, *between(-8, 8)}, 20)});
  }
  check(member);
}

// Flange holes clear of fillet and toe, where the closed form holds.
RC_GTEST_PROP(Random, channel_flange_holes, ()) {
  Section section = sample::channel();
  section.flange = *between(60, 90);
  section.flange_thickness = *between(12, 16);
  Member member{section, 600, 0, 0, {}};
  for (const Face face : {Face::top_flange, Face::bottom_flange}) {
    const Mm middle = section.flange / 2 + section.web;
    member.holes.push_back({face, random_hole({*between(100, 500), middle}, 12)});
  }
  check(member);
}

RC_GTEST_PROP(Random, angle, ()) {
  Section section = sample::angle();
  section.flange = *between(55, 150);
  section.depth = *between(55, 150);
  section.web = *between(4, 9);
  section.root_radius = *between(0, 8);
  section.toe_radius = *between(0, 3.5);
  Member member{section, *between(400, 6000), 0, 0, {}};
  for (int i = 0; i < *rc::gen::inRange(0, 4); ++i) {
    member.holes.push_back({Face::flat_leg, random_hole({60 + 80.0 * i, section.flange / 2 + 5}, 13)});
    member.holes.push_back({Face::standing_leg, random_hole({60 + 80.0 * i, section.depth / 2 + 5}, 13)});
  }
  check(member);
}

}  // namespace
}  // namespace bedwright
