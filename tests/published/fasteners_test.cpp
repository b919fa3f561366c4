// The catalogue's bolts, nuts and washers against the standards' own limits,
// typed here. Read from published copies of the tables unless marked.
#include <gtest/gtest.h>

#include <algorithm>

#include "published/catalog_files.h"

namespace bedwright {
namespace {

struct Limits {
  double least, most;
};

struct InchRow {
  const char* name;
  double diameter;
  int threads;              // ASME B1.1, UNC (from memory)
  Limits head_flats, head;  // ASME B18.2.1, hexagon cap screws: F and H
  double thread_length;     // ASME B18.2.1, LT for 6 in and shorter
  double shorter;           // ASME B18.2.1, length tolerance for over 1 to 2-1/2 in
  Limits nut_flats, nut;    // ASME B18.2.2, hexagon nuts: F and H
  Washer flat;              // ASME B18.21.1 type A, series N, basic
  Limits flat_thickness;
  Limits lock_inside;  // ASME B18.21.1, regular helical spring lock washers
  double lock_outside_most, lock_thickness_least;
  double wrench;
};

constexpr InchRow inch_rows[] = {
    {"1/4 in",
     0.25,
     20,
     {.428, .438},
     {.150, .163},
     0.750,
     .04,
     {.428, .438},
     {.212, .226},
     {.281, .625, .065},
     {.051, .080},
     {.252, .260},
     .487,
     .062,
     7. / 16},
    {"5/16 in",
     0.3125,
     18,
     {.489, .500},
     {.195, .211},
     0.875,
     .04,
     {.489, .500},
     {.258, .273},
     {.344, .688, .065},
     {.051, .080},
     {.314, .322},
     .583,
     .078,
     1. / 2},
    {"3/8 in",
     0.375,
     16,
     {.551, .562},
     {.226, .243},
     1.000,
     .04,
     {.551, .562},
     {.320, .337},
     {.406, .812, .065},
     {.051, .080},
     {.377, .385},
     .680,
     .094,
     9. / 16},
    {"7/16 in",
     0.4375,
     14,
     {.612, .625},
     {.272, .291},
     1.125,
     .06,
     {.675, .688},
     {.365, .385},
     {.469, .922, .065},
     {.051, .080},
     {.440, .450},
     .776,
     .109,
     11. / 16},
    {"1/2 in",
     0.5,
     13,
     {.736, .750},
     {.302, .323},
     1.250,
     .06,
     {.736, .750},
     {.427, .448},
     {.531, 1.062, .095},
     {.074, .121},
     {.502, .512},
     .869,
     .125,
     3. / 4},
    {"5/8 in",
     0.625,
     11,
     {.922, .938},
     {.378, .403},
     1.500,
     .08,
     {.922, .938},
     {.535, .559},
     {.656, 1.312, .095},
     {.074, .121},
     {.628, .641},
     1.073,
     .156,
     15. / 16},
    {"3/4 in",
     0.75,
     10,
     {1.100, 1.125},
     {.455, .483},
     1.750,
     .08,
     {1.088, 1.125},
     {.617, .665},
     {.812, 1.469, .134},
     {.108, .160},
     {.753, .766},
     1.265,
     .188,
     9. / 8},
};

struct MetricRow {
  const char* name;
  double diameter, pitch;      // ISO 261, coarse
  double flats, head;          // ISO 4014 and 4017: s nominal, k nominal
  double nut_most, nut_least;  // ISO 4032: m
  double thread_length;        // ISO 4014: b for lengths to 125 mm
  Washer flat;                 // ISO 7089, nominal
  Washer lock;                 // DIN 127: d1 least, d2 greatest, s nominal
};

constexpr MetricRow metric_rows[] = {
    {"M6", 6, 1, 10, 4, 5.2, 4.9, 18, {6.4, 12, 1.6}, {6.1, 11.8, 1.6}},
    {"M8", 8, 1.25, 13, 5.3, 6.8, 6.44, 22, {8.4, 16, 1.6}, {8.1, 14.8, 2}},
    {"M10", 10, 1.5, 16, 6.4, 8.4, 8.04, 26, {10.5, 20, 2}, {10.2, 18.1, 2.2}},
    {"M12", 12, 1.75, 18, 7.5, 10.8, 10.37, 30, {13, 24, 2.5}, {12.2, 21.1, 2.5}},
    {"M14", 14, 2, 21, 8.8, 12.8, 12.1, 34, {15, 28, 2.5}, {14.2, 24.1, 3}},
    {"M16", 16, 2, 24, 10, 14.8, 14.1, 38, {17, 30, 3}, {16.2, 27.4, 3.5}},
};

constexpr double printed = 0.0006 * inch;  // tables round to a thousandth of an inch

void expect_within(Mm value, Limits limits, const char* what) {
  EXPECT_GE(value, limits.least * inch - printed) << what;
  EXPECT_LE(value, limits.most * inch + printed) << what;
}

class FastenersTest : public testing::Test {
 protected:
  const Catalog catalog = shipped_catalog({"fasteners_inch.yaml", "fasteners_metric.yaml"});

  const BoltSize& bolt(const char* name) const {
    const BoltSize* found = catalog.bolt(name);
    if (!found) throw std::runtime_error(std::string(name) + " is not in the catalogue");
    return *found;
  }
};

TEST_F(FastenersTest, EveryCatalogueBoltHasARowHere) {
  EXPECT_EQ(catalog.bolts.size(), std::size(inch_rows) + std::size(metric_rows));
}

TEST_F(FastenersTest, InchHeadsAndNutsAreWithinTheirLimits) {
  for (const InchRow& row : inch_rows) {
    const BoltSize& b = bolt(row.name);
    EXPECT_DOUBLE_EQ(b.diameter, row.diameter * inch) << row.name;
    expect_within(b.head_flats, row.head_flats, row.name);
    expect_within(b.head_height, row.head, row.name);
    expect_within(b.nut_flats, row.nut_flats, row.name);
    expect_within(b.nut_height, row.nut, row.name);
  }
}

TEST_F(FastenersTest, InchThreadsAndLengthTolerance) {
  for (const InchRow& row : inch_rows) {
    const BoltSize& b = bolt(row.name);
    EXPECT_NEAR(b.pitch * row.threads, inch, 1e-9) << row.name;
    EXPECT_NEAR(b.thread_length, row.thread_length * inch, 1e-9) << row.name;
    EXPECT_NEAR(b.thread_length, 2 * b.diameter + inch / 4, 1e-9) << row.name;
    // ASME B18.2.1, length tolerances: `shorter` for over 1 to 2-1/2 in. To 1 in: 0.03 in of all these
    // sizes; over 2-1/2 to 4 in: 0.06 to 3/8 in, 0.08 to 1/2 in, 0.10 to 3/4 in (both from memory).
    const double longer = row.diameter < 0.4 ? 0.06 : row.diameter < 0.55 ? 0.08 : 0.10;
    const std::pair<double, double> table[] = {{0.5, 0.03},        {1, 0.03},      {1.125, row.shorter},
                                               {2.5, row.shorter}, {2.75, longer}, {4, longer}};
    for (const auto& [length, shorter] : table) {
      EXPECT_EQ(b.tolerance(length * inch).plus, 0) << row.name;
      EXPECT_NEAR(b.tolerance(length * inch).minus, shorter * inch, 1e-9) << row.name << " x " << length;
    }
    EXPECT_LE(b.lengths.back(), 4 * inch + 1e-9) << row.name;
  }
}

TEST_F(FastenersTest, InchWashers) {
  for (const InchRow& row : inch_rows) {
    const BoltSize& b = bolt(row.name);
    EXPECT_NEAR(b.flat.inside, row.flat.inside * inch, printed) << row.name;
    EXPECT_NEAR(b.flat.outside, row.flat.outside * inch, printed) << row.name;
    EXPECT_NEAR(b.flat.thickness, row.flat.thickness * inch, printed) << row.name;
    expect_within(b.flat.thickness, row.flat_thickness, row.name);
    expect_within(b.lock.inside, row.lock_inside, row.name);
    EXPECT_NEAR(b.lock.outside, row.lock_outside_most * inch, printed) << row.name;
    EXPECT_NEAR(b.lock.thickness, row.lock_thickness_least * inch, printed) << row.name;
  }
}

TEST_F(FastenersTest, InchWrenches) {
  // The larger of the head's and the nut's basic width: they differ at 7/16 in (head 5/8, nut 11/16).
  for (const InchRow& row : inch_rows)
    EXPECT_NEAR(bolt(row.name).wrench, row.wrench * inch, 1e-9) << row.name;
  EXPECT_NEAR(bolt("1/2 in").wrench, 19.05, 1e-9);
}

TEST_F(FastenersTest, HalfInchAsASupplierStatesIt) {
  // ASME B18.2.1 and B18.2.2, basic: head 5/16 high, nut 7/16 high, both 3/4 across flats.
  const BoltSize& half = bolt("1/2 in");
  EXPECT_NEAR(half.head_height, 5 * inch / 16, 1e-9);
  EXPECT_NEAR(half.nut_height, 7 * inch / 16, 1e-9);
  EXPECT_NEAR(half.head_flats, 3 * inch / 4, 1e-9);
  EXPECT_NEAR(half.nut_flats, 3 * inch / 4, 1e-9);
}

TEST_F(FastenersTest, MetricSizes) {
  for (const MetricRow& row : metric_rows) {
    const BoltSize& b = bolt(row.name);
    EXPECT_EQ(b.diameter, row.diameter) << row.name;
    EXPECT_EQ(b.pitch, row.pitch) << row.name;
    EXPECT_EQ(b.head_flats, row.flats) << row.name;
    EXPECT_EQ(b.nut_flats, row.flats) << row.name;
    EXPECT_EQ(b.wrench, row.flats) << row.name;
    EXPECT_EQ(b.head_height, row.head) << row.name;
    EXPECT_EQ(b.nut_height, row.nut_most) << row.name;
    EXPECT_GE(b.nut_height, row.nut_least) << row.name;
    EXPECT_EQ(b.thread_length, row.thread_length) << row.name;
    EXPECT_EQ(b.thread_length, 2 * row.diameter + 6) << row.name;
    EXPECT_EQ(b.flat, row.flat) << row.name;
    EXPECT_EQ(b.lock, row.lock) << row.name;
  }
}

TEST_F(FastenersTest, MetricLengthTolerance) {
  // ISO 4014 grade A lengths are js15. ISO 286-1 (from memory): +-0.50 mm over 30 to 50, +-0.60 over 50
  // to 80.
  for (const MetricRow& row : metric_rows) {
    const BoltSize& b = bolt(row.name);
    const Mm js15 = b.lengths.back() <= 50 ? 0.50 : 0.60;
    EXPECT_LE(b.lengths.back(), 80) << row.name;
    EXPECT_EQ(b.tolerance(b.lengths.back()).plus, js15) << row.name;
    EXPECT_EQ(b.tolerance(b.lengths.back()).minus, js15) << row.name;
  }
}

TEST_F(FastenersTest, HalfInchStockComesInQuarterInchSteps) {
  // Common practice, no published source.
  const std::vector<Mm>& lengths = bolt("1/2 in").lengths;
  for (double step = 1; step <= 2.5; step += 0.25)
    EXPECT_TRUE(std::any_of(lengths.begin(), lengths.end(), [&](Mm l) {
      return std::abs(l - step * inch) < 1e-9;
    })) << step;
}

}  // namespace
}  // namespace bedwright
