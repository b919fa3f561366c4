// WASHER-COVER, and the areas under it against closed forms.
#include "rules/fit/bearing.h"

#include <numbers>

#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::Not;
using testing::SizeIs;

constexpr double quarter_pi = std::numbers::pi / 4;

const Outline wide_plate = rectangle({-500, -500}, {500, 500});
constexpr Footprint ring{13, 24};  // ISO 7089, M12
constexpr double whole = quarter_pi * (24 * 24 - 13 * 13);

TEST(BearingArea, OfAWholeRingIsTheRing) {
  EXPECT_NEAR(bearing_area(wide_plate, {}, {3, 7}, ring), whole, 2e-3 * whole);
}

TEST(BearingArea, OverARoundHoleIsWhatIsLeftAroundIt) {
  const double left = quarter_pi * (24 * 24 - 17 * 17);
  EXPECT_NEAR(bearing_area(wide_plate, {round_hole({3, 7}, 17)}, {3, 7}, ring), left, 2e-3 * whole);
}

// A slot longer than the ring leaves two segments of it, each R^2 acos(h/R) - h sqrt(R^2 - h^2);
// at any angle.
TEST(BearingArea, OverALongSlotIsTwoSegments) {
  const double R = 12, h = 13.5 / 2, segment = R * R * std::acos(h / R) - h * std::sqrt(R * R - h * h);
  for (const Radians turn : {0.0, 0.4, 1.2, 1.5707963})
    EXPECT_NEAR(bearing_area(wide_plate, {slot({}, 13.5, 60, turn)}, {}, ring), 2 * segment, 2e-3 * whole)
        << turn;
}

TEST(BearingArea, PastAnEdgeIsTheSegmentThatIsLeft) {
  const double R = 12, h = 8, segment = R * R * std::acos(h / R) - h * std::sqrt(R * R - h * h);
  const Outline plate = rectangle({-500, -500}, {500, 8});
  EXPECT_NEAR(bearing_area(plate, {}, {}, ring), whole - segment, 2e-3 * whole);
  const Outline turned = rectangle({-500, -500}, {8, 500});
  EXPECT_NEAR(bearing_area(turned, {}, {}, ring), whole - segment, 2e-3 * whole);
}

TEST(BearingArea, AnotherHoleUnderTheRingIsTakenOffToo) {
  const std::vector<Hole> holes{round_hole({}, 13.5), round_hole({9, 0}, 3)};
  EXPECT_NEAR(bearing_area(wide_plate, holes, {}, ring), quarter_pi * (576 - 13.5 * 13.5 - 9), 2e-3 * whole);
}

TEST(BearingArea, IsLeastOverTheBoltsPlaces) {
  // A bolt of 12 in a hole of 20: in the middle all of the hole is under the ring.
  const std::vector<Hole> holes{round_hole({}, 20)};
  EXPECT_NEAR(least_bearing(wide_plate, holes, 0, 12, ring), quarter_pi * (576 - 400), 2e-3 * whole);
  // 8 from an edge that a bolt to that side hangs its ring over.
  const Outline plate = rectangle({-500, -500}, {500, 11});
  EXPECT_NEAR(least_bearing(plate, holes, 0, 12, ring), bearing_area(plate, holes, {0, 4}, ring),
              2e-3 * whole);
}

// --- the rule -----------------------------------------------------------------

// The small bed's half inch washer is 34.9 across: it covers a hole up to
// (34.9 + 12.7) / 2 = 23.8 wide with the bolt to one side.
SmallBed bolted(Hole hole, const BoltSize& size = half_inch()) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {200, 200}, 6, {hole});
  const int top = s.plate(some(2), {0, 0, 6}, {200, 200}, 6, {round_hole({}, 14)});
  s.bolt(bunk_bolt_r1, {top, under}, 34, size);
  return s;
}

TEST(WasherCover, TheBoltToOneSideOfItsHole) {
  EXPECT_THAT(bolted(round_hole({}, 23.79)).of("WASHER-COVER"), IsEmpty());
  const auto found = bolted(round_hole({}, 23.81)).of("WASHER-COVER");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_THAT(found[0].message, HasSubstr("nut"));
}

// ASME B18.21.1 and B18.2.2: a 3/8 in plain washer, 0.406 by 0.812 in, under a nut 9/16 in
// across flats. Over a slot 9/16 by 7/8 in it lies on 0.11 in2; the nut's face about its bolt is
// pi/4 (0.3164 - 0.1406) = 0.138 in2. A 1/2 in one, 0.531 by 1.062 in, lies on 0.46 in2 of
// 0.245 in2 needed.
TEST(WasherCover, AWasherTooSmallForItsSlotBearsOnTooLittle) {
  BoltSize small = half_inch();
  small.name = "3/8 in";
  small.diameter = 3 * inch / 8;
  small.head_flats = small.nut_flats = 9 * inch / 16;
  small.standard_hole = 7 * inch / 16;
  small.flat = {0.406 * inch, 0.812 * inch, 0.065 * inch};
  BoltSize half = half_inch();
  half.flat = {0.531 * inch, 1.062 * inch, 0.095 * inch};
  const Hole wide = slot({}, 9 * inch / 16, 7 * inch / 8, 0.3);
  EXPECT_THAT(bolted(wide, half).of("WASHER-COVER"), IsEmpty());
  const auto found = bolted(wide, small).of("WASHER-COVER");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_THAT(found[0].message, HasSubstr("does not cover the slot"));
  // As long as the washer covers it, 13/16 in, it still has too little under it.
  const auto covered = bolted(slot({}, 9 * inch / 16, 13 * inch / 16 - 0.1, 0.3), small).of("WASHER-COVER");
  ASSERT_THAT(covered, SizeIs(1));
  EXPECT_EQ(covered[0].severity, Severity::stop);
  EXPECT_THAT(covered[0].message, HasSubstr("% of its own face"));
  EXPECT_LT(covered[0].measured, 100);
}

// Over a slot as long as the small bed's washer, 34.9, the bolt in its middle and a little off
// it. RCSC section 6.1, AISC 360 section J3.2, from memory: the washer covers the slot where it
// is put in.
TEST(WasherCover, AWasherCoversItsSlotFromEndToEnd) {
  EXPECT_THAT(bolted(slot({}, 14, 34.9, 0)).of("WASHER-COVER"), IsEmpty());
  const auto found = bolted(slot({}, 14, 34.92, 0)).of("WASHER-COVER");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_THAT(found[0].message, HasSubstr("in its middle"));
  EXPECT_EQ(found[0].severity, Severity::stop);
  // Off along the slot it must be longer by twice as much.
  EXPECT_THAT(bolted(slot({0.5, 0}, 14, 33.88, 0)).of("WASHER-COVER"), IsEmpty());
  const auto along = bolted(slot({0.5, 0}, 14, 33.92, 0)).of("WASHER-COVER");
  ASSERT_THAT(along, SizeIs(1));
  EXPECT_EQ(along[0].severity, Severity::stop);
  EXPECT_NEAR(along[0].measured, 34.9, 1e-9);
  EXPECT_NEAR(along[0].limit, 33.92 + 2 * 0.5, 1e-9);
  // Off across it by 0.75 the end's furthest point is 7 beyond the arc's middle, that
  // sqrt(h^2 + 0.75^2) from the bolt, h half of what the slot is longer than wide: 34.9 in all
  // where h is sqrt(10.45^2 - 0.75^2).
  const Mm longest = 14 + 2 * std::sqrt(10.45 * 10.45 - 0.75 * 0.75);
  EXPECT_THAT(bolted(slot({0, 0.75}, 14, longest - 0.01, 0)).of("WASHER-COVER"), IsEmpty());
  EXPECT_THAT(bolted(slot({0, 0.75}, 14, longest + 0.01, 0)).of("WASHER-COVER"), SizeIs(1));
  // Where the bolt does not go in at all, that is what is said.
  const SmallBed missed = bolted(slot({0, 3}, 14, 30, 0));
  EXPECT_THAT(missed.of("WASHER-COVER"), IsEmpty());
  EXPECT_THAT(missed.of("HOLE-FIT"), SizeIs(1));
}

// A slot that stands is not cut shorter: the washer is the way out.
TEST(WasherCover, OfWhatStandsOnlyTheWasherIsChanged) {
  const auto with = [](Origin origin) {
    SmallBed s;
    const int under = s.plate(some(1), {0, 0, 0}, {200, 200}, 6, {slot({}, 14, 36, 0)}, origin);
    const int top = s.plate(some(2), {0, 0, 6}, {200, 200}, 6, {round_hole({}, 14)});
    s.bolt(track_bolt_r1, {top, under}, 34);
    return s.of("WASHER-COVER").at(0);
  };
  EXPECT_THAT(with(Origin::made).remedy, HasSubstr("make the slot at most 1-5/16 in"));
  EXPECT_THAT(with(Origin::standing).remedy, Not(HasSubstr("make the slot")));
  EXPECT_THAT(with(Origin::standing).remedy, HasSubstr("washer at least 1-7/16 in"));
  EXPECT_THAT(with(Origin::standing).changes, IsEmpty());
}

// A washer over the plate's end: the hole itself keeps its edge distance.
TEST(WasherCover, AWasherPastTheEdgeBearsOnTooLittle) {
  const auto at_edge = [](Mm edge) {
    SmallBed s;
    const int p = s.plate(some(1), {}, {2 * edge, 2 * edge}, 6, {round_hole({}, 14)});
    s.bolt(bunk_bolt_r1, {p}, 34);
    return s.of("WASHER-COVER");
  };
  EXPECT_THAT(at_edge(18), IsEmpty());
  EXPECT_THAT(at_edge(7.5), SizeIs(2));  // head and nut
}

TEST(WasherCover, TheSlotOfferedIsEnough) {
  BoltSize half = half_inch();
  half.flat = {0.531 * inch, 1.062 * inch, 0.095 * inch};
  half.nut_flats = 0.875 * inch;  // a heavier nut wants more under it
  SmallBed s = bolted(slot({}, 9 * inch / 16, 2 * inch, 0), half);
  const auto found = s.of("WASHER-COVER");
  ASSERT_THAT(found, SizeIs(1));
  auto& hole = std::get<Plate>(s.bed.parts[s.bed.items[0].part].form).holes[0];
  hole.length = change_of(found[0], "kit.bunk.hole.slot");
  EXPECT_THAT(s.of("WASHER-COVER"), IsEmpty());
  hole.length += inch / 8;
  EXPECT_THAT(s.of("WASHER-COVER"), SizeIs(1));
}

}  // namespace
}  // namespace bedwright
