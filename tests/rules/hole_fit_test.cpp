// HOLE-FIT: the figures against a search for the bolt's place, and faults
// planted a hair past the limit with their twins a hair inside.
#include "rules/fit/hole_fit.h"

#include <random>

#include "rules/findings_of_code.h"
#include "rules/small_bed.h"
#include "support/demo.h"

namespace bedwright {
namespace {

constexpr Mm bolt_diameter = inch / 2;
constexpr Mm width = 9 * inch / 16;  // r = 1/32 in a hole, 1/16 in the pair
constexpr Mm pair_radius = width - bolt_diameter;

// --- the measure -------------------------------------------------------------

using Random = std::mt19937;
double between(Random& r, double low, double high) { return std::uniform_real_distribution<>(low, high)(r); }

// How far a point is outside where a hole lets the bolt's centre be.
Mm outside(const Hole& hole, Vec2 centre, Vec2 p) {
  const Mm half = (hole.length - hole.diameter) / 2;
  const Vec2 axis{std::cos(hole.angle), std::sin(hole.angle)};
  const Vec2 d = p - centre;
  const Vec2 left = d - std::clamp(dot(d, axis), -half, half) * axis;
  return norm(left) - (hole.diameter - bolt_diameter) / 2;
}

// Tries bolt positions on a grid of `step`: the least misfit found.
Mm searched_misfit(const std::vector<Hole>& holes, const std::vector<Vec2>& centres, Mm step) {
  Mm best = 1e300;
  for (Mm x = -16; x <= 16; x += step)
    for (Mm y = -16; y <= 16; y += step) {
      Mm worst = -1e300;
      for (std::size_t i = 0; i < holes.size(); ++i)
        worst = std::max(worst, outside(holes[i], centres[i], {x, y}));
      best = std::min(best, worst);
    }
  return best;
}

HoleInWorld in_world(const Hole& hole, Vec2 at) {
  return {hole, {at.x, at.y, 0}, {std::cos(hole.angle), std::sin(hole.angle), 0}};
}

Hole random_hole(Random& r) {
  const Mm w = bolt_diameter + between(r, 0.2, 3);
  const int kind = static_cast<int>(between(r, 0, 3));
  return slot({}, w, kind == 0 ? w : w + between(r, 1, 12), kind == 2 ? 90 * degree : 0);
}

TEST(HoleFitMeasure, AgreesWithASearchForTheBoltsPlace) {
  Random r(21);
  const BoltAxes axes = axes_of({0, 0, -1});
  int fitting = 0, failing = 0;
  for (int n = 0; n < 250; ++n) {
    const std::vector<Hole> holes{random_hole(r), random_hole(r)};
    const std::vector<Vec2> centres{{0, 0}, {between(r, -8, 8), between(r, -5, 5)}};
    const Clearance c = clearance_of(in_world(holes[0], centres[0]), bolt_diameter, axes) +
                        clearance_of(in_world(holes[1], centres[1]), bolt_diameter, axes);
    const Mm need[2] = {std::abs(centres[1].x), std::abs(centres[1].y)};
    const bool fits = float_along(c, 0, need[1]) >= need[0] && float_along(c, 1, need[0]) >= need[1];
    const Mm searched = searched_misfit(holes, centres, 0.1);
    // The grid is within 0.071 mm of the best place; nothing is claimed nearer the limit.
    if (searched <= 0) {
      EXPECT_TRUE(fits);
      ++fitting;
    } else if (searched > 0.08) {
      EXPECT_FALSE(fits);
      ++failing;
    }
  }
  EXPECT_GT(fitting, 40);
  EXPECT_GT(failing, 40);
}

TEST(HoleFitMeasure, OfThreeHolesTogetherAgreesWithASearch) {
  Random r(5);
  const BoltAxes axes = axes_of({0, 0, -1});
  for (int n = 0; n < 60; ++n) {
    const std::vector<Hole> holes{random_hole(r), random_hole(r), random_hole(r)};
    std::vector<Vec2> centres;
    std::vector<Clearance> clearances;
    for (const Hole& h : holes) {
      centres.push_back({between(r, -4, 4), between(r, -4, 4)});
      clearances.push_back(clearance_of(in_world(h, centres.back()), bolt_diameter, axes));
    }
    const Mm searched = searched_misfit(holes, centres, 0.1), measured = joint_misfit(clearances, centres);
    if (measured > 0 || searched > 0.08) {
      EXPECT_NEAR(measured, searched, 0.08);
    } else {
      EXPECT_LE(measured, 0);
    }
  }
}

TEST(HoleFitMeasure, WorstCaseIsTheWorstOfSampledErrorsAndRootSumSquareIsLess) {
  Random r(8);
  for (int n = 0; n < 200; ++n) {
    std::vector<Contribution> stack;
    for (int i = 0; i < 4; ++i)
      stack.push_back({"", between(r, 0, 2), between(r, 0, 2), between(r, 0, 2), between(r, 0, 2)});
    const std::array<Mm, 2> offset{between(r, -3, 3), between(r, -3, 3)};
    const Reach reach = reach_of(offset, stack, axes_of({0, 0, -1}));
    for (int k = 0; k < 50; ++k) {
      Vec2 at{offset[0], offset[1]};
      for (const Contribution& c : stack)
        at = at + Vec2{between(r, -c.x_minus, c.x_plus), between(r, -c.y_minus, c.y_plus)};
      EXPECT_LE(std::abs(at.x), reach.worst.need(0));
      EXPECT_LE(std::abs(at.y), reach.worst.need(1));
    }
    EXPECT_LT(reach.rss.need(0), reach.worst.need(0));
  }
}

TEST(HoleFitMeasure, RootSumSquareByHand) {
  // +3/-1 has its middle at +1 and half a range of 2; with 1.5 beside it: 1 + sqrt(4 + 2.25) = 3.5.
  const std::vector<Contribution> stack{{"a", 3, 1, 0, 0}, {"b", 1.5, 1.5, 0, 0}};
  const Reach reach = reach_of({0.25, 0}, stack, axes_of({0, 0, -1}));
  EXPECT_NEAR(reach.rss.need(0), 3.75, 1e-12);
  EXPECT_NEAR(reach.worst.need(0), 4.75, 1e-12);
}

TEST(HoleFitMeasure, OfABoltAcrossTheBedTakesXAndZ) {
  const BoltAxes axes = axes_of({0, 1, 0});
  EXPECT_NEAR(axes.u.x, 1, 1e-12);
  EXPECT_NEAR(axes.v.z, 1, 1e-12);
  const Reach reach = reach_of({0, 0}, {{"across", 0, 0, 5, 5}, {"along", 2, 1, 0, 0}}, axes);
  EXPECT_NEAR(reach.worst.need(0), 2, 1e-12);
  EXPECT_NEAR(reach.worst.need(1), 0, 1e-12);
}

TEST(HoleFitMeasure, ASlantedSlotCountsAsRound) {
  const Clearance c =
      clearance_of(in_world(slot({}, width, 40, 30 * degree), {}), bolt_diameter, axes_of({0, 0, -1}));
  EXPECT_EQ(c.travel[0], 0);
  EXPECT_EQ(c.travel[1], 0);
  EXPECT_NEAR(c.radius, (width - bolt_diameter) / 2, 1e-12);
}

// --- the rule ----------------------------------------------------------------

constexpr Mm tab_slot = 1 * inch;
constexpr Mm travel = (tab_slot - width) / 2;  // each way along the bed

// A rail with a slot across over a tab with a slot along, `off` out of line.
SmallBed rail_on_tab(Vec2 off, std::vector<Contribution> stack_up = {}) {
  SmallBed s;
  const int tab =
      s.plate(tab_r1, {1000 + off.x, 500 + off.y, 0}, {100, 80}, 6, {slot({}, width, tab_slot, 0)});
  const int rail =
      s.plate(rail_r1, {1000, 500, 6}, {400, 80}, 6, {slot({}, width, 1.5 * inch, 90 * degree)}, Origin::kit);
  const int bolt = s.bolt(track_bolt_r1, {rail, tab}, 1.75 * inch);
  s.bed.bolts[bolt].stack_up = std::move(stack_up);
  return s;
}

TEST(HoleFit, AHairInsideIsFitAndAHairPastIsNot) {
  const Mm limit = travel + pair_radius;
  EXPECT_THAT(rail_on_tab({limit - 0.001, 0}).of("HOLE-FIT"), ::testing::IsEmpty());
  const auto found = rail_on_tab({limit + 0.001, 0}).of("HOLE-FIT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_EQ(found[0].subjects.front().id, track_bolt_r1);
  EXPECT_NEAR(found[0].measured, limit + 0.001, 1e-9);
  EXPECT_NEAR(found[0].limit, limit, 1e-9);
  EXPECT_NEAR(found[0].margin, -0.001, 1e-9);
}

TEST(HoleFit, AcrossTheBedTheRailsSlotTakesIt) {
  const Mm limit = (1.5 * inch - width) / 2 + pair_radius;
  EXPECT_THAT(rail_on_tab({0, limit - 0.001}).of("HOLE-FIT"), ::testing::IsEmpty());
  const auto found = rail_on_tab({0, limit + 0.001}).of("HOLE-FIT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_FALSE(offers(found[0], "frame.tabs.slot_length"));  // no slot along the bed helps
  EXPECT_THAT(found[0].message, ::testing::HasSubstr("across the bed"));
}

TEST(HoleFit, BothAxesShareTheRoundness) {
  // 3-4-5 of the radius beyond both travels.
  const Vec2 off{travel + 0.6 * pair_radius, (1.5 * inch - width) / 2 + 0.8 * pair_radius};
  EXPECT_THAT(rail_on_tab({off.x - 0.001, off.y - 0.001}).of("HOLE-FIT"), ::testing::IsEmpty());
  EXPECT_EQ(rail_on_tab({off.x + 0.001, off.y + 0.001}).of("HOLE-FIT").size(), 1u);
}

TEST(HoleFit, TheSlotOfferedIsEnoughAndTheStepBelowIsNot) {
  SmallBed s = rail_on_tab({4, 0}, {{"length of rail section 1 from the datum", 5, 5, 0, 0}});
  const auto found = s.of("HOLE-FIT");
  ASSERT_EQ(found.size(), 1u);
  const Mm length = change_of(found[0], "frame.tabs.slot_length");
  auto& hole = std::get<Plate>(s.bed.parts[s.bed.items[0].part].form).holes[0];
  hole.length = length;
  EXPECT_THAT(s.of("HOLE-FIT"), ::testing::IsEmpty());
  hole.length = length - inch / 16;
  EXPECT_EQ(s.of("HOLE-FIT").size(), 1u);
}

TEST(HoleFit, OneSlotLengthServesAllFailingBolts) {
  SmallBed s = rail_on_tab({10, 0});
  const int tab =
      s.plate({Kind::tab, Side::right, 2}, {2012, 500, 0}, {100, 80}, 6, {slot({}, width, tab_slot, 0)});
  const int rail = s.plate({Kind::rail, Side::right, 2}, {2000, 500, 6}, {400, 80}, 6,
                           {slot({}, width, 1.5 * inch, 90 * degree)}, Origin::kit);
  s.bolt({Kind::track_bolt, Side::right, 2}, {rail, tab}, 1.75 * inch);
  const auto found = s.of("HOLE-FIT");
  ASSERT_EQ(found.size(), 2u);
  const Mm length = change_of(found[0], "frame.tabs.slot_length");
  EXPECT_EQ(length, change_of(found[1], "frame.tabs.slot_length"));
  EXPECT_GE((length - width) / 2 + pair_radius, 12);
}

TEST(HoleFit, TheBasisDecidesWhatStops) {
  // Four of 2.5: worst case 10 is past the limit of about 7.1, root sum square 5 within.
  const std::vector<Contribution> four(4, {"each", 2.5, 2.5, 0, 0});
  SmallBed s = rail_on_tab({0, 0}, four);
  ASSERT_EQ(s.of("HOLE-FIT").size(), 1u);
  EXPECT_EQ(s.of("HOLE-FIT")[0].severity, Severity::stop);
  s.limits.fit_basis = FitBasis::root_sum_square;
  ASSERT_EQ(s.of("HOLE-FIT").size(), 1u);
  EXPECT_EQ(s.of("HOLE-FIT")[0].severity, Severity::warn);
  SmallBed worse = rail_on_tab({4, 0}, four);
  worse.limits.fit_basis = FitBasis::root_sum_square;
  ASSERT_EQ(worse.of("HOLE-FIT").size(), 1u);
  EXPECT_EQ(worse.of("HOLE-FIT")[0].severity, Severity::stop);
  EXPECT_NEAR(worse.of("HOLE-FIT")[0].measured, 9, 1e-9);
}

TEST(HoleFit, StackUpMovesTheFirstPly) {
  // The tab stands 6 rearward; a gap that pushes the rail 3 rearward brings them together,
  // one that pushes it 3 forward takes them apart.
  EXPECT_THAT(rail_on_tab({6, 0}, {{"joint gap", 3, 0, 0, 0}}).of("HOLE-FIT"), ::testing::IsEmpty());
  EXPECT_EQ(rail_on_tab({6, 0}, {{"joint gap", 0, 3, 0, 0}}).of("HOLE-FIT").size(), 1u);
}

TEST(HoleFit, ATabFoundOutOfPlaceIsMovedBackJustEnough) {
  Job job;
  job.order.tabs_found.push_back({{"L4", {}}, 3, 0});
  job.order.tabs_found.push_back({{"R1", {}}, 9, 0});
  job.frame.tabs.length = 100, job.frame.tabs.hole_diameter = width, job.frame.tabs.slot_length = tab_slot;
  SmallBed s = rail_on_tab({9, 0});
  s.plate({Kind::tab, Side::left, 4}, {1000, -500, 0}, {100, 80}, 6);
  s.job = &job;
  const auto found = s.of("HOLE-FIT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found[0].remedy, ::testing::HasSubstr("move tab R1"));
  EXPECT_THAT(found[0].remedy, ::testing::HasSubstr("forward"));
  // Filed longer, the slot would reach still further out from under the washer.
  EXPECT_THAT(found[0].remedy, ::testing::Not(::testing::HasSubstr("longer at")));
  const Mm left = change_of(found[0], "tabs_found[2].x");
  EXPECT_THAT(rail_on_tab({left, 0}).of("HOLE-FIT"), ::testing::IsEmpty());
  // The washer of 34.9 covers the slot from (34.9 - slot) / 2 off: that, and a mark at most more.
  const Mm covered = (34.9 - tab_slot) / 2;
  EXPECT_LE(left, covered);
  EXPECT_GE(left, covered - inch / 16);
  for (const Finding& f : rail_on_tab({left, 0}).of("WASHER-COVER"))
    EXPECT_EQ(f.subjects[1].id.kind, Kind::rail) << f.message;  // whose slot is longer than any washer
}

// 4 off, and 4 more by tolerance, of the 7.14 the holes take; the washer still covers the slot.
TEST(HoleFit, ASlotThatItsWasherCoversMayBeFiledLonger) {
  Job job;
  job.order.tabs_found.push_back({{"R1", {}}, 4, 0});
  job.frame.tabs.length = 100, job.frame.tabs.hole_diameter = width, job.frame.tabs.slot_length = tab_slot;
  SmallBed s = rail_on_tab({4, 0}, {{"length of rail section 1", 4, 4, 0, 0}});
  s.job = &job;
  const auto found = s.of("HOLE-FIT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found[0].remedy, ::testing::HasSubstr("longer at the front end"));
}

TEST(HoleFit, ATabThatCannotBeMovedEnoughIsNotOfferedToBeMoved) {
  // All of it is tolerance: the tab is where it should be.
  const auto found = rail_on_tab({0, 0}, {{"length of rail section 1", 9, 9, 0, 0}}).of("HOLE-FIT");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_THAT(found[0].remedy, ::testing::Not(::testing::HasSubstr("move tab")));
}

// Four sections: their errors add up from a pin at the front, half of them from the
// middle. A tab out of place across the bed is none the better for it.
TEST(HoleFit, AnotherDatumIsNamedOnlyWhereItClears) {
  Job job = testing::demo_job("one_extension");
  job.order.track.datum = Datum::front;
  const auto found = testing::check(job, "HOLE-FIT");
  ASSERT_FALSE(found.empty());
  EXPECT_THAT(found[0].remedy, ::testing::HasSubstr("errors of at most 2 sections add up, not 4"));
  EXPECT_TRUE(std::any_of(found[0].changes.begin(), found[0].changes.end(),
                          [](const Change& c) { return c.key == "track.datum" && c.value == "middle"; }));
  job.order.track.datum = Datum::middle;
  EXPECT_THAT(testing::check(job, "HOLE-FIT"), ::testing::IsEmpty());
  Job across = testing::demo_job("base");
  across.order.tabs_found = {{{"R7", {}}, 0, 3 * inch / 16}};
  const auto aside = testing::check(across, "HOLE-FIT");
  ASSERT_FALSE(aside.empty());
  for (const Finding& f : aside) EXPECT_THAT(f.remedy, ::testing::Not(::testing::HasSubstr("pin the track")));
}

TEST(HoleFit, AHoleSmallerThanItsBoltNeverFits) {
  SmallBed s;
  const int top = s.plate(some(1), {0, 0, 6}, {100, 100}, 6, {round_hole({}, 12.0)});
  const int under = s.plate(some(2), {0, 0, 0}, {100, 100}, 6, {round_hole({}, 12.5)});
  s.bolt({Kind::jack_bolt, Side::right, 1, 1}, {top, under}, 1.75 * inch);
  EXPECT_EQ(s.of("HOLE-FIT").size(), 2u);  // each of the two holes
}

TEST(HoleFit, ThreeHolesThatMeetOnlyTwoByTwoAreFound) {
  // Radii of 1 at the corners of a triangle of side 1.9: its circumradius is 1.097.
  const auto three = [](Mm side) {
    SmallBed s;
    const Mm high = side * std::sqrt(3.0) / 2;
    const Hole hole = round_hole({}, bolt_diameter + 2);
    const int a = s.plate(some(1), {0, 0, 12}, {100, 100}, 6, {hole});
    const int b = s.plate(some(2), {side, 0, 6}, {100, 100}, 6, {hole});
    const int c = s.plate(some(3), {side / 2, high, 0}, {100, 100}, 6, {hole});
    s.bolt({Kind::jack_bolt, Side::right, 1, 1}, {a, b, c}, 2 * inch);
    return s.of("HOLE-FIT");
  };
  EXPECT_THAT(three(std::sqrt(3.0) - 0.002), ::testing::IsEmpty());
  ASSERT_EQ(three(std::sqrt(3.0) + 0.002).size(), 1u);
  EXPECT_THAT(three(1.9)[0].message, ::testing::HasSubstr("all together do not"));
}

TEST(HoleFit, APadAndItsTabTogetherTakeWhatTheTighterTakes) {
  const Identity pad_r1{Kind::tab_pad, Side::right, 1};
  const auto off = [&](Mm x) {
    SmallBed s;
    const int tab = s.plate(tab_r1, {x, 0, 0}, {100, 80}, 6, {slot({}, width, tab_slot, 0)});
    const int pad = s.plate(pad_r1, {x, 0, 6}, {100, 80}, 6, {slot({}, width, tab_slot - 4, 0)});
    const int rail = s.plate(rail_r1, {0, 0, 12}, {400, 80}, 6, {round_hole({}, width)}, Origin::kit);
    s.bolt(track_bolt_r1, {rail, pad, tab}, 2 * inch);
    return s.of("HOLE-FIT");
  };
  EXPECT_THAT(off(travel - 2 + pair_radius - 0.001), ::testing::IsEmpty());
  ASSERT_EQ(off(travel - 2 + pair_radius + 0.001).size(), 1u);
  EXPECT_EQ(off(travel - 2 + pair_radius + 0.001)[0].subjects[2].id, pad_r1);
}

TEST(HoleNoTab, IsStoppedWithTheNearestTabAndAPlaceForANewOne) {
  SmallBed s = rail_on_tab({0, 0});
  Bolt lone = s.bed.bolts[0];
  lone.id.number = 2;
  lone.seat.x = 1500;
  lone.in_place = false;
  EXPECT_THAT(s.of("HOLE-NO-TAB"), ::testing::IsEmpty());
  s.bed.bolts.push_back(lone);
  s.figures.printing = Printing::metric;
  const auto found = s.of("HOLE-NO-TAB");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].message, ::testing::HasSubstr("tab R1, is 500.0 mm forward"));
  EXPECT_THAT(found[0].remedy, ::testing::HasSubstr("1500"));
}

}  // namespace
}  // namespace bedwright
