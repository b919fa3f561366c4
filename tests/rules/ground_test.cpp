// JACK-REACH, ROAD-CLEAR, COUPLER-FIT, SPRING-SEAT and TONGUE-END: figures by hand from
// the frames' files, and that each change clears its finding. Common practice, no
// published source, but for the channels' sizes (AISC Manual table 1-5) and the smallest
// ball (SAE J684, from memory). The limits are in tests/planted/matrix_test.cpp.
#include <cmath>

#include "rules/clears.h"

namespace bedwright {
namespace {

using testing::check_typed;
using testing::expect_each_change_clears;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

// Under the base order's mains: 6 in of main, 5-1/2 in to the axle, half a 27-1/2 in tyre.
constexpr Mm ground = -(6 + 5.5 + 13.75) * inch;

TEST(JackReach, EveryDemosJacksReachWithTravelLeft) {
  for (const char* order : {"base", "one_extension", "metric", "lot_frame", "sizes"}) {
    EXPECT_THAT(check_typed(order, {}, "JACK-REACH"), IsEmpty()) << order;
    EXPECT_THAT(check_typed(order, {}, "ROAD-CLEAR"), IsEmpty()) << order;
  }
}

TEST(JackReach, TongueJackOfTenInches) {
  // Flange on 3/8 in of plate on the tongue; 8 in below it and 10 in of travel.
  const auto found = check_typed("base", {"frame.tongue_jack.travel=10 in"}, "JACK-REACH");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].subjects[0].id.kind, Kind::tongue_jack);
  EXPECT_NEAR(found[0].measured, ground - (-6 + 0.375 - 8 - 10) * inch, 1e-6);
  EXPECT_THAT(found[0].message, HasSubstr("above the ground"));
  expect_each_change_clears("base", {"frame.tongue_jack.travel=10 in"}, "JACK-REACH");
}

TEST(JackReach, CornerJacks) {
  const auto found = check_typed("base", {"frame.jack.travel=10-1/2 in"}, "JACK-REACH");
  ASSERT_THAT(found, SizeIs(6));  // 15-1/2 + 10-1/2 = 26 in down, 3/4 in under the tyres
  for (const Finding& f : found) EXPECT_NEAR(f.measured, 0.75 * inch, 1e-6);
  EXPECT_THAT(found[0].message, HasSubstr("travel left"));
  expect_each_change_clears("base", {"frame.jack.travel=10-1/2 in"}, "JACK-REACH");
  expect_each_change_clears("metric", {"frame.jack.travel=0 mm"}, "JACK-REACH");
  expect_each_change_clears("base", {"frame.axle.tyre_diameter=44 in"}, "JACK-REACH");
}

TEST(RoadClear, AJackUnderTheRoad) {
  // 6 + 5-1/2 + 8 = 19-1/2 in: jacks drawn up to 20 in are under it.
  const std::vector<std::string> low{"frame.axle.tyre_diameter=16 in", "frame.jack.post_bottom=-20 in"};
  const auto found = check_typed("base", low, "ROAD-CLEAR");
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].subjects[0].id.kind, Kind::jack);
  EXPECT_THAT(found[0].message, HasSubstr("under the road"));
  expect_each_change_clears("base", low, "ROAD-CLEAR");
}

TEST(RoadClear, TheRearComesDownByTheLeverAboutTheBall) {
  // At the rear jack's plate, 226 in behind the front, the bed comes down 267/178 of the
  // axle's 3 in; the jack is 25-1/4 - 20 in above the road.
  const auto found = check_typed("base", {"frame.jack.post_bottom=-20 in"}, "ROAD-CLEAR");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].subjects[0].id.number, 3);
  EXPECT_NEAR(found[0].measured, (5.25 - 3 * (226.0 + 41) / (137 + 41)) * inch, 1e-6);
  EXPECT_THAT(found[0].message, HasSubstr("bump stops"));
  expect_each_change_clears("base", {"frame.jack.post_bottom=-20 in"}, "ROAD-CLEAR");
  // Without springs it stays as it is.
  EXPECT_THAT(check_typed("base", {"frame.jack.post_bottom=-20 in", "frame.axle.bump=0 in"}, "ROAD-CLEAR"),
              IsEmpty());
}

// The line from the road through the tyre's edge to the jack's foot, by hand.
TEST(Departure, JacksThatHangLow) {
  for (const char* order : {"base", "one_extension", "metric", "lot_frame", "sizes"})
    EXPECT_THAT(check_typed(order, {}, "DEPARTURE"), IsEmpty()) << order;
  // 20 in down, 5-1/4 in over the road, its post's rear face 224 in back, the axle at 137 in.
  const auto found = check_typed("base", {"frame.jack.post_bottom=-20 in"}, "DEPARTURE");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].subjects[0].id.kind, Kind::jack);
  const double angle = found[0].measured * degree;
  // The turned road through the foot stays a tyre's radius from the wheel's middle.
  const double off = (13.75 - 5.25) * std::cos(angle) + 87 * std::sin(angle);
  EXPECT_NEAR(off, 13.75, 1e-6);
  EXPECT_LT(angle, std::atan(5.25 / (87 - 13.75)));
  expect_each_change_clears("base", {"frame.jack.post_bottom=-20 in"}, "DEPARTURE");
}

// Front jack 20 in down, 5-1/4 in over the road, its post from 16 to 18 in back; the bed's
// wheels at 137 in, the tow vehicle's 48 in ahead of the ball, at -89 in.
TEST(Crest, JacksThatHangLow) {
  for (const char* order : {"base", "one_extension", "metric", "lot_frame"})
    EXPECT_THAT(check_typed(order, {}, "CREST"), IsEmpty()) << order;
  const auto found = check_typed("base", {"frame.jack.post_bottom=-20 in"}, "CREST");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].subjects[0].id.kind, Kind::jack);
  // Two straight grades under the foot: each rises 5-1/4 in on its way.
  const double by_hand =
      std::min(std::atan(5.25 / 105) + std::atan(5.25 / 121), std::atan(5.25 / 107) + std::atan(5.25 / 119));
  EXPECT_NEAR(found[0].measured * degree, by_hand, 1e-6);
  expect_each_change_clears("base", {"frame.jack.post_bottom=-20 in"}, "CREST");
}

// A bumper's end 39 in out and 8 in ahead of the ball runs on a circle of 39.8 in about it: it
// meets a front member 20 + 3 in behind the ball, its flange's edge nearer still, once turned
// so far that it stands behind that. By hand: x = -8 cos t + 39 sin t.
TEST(Turn, AShortTongueMeetsTheBumper) {
  for (const char* order : {"base", "one_extension", "metric", "lot_frame"})
    EXPECT_THAT(check_typed(order, {}, "TURN"), IsEmpty()) << order;
  const auto found = check_typed("base", {"frame.tongue.length=20 in"}, "TURN");
  ASSERT_THAT(found, SizeIs(1));
  const double edge = 23 - 1.92;  // C6x8.2, toes forward
  double turned = 0;
  while (-8 * std::cos(turned * degree) + 39 * std::sin(turned * degree) < edge) turned += 0.1;
  EXPECT_GE(found[0].measured, std::floor(turned) - 1);
  EXPECT_LE(found[0].measured, 60);
}

TEST(BallHeight, LevelOnTheBallOrNot) {
  // The tongue's top 25-1/4 - 6 in up, 1/4 in of plate on it, the coupler 4 in high from there down:
  // its middle at 17-1/2 in.
  const auto unknown = check_typed("base", {}, "BALL-HEIGHT");
  ASSERT_THAT(unknown, SizeIs(1));
  EXPECT_EQ(unknown[0].severity, Severity::note);
  EXPECT_THAT(unknown[0].message, HasSubstr("17-1/2 in"));
  EXPECT_THAT(check_typed("base", {"road.ball_height=18 in"}, "BALL-HEIGHT"), IsEmpty());
  const auto high = check_typed("base", {"road.ball_height=25 in"}, "BALL-HEIGHT");
  ASSERT_THAT(high, SizeIs(1));
  EXPECT_EQ(high[0].severity, Severity::warn);
  EXPECT_NEAR(std::tan(high[0].measured * degree), 7.5 / 178, 1e-9);
  EXPECT_THAT(high[0].message, HasSubstr("nose up"));
  expect_each_change_clears("base", {"road.ball_height=25 in"}, "BALL-HEIGHT");
}

TEST(CouplerFit, SharesNoSpaceWithTheTongueAndIsWeldedAlongIt) {
  for (const std::string& order : testing::good_orders) {
    const Bed bed = testing::demo_bed(order);
    const int coupler = bed.item({Kind::coupler});
    for (const Joined& j : bed.joined) EXPECT_TRUE(j.a != coupler && j.b != coupler) << order;
    int welds = 0;
    for (const Weld& w : bed.welds) {
      if (w.a != coupler) continue;
      ++welds;
      EXPECT_GT(w.leg, 0);
      ASSERT_THAT(w.runs, SizeIs(1));
      EXPECT_GT(w.length, 4 * w.leg);  // AISC 360 section J2.2b
    }
    EXPECT_EQ(welds, 2) << order;
    for (const char* code : {"COUPLER-FIT", "CLASH", "WELD-CONTACT", "WELD-STEEL", "WELD-MOST", "WELD-LEAST"})
      for (const Finding& f : check_typed(order, {}, code))
        EXPECT_NE(f.severity, Severity::stop) << order << " " << f.message;
  }
}

TEST(CouplerFit, AheadOfItsTongue) {
  // 10 in long, its nose 9 + 2 in ahead.
  const auto found = check_typed("base", {"frame.coupler.ball_ahead=9 in"}, "COUPLER-FIT");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, -inch, 1e-6);
  EXPECT_THAT(found[0].message, HasSubstr("ahead of the tongue"));
  expect_each_change_clears("base", {"frame.coupler.ball_ahead=9 in"}, "COUPLER-FIT");
  expect_each_change_clears("metric", {"frame.coupler.length=150 mm"}, "COUPLER-FIT");
}

TEST(CouplerFit, TooSmallTooLargeAtTheWrongAngle) {
  for (const std::vector<std::string>& sets :
       std::vector<std::vector<std::string>>{{"frame.coupler.width=1 in"},
                                             {"frame.coupler.height=1 in"},
                                             {"frame.coupler.width=15 in"},
                                             {"frame.coupler.height=11 in"},
                                             {"frame.coupler.angle=45 deg"},
                                             {"frame.tongue.angle=42 deg", "frame.tongue.length=20 in"},
                                             {"frame.coupler.ball_ahead=1/2 in"}}) {
    SCOPED_TRACE(sets[0]);
    EXPECT_FALSE(check_typed("base", sets, "COUPLER-FIT").empty());
    expect_each_change_clears("base", sets, "COUPLER-FIT");
  }
  const auto wide = check_typed("base", {"frame.coupler.width=15 in"}, "COUPLER-FIT");
  ASSERT_THAT(wide, SizeIs(1));
  // C5x6.7: 1-3/4 in of flange, turned 25 degrees, 3 mm between the toes.
  EXPECT_NEAR(wide[0].measured, 1.75 * inch / std::cos(25 * degree) + 3 - 7.5 * inch, 1e-6);
}

TEST(SpringSeat, WiderThanTheFlangeOrOffTheMains) {
  const auto wide = check_typed("base", {"frame.axle.spring_width=3 in"}, "SPRING-SEAT");
  ASSERT_THAT(wide, SizeIs(1));
  EXPECT_NEAR(wide[0].limit, 1.92 * inch, 1e-6);  // C6x8.2
  expect_each_change_clears("base", {"frame.axle.spring_width=3 in"}, "SPRING-SEAT");
  expect_each_change_clears("base", {"frame.axle.spring_width=50 mm"}, "SPRING-SEAT");
  const auto off = check_typed("base", {"axle.position=10 in"}, "SPRING-SEAT");
  ASSERT_THAT(off, SizeIs(1));
  EXPECT_NEAR(off[0].measured, -3 * inch, 1e-6);  // 10 - 13
  expect_each_change_clears("base", {"axle.position=10 in"}, "SPRING-SEAT");
  expect_each_change_clears("base", {"axle.position=238 in"}, "SPRING-SEAT");
}

TEST(TongueEnd, OutPastTheMains) {
  const auto found = check_typed("base", {"frame.tongue.back=7 in"}, "TONGUE-END");
  ASSERT_THAT(found, SizeIs(2));
  EXPECT_NEAR(found[0].measured,
              1.75 * inch / std::cos(25 * degree) + 3 + 45 * inch * std::tan(25 * degree) - 22 * inch, 1e-3);
  expect_each_change_clears("base", {"frame.tongue.back=7 in"}, "TONGUE-END");
  expect_each_change_clears("base", {"frame.tongue.length=48 in"}, "TONGUE-END");
  expect_each_change_clears("metric", {"frame.tongue.angle=28 deg"}, "TONGUE-END");
  // What stands is not made again: nothing to set is offered.
  const auto standing = check_typed("lot_frame", {"frame.tongue.back=6 in"}, "TONGUE-END");
  ASSERT_THAT(standing, SizeIs(2));
  EXPECT_THAT(standing[0].changes, IsEmpty());
  EXPECT_THAT(standing[0].remedy, HasSubstr("measure"));
}

}  // namespace
}  // namespace bedwright
