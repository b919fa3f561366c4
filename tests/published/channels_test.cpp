// profile() of every channel in the catalogue against handbook figures typed
// here, never read from the catalogue file.
//
// `now`: AISC Steel Construction Manual, 14th to 16th editions, table 1-5.
// `old_iy`: the 9th edition (1989). The Manual changed the weak-axis second
// moments in its 13th edition; its new figures lie up to 2.9 % under what the
// rolled outline gives in the shallow channels, while the older ones (mill
// handbooks of 1938 say they are computed on the actual profile, fillets and
// roundings included) agree with it. Both are held here: the older within 1 %,
// the present within 3 %. The 9th edition's figures are from memory; those for
// 5 to 8 in agree with a published table of them rounded to two decimals.
#include <gtest/gtest.h>

#include <cmath>

#include "published/catalog_files.h"

namespace bedwright {
namespace {

struct Row {
  const char* name;
  double area, ix, iy, x_bar, weight;  // in2, in4, in4, in, lb/ft
  double old_iy;                       // in4
};

constexpr Row rows[] = {
    {"C3x4.1", 1.20, 1.65, 0.191, 0.437, 4.1, 0.197},   {"C3x5", 1.47, 1.85, 0.241, 0.439, 5.0, 0.247},
    {"C3x6", 1.76, 2.07, 0.300, 0.455, 6.0, 0.305},     {"C4x5.4", 1.58, 3.85, 0.312, 0.457, 5.4, 0.319},
    {"C4x7.25", 2.13, 4.58, 0.425, 0.459, 7.25, 0.433}, {"C5x6.7", 1.97, 7.48, 0.470, 0.484, 6.7, 0.479},
    {"C5x9", 2.64, 8.89, 0.624, 0.478, 9.0, 0.632},     {"C6x8.2", 2.39, 13.1, 0.687, 0.512, 8.2, 0.693},
    {"C6x10.5", 3.07, 15.1, 0.860, 0.500, 10.5, 0.866}, {"C6x13", 3.82, 17.3, 1.05, 0.514, 13.0, 1.05},
    {"C7x9.8", 2.87, 21.2, 0.957, 0.541, 9.8, 0.968},   {"C7x12.25", 3.59, 24.2, 1.16, 0.525, 12.25, 1.17},
    {"C8x11.5", 3.37, 32.5, 1.31, 0.572, 11.5, 1.32},   {"C8x13.75", 4.03, 36.1, 1.52, 0.554, 13.75, 1.53},
    {"C8x18.75", 5.51, 43.9, 1.97, 0.565, 18.75, 1.98},
};

// AISC: steel at 490 lb/ft3, so 490/144 lb/ft for each square inch.
constexpr double pounds_per_foot = 490.0 / 144.0;
constexpr double in2 = inch * inch, in4 = in2 * in2;

class ChannelsTest : public testing::Test {
 protected:
  const Catalog catalog = shipped_catalog({"channels.yaml"});

  AreaProperties of(const Row& row) const {
    const Section* section = catalog.section(row.name);
    if (!section) throw std::runtime_error(std::string(row.name) + " is not in the catalogue");
    return area_properties(profile(*section));
  }
};

TEST_F(ChannelsTest, EveryCatalogueChannelHasARowHere) {
  ASSERT_EQ(catalog.sections.size(), std::size(rows));
  for (const Row& row : rows) EXPECT_NE(catalog.section(row.name), nullptr) << row.name;
}

TEST_F(ChannelsTest, AreaStrongAxisCentroidAndWeightWithinOnePercent) {
  // Worst: area +0.49 % (C6x8.2), Ix +0.56 % (C6x13), centroid -0.34 % (C6x10.5), weight -0.37 % (C7x9.8).
  for (const Row& row : rows) {
    const AreaProperties p = of(row);
    EXPECT_NEAR(p.area / in2 / row.area, 1, 0.01) << row.name;
    EXPECT_NEAR(p.about_x / in4 / row.ix, 1, 0.01) << row.name;
    EXPECT_NEAR(p.centroid.x / inch / row.x_bar, 1, 0.01) << row.name;
    EXPECT_NEAR(p.area / in2 * pounds_per_foot / row.weight, 1, 0.01) << row.name;
    EXPECT_NEAR(p.centroid.y, 0, 1e-9) << row.name;
  }
}

TEST_F(ChannelsTest, WeakAxis) {
  // Worst: -0.80 % against the 9th edition (C4x5.4), +2.85 % against the present one (C3x4.1).
  for (const Row& row : rows) {
    const double iy = of(row).about_y / in4;
    EXPECT_NEAR(iy / row.old_iy, 1, 0.01) << row.name;
    EXPECT_NEAR(iy / row.iy, 1, 0.03) << row.name;
  }
}

TEST_F(ChannelsTest, DepthFlangeAndSixInchFiguresAsPublished) {
  // AISC table 1-5: C6x8.2 is 6.00 deep, flange 1.92 wide and 0.343 mean thickness, web 0.200.
  const Section* c6 = catalog.section("C6x8.2");
  ASSERT_NE(c6, nullptr);
  EXPECT_DOUBLE_EQ(c6->depth, 6 * inch);
  EXPECT_NEAR(c6->flange, 1.92 * inch, 1e-9);
  EXPECT_NEAR(c6->web, 0.200 * inch, 1e-9);
  EXPECT_NEAR(c6->flange_thickness, 0.343 * inch, 1e-9);
  ASSERT_TRUE(c6->published);
  EXPECT_NEAR(c6->published->area, 2.39 * in2, 1e-9);
  EXPECT_NEAR(c6->published->ix, 13.1 * in4, 1e-6);
  EXPECT_NEAR(c6->published->iy, 0.687 * in4, 1e-6);
  EXPECT_NEAR(c6->published->x_bar, 0.512 * inch, 1e-9);
  EXPECT_NEAR(c6->published->kg_per_m, 12.2, 0.05);  // AISC's metric name for it: C150x12.2
}

TEST_F(ChannelsTest, CatalogueCarriesTheHandbookFiguresTypedHere) {
  for (const Row& row : rows) {
    const Section* section = catalog.section(row.name);
    ASSERT_TRUE(section && section->published) << row.name;
    EXPECT_NEAR(section->published->area, row.area * in2, 1e-9) << row.name;
    EXPECT_NEAR(section->published->ix, row.ix * in4, 1e-6) << row.name;
    EXPECT_NEAR(section->published->iy, row.iy * in4, 1e-6) << row.name;
    EXPECT_NEAR(section->published->x_bar, row.x_bar * inch, 1e-9) << row.name;
    EXPECT_NEAR(section->published->kg_per_m * 0.3048, row.weight * pound, 1e-9) << row.name;
  }
}

}  // namespace
}  // namespace bedwright
