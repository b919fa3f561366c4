// Where the frame's parts, holes and fillets come, against figures worked out by hand
// from what is typed in here: order and frame figures as overrides, sections as AISC
// Manual table 1-5 has them. Sizes that fall between the tape's marks, so that a length
// rounded and one that is not are two different figures.
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "bed/names.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_bed;

// In inches: C6x8.2 is 6 deep, 1.92 wide; C5x6.7 1.75 wide; C4x5.4 1.58; C3x4.1 is 3
// deep, its flange 0.273 thick.
constexpr Mm main_depth = 6 * inch, main_flange = 1.92 * inch, tongue_flange = 1.75 * inch;
constexpr Mm ledge = 6;    // of a plate beside an edge, for a fillet to lie on
constexpr Mm toe_gap = 3;  // between the tongue's toes at the ball

std::vector<Vec3> corners(const Bed& bed, const Identity& id) {
  const Item& item = bed.items[bed.item(id)];
  const Plate& plate = std::get<Plate>(bed.parts[item.part].form);
  std::vector<Vec3> all;
  for (const Vertex& v : plate.outline)
    for (const Mm z : {0.0, plate.thickness}) all.push_back(item.placement.point({v.at.x, v.at.y, z}));
  return all;
}

bool has_corner(const std::vector<Vec3>& all, Vec3 p) {
  return std::any_of(all.begin(), all.end(), [&](const Vec3& q) { return norm(q - p) < 1e-3; });
}

// --- jack holes -----------------------------------------------------------------

// Along the main from its front end, and above its middle.
std::vector<Vec2> main_holes(const Bed& bed) {
  std::vector<Vec2> all;
  for (const FaceHole& h : std::get<Member>(bed.parts[bed.part({Kind::main})].form).holes) {
    EXPECT_EQ(h.face, Face::web);
    EXPECT_EQ(h.hole.purpose, Kind::jack_bolt);
    all.push_back(h.hole.at);
  }
  return all;
}

void expect_holes(const Bed& bed, const std::vector<Mm>& along, Mm up) {
  const std::vector<Vec2> there = main_holes(bed);
  ASSERT_EQ(there.size(), 2 * along.size());
  for (const Mm x : along)
    for (const Mm y : {-up, up})
      EXPECT_TRUE(std::any_of(there.begin(), there.end(),
                              [&](Vec2 p) {
                                return norm(p - Vec2{x, y}) < 1e-3;
                              }))
          << x / inch << " in, " << y / inch << " in";
}

// The mains start 1.01 in ahead of the track. Jacks at 17.03, 120 and 223 in are 18.04,
// 121.01 and 224.01 in from their front end, the bolts 2.02 in to either side of that:
// 16.02, 20.06, 118.99, 123.03, 221.99 and 226.03 in. In sixteenths 256.32, 320.96,
// 1903.84, 1968.48, 3551.84 and 3616.48.
// Up: the bolts' lines stand 3 - 2.55/2 = 1.725 in from the channel's edges, 27.6
// sixteenths, so 28; 1.25 in from its middle.
TEST(FrameFigures, JackHolesAreAtTheTapesMarks) {
  const Bed bed =
      demo_bed("base", {"jacks=[17.03 in, 120 in, 223 in]", "frame.main.front_overhang=1.01 in",
                        "frame.jack.bolt_x=4.04 in", "frame.jack.bolt_z=2.55 in", "order.tape=1/16 in"});
  std::vector<Mm> along;
  for (const int sixteenths : {256, 321, 1904, 1968, 3552, 3616}) along.push_back(sixteenths * inch / 16);
  expect_holes(bed, along, 1.25 * inch);
}

// Jacks at 430.4, 3000.7 and 5570 mm, bolts 50.5 mm to either side: 379.9, 480.9,
// 2950.2, 3051.2, 5519.5 and 5620.5 mm, half a mark going up. Edges 76.2 mm from the
// middle, bolts 76.2 - 32.5 = 43.7, so 44 mm from the edges, 32.2 mm from the middle.
TEST(FrameFigures, JackHolesAreAtTheMarksOfAMetricTape) {
  const Bed bed =
      demo_bed("metric", {"jacks=[430.4 mm, 3000.7 mm, 5570 mm]", "frame.main.front_overhang=0 mm",
                          "frame.jack.bolt_x=101 mm", "frame.jack.bolt_z=65 mm", "order.tape=1 mm"});
  expect_holes(bed, {380, 481, 2950, 3051, 5520, 5621}, 32.2);
}

// The jack itself stays where the order has it, so that the fit has an offset to count:
// at most half a mark, and here not none.
TEST(FrameFigures, EachJackKeepsItsPlaceAndItsOwnFourHoles) {
  const std::vector<Mm> jacks{17.03 * inch, 120 * inch, 223 * inch};
  const Bed bed =
      demo_bed("base", {"jacks=[17.03 in, 120 in, 223 in]", "frame.main.front_overhang=1.01 in",
                        "frame.jack.bolt_x=4.04 in", "frame.jack.bolt_z=2.55 in", "order.tape=1/16 in"});
  Mm most = 0;
  int bolts = 0;
  for (const Bolt& bolt : bed.bolts) {
    if (bolt.id.kind != Kind::jack_bolt) continue;
    ++bolts;
    const Mm from_jack = bolt.seat.x - jacks[static_cast<std::size_t>(bolt.id.number - 1)];
    EXPECT_NEAR(std::abs(from_jack), 2.02 * inch, 1e-3) << name(bolt);
    EXPECT_NEAR(std::abs(bolt.seat.z + main_depth / 2), 2.55 / 2 * inch, 1e-3) << name(bolt);
    for (const Ply& ply : bolt.plies) {
      if (bed.items[ply.item].id.kind != Kind::main) continue;
      const Mm off = std::abs(hole_in_world(bed, ply).centre.x - bolt.seat.x);
      EXPECT_LE(off, inch / 32 + 1e-6) << name(bolt);
      EXPECT_EQ(bed.items[ply.item].id.side, bolt.id.side) << name(bolt);
      most = std::max(most, off);
    }
  }
  EXPECT_EQ(bolts, 24);
  EXPECT_NEAR(most, 0.48 / 16 * inch, 1e-3);
}

// --- cross members --------------------------------------------------------------

std::vector<Mm> cross_members(const Bed& bed) {
  std::vector<Mm> all;
  for (const int item : bed.items_of(Kind::cross_member)) all.push_back(bed.items[item].placement.origin.x);
  return all;
}

void expect_at(const std::vector<Mm>& there, const std::vector<Mm>& expected) {
  ASSERT_EQ(there.size(), expected.size());
  for (std::size_t i = 0; i < there.size(); ++i)
    EXPECT_NEAR(there[i] / inch, expected[i] / inch, 1e-4) << "cross member " << i + 1;
}

// 250 in in seven spaces of 35.714 in; in sixteenths 571.43, 1142.86, 1714.29 and so on.
TEST(FrameFigures, CrossMembersAreEvenToTheTape) {
  const Bed bed = demo_bed("base", {"frame.main.length=250 in", "frame.cross_member.max_spacing=36 in",
                                    "jacks=[10 in, 125 in, 240 in]", "order.tape=1/16 in"});
  std::vector<Mm> expected;
  for (const int sixteenths : {571, 1143, 1714, 2286, 2857, 3429}) expected.push_back(sixteenths * inch / 16);
  expect_at(cross_members(bed), expected);
}

// 252 in at most 36 apart. A jack's bolts stand 2 in to either side of it and want 1 in more
// for a wrench, and a member's flange lies 1.58 in forward of its web: the jack at 34-1/2 in
// keeps webs out from 31-1/2 to 39.08, that at 73 from 70 to 77.58, that at 218-1/2 from
// 215-1/2 to 223.08. The last can stand no further forward than 216, so at 223-1/8; 187-1/8,
// 151-1/8, 115-1/8, 79-1/8 and 43-1/8 before it leave more than 36 in, so it takes seven:
// in eight spaces of 31-1/2, but for the last.
TEST(FrameFigures, CrossMembersKeepTheirSpacingBesideJacks) {
  const Bed bed = demo_bed("base", {"frame.main.length=252 in", "frame.cross_member.max_spacing=36 in",
                                    "frame.jack.bolt_x=4 in", "jacks=[34.5 in, 73 in, 218.5 in]"});
  expect_at(cross_members(bed),
            {31.5 * inch, 63 * inch, 94.5 * inch, 126 * inch, 157.5 * inch, 189 * inch, 223.125 * inch});
}

// Whatever the jacks: no two further apart than asked, none at a jack.
TEST(FrameFigures, CrossMembersKeepTheirSpacingWhereverJacksAre) {
  unsigned seed = 7;
  const auto pick = [&](int n) {
    seed = seed * 1664525u + 1013904223u;
    return static_cast<int>((seed >> 8) % static_cast<unsigned>(n));
  };
  for (int i = 0; i < 60; ++i) {
    const int first = 12 + pick(30), second = first + 12 + pick(70), third = second + 12 + pick(70),
              most = 18 + pick(40);
    const Bed bed = demo_bed(
        "base", {"frame.main.length=252 in", "frame.cross_member.max_spacing=" + std::to_string(most) + " in",
                 "frame.jack.bolt_x=4 in",
                 "jacks=[" + std::to_string(first) + " in, " + std::to_string(second) + " in, " +
                     std::to_string(third) + " in]"});
    std::vector<Mm> webs = cross_members(bed);
    for (const Mm x : webs)
      for (const int jack : {first, second, third})
        EXPECT_FALSE(x / inch > jack - 3 + 1e-4 && x / inch < jack + 3 + 1.58 - 1e-2)
            << x / inch << " at a jack at " << jack;
    webs.insert(webs.begin(), 0);
    webs.push_back(252 * inch);
    for (std::size_t k = 1; k < webs.size(); ++k)
      EXPECT_LE(webs[k] - webs[k - 1], most * inch + 1e-6) << "order " << i << ", space " << k;
  }
}

// What stands moves for no jack, measured or not.
TEST(FrameFigures, CrossMembersOfAStandingFrameStay) {
  const std::string jacks = "jacks=[35 in, 109 in, 217 in]";
  const std::vector<Mm> there{36 * inch, 72 * inch, 108 * inch, 144 * inch, 180 * inch, 216 * inch};
  expect_at(cross_members(demo_bed("lot_frame", {jacks})), there);
  expect_at(cross_members(demo_bed("lot_frame", {jacks, "frame.cross_member.existing=[]"})), there);
  expect_at(cross_members(demo_bed("lot_frame", {"frame.cross_member.existing=[30 in, 71 in]"})),
            {30 * inch, 71 * inch});
}

// The same frame, its jacks away from every member: none moves.
TEST(FrameFigures, ACrossMemberAwayFromJacksStaysWhereItIs) {
  const Bed bed = demo_bed("base", {"frame.main.length=252 in", "frame.cross_member.max_spacing=36 in",
                                    "frame.jack.bolt_x=4 in", "jacks=[20 in, 55 in, 235 in]"});
  expect_at(cross_members(bed), {36 * inch, 72 * inch, 108 * inch, 144 * inch, 180 * inch, 216 * inch});
}

// --- plates beside an edge --------------------------------------------------------

// Under each rear corner, a ledge in from the main's web and from the rear member's
// toes, which are a flange behind the mains' ends.
TEST(FrameFigures, CornerGussetsLeaveALedge) {
  const Bed bed = demo_bed("base", {"frame.main.length=252 in", "frame.main.spacing=44 in",
                                    "frame.corner_gusset={leg: 10 in, thickness: 1/4 in, corner_cut: 1 in}"});
  const Mm rear = 252 * inch + main_flange - ledge, side = 22 * inch - ledge;
  for (const Side s : both_sides) {
    const std::vector<Vec3> all = corners(bed, {Kind::corner_gusset, s});
    ASSERT_EQ(all.size(), 10u);
    for (const Mm z : {-main_depth, -main_depth - inch / 4}) {
      EXPECT_TRUE(has_corner(all, {rear, outward(s) * side, z})) << z;
      EXPECT_TRUE(has_corner(all, {rear - 10 * inch, outward(s) * side, z})) << z;
      EXPECT_TRUE(has_corner(all, {rear, outward(s) * (side - 10 * inch), z})) << z;
    }
  }
}

// Across the tongue, its edges a ledge inside the webs' outer faces, which go out by tan
// 25 from where the toes stand 3 mm apart, 38 in ahead of the mains.
TEST(FrameFigures, TheTonguesPlateLeavesALedge) {
  const Bed bed =
      demo_bed("base", {"frame.tongue.length=38 in", "frame.tongue.angle=25 deg",
                        "frame.tongue_jack.behind_front=14 in", "frame.tongue_jack.plate_length=9 in"});
  const std::vector<Vec3> all = corners(bed, {Kind::tongue_plate});
  ASSERT_EQ(all.size(), 8u);
  for (const Mm behind : {9.5 * inch, 18.5 * inch}) {
    const Mm web = tongue_flange / std::cos(25 * degree) + toe_gap + behind * std::tan(25 * degree);
    for (const double way : {-1.0, 1.0})
      EXPECT_TRUE(has_corner(all, {behind - 38 * inch, way * (web - ledge), -main_depth})) << behind;
  }
}

// --- fillets of other sizes than the demos have ------------------------------------

void expect_fillet(const Bed& bed, Kind a, Kind b, WeldLine line, Mm length) {
  int met = 0;
  for (const Weld& w : bed.welds) {
    if (bed.items[w.a].id.kind != a || bed.items[w.b].id.kind != b || w.line != line) continue;
    ++met;
    EXPECT_NEAR(w.length, length, 1e-3) << name(bed.items[w.a]) << ", " << words_of(line);
  }
  EXPECT_GT(met, 0) << words_of(line);
}

TEST(FrameFigures, FilletsAreAsLongAsTheirPartsAreInTouch) {
  const Bed bed = demo_bed("base", {"frame.cross_member.section=C3x4.1",
                                    "frame.corner_gusset={leg: 10 in, thickness: 1/4 in, corner_cut: 1 in}",
                                    "frame.tongue.angle=25 deg", "frame.tongue_jack.plate_length=9 in",
                                    "frame.tabs.plate.inboard=2-1/4 in"});
  // Both sides of the web, between the flanges.
  expect_fillet(bed, Kind::cross_member, Kind::main, WeldLine::web_sides, 2 * (3 - 2 * 0.273) * inch);
  // From the mains' end forward: behind it the gusset is under the rear member's flange.
  expect_fillet(bed, Kind::corner_gusset, Kind::main, WeldLine::edge_under_main,
                10 * inch + ledge - main_flange);
  expect_fillet(bed, Kind::corner_gusset, Kind::rear_member, WeldLine::edge_under_rear, 10 * inch);
  expect_fillet(bed, Kind::tongue_plate, Kind::tongue, WeldLine::outer_edge,
                9 * inch / std::cos(25 * degree));
  // A plate that reaches past the flange's toe is welded as far as there is flange.
  expect_fillet(bed, Kind::tab, Kind::main, WeldLine::across_flange, 2 * main_flange);
}

}  // namespace
}  // namespace bedwright
