#include "units/print.h"

#include <gtest/gtest.h>

#include <cmath>
#include <limits>
#include <random>
#include <stdexcept>

#include "units/tape.h"

namespace bedwright {
namespace {

double read(const std::string& text) {
  const auto parsed = parse_quantity(Dimension::length, text);
  EXPECT_TRUE(parsed.value) << text << " " << parsed.what;
  return parsed.value.value_or(1e9);
}

TEST(Tape, PrintsReducedFractions) {
  EXPECT_EQ(tape(1968.5, 16), "77-1/2 in");
  EXPECT_EQ(tape(1968.5, 2), "77-1/2 in");
  EXPECT_EQ(tape(25.4, 16), "1 in");
  EXPECT_EQ(tape(4.7625, 16), "3/16 in");
  EXPECT_EQ(tape(-4.7625, 16), "-3/16 in");
  EXPECT_EQ(tape(-1968.5, 16), "-77-1/2 in");
  EXPECT_EQ(tape(0, 16), "0 in");
  EXPECT_EQ(tape(-0.01, 16), "0 in");
  EXPECT_EQ(tape(25.39, 16), "1 in");  // carries into the whole
}

TEST(FeetTape, PrintsFeetOnceThereIsOne) {
  EXPECT_EQ(feet_tape(1968.5, 16), "6 ft 5-1/2 in");
  EXPECT_EQ(feet_tape(1828.8, 16), "6 ft 0 in");
  EXPECT_EQ(feet_tape(304.79, 16), "1 ft 0 in");
  EXPECT_EQ(feet_tape(139.7, 16), "5-1/2 in");
  EXPECT_EQ(feet_tape(-1968.5, 16), "-6 ft 5-1/2 in");
  EXPECT_EQ(feet_tape(-0.001, 64), "0 in");
}

TEST(Decimals, NeverPrintMinusZero) {
  EXPECT_EQ(decimal_inch(1968.5), "77.500 in");
  EXPECT_EQ(decimal_inch(-0.001), "0.000 in");
  EXPECT_EQ(decimal_inch(-25.4), "-1.000 in");
  EXPECT_EQ(millimetres(1968.54, 1), "1968.5 mm");
  // Halves as they are read, wherever the double lies.
  EXPECT_EQ(millimetres(107.95, 1), "108.0 mm");
  EXPECT_EQ(millimetres(-107.95, 1), "-108.0 mm");
  EXPECT_EQ(millimetres(107.949, 1), "107.9 mm");
  EXPECT_EQ(millimetres(4.25 * inch, 1), "108.0 mm");
  EXPECT_EQ(millimetres(0.35, 1), "0.4 mm");
  EXPECT_EQ(decimal_inch(0.0625 * inch), "0.063 in");
  EXPECT_EQ(millimetres(-0.4, 0), "0 mm");
  EXPECT_EQ(millimetres(-0.04, 1), "0.0 mm");
  EXPECT_EQ(plain_figure(-0.00001), "0");
  EXPECT_EQ(plain_figure(100), "100");
  EXPECT_EQ(plain_figure(304.8), "304.8");
}

TEST(OnTape, RoundsToTheMark) {
  EXPECT_DOUBLE_EQ(on_tape(26, inch / 16), 25.4);
  EXPECT_DOUBLE_EQ(on_tape(-26, inch / 16), -25.4);
  EXPECT_DOUBLE_EQ(on_tape(1968.4, 1), 1968);
  EXPECT_FALSE(std::signbit(on_tape(-0.1, 1)));
  EXPECT_THROW(on_tape(1, 0), std::invalid_argument);
}

TEST(Print, RefusesWhatIsNoFigure) {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  EXPECT_THROW(tape(nan, 16), std::invalid_argument);
  EXPECT_THROW(tape(1, 0), std::invalid_argument);
  EXPECT_THROW(tape(1e300, 16), std::invalid_argument);
  EXPECT_THROW(millimetres(nan, 2), std::invalid_argument);
  EXPECT_THROW(decimal_inch(std::numeric_limits<double>::infinity()), std::invalid_argument);
}

TEST(BothUnits, NamesTheUnits) {
  EXPECT_EQ(both_units(Dimension::length, 304.8), "304.8 mm (12 in)");
  EXPECT_EQ(both_units(Dimension::mass, pound), "0.4536 kg (1 lb)");
  EXPECT_EQ(both_units(Dimension::stress, ksi * 36), "248.2113 MPa (36 ksi)");
  EXPECT_EQ(both_units(Dimension::angle, degree * 25), "25 deg");
}

// What is printed reads back as what was printed, over the sizes a bed has.
TEST(Print, ReadsBack) {
  std::mt19937_64 random(42);
  std::uniform_real_distribution<double> lengths(-25000, 25000), small(-50, 50);
  for (int i = 0; i < 20000; ++i) {
    const double length = i % 2 ? lengths(random) : small(random);
    for (const int denominator : {1, 2, 16, 32, 64, 10}) {
      const double marked = on_tape(length, inch / denominator);
      EXPECT_NEAR(read(tape(length, denominator)), marked, 1e-9) << length;
      EXPECT_NEAR(read(feet_tape(length, denominator)), marked, 1e-9) << length;
      EXPECT_EQ(tape(read(tape(length, denominator)), denominator), tape(length, denominator));
    }
    EXPECT_NEAR(read(decimal_inch(length)), length, 0.0005 * inch + 1e-9);
    EXPECT_NEAR(read(millimetres(length, 3)), length, 0.0005 + 1e-9);
    EXPECT_NEAR(read(as_written(Dimension::length, length)), length, 0.00005 + 1e-9);
  }
}

}  // namespace
}  // namespace bedwright
