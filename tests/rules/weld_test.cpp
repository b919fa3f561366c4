// WELD-LEAST, WELD-MOST, WELD-LOAD and TORCH on whole beds: each change clears its
// finding. Sizes and strengths against the outside are in tests/published.
#include "rules/weld/weld.h"

#include "rules/findings_of_code.h"
#include "rules/small_bed.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::check;
using testing::demo_job;
using ::testing::IsEmpty;
using ::testing::SizeIs;

TEST(WeldLeast, TheChangeClearsIt) {
  Job job = demo_job("base");
  job.frame.tabs.weld_leg = inch / 8;
  job.order.limits.tab_load = 1;
  const auto found = check(job, "WELD-LEAST");
  ASSERT_FALSE(found.empty());
  job.frame.tabs.weld_leg = change_of(found[0], "frame.tabs.weld_leg");
  EXPECT_THAT(check(job, "WELD-LEAST"), IsEmpty());
  job.frame.welds.leg = 3;
  const auto frame = check(job, "WELD-LEAST");
  ASSERT_FALSE(frame.empty());
  job.frame.welds.leg = change_of(frame[0], "frame.welds.leg");
  EXPECT_THAT(check(job, "WELD-LEAST"), IsEmpty());
}

// What a thin gusset's edge stands is too small for the other members' steel: where no one leg suits all,
// the joint gets a leg of its own, and that clears it.
TEST(WeldMost, AJointGetsALegOfItsOwnWhereNoOneLegSuitsAll) {
  Job job = demo_job("base");
  job.frame.corner_gusset.thickness =
      0.15 * inch;  // an edge that stands 1/8 in, and other steel wants 3/16 in
  job.frame.welds.leg = 3 * inch / 16;
  const auto found = check(job, "WELD-MOST");
  ASSERT_FALSE(found.empty());
  EXPECT_THAT(found[0].remedy, ::testing::Not(::testing::HasSubstr("no one leg suits")));
  job.frame.welds.corner_gusset = change_of(found[0], "frame.welds.corner_gusset");
  EXPECT_THAT(check(job, "WELD-MOST"), IsEmpty());
  // The other joints kept theirs.
  for (const Weld& w : testing::bed_of(job).welds) {
    if (w.line != WeldLine::web_sides) continue;
    EXPECT_NEAR(w.leg, 3 * inch / 16, 1e-9);
  }
}

TEST(WeldMost, TheChangeClearsIt) {
  Job job = demo_job("one_extension");
  job.frame.tabs.weld_leg = inch / 4;
  const auto found = check(job, "WELD-MOST");
  ASSERT_THAT(found, SizeIs(1)) << "all clips alike";
  job.frame.tabs.weld_leg = change_of(found[0], "frame.tabs.weld_leg");
  EXPECT_THAT(check(job, "WELD-MOST"), IsEmpty());
  EXPECT_THAT(check(job, "WELD-LEAST"), IsEmpty());
}

TEST(WeldLoad, EachChangeClearsIt) {
  Job job = demo_job("base");
  job.frame.tabs.plate->inboard = 1.5 * inch;
  job.order.limits.tab_load = 1400 * pound;
  const auto found = check(job, "WELD-LOAD");
  ASSERT_THAT(found, SizeIs(1)) << "all tabs alike";
  EXPECT_EQ(found[0].severity, Severity::stop);
  Job larger = job;
  larger.frame.tabs.weld_leg = change_of(found[0], "frame.tabs.weld_leg");
  EXPECT_THAT(check(larger, "WELD-LOAD"), IsEmpty());
  Job longer = job;
  longer.frame.tabs.plate->inboard = change_of(found[0], "frame.tabs.plate.inboard");
  EXPECT_THAT(check(longer, "WELD-LOAD"), IsEmpty());
  longer.frame.tabs.plate->inboard -= inch / 16;
  EXPECT_THAT(check(longer, "WELD-LOAD"), SizeIs(1));
}

TEST(WeldLoad, AClipsWeldIsDownTheWeb) {
  const Job job = demo_job("one_extension");
  const Bed bed = testing::bed_of(job);
  const CheckInput input{bed, job.order.limits, &job, nullptr, {}};
  const Scene scene(input);
  const auto welds = tab_welds(scene);
  ASSERT_FALSE(welds.empty());
  for (const TabWeld& w : welds) {
    EXPECT_FALSE(w.flat);
    EXPECT_NEAR(w.line, (3 - 7.0 / 8) * inch, 1e-6);  // what of the leg lies on the web
    EXPECT_NEAR(w.off, 1.25 * inch, 1e-6);            // hole line to web back
  }
}

// Tabs near a joint stand end to end.
TEST(Torch, TabsEndToEndShutTheTorchOut) {
  Job job = demo_job("one_extension");
  job.kit.mounting.end_offset = 1.75 * inch;  // half an inch between tabs of 3 in
  const auto found = check(job, "TORCH");
  ASSERT_FALSE(found.empty());
  EXPECT_EQ(found[0].severity, Severity::stop);
  job.frame.tabs.length = change_of(found[0], "frame.tabs.length");
  EXPECT_THAT(check(job, "TORCH"), IsEmpty());
  // Both give half of it; no more than a step is asked beyond what is needed.
  job.frame.tabs.length += inch / 16;
  EXPECT_FALSE(check(job, "TORCH").empty());
}

TEST(Torch, AFrameThatStandsIsWeldedAlready) {
  Job job = demo_job("lot_frame");
  job.frame.tabs.length = 13.9 * inch;
  EXPECT_THAT(check(job, "TORCH"), IsEmpty());
}

}  // namespace
}  // namespace bedwright
