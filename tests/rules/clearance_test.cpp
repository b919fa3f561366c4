// CLEARANCE and TAB-LINE: tolerances of how two things were placed, added up by hand.
#include "rules/findings_of_code.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::check;
using ::testing::Contains;
using testing::demo_job;
using ::testing::Each;
using ::testing::Field;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

// A bunk lies in two rails' round holes. Each hole is 1/64 in from its place, and the bolt
// may have to take up 1/64 in in each part and half the gauge's 1/32 in, 3/64 in, of which
// a hole of 9/16 in for 1/2 in has 1/32 in of play. So bunk to rail: 2 x (1/64 + 1/32).
constexpr Mm bunk_to_rail = 3 * inch / 32;

std::vector<Finding> bunk_ends(Mm clearance) {
  Job job = demo_job("base");
  job.kit.bunk.end_clearance = clearance;
  std::vector<Finding> found;
  for (Finding& f : check(job, "CLEARANCE"))
    if (f.subjects[0].id.kind == Kind::rail && f.subjects[1].id.kind == Kind::bunk)
      found.push_back(std::move(f));
  return found;
}

TEST(Clearance, ABunksEndsCountHolesPlayAndGauge) {
  EXPECT_THAT(bunk_ends(bunk_to_rail + 0.01), IsEmpty());
  const auto found = bunk_ends(bunk_to_rail - 0.01);
  ASSERT_THAT(found, SizeIs(26));  // 13 bunks, two ends
  EXPECT_NEAR(found[0].measured, bunk_to_rail - 0.01, 1e-6);
  EXPECT_NEAR(found[0].limit, bunk_to_rail, 1e-6);
  EXPECT_THAT(bunk_ends(0), SizeIs(26));
}

TEST(Clearance, ItsChangeClearsABunksEnds) {
  Job job = demo_job("base", {"kit.bunk.end_clearance=1/32 in"});
  const auto found = bunk_ends(job.kit.bunk.end_clearance);
  ASSERT_FALSE(found.empty());
  const Change& c = found[0].changes.at(0);
  EXPECT_EQ(c.key, "kit.bunk.end_clearance");
  for (const Finding& f : check(demo_job("base", {c.key + "=" + c.value}), "CLEARANCE"))
    EXPECT_NE(f.subjects[0].id.kind, Kind::rail) << f.message;
}

TEST(Clearance, AddsUpTheChainThatHoldsTwoThings) {
  const Mm weld = inch / 16 + inch / 32, chain = weld + 0.5 + 0.5;
  const auto of_post = [](const SmallBed& s) {
    std::vector<Finding> found;
    for (Finding& f : s.of("CLEARANCE"))
      if (f.subjects[0].id == main_r && f.subjects[1].id == some(1)) found.push_back(std::move(f));
    return found;
  };
  EXPECT_THAT(of_post(post_beside_main(chain + 0.01)), IsEmpty());
  const auto found = of_post(post_beside_main(chain - 0.01));
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].limit, chain, 1e-6);
  EXPECT_THAT(found[0].remedy, HasSubstr("toward the left side"));
  // Root sum square: sqrt(2.38^2 + 0.5^2 + 0.5^2).
  SmallBed square = post_beside_main(std::sqrt(weld * weld + 0.5) - 0.01);
  square.limits.fit_basis = FitBasis::root_sum_square;
  EXPECT_THAT(of_post(square), SizeIs(1));
  square = post_beside_main(std::sqrt(weld * weld + 0.5) + 0.01);
  square.limits.fit_basis = FitBasis::root_sum_square;
  EXPECT_THAT(of_post(square), IsEmpty());
}

// A washer plays on its bolt by half of what it is wider, 13.5 on 12.7; the bolt's hole is out
// by 0.5, and the wall beside was set by weld and tape.
TEST(Clearance, AWashersPlayOnItsBoltCounts) {
  const Mm chain = (13.5 - inch / 2) / 2 + 0.5 + inch / 16 + inch / 32;
  const auto beside = [](Mm gap) {
    SmallBed s;
    const int plate = s.plate(some(1), {0, 0, 0}, {200, 200}, 6, {round_hole({}, 14)});
    s.bolt(bunk_bolt_r1, {plate}, 34);
    const Mm rim = 34.9 / 2;
    const int wall = s.box(some(2), {-50, rim + gap, 6}, {50, rim + gap + 10, 60});
    s.bed.welds.push_back({wall, plate, 5, 20, WeldLine::none, 5, 0});
    return s.of("CLEARANCE");
  };
  EXPECT_THAT(beside(chain + 0.5), IsEmpty());
  const auto found = beside(chain - 0.5);  // a rim of 16 chords is 0.34 in at most
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].limit, chain, 1e-6);
}

TEST(Clearance, TheDemosHaveRoom) {
  for (const std::string& order : testing::good_orders)
    EXPECT_THAT(check(demo_job(order), "CLEARANCE"), IsEmpty());
}

// --- TAB-LINE -------------------------------------------------------------------

// The rail's slot, 7/8 by 9/16 in across the bed, takes 5/32 in and its width 1/32 in each
// way; the tab's 9/16 in another 1/32 in: 7/32 in. The gauge moves each side by half.
TEST(TabLine, AKitOfAnotherGaugeDoesNotFitAFrameThatStands) {
  const auto at = [](const std::string& set) { return check(demo_job("lot_frame", {set}), "TAB-LINE"); };
  EXPECT_THAT(at("kit.gauge=49-7/16 in"), IsEmpty());
  const auto found = at("kit.gauge=50 in");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, inch / 2, 1e-6);
  EXPECT_NEAR(found[0].limit, 7 * inch / 32, 1e-6);
  EXPECT_THAT(at("kit.gauge=49-1/2 in"), SizeIs(1));
  EXPECT_THAT(at("kit.mounting.line=1-3/4 in"), SizeIs(1));
  EXPECT_THAT(at("frame.main.spacing=45 in"), SizeIs(1));
}

// Its holes stay where they were measured, whatever the kit: the pad and the slot too.
TEST(TabLine, NothingOfAStandingTabMoves) {
  const Bed as_built = testing::demo_bed("lot_frame"),
            other = testing::demo_bed("lot_frame", {"kit.gauge=50 in"});
  for (const Side side : both_sides)
    for (int number = 1; number <= 18; ++number)
      for (const Kind kind : {Kind::tab, Kind::tab_pad}) {
        const int a = as_built.item({kind, side, number}), b = other.item({kind, side, number});
        EXPECT_EQ(as_built.items[a].placement, other.items[b].placement);
        EXPECT_EQ(as_built.part_of(a).form, other.part_of(b).form);
      }
}

// One fault, one finding: no bolt is said to miss as well.
TEST(TabLine, HoleFitDoesNotSayItAgain) {
  EXPECT_THAT(check(demo_job("lot_frame", {"kit.gauge=50 in"}), "HOLE-FIT"), IsEmpty());
  // Within what the holes take, but not with the tolerances: HOLE-FIT's.
  EXPECT_FALSE(check(demo_job("lot_frame", {"kit.gauge=49-3/8 in"}), "HOLE-FIT").empty());
}

}  // namespace
}  // namespace bedwright
