// CUT-HOLE, CENTRE-MARK, CUT-WEB, STOCK-PLATE and LETTERS; the limits themselves are
// in tests/planted/matrix_test.cpp.
#include "rules/small_bed.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

std::vector<Finding> check(const Job& job, const Bed& bed, const std::string& code) {
  std::vector<Finding> found;
  for (Finding& f :
       run_checks({bed, job.order.limits, &job, nullptr, {job.order.order.printing, job.order.order.tape}}))
    if (f.code == code) found.push_back(std::move(f));
  return found;
}

TEST(CutHole, RoundHolesGoToTheDrillByThemselves) {
  Job job = demo_job("base");
  job.order.limits.table_hole = 1.4;  // 7/16 in 3/8 is 1.17, 9/16 in 3/8 is 1.5
  job.kit.mounting.hole.slot.reset();
  const Bed bed = testing::bed_of(job);
  int marked = 0;
  for (const Part& part : bed.parts) {
    const auto* plate = std::get_if<Plate>(&part.form);
    if (!plate || part.origin != Origin::made) continue;
    for (const Hole& h : plate->holes)
      if (!h.slotted()) {
        EXPECT_EQ(h.process == Process::drilled, h.diameter < 1.4 * plate->thickness) << name(part);
        marked += h.process == Process::drilled;
      }
  }
  EXPECT_EQ(marked, 3);  // the tongue plate's
  EXPECT_THAT(check(job, bed, "CENTRE-MARK"), SizeIs(3));
  for (const Finding& f : check(job, bed, "CENTRE-MARK")) EXPECT_EQ(f.severity, Severity::note);
}

TEST(CutHole, ASlotTooNarrowIsAStopAndItsChangeClearsIt) {
  Job job = demo_job("base");
  job.order.limits.table_hole = 1.2;  // tab slots: 9/16 in 1/2 is 1.125
  auto found = check(job, testing::bed_of(job), "CUT-HOLE");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].subjects[0].name, "tab plate");
  Job thinner = job;
  thinner.frame.tabs.plate->plate_thickness = change_of(found[0], "frame.tabs.plate.plate_thickness");
  EXPECT_THAT(check(thinner, testing::bed_of(thinner), "CUT-HOLE"), IsEmpty());
  job.frame.tabs.hole_diameter = change_of(found[0], "frame.tabs.hole_diameter");
  EXPECT_THAT(check(job, testing::bed_of(job), "CUT-HOLE"), IsEmpty());
}

// The tongue plate's bolt holes, 7/16 in (11.1 mm), are the smallest that are cut.
TEST(CutHole, AHoleTooSmallForTheKerfIsAStop) {
  Job job = demo_job("base");
  job.order.cut.kerf = 7.0 * inch / 32 - 0.01;
  EXPECT_THAT(check(job, testing::bed_of(job), "CUT-HOLE"), IsEmpty());
  job.order.cut.kerf = 7.0 * inch / 32 + 0.01;
  const auto found = check(job, testing::bed_of(job), "CUT-HOLE");
  ASSERT_THAT(found, SizeIs(3));
  for (const Finding& f : found) {
    EXPECT_EQ(f.severity, Severity::stop);
    EXPECT_EQ(f.subjects[0].id, Identity{Kind::tongue_plate});
    EXPECT_NEAR(f.limit, 2 * job.order.cut.kerf, 1e-9);
    EXPECT_THAT(f.message, HasSubstr("leaves no path inside it"));
    EXPECT_THAT(f.remedy, HasSubstr("or cut with a kerf of"));
  }
}

TEST(CutWeb, HolesThatAreDrilledDoNotCount) {
  SmallBed s;
  Hole near_edge = round_hole({-90, 0}, 16);
  s.plate(some(1), {}, {200, 200}, 10, {near_edge});
  EXPECT_THAT(s.of("CUT-WEB"), SizeIs(1));
  near_edge.process = Process::drilled;
  SmallBed t;
  t.plate(some(1), {}, {200, 200}, 10, {near_edge});
  EXPECT_THAT(t.of("CUT-WEB"), IsEmpty());
}

TEST(StockPlate, EitherWayRoundWillDo) {
  SmallBed s;
  s.plate(some(1), {}, {48 * inch, 96 * inch}, 6);
  EXPECT_THAT(s.of("STOCK-PLATE"), IsEmpty());
  s.plate(some(2), {}, {49 * inch, 49 * inch}, 6);
  const auto found = s.of("STOCK-PLATE");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(change_of(found[0], "limits.stock_width"), 49 * inch, 1e-6);
}

TEST(Letters, AnyMadePlateOfTheDemosHasRoom) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    EXPECT_THAT(check(job, testing::bed_of(job), "LETTERS"), IsEmpty()) << order;
  }
}

}  // namespace
}  // namespace bedwright
