// WELD-STEEL and CROSS-SPACING: figures by hand; just past the limit, and the twin inside.
#include "rules/findings_of_code.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::check;
using testing::demo_job;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

// A plate 100 square on a main 1000 long, its rear edge `from_end` ahead of the main's end,
// with a fillet of 6 across that edge from y -40 to 40 (the main is 100 wide).
SmallBed tab_near_end(Mm from_end, Mm half_line = 40) {
  SmallBed s;
  const int main = s.plate(main_r, {0, 0, -10}, {1000, 100}, 10);
  const Mm edge = 500 - from_end;
  const int tab = s.plate(tab_r1, {edge - 50, 0, 0}, {100, 100}, 10);
  s.bed.welds.push_back({tab,
                         main,
                         6,
                         2 * half_line,
                         WeldLine::across_flange,
                         10,
                         10,
                         {{{edge, -half_line, 0}, {edge, half_line, 0}, {0, 0, 1}, {1, 0, 0}}}});
  return s;
}

// The leg reaches 6 beyond the edge; a tenth is rounding.
TEST(WeldSteel, TheFilletsLegNeedsALedge) {
  EXPECT_THAT(tab_near_end(6).of("WELD-STEEL"), IsEmpty());
  const auto found = tab_near_end(5).of("WELD-STEEL");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, 0, 1e-9);
  EXPECT_NEAR(found[0].limit, 80, 1e-9);
  EXPECT_THAT(found[0].remedy, HasSubstr("further rearward"));
}

// Half of a line 120 long lies beyond the main's side at y 50: 10 at each end.
TEST(WeldSteel, CountsWhatLiesOverAir) {
  const auto found = tab_near_end(20, 60).of("WELD-STEEL");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].margin, -20, 0.3);  // a tenth at each end of each part is rounding
}

// One part may stand off by what a fillet is laid over: 1/16 in.
TEST(WeldSteel, AGapIsWeldContactsQuestion) {
  for (const Mm gap : {inch / 16 - 0.01, inch / 16 + 0.01}) {
    SmallBed s = tab_near_end(20);
    s.bed.items[1].placement.origin.z += gap;
    EXPECT_THAT(s.of("WELD-STEEL"), IsEmpty()) << gap;
    EXPECT_THAT(s.of("WELD-CONTACT"), SizeIs(gap > inch / 16 ? 1 : 0)) << gap;
  }
}

// The tab's centre is 5-1/2 in ahead of the rail's end, its rear edge 4 in, its 1/4 in
// fillet 3-3/4 in: mains that end 3-3/4 in short hold it, 3-7/8 in do not.
TEST(WeldSteel, MainsThatEndUnderTheLastTab) {
  const auto at = [](const char* overhang) {
    return check(demo_job("base", {std::string("frame.main.rear_overhang=") + overhang}), "WELD-STEEL");
  };
  EXPECT_THAT(at("-3-3/4 in"), IsEmpty());
  const auto found = at("-3-7/8 in");
  ASSERT_THAT(found, SizeIs(1));  // both sides are one
  ASSERT_THAT(found[0].changes, SizeIs(1));
  EXPECT_EQ(found[0].changes[0].key, "frame.main.rear_overhang");
  EXPECT_EQ(found[0].changes[0].value, "-3-3/4 in");
}

TEST(WeldSteel, TheChangeClearsIt) {
  for (const char* set :
       {"frame.main.length=200 in", "frame.main.front_overhang=-6 in", "frame.main.rear_overhang=-30 in"}) {
    const auto found = check(demo_job("base", {set}), "WELD-STEEL");
    ASSERT_THAT(found, SizeIs(1)) << set;
    ASSERT_FALSE(found[0].changes.empty()) << set;
    const Change& c = found[0].changes.front();
    EXPECT_THAT(check(demo_job("base", {set, c.key + "=" + c.value}), "WELD-STEEL"), IsEmpty()) << set;
  }
}

// --- CROSS-SPACING --------------------------------------------------------------

TEST(CrossSpacing, JacksThatLeaveNoPlaceAreTold) {
  // Jacks 7 in apart from 60 to 130 in keep everything between them, and 36 in is asked.
  std::string jacks = "jacks=[17 in, 223 in";
  for (int x = 60; x <= 130; x += 7) jacks += ", " + std::to_string(x) + " in";
  const auto found = check(demo_job("base", {jacks + "]"}), "CROSS-SPACING");
  for (const Finding& f : found) EXPECT_EQ(f.severity, Severity::stop);
  const auto clash = check(demo_job("base", {jacks + "]"}), "CLASH");
  EXPECT_FALSE(found.empty() && clash.empty());
}

// What stands is told, not stopped; what was not measured is said.
TEST(CrossSpacing, AStandingFrameIsTold) {
  EXPECT_THAT(check(demo_job("lot_frame"), "CROSS-SPACING"), IsEmpty());
  const auto wide = check(demo_job("lot_frame", {"frame.cross_member.max_spacing=35 in"}), "CROSS-SPACING");
  ASSERT_THAT(wide, SizeIs(7));
  EXPECT_EQ(wide[0].severity, Severity::warn);
  EXPECT_NEAR(wide[0].measured, 36 * inch, 1e-6);
  const auto unknown = check(demo_job("lot_frame", {"frame.cross_member.existing=[]"}), "CROSS-SPACING");
  ASSERT_THAT(unknown, SizeIs(1));
  EXPECT_EQ(unknown[0].severity, Severity::warn);
  EXPECT_THAT(unknown[0].message, HasSubstr("not known"));
}

// A list of places is no frame that stands: it is still to be made, and is not made so.
TEST(CrossSpacing, ListedPlacesOfAFrameToBeMadeStop) {
  const auto found =
      check(demo_job("base", {"frame.cross_member.existing=[36 in, 74 in, 108 in, 142 in, 176 in, 210 in]"}),
            "CROSS-SPACING");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].measured, 38 * inch, 1e-6);
  EXPECT_THAT(found[0].remedy, HasSubstr("55 in"));
}

}  // namespace
}  // namespace bedwright
