// WELD-LOAD's ways out: each that names a key clears it when it is taken.
#include "rules/findings_of_code.h"
#include "rules/small_bed.h"
#include "rules/weld/weld.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::check;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

Job with_log(Mm diameter) {
  Job job = testing::demo_job("base");
  job.order.work.log->diameter = diameter;
  return job;
}

TEST(WeldLoad, NoThickerPlateIsAskedWhereTheMainsFlangeIsWhatIsThin) {
  const auto found = check(with_log(48 * inch), "WELD-LOAD");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_THAT(found[0].remedy, ::testing::Not(HasSubstr("thick")));
  EXPECT_THAT(found[0].message, HasSubstr("for the steel beside it is"));
}

TEST(WeldLoad, TheLogItNamesIsTheLargestThatHolds) {
  for (const Mm diameter : {40 * inch, 48 * inch, 60 * inch}) {
    const auto found = check(with_log(diameter), "WELD-LOAD");
    ASSERT_THAT(found, SizeIs(1)) << diameter;
    const Mm most = change_of(found[0], "work.log.diameter");
    EXPECT_THAT(check(with_log(most), "WELD-LOAD"), IsEmpty());
    EXPECT_THAT(check(with_log(most + inch), "WELD-LOAD"), SizeIs(1));
  }
}

TEST(WeldLoad, IsToldInTheOrdersUnits) {
  Job job = with_log(48 * inch);
  const auto inches = check(job, "WELD-LOAD");
  EXPECT_EQ(inches.at(0).unit, "lb/in");
  job.order.order.printing = Printing::metric;
  const auto metric = check(job, "WELD-LOAD");
  EXPECT_EQ(metric.at(0).unit, "N/mm");
  // A pound-force is 4.4482 N, an inch 25.4 mm.
  EXPECT_NEAR(inches[0].measured, metric[0].measured * 25.4 / 4.4482216, 1e-4 * inches[0].measured);
}

}  // namespace
}  // namespace bedwright
