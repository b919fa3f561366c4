// REACH: what gets on a head and a nut, measured on wells and walls made by hand.
#include "rules/fit/reach.h"

#include "rules/small_bed.h"

namespace bedwright {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;

// Two plates of 6 each, the top at z = 12, a half inch bolt down through them.
SmallBed bolted(Mm plate = 100) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {plate, plate}, 6, {round_hole({}, 14)});
  const int top = s.plate(some(2), {0, 0, 6}, {plate, plate}, 6, {round_hole({}, 14)});
  s.bolt(bunk_bolt_r1, {top, under}, 34);
  return s;
}

Grip grip(const SmallBed& s, BoltEnd end, int first = 0) {
  const CheckInput input{s.bed, s.limits, s.job, s.judge, s.figures};
  return grip_on(Scene(input), 0, end, first);
}

const Tools tools = usual_tools(half_inch());

TEST(Reach, InTheOpenASocketGoesOnBothEnds) {
  const SmallBed s = bolted();
  EXPECT_EQ(grip(s, BoltEnd::head), Grip::socket);
  EXPECT_EQ(grip(s, BoltEnd::nut), Grip::socket);
  EXPECT_THAT(s.of("REACH"), IsEmpty());
}

TEST(Reach, UnderALidAWrenchSwings) {
  // The nut's face is at z = -2.5. A lid over nut and tip leaves no socket's height,
  // but the wrench's thickness and all round it.
  SmallBed s = bolted();
  s.box(main_r, {-400, -400, -60}, {400, 400, -30});
  EXPECT_EQ(grip(s, BoltEnd::nut), Grip::swing);
  EXPECT_EQ(grip(s, BoltEnd::head), Grip::socket);
  EXPECT_THAT(s.of("REACH"), IsEmpty());
}

TEST(Reach, TheWrenchNeedsItsThickness) {
  const auto under = [](Mm room) {
    SmallBed s = bolted();
    s.box(main_r, {-400, -400, -80}, {400, 400, -2.5 - room});
    return grip(s, BoltEnd::nut);
  };
  // The jaws sit at the middle of the nut's 11: 0.45 x 19.05 thick.
  const Mm lowest = (half_inch().nut_height + tools.wrench_thickness) / 2;
  EXPECT_EQ(under(lowest + 0.05), Grip::swing);
  EXPECT_EQ(under(lowest - 0.05), Grip::none);
}

// A lid, and walls that leave the handle a way out of `open` degrees about +x.
SmallBed in_a_gap(double open) {
  SmallBed s = bolted();
  s.box(main_r, {-400, -400, -60}, {400, 400, -30});
  // Posts round the nut, each as wide as 10 degrees of a ring, where it is not open.
  for (int a = 0; a < 360; a += 5) {
    const double from_x = std::min(a, 360 - a);
    if (from_x <= open / 2) continue;
    const Vec3 at{100 * std::cos(a * degree), 100 * std::sin(a * degree), 0};
    s.box(some(10 + a), at + Vec3{-3, -3, -30}, at + Vec3{3, 3, -2.6});
  }
  return s;
}

TEST(Reach, SwingsAreToldApart) {
  // The handle is 13.3 wide and a post 6: between posts at 5 degrees, 17.4 apart, it
  // does not go; between posts at 20, 68 apart, it goes and does not swing 30 degrees.
  EXPECT_EQ(grip(in_a_gap(0), BoltEnd::nut), Grip::none);
  EXPECT_EQ(grip(in_a_gap(30), BoltEnd::nut), Grip::held);
  EXPECT_EQ(grip(in_a_gap(85), BoltEnd::nut), Grip::swing);
}

TEST(Reach, TheAnswerDoesNotDependOnWhereTheSearchStarts) {
  for (const double open : {0.0, 30.0, 45.0, 60.0, 70.0, 85.0, 120.0}) {
    const SmallBed s = in_a_gap(open);
    const Grip answer = grip(s, BoltEnd::nut);
    for (int first = 1; first < 12; ++first)
      EXPECT_EQ(grip(s, BoltEnd::nut, first), answer) << open << " from " << first;
  }
}

TEST(Reach, NothingTurnedIsAStopOneEndUnheldAWarning) {
  SmallBed s = bolted();
  s.box(some(3), {-400, -400, -60}, {400, 400, -11});
  auto found = s.of("REACH");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_THAT(found[0].message, HasSubstr("on the nut no tool goes on"));
  EXPECT_THAT(found[0].remedy, ::testing::ContainsRegex("[0-9]"));
  s.box(some(4), {-400, -400, 18}, {400, 400, 60});
  found = s.of("REACH");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
}

TEST(Reach, WhatMovesIsMovedOutOfTheWay) {
  SmallBed s = bolted();
  s.box({Kind::clamp, Side::middle, 1}, {-400, -400, 18}, {400, 400, 60}, true);
  EXPECT_EQ(grip(s, BoltEnd::head), Grip::socket);
  s.bed.items.back().moving = false;
  EXPECT_NE(grip(s, BoltEnd::head), Grip::socket);
}

}  // namespace
}  // namespace bedwright
