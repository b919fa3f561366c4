// Each kind of part against the closed forms of bed.h, which know nothing of the
// kernel: volume, centroid, and that the solid is valid and closed.
#include <gtest/gtest.h>

#include <numbers>

#include "kernel/measure.h"
#include "kernel/sample.h"
#include "kernel/shapes.h"

namespace bedwright {
namespace {

using sample::measure;
using sample::Measured;

constexpr double close = 1e-9;  // relative, for volumes

Part part(Form form) { return {{Kind::tab}, "A36", Origin::made, std::move(form)}; }

Measured expect_like_closed_form(const Part& p, Mm centroid_slack = 1e-6) {
  const Measured m = measure(build_part(p));
  EXPECT_TRUE(m.valid);
  EXPECT_TRUE(m.closed);
  EXPECT_NEAR(m.volume / volume(p), 1, close);
  EXPECT_LT(norm(m.centre - centroid(p)), centroid_slack);
  return m;
}

TEST(Plate, holes_slots_and_arcs) {
  const Measured m = expect_like_closed_form(part(sample::tab()));
  EXPECT_EQ(m.faces, 6 + 2 + 1 + 4);  // box, rounded corners, bore, slot
}

// A tube with a drain near each end: volume by hand, the walls less what four rounded corners are
// short of square, less two bores through one wall.
TEST(Member, tube_with_drains) {
  Section s;
  s.name = "RHS 100x60x4";
  s.shape = Shape::tube;
  s.depth = 100, s.flange = 60, s.web = 4, s.root_radius = 4;
  Member member{s, 1500, 0, 0, {}};
  for (const Mm x : {80.0, 1420.0})
    member.holes.push_back({Face::bottom_flange, {{x, 30}, 10, 10, 0, Process::drilled, Kind::drain}});
  const Measured m = expect_like_closed_form(part(member));
  const double pi = std::numbers::pi, walls = 2 * 4 * (100 + 60 - 8) - (4 - pi) * (8 * 8 - 4 * 4);
  EXPECT_NEAR(m.volume / (walls * 1500 - 2 * pi * 25 * 4), 1, close);
  EXPECT_EQ(m.faces, 2 + 2 * 8 + 2);
}

// Flanges of one thickness: web and two overhangs, and two fillets of (1 - pi/4) r^2.
TEST(Member, parallel_flange_channel) {
  Section s;
  s.name = "UPE 160";
  s.shape = Shape::channel;
  s.depth = 160, s.flange = 70, s.web = 5.5, s.flange_thickness = 9.5, s.root_radius = 12;
  s.flange_slope = 0;
  const Measured m = expect_like_closed_form(part(Member{s, 1000, 0, 0, {}}));
  const double corner = (1 - std::numbers::pi / 4) * 12 * 12;
  EXPECT_NEAR(m.volume / (1000 * (160 * 5.5 + 2 * 64.5 * 9.5 + 2 * corner)), 1, close);
}

// Measured where DIN 1026-1 measures it, in the middle of the flange's width, not of its overhang.
TEST(Member, tapered_metric_channel_with_a_hole_in_its_flange) {
  Section s;
  s.name = "UPN 160";
  s.shape = Shape::channel;
  s.depth = 160, s.flange = 65, s.web = 7.5, s.flange_thickness = 10.5, s.root_radius = 10.5,
  s.toe_radius = 5.5;
  s.flange_slope = 0.08, s.thickness_at = 32.5;
  Member member{s, 800, 0, 0, {}};
  member.holes.push_back({Face::top_flange, {{400, 40}, 14, 14, 0, Process::drilled, Kind::track_bolt}});
  expect_like_closed_form(part(member), 1e-3);
}

TEST(Plate, hollow_arc) {
  Plate plate;
  plate.outline = rectangle({0, 0}, {100, 60});
  plate.outline[1].bulge = -0.5;  // bites into the plate
  plate.outline[3].bulge = 1;     // a half circle outward
  plate.thickness = 8;
  expect_like_closed_form(part(plate));
}

// The union of two discs: 2 pi r^2 less the lens, r = 10, centres 10 apart.
TEST(Plate, holes_that_run_into_each_other) {
  Plate plate;
  plate.outline = rectangle({0, 0}, {100, 60});
  plate.thickness = 10;
  plate.holes = {sample::round_hole({40, 30}, 20), sample::round_hole({50, 30}, 20)};
  const Measured m = measure(build_part(part(plate)));
  EXPECT_TRUE(m.valid);
  EXPECT_TRUE(m.closed);
  const double lens = 2 * 100 * std::acos(0.5) - 5 * std::sqrt(400.0 - 100.0);
  EXPECT_NEAR(m.volume, (6000 - 2 * std::numbers::pi * 100 + lens) * 10, 1e-4);
}

// Half the hole is past the edge.
TEST(Plate, hole_through_the_edge) {
  Plate plate;
  plate.outline = rectangle({0, 0}, {100, 60});
  plate.thickness = 10;
  plate.holes = {sample::round_hole({50, 0}, 20)};
  const Measured m = measure(build_part(part(plate)));
  EXPECT_TRUE(m.valid);
  EXPECT_NEAR(m.volume, (6000 - std::numbers::pi * 50) * 10, 1e-4);
}

TEST(Plate, hole_that_leaves_nothing_is_refused_by_name) {
  Plate plate;
  plate.outline = rectangle({0, 0}, {10, 10});
  plate.thickness = 5;
  plate.holes = {sample::round_hole({5, 5}, 40)};
  Part p = part(plate);
  p.id = {Kind::tab, Side::left};
  try {
    build_part(p);
    FAIL() << "built";
  } catch (const std::runtime_error& e) {
    EXPECT_NE(std::string(e.what()).find("part tab plate L cannot be made"), std::string::npos) << e.what();
  }
}

TEST(Channel, plain) {
  const Measured m = expect_like_closed_form(part(sample::main_member(3000, 0)));
  EXPECT_EQ(m.faces, 2 + 8 + 4);
}

TEST(Channel, web_holes) {
  Member member = sample::main_member(6000, 36);
  member.holes.push_back({Face::web, sample::slot({200, -20}, 14, 30, 0.3)});
  const Measured m = expect_like_closed_form(part(member));
  EXPECT_EQ(m.faces, 14 + 36 + 4);
}

// A hole through a tapered flange: bed.h counts the thickness at its centre,
// which is exact for the volume; the centroid it puts at mid-thickness is off by
// the tilt of the far face (well under a hundredth of the hole's radius here).
TEST(Channel, tapered_flange_holes) {
  Member member = sample::main_member(1000, 2);
  member.holes.push_back({Face::top_flange, sample::round_hole({300, 28}, 14)});
  member.holes.push_back({Face::bottom_flange, sample::slot({500, 28}, 12, 25, 0)});
  expect_like_closed_form(part(member), 0.01);
}

TEST(Channel, slot_turns_the_way_the_face_says) {
  // A slot at 45 degrees on each face must hold the point 8 along its own axis
  // from its centre and not the one 8 across it.
  for (const Face face : {Face::web, Face::top_flange, Face::bottom_flange}) {
    Member member{sample::channel(), 400, 0, 0, {}};
    const Vec2 at = face == Face::web ? Vec2{200, 10} : Vec2{200, 28};
    member.holes = {{face, sample::slot(at, 8, 26, 45 * degree)}};
    const HoleFrame frame = hole_frame(member.section, member.holes[0]);
    const TopoDS_Shape solid = build_part(part(member));
    const Vec3 across = cross(frame.outward, frame.slot_axis);
    const Vec3 middle = frame.centre - 0.5 * frame.thickness * frame.outward;
    EXPECT_FALSE(sample::inside(solid, middle + 8 * frame.slot_axis)) << static_cast<int>(face);
    EXPECT_TRUE(sample::inside(solid, middle + 8 * across)) << static_cast<int>(face);
  }
}

TEST(Channel, mitres) {
  Member member{sample::channel(), 1500, 30 * degree, -45 * degree, {}};
  member.holes = {{Face::web, sample::round_hole({400, 0}, 14)}};
  const Measured m = expect_like_closed_form(part(member));
  EXPECT_EQ(m.faces, 14 + 1);
}

TEST(Channel, hole_near_a_mitre) {
  Member member{sample::channel(), 800, 45 * degree, 0, {}};
  // Clear of the cut end at the web, whose inner face starts at x = web thickness.
  member.holes = {{Face::web, sample::round_hole({14, 0}, 14)}};
  expect_like_closed_form(part(member));
}

TEST(Angle, slots_in_both_legs) {
  Member member{sample::angle(), 2400, 0, 0, {}};
  member.holes = {{Face::flat_leg, sample::slot({100, 45}, 14, 25, 0)},
                  {Face::flat_leg, sample::slot({300, 45}, 14, 25, 90 * degree)},
                  {Face::standing_leg, sample::round_hole({500, 45}, 14)}};
  const Measured m = expect_like_closed_form(part(member));
  EXPECT_EQ(m.faces, 2 + 6 + 3 + 4 + 4 + 1);
}

TEST(Bought, blocks_counted_one_by_one) {
  const Part p{{Kind::wheel}, "", Origin::bought, sample::wheel()};
  const TopoDS_Shape shape = build_part(p);
  EXPECT_EQ(shape.ShapeType(), TopAbs_COMPOUND);
  const Measured m = measure(shape);
  EXPECT_TRUE(m.valid);
  EXPECT_NEAR(m.volume / volume(p), 1, close);
  EXPECT_LT(norm(m.centre - centroid(p)), 1e-6);
}

TEST(Hardware, every_kind) {
  for (const HardwareKind kind :
       {HardwareKind::bolt, HardwareKind::nut, HardwareKind::flat_washer, HardwareKind::lock_washer}) {
    const Part p{
        {Kind::hardware}, "", Origin::kit, sample::hardware(kind, kind == HardwareKind::bolt ? 40 : 0)};
    EXPECT_EQ(build_part(p).ShapeType(), TopAbs_SOLID);
    expect_like_closed_form(p);
  }
}

TEST(Picture, holes_and_fillets_left_out) {
  Member member = sample::main_member(3000, 10);
  EXPECT_EQ(measure(build_part(part(member), Detail::picture)).faces, 2 + 8);
}

TEST(Shapes, copies_share_the_part_and_sit_where_the_item_says) {
  const Bed bed = sample::bed(4);
  Shapes shapes(bed);
  for (const int i : {bed.item({Kind::main, Side::right}), bed.item({Kind::tongue, Side::left}),
                      bed.item({Kind::wheel, Side::right, 1})}) {
    const TopoDS_Shape placed = shapes.item(i);
    EXPECT_TRUE(placed.IsPartner(shapes.part(bed.items[i].part)));
    EXPECT_LT(norm(measure(placed).centre - bed.items[i].placement.point(centroid(bed.part_of(i)))), 1e-5);
  }
}

}  // namespace
}  // namespace bedwright
