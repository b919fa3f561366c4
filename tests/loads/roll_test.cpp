// Rolling over, held to moments about the line from ball to tyre summed with vectors, and to
// raw figures of the order's files.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <cmath>

#include "loads/loads.h"
#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;

// Moment of weight and sideways pull about the line `from`-`to`: nought as it just tips.
double moment(Vec3 from, Vec3 to, Vec3 centre, double pull) {
  const Vec3 arm = centre - from, load{0, pull, -1};
  return dot(cross(arm, load), to - from);
}

TEST(Roll, WeightAndPullBalanceAboutTheLineFromBallToTyre) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const Tow t = run_loads(job, testing::bed_of(job)).tow;
    for (const TowCondition& c : t.conditions) {
      // The tyre on the side its weight leans to.
      const Vec3 tyre{t.axle_x, t.half_track, 0}, centre{c.centre.x, std::abs(c.centre.y), c.above_road};
      const Vec3 ball{t.ball_x, 0, t.ball_above}, jack{t.jack_x, 0, 0};
      const double scale = c.above_road * (t.axle_x - t.ball_x);
      EXPECT_NEAR(moment(ball, tyre, centre, c.rolls_at) / scale, 0, 1e-9) << order;
      if (c.rolls_parked > 0) {
        EXPECT_NEAR(moment(jack, tyre, centre, c.rolls_parked) / scale, 0, 1e-9) << order;
      }
    }
  }
}

// Base: tyres 57 in apart inside and 8-1/8 in wide; 6 in main, axle 5-1/2 in below, wheels of
// 27-1/2 in: the mains' tops stand 25.25 in above the road, the coupler's middle 17-1/2 in
// (its note BALL-HEIGHT). The head's 610 lb stand 22 in above rails 3-7/8 in above the mains.
TEST(Roll, TheBaseBedFromItsFilesFigures) {
  const Job job = demo_job("base");
  const LoadsResult r = run_loads(job, testing::bed_of(job));
  EXPECT_NEAR(r.tow.half_track / inch, (57 + 8.125) / 2, 1e-9);
  EXPECT_NEAR(r.tow.ball_above / inch, 17.5, 1e-6);
  const TowCondition& off = r.tow.conditions[1];
  ASSERT_EQ(off.travel.head, HeadAt::off);
  const TowCondition& on = r.tow.conditions[0];
  const double head = 610, rest = off.mass / pound;
  const double height = (rest * off.above_road / inch + head * (25.25 + 3.875 + 22)) / (rest + head);
  EXPECT_NEAR(on.above_road / inch, height, 0.01);
  // Frame and track alone lie near the mains' tops, wheels and axle near 14 in: between.
  EXPECT_GT(off.above_road / inch, 18);
  EXPECT_LT(off.above_road / inch, 25.25);
  const double side = head * 3 / (rest + head);
  const double held = 32.5625 * (1 - on.share) - side, tipped = height - on.share * 17.5;
  EXPECT_NEAR(on.rolls_at, held / tipped, 0.02);
}

TEST(Roll, ATallHeavyHeadOnANarrowTrackIsStoppedAndEachRemedyClearsIt) {
  const std::vector<std::string> tall{"kit.head.mass=1300 lb", "kit.head.mass_z=36 in",
                                      "frame.axle.tyre_inside=42 in"};
  const auto stops = [&](std::vector<std::string> more) {
    std::vector<std::string> sets = tall;
    sets.insert(sets.end(), more.begin(), more.end());
    std::vector<Finding> found;
    const Job job = demo_job("base", sets);
    const Bed bed = testing::bed_of(job);
    for (const Finding& f : load_findings(job, bed, run_loads(job, bed), {}))
      if (f.code == "ROLL-OVER") found.push_back(f);
    return found;
  };
  const std::vector<Finding> found = stops({});
  ASSERT_EQ(found.size(), 1u) << "only with its head on";
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].remedy, ::testing::HasSubstr("lower"));
  ASSERT_FALSE(found[0].changes.empty());
  for (const Change& c : found[0].changes) EXPECT_TRUE(stops({c.key + "=" + c.value}).empty()) << c.value;
}

}  // namespace
}  // namespace bedwright
