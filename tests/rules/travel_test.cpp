// HEAD-ON-RAILS, TRACK-STOP, HEAD-LOCK and ON-BUNK: figures by hand from the kits' files,
// and that each change clears its finding. Common practice, no published source. The
// limits are in tests/planted/matrix_test.cpp.
#include "rules/clears.h"

namespace bedwright {
namespace {

using ::testing::AllOf;
using testing::check_typed;
using testing::demo_bed;
using ::testing::Each;
using testing::expect_each_change_clears;
using ::testing::Field;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

// The base order on two sections, 160 in.
const std::vector<std::string> short_track{"kit.rail.base_sections=2", "jacks=[17 in, 80 in, 143 in]",
                                           "axle.position=75 in", "track.log_stops=[4]", "track.clamps=[]"};

TEST(HeadTravel, RunsUntilTheBoxInTheStopsWayMeetsTheStop) {
  // Stop's face 8-3/4 + 1-1/4 = 10 in from the end, bumper 15 in ahead of the centre.
  EXPECT_NEAR(demo_bed("base").track.head_from, 25 * inch, 1e-9);
  // A saw body that reaches further ahead, but nowhere near a stop, does not stop it.
  EXPECT_NEAR(demo_bed("base", {"kit.head.boxes[2].x_from=-18 in"}).track.head_from, 25 * inch, 1e-9);
  // A bumper that does, does.
  EXPECT_NEAR(demo_bed("base", {"kit.head.boxes[4].x_from=-17 in"}).track.head_from, 27 * inch, 1e-9);
}

TEST(HeadOnRails, WheelsOffTheEndOfTheRails) {
  const auto found = check_typed("base", {"kit.head.wheel_base=60 in"}, "HEAD-ON-RAILS");
  ASSERT_THAT(found, SizeIs(2));  // at either end
  for (const Finding& f : found) EXPECT_NEAR(f.measured, (25 - 30) * inch, 1e-6);
  expect_each_change_clears("base", {"kit.head.wheel_base=60 in"}, "HEAD-ON-RAILS");
}

TEST(HeadOnRails, LockedWithAWheelOffTheEnd) {
  // Its rear stops are out of the way of a lock 11 in from the end: 11 - 13 = -2.
  const auto found = check_typed("base", {"kit.head.lock_offset=11 in"}, "HEAD-ON-RAILS");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, -2 * inch, 1e-6);
  EXPECT_EQ(found[0].subjects[0].id.pose, Pose::locked);
  expect_each_change_clears("base", {"kit.head.lock_offset=11 in"}, "HEAD-ON-RAILS");
  // Locked from the front so far back that it is off the rear: 160 - 150 - 13 = -3.
  std::vector<std::string> behind = short_track;
  behind.push_back("kit.head.lock_offset=150 in");
  const auto off = check_typed("base", behind, "HEAD-ON-RAILS");
  ASSERT_THAT(off, SizeIs(1));
  EXPECT_NEAR(off[0].measured, -3 * inch, 1e-6);
  expect_each_change_clears("base", behind, "HEAD-ON-RAILS");
}

TEST(HeadOnRails, AGaugeTheHeadDoesNotFit) {
  // Heels 26 in out, boxes to 25-1/2 in.
  const auto wide = check_typed("base", {"kit.gauge=52 in"}, "HEAD-ON-RAILS");
  ASSERT_THAT(wide, SizeIs(2));
  EXPECT_NEAR(wide[0].measured, -0.5 * inch, 1e-6);
  EXPECT_THAT(check_typed("base", {"kit.gauge=49 in"}, "HEAD-ON-RAILS"), IsEmpty());
  // The carriage from 24 in out, the standing leg from 23-3/4 - 1/4 in.
  EXPECT_THAT(check_typed("base", {"kit.gauge=47 in", "kit.head.boxes[4].y_from=23-3/8 in"}, "HEAD-ON-RAILS"),
              AllOf(SizeIs(2), Each(Field(&Finding::message, HasSubstr("covers")))));
}

TEST(HeadOnRails, ABoxSunkIntoTheRail) {
  const auto found = check_typed("base", {"kit.head.boxes[1].z_from=-1/8 in"}, "HEAD-ON-RAILS");
  ASSERT_THAT(found, SizeIs(2));
  EXPECT_NEAR(found[0].measured, -inch / 8, 1e-6);
}

TEST(TrackStop, MeetsTheHeadInBothFamiliesOfKit) {
  for (const std::string& order : testing::good_orders)
    EXPECT_THAT(check_typed(order, {}, "TRACK-STOP"), IsEmpty()) << order;
}

TEST(TrackStop, TooLow) {
  // Its top 1/4 + 1 in up, the rail's 3 in: below the bumper by 2 in.
  const auto found = check_typed("base", {"kit.track_stop.height=1 in"}, "TRACK-STOP");
  ASSERT_THAT(found, SizeIs(4));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].message, HasSubstr("over its top"));
  expect_each_change_clears("base", {"kit.track_stop.height=1 in"}, "TRACK-STOP");
  // 3 in: level with the bumper's underside.
  EXPECT_THAT(check_typed("base", {"kit.track_stop.height=3 in"}, "TRACK-STOP"), SizeIs(4));
  // 3-3/8 in: 3/8 in of it in the way.
  EXPECT_THAT(check_typed("base", {"kit.track_stop.height=3-3/8 in"}, "TRACK-STOP"),
              AllOf(SizeIs(4), Each(Field(&Finding::message, HasSubstr("in height")))));
}

TEST(TrackStop, BesideTheHead) {
  // Without the bumper the carriage begins where the stop ends.
  const std::vector<std::string> beside{"kit.head.boxes[4].y_from=24 in", "kit.head.boxes[4].y_to=25 in"};
  const auto found = check_typed("base", beside, "TRACK-STOP");
  ASSERT_THAT(found, SizeIs(4));
  EXPECT_THAT(found[0].message, HasSubstr("brushes its side"));
  expect_each_change_clears("base", {"kit.track_stop.line=2 in"}, "TRACK-STOP");
  const auto metric = check_typed(
      "metric", {"kit.head.boxes[4].y_from=613 mm", "kit.head.boxes[4].y_to=614 mm"}, "TRACK-STOP");
  ASSERT_THAT(metric, SizeIs(4));  // 625 - 32 + 18 = 611 mm
  EXPECT_THAT(metric[0].message, HasSubstr("2.0 mm sideways"));
}

TEST(TrackStop, OneSideAloneHoldsTheHead) {
  // An arm on one side reaches further forward than anything over the other rail.
  const auto found =
      check_typed("base",
                  {"kit.head.boxes[5]={name: arm, x_from: -1121 mm, x_to: 2 mm, y_from: -18 mm, "
                   "y_to: 3000 mm, z_from: -88.9 mm, z_to: 6 mm}"},
                  "TRACK-STOP");
  ASSERT_THAT(found, Not(IsEmpty()));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].message, HasSubstr("holds it alone"));
}

TEST(HeadLock, BetweenTheStopsAtEitherEnd) {
  for (const char* end : {"front", "rear"}) {
    const std::string lock = std::string("track.head_lock=") + end;
    const auto found = check_typed("base", {lock, "kit.head.lock_offset=20 in"}, "HEAD-LOCK");
    ASSERT_THAT(found, SizeIs(1)) << end;
    EXPECT_NEAR(found[0].measured, -5 * inch, 1e-6);
    expect_each_change_clears("base", {lock, "kit.head.lock_offset=20 in"}, "HEAD-LOCK");
    // So far in that the other end's stops are in its way.
    std::vector<std::string> far = short_track;
    far.insert(far.end(), {lock, "kit.head.lock_offset=140 in"});
    expect_each_change_clears("base", far, "HEAD-LOCK");
  }
}

TEST(HeadLock, ABoxThatIsThereOnlyWhenLockedMeetsTheStop) {
  // The lowered saw body made wide, long and low: 32 - 23 = 9 in, the face at 10 in.
  const auto found = check_typed("base",
                                 {"kit.head.lock_offset=32 in", "kit.head.boxes[3].x_from=-23 in",
                                  "kit.head.boxes[3].y_to=23 in", "kit.head.boxes[3].z_from=1 in"},
                                 "HEAD-LOCK");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, -inch, 1e-6);
}

TEST(OnBunk, LogStopPastTheEndOfItsBunk) {
  // A bunk ends 24-1/2 - 1/4 - 1/2 = 23-3/4 in out; the post is 2 in wide.
  const auto found = check_typed("base", {"kit.log_stop.from_centre=23 in"}, "ON-BUNK");
  ASSERT_THAT(found, SizeIs(3));
  EXPECT_NEAR(found[0].measured, -inch / 4, 1e-6);
  expect_each_change_clears("base", {"kit.log_stop.from_centre=23 in"}, "ON-BUNK");
}

TEST(OnBunk, LogStopStandsClearOfTheFilletAndOnTheFlatLeg) {
  for (const std::string& order : testing::good_orders) {
    const Job job = testing::demo_job(order);
    const Bed bed = testing::bed_of(job);
    const KitBunk& k = job.kit.bunk;
    const std::vector<int> posts = bed.items_of(Kind::log_stop);
    ASSERT_FALSE(posts.empty());
    for (const int post : posts) {
      const Box3 bunk = bounds(bed, bed.item({Kind::bunk, Side::middle, bed.items[post].id.bunk}));
      EXPECT_LE(bounds(bed, post).high.x, bunk.high.x - k.thickness - k.root_radius + 1e-9) << order;
      EXPECT_GE(bounds(bed, post).low.x, bunk.low.x) << order;
    }
  }
  // 2-1/2 - 3/16 - 3/16 = 2-1/8 in of flat leg.
  EXPECT_THAT(check_typed("base", {"kit.log_stop.thickness=2-1/8 in"}, "ON-BUNK"), IsEmpty());
  const auto found = check_typed("base", {"kit.log_stop.thickness=2-1/4 in"}, "ON-BUNK");
  ASSERT_THAT(found, SizeIs(3));
  EXPECT_NEAR(found[0].measured, -inch / 8, 1e-6);
  expect_each_change_clears("base", {"kit.log_stop.thickness=2-1/4 in"}, "ON-BUNK");
}

TEST(OnBunk, ClampSlidesOffItsBunk) {
  const auto found = check_typed("base", {"kit.clamp.travel_to=23 in"}, "ON-BUNK");
  ASSERT_THAT(found, SizeIs(2));
  EXPECT_NEAR(found[0].measured, -0.75 * inch, 1e-6);  // 23 + 1-1/2 past 23-3/4
  expect_each_change_clears("base", {"kit.clamp.travel_to=23 in"}, "ON-BUNK");
  expect_each_change_clears("base", {"kit.clamp.travel_from=-23 in"}, "ON-BUNK");
}

TEST(BunkOnRail, OverAJointOrAnEnd) {
  const auto found = check_typed("base", {"kit.bunk.outer_set=1 in"}, "BUNK-ON-RAIL");
  ASSERT_THAT(found, SizeIs(4));  // each end of the track, and behind each of two joints
  for (const Finding& f : found) EXPECT_NEAR(f.measured, -inch / 4, 1e-4);
  EXPECT_THAT(found[0].message, HasSubstr("the rails' end"));
  EXPECT_THAT(found[1].message, HasSubstr("over the rail joint"));
  expect_each_change_clears("base", {"kit.bunk.outer_set=1 in"}, "BUNK-ON-RAIL");
  // A set just inside the end of its section, its holes free to be out.
  EXPECT_THAT(check_typed("base", {"kit.bunk.outer_set=1-1/4 in"}, "BUNK-ON-RAIL"), SizeIs(4));
}

}  // namespace
}  // namespace bedwright
