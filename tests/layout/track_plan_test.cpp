#include "layout/track_plan.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "params/datum.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;
using ::testing::DoubleEq;
using ::testing::DoubleNear;
using ::testing::ElementsAre;
using ::testing::Pointwise;

TEST(Evenly, DividesWithoutExceedingTheMost) {
  EXPECT_THAT(evenly(0, 90, 30), Pointwise(DoubleEq(), {0.0, 30.0, 60.0, 90.0}));
  EXPECT_THAT(evenly(5, 75, 24), ::testing::SizeIs(4));  // three spaces of 23.33
  EXPECT_THAT(evenly(0, 10, 100), Pointwise(DoubleEq(), {0.0, 10.0}));
}

TEST(TrackPlan, BaseOrderHasEachSectionsBunksAndOneMoreAtTheEnd) {
  const Job job = demo_job("base");
  const Track plan = plan_track(job.order, job.kit);
  EXPECT_EQ(plan.sections, 3);
  EXPECT_EQ(plan.remainder, 0);
  std::vector<double> inches;
  for (const auto& b : plan.bunks) inches.push_back(b.x / inch);
  // By hand: outermost set 2 in, then every 20 in of each 80 in section.
  EXPECT_THAT(inches, Pointwise(DoubleNear(1e-9), {2.0, 20.0, 40.0, 60.0, 82.0, 100.0, 120.0, 140.0, 162.0,
                                                   180.0, 200.0, 220.0, 238.0}));
  std::vector<double> mounts;
  for (Mm x : plan.holes.at(2).mounting(Side::right)) mounts.push_back(x / inch);
  EXPECT_THAT(mounts, Pointwise(DoubleNear(1e-9), {5.5, 28.5, 51.5, 74.5}));
}

TEST(TrackPlan, RemainderIsWhatWholePitchesLeave) {
  const Job job = demo_job("base", {"track.rail_length=84 in"});
  EXPECT_NEAR(plan_track(job.order, job.kit).remainder, 4 * inch, 1e-9);
}

TEST(TrackPlan, AWholeNumberOfPitchesLeavesNothingWhateverTheRounding) {
  Job job = demo_job("base");
  for (int m = 1; m <= 12; ++m)
    for (double pitch : {0.1 * inch, 7.3, 333.333333, 508.0, 19.6875 * inch}) {
      job.order.track.bunk_pitch = std::max(pitch, 150.0);
      job.order.track.rail_length = m * job.order.track.bunk_pitch;
      EXPECT_EQ(plan_track(job.order, job.kit).remainder, 0) << m << " x " << pitch;
    }
}

struct Share {
  Datum datum;
  int sections, index;
  bool from_rear_end;
  double lengths, joints;
  int direction;
};

class AccumulatedTest : public ::testing::TestWithParam<Share> {};

TEST_P(AccumulatedTest, CountsWhatLiesBetweenDatumAndSection) {
  const Share s = GetParam();
  const Accumulated a = accumulated(s.datum, s.sections, s.index, s.from_rear_end);
  EXPECT_DOUBLE_EQ(a.sections, s.lengths);
  EXPECT_DOUBLE_EQ(a.joints, s.joints);
  EXPECT_EQ(a.direction, s.direction);
}

INSTANTIATE_TEST_SUITE_P(
    ByHand, AccumulatedTest,
    ::testing::Values(
        // From the front: a hole held from its section's front end has the sections
        // ahead of it behind the pin; one held from the rear end its own as well.
        Share{Datum::front, 3, 0, false, 0, 0, 1}, Share{Datum::front, 3, 0, true, 1, 0, 1},
        Share{Datum::front, 3, 2, false, 2, 2, 1}, Share{Datum::front, 3, 2, true, 3, 2, 1},
        Share{Datum::rear, 3, 2, true, 0, 0, -1}, Share{Datum::rear, 3, 2, false, 1, 0, -1},
        Share{Datum::rear, 3, 0, true, 2, 2, -1},
        // odd count: pinned in the middle of the middle section
        Share{Datum::middle, 3, 1, false, 0.5, 0, 0}, Share{Datum::middle, 3, 1, true, 0.5, 0, 0},
        Share{Datum::middle, 3, 2, false, 0.5, 1, 1}, Share{Datum::middle, 3, 2, true, 1.5, 1, 1},
        Share{Datum::middle, 3, 0, true, 0.5, 1, -1},
        // even count: pinned at the middle joint
        Share{Datum::middle, 4, 2, false, 0, 0.5, 1}, Share{Datum::middle, 4, 3, false, 1, 1.5, 1},
        Share{Datum::middle, 4, 0, true, 1, 1.5, -1}, Share{Datum::middle, 4, 1, true, 0, 0.5, -1},
        Share{Datum::middle, 4, 1, false, 1, 0.5, -1}, Share{Datum::front, 1, 0, false, 0, 0, 1}));

}  // namespace
}  // namespace bedwright
