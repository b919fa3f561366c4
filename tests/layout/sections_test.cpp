// Sections of unequal length, bunk holes as a list, one rail for both sides; the crank's room;
// holes drilled together in place. Figures by hand from what is typed here.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "layout/track_plan.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::bed_of;
using testing::demo_bed;
using testing::demo_job;
using ::testing::DoubleNear;
using ::testing::Pointwise;

std::vector<double> inches(const std::vector<Mm>& places) {
  std::vector<double> all;
  for (const Mm x : places) all.push_back(x / inch);
  return all;
}

TEST(Sections, of_unequal_length_lie_one_behind_the_other) {
  const Job job = demo_job("base", {"track.rail_lengths=[60 in, 80 in, 40 in]"});
  const Track plan = plan_track(job.order, job.kit);
  EXPECT_THAT(inches(plan.starts), Pointwise(DoubleNear(1e-9), {0.0, 60.0, 140.0}));
  EXPECT_THAT(inches(plan.joints), Pointwise(DoubleNear(1e-9), {60.0, 140.0}));
  EXPECT_NEAR(plan.total_length, 180 * inch, 1e-9);
  EXPECT_NEAR(plan.rail_length, 80 * inch, 1e-9);
  EXPECT_EQ(plan.remainder, 0);
  // Holes 5-1/2 in from each end, no more than 24 in apart.
  EXPECT_THAT(inches(plan.holes[2].mounting(Side::left)), Pointwise(DoubleNear(1e-9), {5.5, 20.0, 34.5}));
  std::vector<Mm> bunks;
  for (const BunkPlace& b : plan.bunks) bunks.push_back(b.x);
  EXPECT_THAT(inches(bunks),
              Pointwise(DoubleNear(1e-9), {2.0, 20.0, 40.0, 62.0, 80.0, 100.0, 120.0, 142.0, 160.0, 178.0}));
}

TEST(Sections, of_one_length_are_one_part) {
  const Job job = demo_job("base", {"track.rail_lengths=[60 in, 80 in, 60 in]", "track.log_stops=[2]",
                                    "track.clamps=[]", "jacks=[17 in, 183 in]", "axle.position=110 in"});
  const Bed bed = bed_of(job);
  EXPECT_EQ(bed.count(bed.part({Kind::rail, Side::middle, 1})), 4);
  EXPECT_EQ(bed.count(bed.part({Kind::rail, Side::middle, 2})), 2);
  // Every rail's hole has its bolt over a tab.
  for (const Bolt& bolt : bed.bolts) EXPECT_TRUE(bolt.in_place);
}

// The kerb side's rail is the road side's turned end for end: its holes run from the rear end.
TEST(Sections, a_rail_for_both_sides_is_one_part_turned) {
  const Bed bed = demo_bed("uneven");
  EXPECT_EQ(bed.count(bed.part({Kind::rail})), 6);
  const auto places = [&](Side side) {
    std::vector<Mm> all;
    for (const Bolt& bolt : bed.bolts)
      if (bolt.id.kind == Kind::track_bolt && bolt.id.side == side && bolt.seat.x < 78 * inch)
        all.push_back(bolt.seat.x);
    std::sort(all.begin(), all.end());
    return inches(all);
  };
  EXPECT_THAT(places(Side::left), Pointwise(DoubleNear(1e-6), {5.0, 23.0, 47.5, 72.0}));
  EXPECT_THAT(places(Side::right), Pointwise(DoubleNear(1e-6), {6.0, 30.5, 55.0, 73.0}));
  std::vector<Mm> bunks;
  for (const BunkPlace& b : bed.track.bunks)
    if (b.section == 1) bunks.push_back(b.within);
  EXPECT_THAT(inches(bunks), Pointwise(DoubleNear(1e-9), {2.0, 19.0, 39.0, 59.0, 76.0}));
  EXPECT_NEAR(bed.track.bunk_spacing(), 20 * inch, 1e-9);
}

// Laid the same way round on both sides it would be a left and a right one.
TEST(Sections, mirrored_rails_of_the_same_holes_are_two_parts) {
  const Bed bed = demo_bed("uneven", {"kit.rail.turned=false"});
  EXPECT_FALSE(bed.find_part({Kind::rail}));
  EXPECT_TRUE(bed.find_part({Kind::rail, Side::left}));
}

Mm widest_hole_error(const Bed& bed) {
  Mm worst = 0;
  for (const Bolt& bolt : bed.bolts)
    if (bolt.id.kind == Kind::jack_bolt)
      for (const Ply& ply : bolt.plies)
        for (const Contribution& c : ply.own) worst = std::max({worst, c.x_plus, c.z_plus});
  return worst;
}

TEST(Sections, holes_drilled_in_place_are_where_the_jacks_are) {
  Job job = demo_job("base");
  EXPECT_GT(widest_hole_error(bed_of(job)), 0);
  job.frame.jack.drilled_in_place = true;
  EXPECT_EQ(widest_hole_error(bed_of(job)), 0);
}

// A crank of 150 mm that turns at the side, its axle 100 mm down from the post's top, 80 mm deep; and one
// that turns over the top, 20 mm above the post.
TEST(Sections, a_side_jacks_crank_has_its_turn) {
  Job job = demo_job("base");
  const FrameJack& j = job.frame.jack;
  const Mm out = j.plate_thickness + j.flange_thickness;
  const auto turn = [&](JackCrank crank) {
    job.frame.jack.crank = crank;
    const Bed bed = bed_of(job);
    Identity id{Kind::jack, Side::right, 1};
    id.pose = Pose::handle_turn;
    return bounds(bed, bed.item(id));
  };
  const Mm web = job.frame.main.spacing / 2;
  const Box3 side = turn({CrankTurns::at_the_side, 150, -100, 80});
  EXPECT_NEAR(side.low.z, j.post_top - 100 - 150, 1e-6);
  EXPECT_NEAR(side.high.z, j.post_top - 100 + 150, 1e-6);
  EXPECT_NEAR(side.low.y, web + out + j.post_width, 1e-6);
  EXPECT_NEAR(side.high.y, web + out + j.post_width + 80, 1e-6);
  EXPECT_NEAR(side.high.x - side.low.x, 300, 1e-6);
  const Box3 over = turn({CrankTurns::over_the_top, 150, 20, 60});
  EXPECT_NEAR(over.low.z, j.post_top + 20, 1e-6);
  EXPECT_NEAR(over.high.z, j.post_top + 80, 1e-6);
  EXPECT_NEAR((over.low.y + over.high.y) / 2, web + out + j.post_width / 2, 1e-6);
}

}  // namespace
}  // namespace bedwright
