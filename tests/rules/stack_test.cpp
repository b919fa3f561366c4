// BOLT-SHORT, BOLT-LONG, BOLT-THREAD, WASHER-FLAT and TIP, each with a fault just
// past its limit and a twin just inside.
#include "rules/scene.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;

// Two plates of 6 with a washer of 2.5 at each end and a nut of 11: a stack of 28.
constexpr Mm stack = 28;

SmallBed two_plates(Mm length, const BoltSize& size = half_inch()) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {100, 100}, 6, {round_hole({}, 14)});
  const int top = s.plate(some(2), {0, 0, 6}, {100, 100}, 6, {round_hole({}, 14)});
  s.bolt(bunk_bolt_r1, {top, under}, length, size);
  return s;
}

TEST(BoltShort, CountsThreadsPastTheNutAtTheShortest) {
  const BoltSize size = half_inch();
  const Mm least = stack + size.tolerance(stack).minus + size.pitch;
  EXPECT_THAT(two_plates(least + 0.01).of("BOLT-SHORT"), IsEmpty());
  const auto found = two_plates(least - 0.01).of("BOLT-SHORT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].unit, "threads");
  EXPECT_NEAR(found[0].measured, 1 - 0.01 / size.pitch, 1e-9);
  // 1-1/4 in is 31.75: past 30.95, and the shortest stock length that is.
  EXPECT_NEAR(change_of(found[0], "bolts.bunk"), 1.25 * inch, 1e-9);
  EXPECT_THAT(two_plates(change_of(found[0], "bolts.bunk")).faults(), IsEmpty());
}

TEST(BoltShort, SaysSoWhenNoStockLengthSuits) {
  BoltSize size = half_inch();
  size.lengths = {inch, 2 * inch};
  const auto found = two_plates(inch, size).of("BOLT-SHORT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found[0].changes, IsEmpty());
  EXPECT_THAT(found[0].remedy, HasSubstr("no stock length"));
}

TEST(BoltShort, MetricSizesAreOfferedInMillimetres) {
  BoltSize size = half_inch();
  size.name = "M12";
  size.lengths = {25, 30, 35};
  EXPECT_EQ(two_plates(25, size).of("BOLT-SHORT").at(0).changes.at(0).value, "35 mm");
}

TEST(BoltLong, CountsWhatStandsPastTheNutAtTheLongest) {
  const Mm most = stack + 3 * inch / 8 - half_inch().tolerance(stack).plus;
  EXPECT_THAT(two_plates(most - 0.01).of("BOLT-LONG"), IsEmpty());
  const auto found = two_plates(most + 0.01).of("BOLT-LONG");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::warn);  // too long for beauty, and it holds
  EXPECT_NEAR(found[0].margin, -0.01, 1e-9);
  EXPECT_THAT(two_plates(change_of(found[0], "bolts.bunk")).faults(), IsEmpty());
}

TEST(BoltThread, TheNutMustNotMeetThePlainShank) {
  // 38 long; the grip is 17, so threads from 21 up reach under the nut.
  BoltSize size = half_inch();
  size.thread_length = 21.01;
  EXPECT_THAT(two_plates(38, size).of("BOLT-THREAD"), IsEmpty());
  size.thread_length = 20.99;
  const auto found = two_plates(38, size).of("BOLT-THREAD");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].measured, 17.01, 1e-9);
  EXPECT_THAT(two_plates(change_of(found[0], "bolts.bunk"), size).of("BOLT-THREAD"), IsEmpty());
}

TEST(WasherFlat, TakesADegreeAndNoMore) {
  SmallBed s = two_plates(34);
  s.bed.bolts[0].plies.back().slope = 0.99 * degree;
  EXPECT_THAT(s.of("WASHER-FLAT"), IsEmpty());
  s.bed.bolts[0].plies.back().slope = 1.01 * degree;
  auto found = s.of("WASHER-FLAT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].message, HasSubstr("nut"));
  s.bed.bolts[0].plies.back().slope = 0;
  s.bed.bolts[0].plies.front().slope = std::atan(channel_flange_slope);
  found = s.of("WASHER-FLAT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found[0].message, HasSubstr("head"));
  EXPECT_THAT(found[0].remedy, HasSubstr("9.5 degrees"));
}

// The plates with a main's top `below` their underside.
SmallBed over_a_main(Mm below, Mm length = 34) {
  SmallBed s = two_plates(length);
  s.box(main_r, {-500, -40, -below - 150}, {500, 40, -below});
  return s;
}

// At 34 the tip stands 34 + 0.5 - 2.5 - 12 = 20 under the plates at its longest.
TEST(Tip, RoomIsCountedFromTheLongestBolt) {
  const Mm limit = inch / 16;
  EXPECT_THAT(over_a_main(20 + limit + 0.01).of("TIP"), IsEmpty());
  const auto found = over_a_main(20 + limit - 0.01).of("TIP");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].measured, limit - 0.01, 1e-6);
  EXPECT_THAT(about(found[0]), testing::ElementsAre(bunk_bolt_r1, main_r));
  const Mm length = change_of(found[0], "bolts.bunk");
  EXPECT_LT(length, 34);
  EXPECT_THAT(over_a_main(20 + limit - 0.01, length).faults(), IsEmpty());
}

TEST(Tip, InsideTheMainItLiftsTheRail) {
  const auto found = over_a_main(18).of("TIP");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NEAR(found[0].measured, -2, 1e-6);
  EXPECT_THAT(found[0].message, HasSubstr("lifts the rail by"));
  EXPECT_THAT(found[0].message, HasSubstr("2.0 mm"));
}

TEST(Tip, TheStandoffOfferedIsEnough) {
  Job job;
  job.frame.tabs.style = TabStyle::clip;
  job.frame.tabs.clip = ClipTab{{}, 18};
  SmallBed s = over_a_main(18);
  s.job = &job;
  const Mm standoff = change_of(s.of("TIP").at(0), "frame.tabs.clip.standoff");
  EXPECT_THAT(over_a_main(standoff).of("TIP"), IsEmpty());
  EXPECT_EQ(over_a_main(standoff - inch / 16).of("TIP").size(), 1u);

  job.frame.tabs.style = TabStyle::plate;
  job.frame.tabs.plate = PlateTab{10, 8, 0, 0, 0};
  EXPECT_NEAR(change_of(s.of("TIP").at(0), "frame.tabs.plate.pad_thickness"), 8 + standoff - 18, 1e-6);
}

TEST(Tip, WhatTheRailLiesOnIsMovedNotLifted) {
  Job job;
  job.frame.tabs.style = TabStyle::clip;
  job.frame.tabs.clip = ClipTab{{}, 18};
  SmallBed s = two_plates(34);
  s.job = &job;
  s.figures.printing = Printing::metric;
  s.box({Kind::tab, Side::right, 3}, {-10, -40, -6}, {90, 40, 0});
  const auto found = s.of("TIP");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_FALSE(offers(found[0], "frame.tabs.clip.standoff"));
  // Its front edge at -10 goes behind the nut's corner at 19.05 / sqrt(3) = 11.0.
  EXPECT_THAT(found[0].remedy, HasSubstr("move tab R3 21.0 mm rearward"));
  s.bed.items.back().placement.origin.x = 21;
  EXPECT_THAT(s.of("TIP"), IsEmpty());
}

TEST(Tip, ARimThatClipsAnEdgeCounts) {
  // The main's edge lies under the shank's rim, not under its axis.
  const auto edge_at = [](Mm y) {
    SmallBed s = two_plates(34);
    s.box(main_r, {-500, y, -100}, {500, 90, -18});
    return s.of("TIP").size();
  };
  EXPECT_EQ(edge_at(6.3), 1u);
  EXPECT_EQ(edge_at(6.4), 0u);
}

TEST(Tip, NothingWithinReachIsNoFinding) { EXPECT_THAT(over_a_main(151).of("TIP"), IsEmpty()); }

TEST(Tip, HiddenStatesAreNotInTheWay) {
  SmallBed s = over_a_main(18);
  s.bed.items.back().shown = false;
  EXPECT_THAT(s.of("TIP"), IsEmpty());
}

TEST(BoltsOutOfPlace, AreLeftToTheirOwnRule) {
  SmallBed s = two_plates(inch);
  s.bed.bolts[0].in_place = false;
  EXPECT_THAT(s.of("BOLT-SHORT"), IsEmpty());
}

}  // namespace
}  // namespace bedwright
