// JOINT-CLAMP, JOINT-GAP, JOINT-STEP, GUSSET-BOLTS, TRACK-LENGTH and DATUM: each change clears its
// finding. The limits are in tests/planted/matrix_test.cpp.
#include "rules/findings_of_code.h"
#include "rules/fit/datum.h"
#include "rules/small_bed.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::check;
using testing::demo_job;
using ::testing::IsEmpty;
using ::testing::SizeIs;

TEST(JointClamp, EachBunkOfferedClearsIt) {
  Job job = demo_job("base");
  job.order.track.clamps = {{5}, {8}};
  job.order.track.log_stops = {6};
  job.order.limits.joint_to_clamp = 3.5 * inch;
  const auto found = check(job, "JOINT-CLAMP");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_EQ(found[0].subjects[0].name, "clamp 1 on bunk 5");
  EXPECT_NEAR(found[0].measured, 3.25 * inch, 1e-6);
  ASSERT_FALSE(found[0].changes.empty());
  for (const Change& c : found[0].changes) {
    ASSERT_EQ(c.key, "track.clamps[1].bunk");
    EXPECT_NE(c.value, "8") << "another clamp has it";
    EXPECT_NE(c.value, "6") << "a log stop has it";
    Job moved = job;
    moved.order.track.clamps[0].bunk = std::stoi(c.value);
    EXPECT_THAT(check(moved, "JOINT-CLAMP"), IsEmpty()) << c.value;
  }
}

TEST(JointClamp, ASlideAcrossTheJointIsSaidSo) {
  Job job = demo_job("base");
  job.order.track.clamps = {{4}};
  job.kit.clamp.base_length = 20 * inch;  // from 18-3/4 in ahead of the joint
  const auto found = check(job, "JOINT-CLAMP");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_LT(found[0].measured, 0);
  EXPECT_THAT(found[0].message, ::testing::HasSubstr("slides across the rail joint"));
}

TEST(JointGap, NominalAndToleranceAddUp) {
  Job job = demo_job("base");
  job.kit.rail.joint_gap = inch / 16;
  job.kit.rail.joint_gap_plus = 3 * inch / 32;
  const auto found = check(job, "JOINT-GAP");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, 5 * inch / 32, 1e-9);
  job.kit.rail.joint_gap_plus = change_of(found[0], "kit.rail.joint_gap_plus");
  EXPECT_THAT(check(job, "JOINT-GAP"), IsEmpty());
}

TEST(JointStep, TheChangeClearsIt) {
  Job job = demo_job("base");
  job.kit.rail.height_tolerance = 0.5;
  const auto found = check(job, "JOINT-STEP");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::warn);
  job.kit.rail.height_tolerance = change_of(found[0], "kit.rail.height_tolerance");
  EXPECT_THAT(check(job, "JOINT-STEP"), IsEmpty());
}

TEST(GussetBolts, EachJointOfEachSide) {
  Job job = demo_job("one_extension");
  EXPECT_THAT(check(job, "GUSSET-BOLTS"), IsEmpty());
  job.kit.gusset.bolts = {1.5 * inch};
  EXPECT_THAT(check(job, "GUSSET-BOLTS"), SizeIs(6));
}

TEST(GussetBolts, ABoltTakenOutIsMissedAtItsJoint) {
  const Job job = demo_job("base");
  Bed bed = testing::bed_of(job);
  bed.bolts[bed.bolt({Kind::gusset_bolt, Side::right, 2, 3})].in_place = false;
  std::vector<Finding> found;
  for (Finding& f : run_checks({bed, job.order.limits, &job, nullptr, {}}))
    if (f.code == "GUSSET-BOLTS") found.push_back(std::move(f));
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].subjects[0].name, "joint R2");
}

TEST(TrackLength, ManySectionsAddUp) {
  Job job = demo_job("one_extension");
  EXPECT_THAT(check(job, "TRACK-LENGTH"), IsEmpty());  // 4 x 0.02 + 3 x 3/64 = 0.221 in
  job.kit.rail.joint_gap_plus = 0.06 * inch;           // 0.26 in
  const auto found = check(job, "TRACK-LENGTH");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, 0.26 * inch, 1e-9);
  job.kit.rail.joint_gap_plus = change_of(found[0], "kit.rail.joint_gap_plus");
  EXPECT_THAT(check(job, "TRACK-LENGTH"), IsEmpty());
}

// The margins the rule works out for the other datums are those the bed has when it
// is really pinned there.
TEST(Datum, TheThreeMarginsAreThoseOfTheThreeBeds) {
  for (const char* order : {"base", "one_extension", "metric", "lot_frame"}) {
    std::array<DatumMargin, 3> first{};
    for (const Datum datum : {Datum::front, Datum::middle, Datum::rear}) {
      Job job = demo_job(order);
      job.order.track.datum = datum;
      const Bed bed = testing::bed_of(job);
      const CheckInput input{bed, job.order.limits, &job, nullptr, {}};
      const auto margins = datum_margins(Scene(input), job);
      if (datum == Datum::front) first = margins;
      for (std::size_t d = 0; d < 3; ++d) EXPECT_NEAR(margins[d].margin, first[d].margin, 1e-9) << order;
    }
  }
}

TEST(Datum, ItsRecommendationIsTheBestAndThenQuiet) {
  Job job = demo_job("base");
  job.order.track.datum = Datum::front;
  const auto found = check(job, "DATUM");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::note);
  ASSERT_THAT(found[0].changes, SizeIs(1));
  EXPECT_EQ(found[0].changes[0].key, "track.datum");
  EXPECT_EQ(found[0].changes[0].value, "middle");
  job.order.track.datum = Datum::middle;
  EXPECT_THAT(check(job, "DATUM"), IsEmpty());
}

// A bed whose HOLE-FIT margin is measured by that rule must show DATUM the same one.
TEST(Datum, AgreesWithHoleFitOnABedThatMisses) {
  Job job = demo_job("one_extension");
  job.order.track.datum = Datum::front;
  const auto fit = check(job, "HOLE-FIT");
  ASSERT_FALSE(fit.empty());
  double worst = 0;
  for (const Finding& f : fit) worst = std::min(worst, f.margin);
  const Bed bed = testing::bed_of(job);
  const CheckInput input{bed, job.order.limits, &job, nullptr, {}};
  EXPECT_NEAR(datum_margins(Scene(input), job)[static_cast<std::size_t>(Datum::front)].margin, worst, 1e-9);
}

}  // namespace
}  // namespace bedwright
