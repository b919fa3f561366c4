#include "geometry/outline.h"

#include <gtest/gtest.h>

#include <numbers>
#include <random>
#include <stdexcept>

namespace bedwright {
namespace {

constexpr double pi = std::numbers::pi;

// Polygon figures by the shoelace sums, kept apart from the code under test.
AreaProperties of_polygon(const std::vector<Vec2>& p) {
  double a = 0, sx = 0, sy = 0, xx = 0, yy = 0;
  for (std::size_t i = 0; i < p.size(); ++i) {
    const Vec2 u = p[i], v = p[(i + 1) % p.size()];
    const double k = u.x * v.y - v.x * u.y;
    a += k / 2;
    sx += k * (u.x + v.x) / 6;
    sy += k * (u.y + v.y) / 6;
    xx += k * (u.x * u.x + u.x * v.x + v.x * v.x) / 12;
    yy += k * (u.y * u.y + u.y * v.y + v.y * v.y) / 12;
  }
  return {a, {sx / a, sy / a}, yy - sy * sy / a, xx - sx * sx / a};
}

void expect_same(const AreaProperties& got, const AreaProperties& want, double relative) {
  const double size = std::sqrt(std::abs(want.area));
  EXPECT_NEAR(got.area, want.area, relative * want.area);
  EXPECT_NEAR(got.centroid.x, want.centroid.x, relative * size);
  EXPECT_NEAR(got.centroid.y, want.centroid.y, relative * size);
  EXPECT_NEAR(got.about_x, want.about_x, relative * want.about_x);
  EXPECT_NEAR(got.about_y, want.about_y, relative * want.about_y);
}

TEST(AreaPropertiesTest, Rectangle) {
  const AreaProperties p = area_properties(rectangle({10, -5}, {30, 3}));
  expect_same(p, {160, {20, -1}, 20 * 512 / 12.0, 8 * 8000 / 12.0}, 1e-14);
}

TEST(AreaPropertiesTest, ClockwiseIsNegative) {
  const AreaProperties p = area_properties({{{0, 0}}, {{0, 2}}, {{3, 2}}, {{3, 0}}});
  EXPECT_DOUBLE_EQ(p.area, -6);
  EXPECT_NEAR(p.centroid.x, 1.5, 1e-14);
}

TEST(AreaPropertiesTest, CircleFarFromTheOrigin) {
  const double r = 7;
  const AreaProperties p = area_properties(hole_outline({6000, -900}, 2 * r, 2 * r, 0.7));
  const double second = pi * r * r * r * r / 4;
  expect_same(p, {pi * r * r, {6000, -900}, second, second}, 1e-12);
}

TEST(AreaPropertiesTest, HalfDisc) {
  // Centroid 4r/(3 pi) from the diameter; second moments pi r^4/8 and (pi/8 - 8/(9 pi)) r^4.
  const double r = 3;
  const AreaProperties p = area_properties({{{r, 0}, 1}, {{-r, 0}}});
  const double r4 = r * r * r * r;
  expect_same(p, {pi * r * r / 2, {0, 4 * r / (3 * pi)}, (pi / 8 - 8 / (9 * pi)) * r4, pi * r4 / 8}, 1e-13);
}

TEST(AreaPropertiesTest, ThreeQuarterDiscFromOneArc) {
  // Sector of 270 degrees less nothing: two radii and one arc of more than a half circle.
  const double r = 2, half = 3 * pi / 4;
  const AreaProperties p = area_properties({{{0, 0}},
                                            {{r * std::cos(half), -r * std::sin(half)}, std::tan(half / 2)},
                                            {{r * std::cos(half), r * std::sin(half)}}});
  const double area = r * r * half, x = 2 * r * std::sin(half) / (3 * half), r4 = r * r * r * r;
  const double xx = r4 / 4 * (half + std::sin(half) * std::cos(half));
  const double yy = r4 / 4 * (half - std::sin(half) * std::cos(half));
  expect_same(p, {area, {x, 0}, yy, xx - area * x * x}, 1e-13);
}

TEST(AreaPropertiesTest, Slot) {
  // A rectangle with a half disc at each end.
  const double d = 14, length = 32, r = d / 2, straight = length - d;
  const AreaProperties p = area_properties(hole_outline({1, 2}, d, length, 0));
  const double half_disc = pi * r * r / 2, end = straight / 2 + 4 * r / (3 * pi);
  const double along = d * straight * straight * straight / 12 +
                       2 * ((pi / 8 - 8 / (9 * pi)) * r * r * r * r + half_disc * end * end);
  const double across = straight * d * d * d / 12 + pi * r * r * r * r / 4;
  expect_same(p, {d * straight + 2 * half_disc, {1, 2}, across, along}, 1e-13);
}

TEST(AreaPropertiesTest, SlotTurnedQuarterSwapsSecondMoments) {
  const AreaProperties flat = area_properties(hole_outline({0, 0}, 14, 32, 0));
  const AreaProperties upright = area_properties(hole_outline({0, 0}, 14, 32, pi / 2));
  EXPECT_NEAR(flat.about_x, upright.about_y, 1e-9);
  EXPECT_NEAR(flat.about_y, upright.about_x, 1e-9);
}

TEST(AreaPropertiesTest, RoundedRectangle) {
  Outline outline = rectangle({-30, -10}, {30, 10});
  for (std::size_t corner : {3u, 2u, 1u, 0u}) round_corner(outline, corner, 4);
  ASSERT_EQ(outline.size(), 8u);
  // Two crossed rectangles and four quarter discs.
  const double r = 4, quarter = pi * r * r / 4, arm = 4 * r / (3 * pi);
  const double own = (pi / 16 - 4 / (9 * pi)) * r * r * r * r;
  const auto second = [&](double w, double h) {
    return (w - 2 * r) * h * h * h / 12 + 2 * r * std::pow(h - 2 * r, 3) / 12 +
           4 * (own + quarter * std::pow(h / 2 - r + arm, 2));
  };
  expect_same(area_properties(outline), {60 * 20 - (4 - pi) * r * r, {0, 0}, second(60, 20), second(20, 60)},
              1e-13);
  EXPECT_NEAR(perimeter(outline), 2 * (52 + 12) + 2 * pi * r, 1e-12);
}

TEST(AreaPropertiesTest, AgreesWithFineFlatteningForRandomOutlines) {
  std::mt19937 random(20240607);
  std::uniform_real_distribution<double> radius(40, 60), bulge(-0.4, 0.9);
  for (int trial = 0; trial < 20; ++trial) {
    Outline outline;
    for (int k = 0; k < 7; ++k) {
      const double t = 2 * pi * k / 7, r = radius(random);
      outline.push_back({{500 + r * std::cos(t), -200 + r * std::sin(t)}, bulge(random)});
    }
    expect_same(area_properties(outline), of_polygon(flattened(outline, 1e-6)), 1e-6);
  }
}

TEST(AreaPropertiesTest, NearlyStraightArcsKeepTheirDigits) {
  // A flat arc of rise s on chord c is a parabola to within (s/c)^2: area 2cs/3, centroid 2s/5 off the chord.
  for (double b : {1e-9, 1e-6, 1e-4}) {
    const double c = 1000, s = b * c / 2, part = 2 * c * s / 3;
    const AreaProperties p = area_properties({{{0, 0}}, {{100, 0}, b}, {{100, c}}, {{0, c}}});
    EXPECT_NEAR(p.area - 100 * c, part, 1e-10 + 1e-7 * part);
    const double x = (100 * c * 50 + part * (100 + 2 * s / 5)) / (100 * c + part);
    EXPECT_NEAR(p.centroid.x, x, 1e-10);
  }
}

TEST(AreaPropertiesTest, BothFormulasForArcsMeetTheFlattenedOutline) {
  // The way an arc is summed changes at bulge 0.05.
  for (double b : {1e-3, 0.02, 0.0499, 0.0501, 0.1}) {
    const Outline outline{{{0, 0}}, {{100, 0}, b}, {{100, 1000}}, {{0, 1000}, -b / 2}};
    expect_same(area_properties(outline), of_polygon(flattened(outline, 1e-7)), 1e-7);
  }
}

TEST(PerimeterTest, CircleAndSlot) {
  EXPECT_NEAR(perimeter(hole_outline({3, 4}, 10, 10, 0)), 10 * pi, 1e-12);
  EXPECT_NEAR(perimeter(hole_outline({3, 4}, 10, 25, 1)), 10 * pi + 30, 1e-12);
}

TEST(MirroredTest, KeepsAreaAndTurnsCentroid) {
  Outline outline = polygon({{0, 0}, {40, 0}, {40, 10}, {10, 30}, {0, 30}});
  round_corner(outline, 3, 5);
  round_corner(outline, 1, 3);
  const AreaProperties before = area_properties(outline), after = area_properties(mirrored(outline));
  EXPECT_GT(after.area, 0);
  EXPECT_NEAR(after.centroid.x, -before.centroid.x, 1e-12);
  EXPECT_NEAR(after.centroid.y, before.centroid.y, 1e-12);
  EXPECT_NEAR(after.area, before.area, 1e-10);
  EXPECT_NEAR(after.about_y, before.about_y, 1e-7);
}

TEST(MirroredTest, TwiceIsTheSameOutline) {
  Outline outline = polygon({{0, 0}, {40, 0}, {40, 10}, {10, 30}, {0, 30}});
  round_corner(outline, 2, 4);
  EXPECT_EQ(mirrored(mirrored(outline)), outline);
}

TEST(HoleOutlineTest, RoundHoleHasTwoHalfCircles) {
  const Outline hole = hole_outline({0, 0}, 14, 14, 0);
  ASSERT_EQ(hole.size(), 2u);
  EXPECT_EQ(hole[0].bulge, 1);
  EXPECT_EQ(hole[1].bulge, 1);
}

TEST(HoleOutlineTest, SlotReachesItsOverallLength) {
  double high = -1e9, low = 1e9;
  for (Vec2 p : flattened(hole_outline({100, 50}, 14, 32, 0), 1e-6)) {
    high = std::max(high, p.x);
    low = std::min(low, p.x);
  }
  EXPECT_NEAR(high, 116, 2e-6);
  EXPECT_NEAR(low, 84, 2e-6);
}

TEST(RoundCornerTest, ArcIsTangentToBothRuns) {
  Outline outline = polygon({{0, 0}, {50, 0}, {20, 40}});
  round_corner(outline, 1, 6);
  ASSERT_EQ(outline.size(), 4u);
  // Every point of the arc is 6 from one centre, and the centre 6 from both runs.
  const std::vector<Vec2> arc = flattened({outline[1], {outline[2].at}}, 1e-5);
  const double turn = 4 * std::atan(outline[1].bulge);
  const Vec2 start = outline[1].at, centre = start + Vec2{0, 6};
  EXPECT_GT(turn, 0);
  for (Vec2 p : arc) EXPECT_NEAR(norm(p - centre), 6, 1e-9);
  const Vec2 along = (1 / 50.0) * Vec2{-30, 40};
  EXPECT_NEAR(cross(along, centre - Vec2{50, 0}), 6, 1e-12);
}

TEST(RoundCornerTest, InsideCornerTurnsRight) {
  Outline outline = polygon({{0, 0}, {30, 0}, {30, 10}, {10, 10}, {10, 30}, {0, 30}});
  const double sharp = area_properties(outline).area;
  round_corner(outline, 3, 5);
  EXPECT_LT(outline[3].bulge, 0);
  EXPECT_NEAR(area_properties(outline).area, sharp + (1 - pi / 4) * 25, 1e-12);
}

TEST(RoundCornerTest, ArcThatUsesUpAWholeRunLeavesNoRepeatedVertex) {
  Outline outline = rectangle({0, 0}, {40, 10});
  round_corner(outline, 1, 10);
  EXPECT_EQ(outline.size(), 4u);
  EXPECT_NEAR(area_properties(outline).area, 400 - (1 - pi / 4) * 100, 1e-12);
  Outline first = rectangle({0, 0}, {40, 10});
  round_corner(first, 0, 10);  // the run used up comes before the corner, across the end of the list
  EXPECT_EQ(first.size(), 4u);
  EXPECT_NEAR(area_properties(first).area, 400 - (1 - pi / 4) * 100, 1e-12);
}

TEST(RoundCornerTest, RefusesWhatDoesNotFit) {
  Outline outline = rectangle({0, 0}, {40, 10});
  const Outline before = outline;
  EXPECT_THROW(round_corner(outline, 0, 10.1), std::invalid_argument);
  EXPECT_THROW(round_corner(outline, 4, 1), std::invalid_argument);
  EXPECT_THROW(round_corner(outline, 0, 0), std::invalid_argument);
  EXPECT_THROW(round_corner(outline, 0, -1), std::invalid_argument);
  EXPECT_EQ(outline, before);
  Outline straight = polygon({{0, 0}, {10, 0}, {20, 0}, {20, 10}});
  EXPECT_THROW(round_corner(straight, 1, 2), std::invalid_argument);
  Outline disc = hole_outline({0, 0}, 10, 25, 0);
  EXPECT_THROW(round_corner(disc, 0, 1), std::invalid_argument);
}

TEST(FlattenedTest, StaysWithinTheDeviation) {
  const double r = 250;
  for (double deviation : {1.0, 0.05}) {
    const std::vector<Vec2> points = flattened(hole_outline({0, 0}, 2 * r, 2 * r, 0), deviation);
    for (std::size_t i = 0; i < points.size(); ++i) {
      EXPECT_NEAR(norm(points[i]), r, 1e-9);
      EXPECT_LE(r - norm(0.5 * (points[i] + points[(i + 1) % points.size()])), deviation * (1 + 1e-9));
    }
  }
}

TEST(FlattenedTest, StraightRunsAreLeftAlone) {
  EXPECT_EQ(flattened(rectangle({0, 0}, {4, 5}), 0.1).size(), 4u);
  EXPECT_THROW(flattened(rectangle({0, 0}, {4, 5}), 0), std::invalid_argument);
}

}  // namespace
}  // namespace bedwright
