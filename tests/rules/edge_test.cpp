// EDGE and SPACING, and the distances under them.
#include "rules/cut/edge.h"

#include <random>

#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

TEST(NearestEdge, OfAnOutlineWithArcsAgreesWithItsChords) {
  Outline outline = rectangle({0, 0}, {100, 60});
  round_corner(outline, 2, 25);
  outline.push_back({{0, 40}, -0.6});  // a bite out of the left side
  outline.push_back({{0, 20}, 0});
  const std::vector<Vec2> chords = flattened(outline, 1e-5);
  std::mt19937 r(2);
  std::uniform_real_distribution<> x(-20, 120), y(-20, 80);
  for (int n = 0; n < 500; ++n) {
    const Vec2 p{x(r), y(r)};
    Mm expected = 1e300;
    for (std::size_t i = 0; i < chords.size(); ++i) {
      const Vec2 a = chords[i], b = chords[(i + 1) % chords.size()], run = b - a;
      const double t = std::clamp(dot(p - a, run) / dot(run, run), 0.0, 1.0);
      expected = std::min(expected, norm(a + t * run - p));
    }
    // Outside it the distance is negative: by the turns the chords make around the point.
    double turns = 0;
    for (std::size_t i = 0; i < chords.size(); ++i) {
      const Vec2 a = chords[i] - p, b = chords[(i + 1) % chords.size()] - p;
      turns += std::atan2(cross(a, b), dot(a, b));
    }
    if (std::abs(turns) < 1) expected = -expected;
    EXPECT_NEAR(nearest_edge(outline, p).distance, expected, 2e-5);
  }
}

Member clip(Mm length, std::vector<FaceHole> holes, Radians start = 0, Radians end = 0) {
  Section s;
  s.name = "test angle";
  s.depth = 60, s.flange = 80, s.web = 6;
  return {s, length, start, end, std::move(holes)};
}

TEST(NearestEdge, OfARoundOutlineIsSignedToo) {
  const Outline round = hole_outline({10, 0}, 20, 20, 0.3);
  EXPECT_NEAR(nearest_edge(round, {10, 0}).distance, 10, 1e-9);
  EXPECT_NEAR(nearest_edge(round, {23, 0}).distance, -3, 1e-9);
  EXPECT_NEAR(nearest_edge(round, {23, 0}).toward.x, 1, 1e-9);  // the steel ends that way
}

TEST(NearestEdge, OfAMemberIsItsEndsAndFreeEdges) {
  const Member m = clip(100, {});
  EXPECT_NEAR(nearest_edge(m, Face::flat_leg, {30, 40}).distance, 30, 1e-12);
  EXPECT_NEAR(nearest_edge(m, Face::flat_leg, {80, 40}).distance, 20, 1e-12);
  EXPECT_NEAR(nearest_edge(m, Face::flat_leg, {50, 72}).distance, 8, 1e-12);
  EXPECT_NEAR(nearest_edge(m, Face::flat_leg, {50, 10}).distance, 50, 1e-12);  // the heel is no edge
  EXPECT_NEAR(nearest_edge(m, Face::standing_leg, {50, 45}).distance, 15, 1e-12);
}

TEST(NearestEdge, FollowsTheMitre) {
  // At 45 degrees the cut crosses the flat leg at x = y.
  const Member m = clip(200, {}, 45 * degree);
  EXPECT_NEAR(nearest_edge(m, Face::flat_leg, {70, 40}).distance, 30 * std::sqrt(0.5), 1e-9);
  EXPECT_NEAR(nearest_edge(m, Face::standing_leg, {40, 10}).distance, 34,
              1e-9);  // steel starts at its thickness
}

TEST(SegmentDistance, AgreesWithSampling) {
  std::mt19937 r(9);
  std::uniform_real_distribution<> any(-10, 10);
  for (int n = 0; n < 200; ++n) {
    const Vec2 a{any(r), any(r)}, b{any(r), any(r)}, c{any(r), any(r)}, d{any(r), any(r)};
    Mm least = 1e300;
    for (int i = 0; i <= 100; ++i)
      for (int j = 0; j <= 100; ++j)
        least = std::min(least, norm(a + (i / 100.0) * (b - a) - c - (j / 100.0) * (d - c)));
    EXPECT_LE(segment_distance(a, b, c, d), least + 1e-9);
    EXPECT_NEAR(segment_distance(a, b, c, d), least, 0.2);
  }
}

// A tab of `length` along the bed with a slot of 25 along it, bolted to a rail.
SmallBed tab(Mm length) {
  SmallBed s;
  const int under = s.plate(tab_r1, {1000, 500, 0}, {length, 90}, 6, {slot({}, 14, 25, 0)});
  const int rail = s.plate(rail_r1, {1000, 500, 6}, {400, 90}, 6, {round_hole({}, 14)}, Origin::kit);
  s.bolt(track_bolt_r1, {rail, under}, 1.5 * inch);
  return s;
}

TEST(Edge, CountsFromTheSlotsEndArc) {
  const Mm least = 2 * (half_inch().edge_minimum + (25 - 14) / 2.0);
  EXPECT_THAT(tab(least + 0.002).of("EDGE"), IsEmpty());
  const auto found = tab(least - 0.002).of("EDGE");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].margin, -0.001, 1e-9);
  const Mm length = change_of(found[0], "frame.tabs.length");
  EXPECT_GE(length, least);
  EXPECT_THAT(tab(length).of("EDGE"), IsEmpty());
}

TEST(Edge, AcrossTheTabItsLengthIsNoRemedy) {
  SmallBed s;
  const int under = s.plate(tab_r1, {1000, 500, 0}, {200, 30}, 6, {round_hole({}, 14)});
  const int rail = s.plate(rail_r1, {1000, 500, 6}, {400, 90}, 6, {round_hole({}, 14)}, Origin::kit);
  s.bolt(track_bolt_r1, {rail, under}, 1.5 * inch);
  const auto found = s.of("EDGE");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_FALSE(offers(found[0], "frame.tabs.length"));
}

TEST(Edge, OnlyATabsLengthIsItsOwnRemedy) {
  const auto found = [](const Identity& id) {
    SmallBed s;
    s.plate(id, {}, {30, 200}, 6, {round_hole({}, 14)});
    s.bolt(bunk_bolt_r1, {0}, 34);
    return s.of("EDGE").at(0);
  };
  EXPECT_TRUE(offers(found(tab_r1), "frame.tabs.length"));
  for (const Kind kind : {Kind::tab_pad, Kind::jack_plate, Kind::cross_member})
    EXPECT_FALSE(offers(found({kind, Side::right, 1}), "frame.tabs.length")) << word(kind);
}

TEST(Edge, AHoleWithoutABoltIsAWarning) {
  const auto with_edge = [](Mm edge) {
    SmallBed s;
    s.plate(some(1), {0, 0, 0}, {200, 200}, 6, {round_hole({0, 100 - edge}, 40)});
    return s.of("EDGE");
  };
  EXPECT_THAT(with_edge(50.01), IsEmpty());
  ASSERT_THAT(with_edge(49.99), SizeIs(1));
  EXPECT_EQ(with_edge(49.99)[0].severity, Severity::warn);
}

// EN 1993-1-8 table 3.3, from memory: never less than 1.2 widths of the hole.
TEST(Edge, OfBoughtAndKitPartsMayGoDownToOnePointTwoWidths) {
  const auto with_edge = [](Mm edge) {
    SmallBed s;
    const int p = s.plate(rail_r1, {0, 0, 0}, {200, 2 * edge}, 6, {round_hole({}, 14)}, Origin::kit);
    s.bolt(track_bolt_r1, {p}, 34);
    return s.of("EDGE");
  };
  EXPECT_THAT(with_edge(half_inch().edge_minimum + 0.001), IsEmpty());
  ASSERT_THAT(with_edge(half_inch().edge_minimum - 0.001), SizeIs(1));
  EXPECT_EQ(with_edge(half_inch().edge_minimum - 0.001)[0].severity, Severity::warn);
  EXPECT_EQ(with_edge(1.2 * 14 + 0.001).at(0).severity, Severity::warn);
  EXPECT_EQ(with_edge(1.2 * 14 - 0.001).at(0).severity, Severity::stop);
}

// An angle of 60 by 80, 6 thick, its fillet 5: a hole of 14 on either leg.
std::vector<Finding> on_leg(Face face, Vec2 at, Origin origin = Origin::kit) {
  SmallBed s;
  Member m = clip(100, {{face, round_hole(at, 14)}});
  m.section.root_radius = 5;
  s.add({some(1), "steel", origin, m}, some(1), {});
  return s.of("HOLE-STEEL");
}

TEST(HoleSteel, OfALegIsClearOfTheOtherLegAndItsFillet) {
  for (const Face face : {Face::flat_leg, Face::standing_leg}) {
    EXPECT_THAT(on_leg(face, {50, 6 + 5 + 7.01}), IsEmpty());
    EXPECT_EQ(on_leg(face, {50, 6 + 5 + 6.99}).at(0).severity, Severity::warn);
    EXPECT_EQ(on_leg(face, {50, 6 + 7.01}).at(0).severity, Severity::warn);
    EXPECT_EQ(on_leg(face, {50, 6 + 6.99}).at(0).severity, Severity::stop);
    EXPECT_NEAR(on_leg(face, {50, 6 + 6.9}).at(0).margin, -0.1, 1e-9);
  }
}

TEST(HoleSteel, OfALegEndsAtItsFreeEdgeAndItsEnds) {
  EXPECT_THAT(on_leg(Face::flat_leg, {50, 80 - 7.01}), IsEmpty());
  EXPECT_THAT(on_leg(Face::flat_leg, {50, 80 - 6.99}), SizeIs(1));
  EXPECT_THAT(on_leg(Face::flat_leg, {7.01, 40}), IsEmpty());
  EXPECT_THAT(on_leg(Face::flat_leg, {6.99, 40}), SizeIs(1));
  EXPECT_THAT(on_leg(Face::flat_leg, {200, 40}), SizeIs(1));  // nowhere near it
}

// C6x8.2: 1/4 of the flange's slope runs to its corner with the web, and the AISC Manual's
// detailing distance k, 13/16 in (table 1-5), ends the fillet, to 1/8 in.
TEST(HoleSteel, OfAWebIsClearOfTheFlanges) {
  Section s;
  s.name = "C6x8.2";
  s.shape = Shape::channel;
  s.depth = 6 * inch, s.flange = 1.92 * inch, s.web = 0.2 * inch, s.flange_thickness = 0.343 * inch;
  s.root_radius = 0.3 * inch;
  const auto at = [&](Mm up) {
    SmallBed bed;
    bed.add({main_r, "A36", Origin::made, Member{s, 1000, 0, 0, {{Face::web, round_hole({500, up}, 14)}}}},
            main_r, {});
    return bed.of("HOLE-STEEL");
  };
  EXPECT_THAT(at(0), IsEmpty());
  EXPECT_THAT(at((3 - 13.0 / 16) * inch - 7), IsEmpty());
  EXPECT_THAT(at(-(3 - 13.0 / 16 + 1.0 / 8) * inch + 7), SizeIs(1));
  EXPECT_EQ(at(3 * inch - 7).at(0).severity, Severity::stop);
}

// A foot of 60 by 40 with a face of 10 across its end, as a track stop has.
std::vector<Finding> in_foot(Mm length, Vec2 slot_size) {
  SmallBed s;
  Bought stop;
  stop.envelope = {{{}, {-length / 2, -20, 0}, {length / 2, 20, 12}, 0},
                   {{}, {length / 2 - 10, -20, 12}, {length / 2, 20, 100}, 0}};
  stop.lugs = {{{0, 0, 12}, {0, 0, -1}, 12, slot({}, slot_size.y, slot_size.x, 0)}};
  const Identity id{Kind::track_stop, Side::right, 0, 0, End::front};
  s.add({id, "", Origin::kit, stop}, id, {{700, 300, 5}});
  return s.of("HOLE-STEEL");
}

TEST(HoleSteel, OfALugIsInItsOwnBlockAndClearOfTheOthers) {
  EXPECT_THAT(in_foot(60, {39.9, 14}), IsEmpty());  // the face begins 20 from the middle
  ASSERT_THAT(in_foot(60, {40.1, 14}), SizeIs(1));
  EXPECT_THAT(in_foot(60, {40.1, 14})[0].message, HasSubstr("upright face"));
  EXPECT_THAT(in_foot(60, {20, 39.9}), IsEmpty());
  EXPECT_THAT(in_foot(60, {61, 14}), SizeIs(2));  // and out at the other end
}

TEST(HoleSteel, ALugOfNoBlockIsAMistakeOfTheProgram) {
  SmallBed s;
  Bought stop;
  stop.lugs = {{{0, 0, 12}, {0, 0, -1}, 12, round_hole({}, 14)}};
  s.add({{Kind::track_stop}, "", Origin::kit, stop}, {Kind::track_stop}, {});
  EXPECT_THROW(s.run(), std::logic_error);
}

TEST(Edge, OfAClipGoesByItsEnds) {
  const auto at = [](Mm x) {
    SmallBed s;
    const FaceHole hole{Face::flat_leg, round_hole({x, 45}, 14)};
    const int under = s.add({tab_r1, "A36", Origin::made, clip(100, {hole})}, tab_r1, {});
    const int rail = s.plate(rail_r1, {x, 45, 6}, {400, 90}, 6, {round_hole({}, 14)}, Origin::kit);
    s.bolt(track_bolt_r1, {rail}, 1.5 * inch);
    s.bed.bolts[0].plies.push_back({under, 0, 6, 0});
    return s.of("EDGE");
  };
  EXPECT_THAT(at(half_inch().edge_minimum + 0.001), IsEmpty());
  EXPECT_THAT(at(half_inch().edge_minimum - 0.001), SizeIs(1));
}

SmallBed jack_plate(Mm apart, Origin origin = Origin::made) {
  SmallBed s;
  const std::vector<Hole> holes{round_hole({0, 0}, 14), round_hole({apart, 0}, 14)};
  const int under = s.plate(some(1), {0, 0, 0}, {300, 200}, 6, holes, origin);
  const int top = s.plate(some(2), {0, 0, 6}, {300, 200}, 6, holes, origin);
  s.bolt({Kind::jack_bolt, Side::right, 1, 1}, {top, under}, 1.5 * inch);
  Bolt second = s.bed.bolts[0];
  for (Ply& ply : second.plies) ply.hole = 1;
  second.id.of = 2;
  s.bed.bolts.push_back(second);
  return s;
}

TEST(Spacing, IsTwoAndTwoThirdsDiameters) {
  const Mm limit = 8.0 / 3 * inch / 2;
  EXPECT_THAT(jack_plate(limit + 0.001).of("SPACING"), IsEmpty());
  const auto found = jack_plate(limit - 0.001).of("SPACING");
  ASSERT_THAT(found, SizeIs(1));  // the two plates are one part
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].limit, limit, 1e-9);
  EXPECT_EQ(jack_plate(limit - 0.001, Origin::kit).of("SPACING").at(0).severity, Severity::warn);
  // EN 1993-1-8 table 3.3, from memory: 2.2 widths from hole to hole.
  EXPECT_EQ(jack_plate(2.2 * 14 + 0.001, Origin::kit).of("SPACING").at(0).severity, Severity::warn);
  EXPECT_EQ(jack_plate(2.2 * 14 - 0.001, Origin::kit).of("SPACING").at(0).severity, Severity::stop);
  EXPECT_THAT(jack_plate(10, Origin::kit).of("SPACING").at(0).message, HasSubstr("run into each other"));
}

// Two holes of 14, one of them without a bolt: 3/4 of 14 must be left between,
// 24.5 from centre to centre.
TEST(Spacing, AHoleWithoutABoltCountsByItsSize) {
  for (const auto& [apart, stops] : {std::pair(24.51, 0u), std::pair(24.49, 1u)}) {
    SmallBed s = jack_plate(apart);
    s.bed.bolts.pop_back();
    EXPECT_THAT(s.of("SPACING"), SizeIs(stops)) << apart;
  }
}

}  // namespace
}  // namespace bedwright
