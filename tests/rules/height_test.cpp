// RAIL-SHIM, TIP-HEIGHT and the shims to pack. Bow of a bar: ASTM A6, 1/8 in for each
// 5 ft of a channel's length, and plates 0.03 in over, 0.01 in under (both from memory);
// weld pull and clips: common practice, no published source.
#include "rules/height/height.h"

#include <cmath>

#include "rules/clears.h"

namespace bedwright {
namespace {

using testing::check_typed;
using testing::demo_job;
using testing::expect_each_change_clears;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

TEST(TabHeights, BaseByHand) {
  const Job job = demo_job("base");
  const TabHeights h = tab_heights(job, testing::bed_of(job));
  EXPECT_NEAR(h.over, (2 * 0.03 + 1.0 / 32) * inch, 1e-9);  // plate and pad
  EXPECT_NEAR(h.under, (2 * 0.01 + 1.0 / 32) * inch, 1e-9);
  // Mains of 20 ft: four times 1/8 in; a rail is a third of them, 23 in from tab to tab.
  EXPECT_NEAR(h.section_bow, 0.5 / 9 * inch, 1e-9);
  EXPECT_NEAR(h.pitch_bow, 0.5 * (23.0 / 240) * (23.0 / 240) * inch, 1e-6);
  EXPECT_NEAR(h.most_shim() / inch, 0.1981, 1e-4);
}

TEST(TabHeights, ClipByHand) {
  const Job job = demo_job("metric");
  const TabHeights h = tab_heights(job, testing::bed_of(job));
  EXPECT_NEAR(h.over, 2.0 / 32 * inch, 1e-9);
  EXPECT_NEAR(h.under, h.over, 1e-12);
  EXPECT_NEAR(h.section_bow, 6000.0 / 1524 * inch / 8 / 9, 1e-6);
}

TEST(TabHeights, BowAgainstACircle) {
  // Three points of a true arc: 0.5 in over 240 in, a chord of 80 in on it.
  const double bow = 0.5, length = 240, part = 80;
  const double radius = (length * length / 4 + bow * bow) / (2 * bow);
  const double rise = radius - std::sqrt(radius * radius - part * part / 4);
  EXPECT_NEAR(bow_along(bow, length, part), rise, 1e-4 * rise);
}

TEST(RailShim, ANoteThatSaysHowMuchAndWhatTheBoltsTake) {
  const auto found = check_typed("base", {}, "RAIL-SHIM");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_THAT(found[0].message, HasSubstr("worst case"));
  EXPECT_THAT(check_typed("base",
                          {"tolerances.plate_over=0 in", "tolerances.plate_under=0 in",
                           "tolerances.weld_pull=0 in", "tolerances.main_camber=0 in"},
                          "RAIL-SHIM"),
              IsEmpty());
}

TEST(RailShim, LongerBoltsWhereTheShimTakesTheThread) {
  // 1/8 in of weld pull each way is more than the bolts' spare thread.
  const auto found =
      check_typed("base", {"tolerances.weld_pull=1/8 in", "limits.most_shim=1 in"}, "RAIL-SHIM");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_THAT(found[0].remedy, HasSubstr("a 2-1/2 in bolt in place of the 2-1/4 in"));
}

TEST(RailShim, MoreThanAShimMayBeIsStopped) {
  for (const std::vector<std::string>& sets :
       std::vector<std::vector<std::string>>{{"tolerances.weld_pull=1/4 in"},
                                             {"tolerances.main_camber=0.9 in"},
                                             {"limits.most_shim=0 in"},
                                             {"limits.most_shim=1/8 in"}}) {
    SCOPED_TRACE(sets[0]);
    const auto found = check_typed("base", sets, "RAIL-SHIM");
    ASSERT_THAT(found, SizeIs(1));
    EXPECT_EQ(found[0].severity, Severity::stop);
    expect_each_change_clears("base", sets, "RAIL-SHIM");
  }
  EXPECT_THAT(check_typed("metric", {"limits.most_shim=0 mm"}, "RAIL-SHIM")[0].message, HasSubstr("rock"));
}

TEST(TipHeight, AThinPlateEatsTheTipsRoom) {
  // As drawn a hair of room is asked and there; 1/8 in of pull is more than that.
  const std::vector<std::string> pulled{"tolerances.weld_pull=3/16 in", "limits.most_shim=1 in"};
  const auto found = check_typed("base", pulled, "TIP-HEIGHT");
  ASSERT_FALSE(found.empty());
  for (const Finding& f : found) EXPECT_EQ(f.severity, Severity::stop);
  EXPECT_THAT(found[0].message, HasSubstr("lower"));
  expect_each_change_clears("base", pulled, "TIP-HEIGHT");
  for (const std::string& order : testing::good_orders)
    EXPECT_THAT(check_typed(order, {}, "TIP-HEIGHT"), IsEmpty()) << order;
}

TEST(Shims, EveryThicknessUpToTheWorstCanBeMade) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const Bed bed = testing::bed_of(job);
    const std::vector<Shim> packed = shims(job, bed);
    ASSERT_FALSE(packed.empty()) << order;
    const Mm thinnest = packed[0].thickness;
    Mm sum = 0;
    for (const Shim& s : packed) {
      EXPECT_LE(s.thickness, sum + thinnest + 1e-9) << order;  // no gap in what can be made
      sum += s.thickness;
    }
    const Mm most = tab_heights(job, bed).most_shim();
    EXPECT_GE(sum + thinnest / 2, most) << order;
    EXPECT_LT(sum - packed.back().thickness + thinnest / 2, most) << order << ": one too many";
  }
  // Base: 24 tabs, two of four under each of six rails bear: 12 want shims, up to 0.198 in.
  const Job job = demo_job("base");
  const std::vector<Shim> packed = shims(job, testing::bed_of(job));
  ASSERT_THAT(packed, SizeIs(3));
  EXPECT_NEAR(packed[2].thickness, inch / 8, 1e-9);
  EXPECT_EQ(packed[2].count, 12);
}

}  // namespace
}  // namespace bedwright
