#include "catalog/section.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <numbers>
#include <stdexcept>

namespace bedwright {
namespace {

using testing::AllOf;
using testing::HasSubstr;

Section channel() {
  return {"C6x8.2",     Shape::channel, 6 * inch,    1.92 * inch, 0.2 * inch,
          0.343 * inch, 0.3 * inch,     0.12 * inch, {}};
}

Section angle() { return {"L3x2x1/4", Shape::angle, 76.2, 50.8, 6.35, 0, 8, 3, {}}; }

std::string message(const Section& section) {
  try {
    profile(section);
  } catch (const std::invalid_argument& error) {
    return error.what();
  }
  return "no complaint";
}

TEST(ProfileTest, ChannelFillsItsFrame) {
  const Outline outline = profile(channel());
  Mm low_y = 1e9, high_y = -1e9, low_z = 1e9, high_z = -1e9;
  for (const Vertex& v : outline) {
    low_y = std::min(low_y, v.at.x), high_y = std::max(high_y, v.at.x);
    low_z = std::min(low_z, v.at.y), high_z = std::max(high_z, v.at.y);
  }
  EXPECT_NEAR(low_y, 0, 1e-12);
  EXPECT_NEAR(high_y, 1.92 * inch, 1e-12);
  EXPECT_NEAR(low_z, -3 * inch, 1e-12);
  EXPECT_NEAR(high_z, 3 * inch, 1e-12);
}

TEST(ProfileTest, ChannelFlangeTapersTwoInTwelveAboutItsMean) {
  Section sharp = channel();
  sharp.root_radius = sharp.toe_radius = 0;
  const Outline outline = profile(sharp);
  ASSERT_EQ(outline.size(), 8u);
  const Vec2 toe = outline[2].at, root = outline[3].at;
  EXPECT_NEAR((root.y - toe.y) / (toe.x - root.x), 2.0 / 12, 1e-12);
  EXPECT_NEAR((root.y + toe.y) / 2 + 3 * inch, 0.343 * inch, 1e-12);
  // Web and flanges by hand: depth x web and two overhangs of mean thickness.
  EXPECT_NEAR(area_properties(outline).area, 6 * inch * 0.2 * inch + 2 * 1.72 * inch * 0.343 * inch, 1e-9);
}

TEST(ProfileTest, ChannelIsSymmetricAndCounterClockwise) {
  const AreaProperties p = area_properties(profile(channel()));
  EXPECT_GT(p.area, 0);
  EXPECT_NEAR(p.centroid.y, 0, 1e-12);
}

TEST(ProfileTest, ChannelArcsHaveTheirRadii) {
  // Radius from a run's chord and bulge: c (1 + b^2) / (4 b).
  const Outline outline = profile(channel());
  std::vector<double> radii;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const double b = outline[i].bulge;
    if (b != 0)
      radii.push_back(norm(outline[(i + 1) % outline.size()].at - outline[i].at) * (1 + b * b) / (4 * b));
  }
  // Toes turn left (positive), roots right.
  EXPECT_THAT(radii, testing::ElementsAre(
                         testing::DoubleNear(0.12 * inch, 1e-9), testing::DoubleNear(-0.3 * inch, 1e-9),
                         testing::DoubleNear(-0.3 * inch, 1e-9), testing::DoubleNear(0.12 * inch, 1e-9)));
}

TEST(ProfileTest, AngleHasItsHeelAtTheOriginAndFlangeAlongY) {
  const Outline outline = profile(angle());
  Mm flange = 0, depth = 0;
  for (const Vertex& v : outline) {
    flange = std::max(flange, v.at.x);
    depth = std::max(depth, v.at.y);
    EXPECT_GE(v.at.x, -1e-12);
    EXPECT_GE(v.at.y, -1e-12);
  }
  EXPECT_NEAR(flange, 50.8, 1e-12);
  EXPECT_NEAR(depth, 76.2, 1e-12);
  // Bare legs, plus one fillet less two toes, each (1 - pi/4) r^2.
  const double corner = 1 - std::numbers::pi / 4;
  EXPECT_NEAR(area_properties(outline).area, 6.35 * (76.2 + 50.8 - 6.35) + corner * (64 - 2 * 9), 1e-9);
}

TEST(ProfileTest, AngleToeMayBeRoundedOverItsWholeThickness) {
  Section section = angle();
  section.toe_radius = section.web;
  EXPECT_GT(area_properties(profile(section)).area, 0);
}

TEST(ProfileTest, SaysWhichSectionAndWhy) {
  Section s = channel();
  s.web = 2 * inch;
  EXPECT_THAT(message(s), AllOf(HasSubstr("C6x8.2"), HasSubstr("web must be thinner")));
  s = channel();
  s.flange_thickness = 0.1 * inch;
  EXPECT_THAT(message(s), HasSubstr("tapers to nothing"));
  s = channel();
  s.depth = 0.9 * inch;
  EXPECT_THAT(message(s), HasSubstr("flanges meet"));
  s = channel();
  s.root_radius = 3 * inch;
  EXPECT_THAT(message(s), HasSubstr("root radius of 76.20 mm does not fit"));
  s = channel();
  s.toe_radius = 1 * inch;
  EXPECT_THAT(message(s), HasSubstr("toe radius of 25.40 mm does not fit"));
  s = channel();
  s.flange_thickness = 0;
  EXPECT_THAT(message(s), HasSubstr("flange thickness must be over 0"));
  s = angle();
  s.depth = 6;
  EXPECT_THAT(message(s), AllOf(HasSubstr("L3x2x1/4"), HasSubstr("a leg must be longer")));
  s = angle();
  s.depth = -1;
  EXPECT_THAT(message(s), HasSubstr("must be over 0"));
  s = angle();
  s.toe_radius = -1;
  EXPECT_THAT(message(s), HasSubstr("radii must not be negative"));
}

TEST(ProfileTest, RefusesFilletsThatUseUpTheWebBetweenThem) {
  Section s = channel();
  s.depth = 1.1 * inch;  // web between the flanges shorter than two fillets
  EXPECT_THAT(message(s), HasSubstr("root radius"));
}

}  // namespace
}  // namespace bedwright
