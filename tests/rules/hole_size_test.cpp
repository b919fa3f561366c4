// HOLE-FIT by the sizes of the holes themselves and by parts moved one by one; HOLE-PAINT.
#include "rules/fit/bolt_fit.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

// Three plates of one hole each, `off` out of line in the lowest.
SmallBed three(Mm hole, Vec2 off = {}) {
  SmallBed s;
  const int low = s.plate(some(1), {off.x, off.y, 0}, {200, 200}, 6, {round_hole({}, hole)});
  const int middle = s.plate(some(2), {0, 0, 6}, {200, 220}, 6, {round_hole({}, hole)});
  const int top = s.plate(some(3), {0, 0, 12}, {200, 240}, 6, {round_hole({}, hole)});
  s.bolt(bunk_bolt_r1, {top, middle, low}, 45);
  return s;
}

Contribution along(Mm by) { return {"moved", by, by, 0, 0, 0, 0}; }

TEST(HoleSize, AHoleThatMayComeOutNarrowerThanItsBoltStops) {
  for (const auto& [smaller, stops] : {std::pair(1.29, 0u), std::pair(1.31, 1u)}) {
    SmallBed s = three(inch / 2 + 1.3);
    s.bed.bolts[0].plies[1].smaller = smaller;
    const auto found = s.of("HOLE-FIT");
    ASSERT_THAT(found, SizeIs(stops)) << smaller;
    if (stops == 0) continue;
    EXPECT_EQ(found[0].severity, Severity::stop);
    EXPECT_THAT(found[0].message, HasSubstr("does not go in"));
    EXPECT_EQ(change_of(found[0], "kit.bunk.hole.diameter"), half_inch().standard_hole);
  }
}

// Two holes of 14 take (14 - 12.7) between them; each a tenth smaller, a tenth less.
TEST(HoleSize, ASmallerHoleTakesLess) {
  const Mm takes = 14 - inch / 2;
  EXPECT_THAT(three(14, {takes - 0.001, 0}).of("HOLE-FIT"), IsEmpty());
  for (const auto& [off, stops] : {std::pair(takes - 0.101, 0u), std::pair(takes - 0.099, 1u)}) {
    SmallBed s = three(14, {off, 0});
    for (Ply& ply : s.bed.bolts[0].plies) ply.smaller = 0.1;
    EXPECT_THAT(s.of("HOLE-FIT"), SizeIs(stops)) << off;
  }
}

// The middle and the lowest plate each move by themselves: what is between them adds up,
// though neither is the first.
TEST(HoleFit, PliesMovedByThemselvesCountAgainstEachOther) {
  const Mm takes = 14 - inch / 2;
  for (const auto& [by, stops] : {std::pair(takes / 2 - 0.001, 0u), std::pair(takes / 2 + 0.001, 1u)}) {
    SmallBed s = three(14);
    s.bed.bolts[0].plies[1].own = {along(by)};
    s.bed.bolts[0].plies[2].own = {along(by)};
    const auto found = s.of("HOLE-FIT");
    ASSERT_THAT(found, SizeIs(stops)) << by;
    if (stops) {
      EXPECT_NEAR(found[0].measured, 2 * by, 1e-9);
    }
  }
}

// Any two of three holes may take the bolt and all three not: moved along three ways at
// 120 degrees, each as far as two together take.
TEST(HoleFit, AllHolesTogetherCountWhatMovesEach) {
  SmallBed s = three(14);
  const Mm r = (14 - inch / 2) / 2;
  // Two at +-a along x, the third at b along y: pairs need 2a and hypot(a, b) within 2r; one
  // point within r of all three asks that the triangle's circle be no larger than r.
  const Mm a = 0.9 * r, b = 1.7 * r;
  ASSERT_LT(2 * a, 2 * r);
  ASSERT_LT(std::hypot(a, b), 2 * r);
  ASSERT_GT((a * a + b * b) / (2 * b), r);  // its circumscribed circle
  s.bed.bolts[0].plies[0].own = {{"up", 0, 0, b, 0, 0, 0}};
  s.bed.bolts[0].plies[1].own = {{"right", a, 0, 0, 0, 0, 0}};
  s.bed.bolts[0].plies[2].own = {{"left", 0, a, 0, 0, 0, 0}};
  EXPECT_THAT(s.of("HOLE-FIT"), SizeIs(1));
}

// By hand: two holes of 14 about 12.7, 0.5 out of line: the radii's sum, 1.3, keeps 0.5; half of
// what is left, 0.4, may lie on each hole's wall, and no more than each hole's own 0.65.
TEST(HolePaint, IsHalfOfWhatTheTightestPairHasLeft) {
  SmallBed s = three(14, {0.5, 0});
  const auto found = s.of("HOLE-PAINT");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_NEAR(found[0].measured, 0.4, 1e-6);
  for (const auto& [coat, stops] : {std::pair(0.399, 0u), std::pair(0.401, 1u)}) {
    SmallBed painted = three(14, {0.5, 0});
    for (Ply& ply : painted.bed.bolts[0].plies) ply.smaller = 2 * coat;
    EXPECT_THAT(painted.of("HOLE-FIT"), SizeIs(stops)) << coat;
  }
}

TEST(HolePaint, OfABedThatDoesNotFitBareIsNotSaid) {
  EXPECT_THAT(three(14, {5, 0}).of("HOLE-PAINT"), IsEmpty());
}

}  // namespace
}  // namespace bedwright
