// The base bed weighed and balanced by hand (loads/by_hand.h), never by the program's own masses.
#include "loads/balance.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "loads/by_hand.h"
#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using namespace testing;

// Moments about the ball's vertical through the axle: share = (axle - centre) / (axle - ball).
double share(const Lumps& all, double axle) { return tongue_of(all, axle) / weight(all); }

const TowCondition& way(const Tow& tow, const TravelCase& travel) {
  return *std::find_if(tow.conditions.begin(), tow.conditions.end(),
                       [&](const TowCondition& c) { return c.travel == travel; });
}

TEST(Balance, TheBaseBedAsWeighedByHand) {
  const Job job = demo_job("base");
  const Tow tow = run_loads(job, testing::bed_of(job)).tow;
  const double axle = 137;
  const Lumps bare = both({frame_of_base(), axles_at({axle})}), off = both({bare, track_of_base()}),
              on = both({off, head_at_lock(610)});
  for (const auto& [travel, sum] : {std::pair{TravelCase{HeadAt::off, false, true}, bare},
                                    std::pair{TravelCase{HeadAt::off, false, false}, off},
                                    std::pair{TravelCase{HeadAt::front, false, false}, on}}) {
    const TowCondition& c = way(tow, travel);
    ASSERT_TRUE(c.judged);
    EXPECT_NEAR(c.mass / pound, weight(sum), 0.02 * weight(sum));
    EXPECT_NEAR(c.share, share(sum, axle), 0.006);
    // The tongue jack stands 14 in behind the front cut: 137 + 24 in ahead of the axle.
    EXPECT_NEAR(c.jack / c.mass, share(sum, axle) * (axle + 41) / (axle + 24), 0.006);
    EXPECT_GT(c.share, 0.10);
  }
  EXPECT_LT(way(tow, {HeadAt::front, false, false}).share, 0.15);
  // The head's own part, which no other weight blurs: 610 lb, 33 in ahead of the axle.
  EXPECT_NEAR(
      (way(tow, {HeadAt::front, false, false}).tongue - way(tow, {HeadAt::off, false, false}).tongue) / pound,
      610 * 33.0 / 178, 0.01);
  // It tips back with the head so far behind the axle that the rest no longer holds it.
  EXPECT_NEAR(tow.tips_behind / inch, axle + weight(off) * (axle - centre(off)) / 610, 4);
}

// Each bed of the demos, in every way it is towed or stands on its jack.
TEST(Balance, EveryDemoHoldsItsTongueDownInEveryWay) {
  for (const char* order : {"base", "one_extension", "metric", "lot_frame", "sizes"}) {
    const Job job = demo_job(order);
    const Tow tow = run_loads(job, testing::bed_of(job)).tow;
    int ways = 0;
    for (const TowCondition& c : tow.conditions) {
      if (!c.judged) continue;
      ++ways;
      EXPECT_GE(c.share, 0.10) << order;
      EXPECT_GT(c.jack, 0) << order;
      if (c.travel.laden()) {
        EXPECT_LE(c.share, 0.15) << order;
      }
    }
    EXPECT_EQ(ways, 3) << order << ": head on, head off, bare frame";
  }
}

// A way that the order does not name is not one that is safe.
TEST(Balance, AWayNotNamedIsWarnedOf) {
  const Job job = demo_job(
      "base", {"road.travels=[{head: front}]", "kit.head.lock_offset=32 in", "axle.position=105 in"});
  const Bed bed = testing::bed_of(job);
  int warned = 0;
  for (const Finding& f : load_findings(job, bed, run_loads(job, bed), {})) {
    if (f.code == "TOW-SHARE") ADD_FAILURE() << f.message;
    if (f.code != "HITCH-TIP") continue;
    ++warned;
    EXPECT_EQ(f.severity, Severity::warn);
  }
  EXPECT_GE(warned, 1);
}

}  // namespace
}  // namespace bedwright
