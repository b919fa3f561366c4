#if defined(__GNUC__) && !defined(__clang__)
// GCC 12 sees an uninitialised member inside std::regex when the sanitizers are on.
#pragma GCC diagnostic ignored "-Wmaybe-uninitialized"
#endif

#include "units/parse.h"

#include <gtest/gtest.h>

#include <random>
#include <regex>

#include "units/print.h"

namespace bedwright {
namespace {

double value(Dimension dimension, const std::string& text) {
  const auto parsed = parse_quantity(dimension, text);
  EXPECT_TRUE(parsed.value) << text << " " << parsed.what;
  return parsed.value.value_or(-12345);
}
double mm(const std::string& text) { return value(Dimension::length, text); }

std::string fault(Dimension dimension, const std::string& text) {
  const auto parsed = parse_quantity(dimension, text);
  EXPECT_FALSE(parsed.value) << text << " read as " << parsed.value.value_or(0);
  EXPECT_NE(parsed.would_do, "") << text;
  return parsed.what;
}
std::string length_fault(const std::string& text) { return fault(Dimension::length, text); }

// Figures on the right follow from 1 in = 25.4 mm and 1 lb = 0.45359237 kg,
// exact by the international yard and pound agreement of 1959.
TEST(ParseLength, TakesWhatATradesmanWrites) {
  EXPECT_DOUBLE_EQ(mm("6 ft 5-1/2 in"), 1968.5);
  EXPECT_DOUBLE_EQ(mm("77 1/2\""), 1968.5);
  EXPECT_DOUBLE_EQ(mm("77-1/2 in"), 1968.5);
  EXPECT_DOUBLE_EQ(mm("1968.5 mm"), 1968.5);
  EXPECT_DOUBLE_EQ(mm("0.25in"), 6.35);
  EXPECT_DOUBLE_EQ(mm(".25 in"), 6.35);
  EXPECT_DOUBLE_EQ(mm("2.4 m"), 2400);
  EXPECT_DOUBLE_EQ(mm("3 cm"), 30);
  EXPECT_DOUBLE_EQ(mm("5' 3\""), 1600.2);
  EXPECT_DOUBLE_EQ(mm("5'3\""), 1600.2);
  EXPECT_DOUBLE_EQ(mm("5'-3\""), 1600.2);
  EXPECT_DOUBLE_EQ(mm("-3/16 in"), -4.7625);
  EXPECT_DOUBLE_EQ(mm("-1 ft 6 in"), -457.2);
  EXPECT_DOUBLE_EQ(mm("6-1/2 ft"), 1981.2);
  EXPECT_DOUBLE_EQ(mm("  84\tin "), 2133.6);
  EXPECT_DOUBLE_EQ(mm("999999999 mm"), 999999999);
  EXPECT_FALSE(std::signbit(mm("-0 in")));
}

TEST(ParseMassStressAngle, TakesTheirUnits) {
  EXPECT_DOUBLE_EQ(value(Dimension::mass, "850 lb"), 850 * 0.45359237);
  EXPECT_DOUBLE_EQ(value(Dimension::mass, "386 kg"), 386);
  EXPECT_DOUBLE_EQ(value(Dimension::mass, "16 oz"), 0.45359237);
  EXPECT_DOUBLE_EQ(value(Dimension::mass, "250 g"), 0.25);
  EXPECT_DOUBLE_EQ(value(Dimension::mass, "2-1/2 lb"), 2.5 * 0.45359237);
  EXPECT_DOUBLE_EQ(value(Dimension::stress, "250 MPa"), 250);
  // NIST SP 811, appendix B: 1 ksi = 6.894757 MPa, given to seven figures, so good to 5e-7 each.
  EXPECT_NEAR(value(Dimension::stress, "36 ksi"), 36 * 6.894757, 36 * 5e-7);
  EXPECT_NEAR(value(Dimension::stress, "1000 psi"), 6.894757, 1e-6);
  EXPECT_DOUBLE_EQ(value(Dimension::angle, "180 deg"), std::numbers::pi);
  EXPECT_DOUBLE_EQ(value(Dimension::angle, "90°"), std::numbers::pi / 2);
  EXPECT_DOUBLE_EQ(value(Dimension::angle, "0.4 rad"), 0.4);
}

TEST(ParseLength, SaysWhatIsWrong) {
  EXPECT_EQ(length_fault("84"), "has no unit");
  EXPECT_NE(parse_quantity(Dimension::length, "84").would_do.find("add a unit"), std::string::npos);
  EXPECT_EQ(length_fault("5 ft 3"), "has no unit behind 3");
  EXPECT_EQ(length_fault("5 in 3 ft"), "has inches before feet");
  EXPECT_EQ(length_fault("5 in 3 in"), "gives in twice");
  EXPECT_EQ(length_fault("5 ft 3 ft"), "gives ft twice");
  EXPECT_EQ(length_fault("6 ft 200 mm"), "mixes ft and mm");
  EXPECT_EQ(length_fault("2 m 30 cm"), "has both m and cm");
  EXPECT_EQ(length_fault("2.5 ft 3 in"), "has inches behind 2.5 feet");
  EXPECT_EQ(length_fault("6 ft 65 in"), "has 65 inches behind feet");
  EXPECT_EQ(length_fault("3/0 in"), "divides by zero in 3/0");
  EXPECT_EQ(length_fault("1-3/0 in"), "divides by zero in 3/0");
  EXPECT_EQ(length_fault("77-3/2 in"), "has a whole with 3/2, which is not less than one");
  EXPECT_EQ(length_fault("1/2 mm"), "has a fraction of mm");
  EXPECT_EQ(length_fault("1,5 in"), "has a comma in it");
  EXPECT_EQ(length_fault(""), "is empty");
  EXPECT_EQ(length_fault("-"), "has no number");
  EXPECT_EQ(length_fault("5 parsecs"), "has the unit \"parsecs\", which is none of ft, in, mm, cm or m");
  EXPECT_EQ(length_fault("1 ft 2 in 3 in"), "has more than two figures");
  EXPECT_EQ(length_fault("1234567890 mm"), "has a number with too many digits");
}

TEST(ParseQuantity, SaysWhichUnitIsMeantByAnotherWordForIt) {
  const auto told = [](Dimension dimension, const std::string& text) {
    EXPECT_NE(fault(dimension, text), "");
    const std::string would_do = parse_quantity(dimension, text).would_do;
    return would_do.substr(0, would_do.find(':'));
  };
  EXPECT_EQ(told(Dimension::length, "80 inch"), "write in for inch");
  EXPECT_EQ(told(Dimension::length, "80 inches"), "write in for inches");
  EXPECT_EQ(told(Dimension::length, "80 feet"), "write ft for feet");
  EXPECT_EQ(told(Dimension::length, "6 Foot 8 in"), "write ft for Foot");
  EXPECT_EQ(told(Dimension::length, "6 ft 8 inches"), "write in for inches");
  EXPECT_EQ(told(Dimension::length, "2032 MM"), "write mm for MM");
  EXPECT_EQ(told(Dimension::mass, "850 lbs"), "write lb for lbs");
  EXPECT_EQ(told(Dimension::stress, "36 KSI"), "write ksi for KSI");
  EXPECT_EQ(told(Dimension::angle, "25 degrees"), "write deg for degrees");
  // No hint across dimensions, nor for what is no unit at all.
  EXPECT_EQ(told(Dimension::length, "5 pounds"), "lengths are written as 80 in, 6 ft 8 in or 2032 mm");
  EXPECT_EQ(told(Dimension::length, "5 parsecs"), "lengths are written as 80 in, 6 ft 8 in or 2032 mm");
}

TEST(ParseLength, RefusesEveryOtherNotation) {
  for (const char* text :
       {"nan",    "inf",        "nan in",  "inf mm",     "-inf in",  "0x10 in",  "1e3 mm", "1e999 in",
        "+5 in",  "--5 in",     "5..2 in", "5. in",      "5.2.1 in", "in",       "in 5",   "5 in)",
        "5-3 in", "1/ in",      "/2 in",   "5 - 1/2 in", "5 MM",     "5 In",     "½ in",   "5 in\n",
        "5 in 3", "5 ft -3 in", "- 5 in",  "1_000 mm",   "1/2/3 in", "1.5/2 in", "5 kg",   "1-1/2-1/4 in"}) {
    EXPECT_NE(length_fault(text), "") << text;
  }
  EXPECT_NE(fault(Dimension::mass, "3 lb 4 oz"), "");
  EXPECT_NE(fault(Dimension::mass, "1/2 kg"), "");
  EXPECT_NE(fault(Dimension::angle, "1/2 deg"), "");
  EXPECT_NE(fault(Dimension::stress, "36 KSI"), "");
}

// Random texts from the alphabet of quantities, likely to be nearly right.
std::string random_text(std::mt19937_64& random) {
  static const char* const pieces[] = {"0",   "1",    "7",   "11", "12",  "84", "00", ".",  ".5",
                                       "1/2", "3/16", "5/0", "-",  " ",   "  ", "ft", "in", "'",
                                       "\"",  "mm",   "cm",  "m",  "lb",  "oz", "kg", "g",  "ksi",
                                       "psi", "MPa",  "deg", "°",  "rad", "/",  "e",  ","};
  std::string text;
  const auto count = 1 + random() % 7;
  for (std::size_t i = 0; i < count; ++i) text += pieces[random() % std::size(pieces)];
  return text;
}

// The expression may take what it cannot weigh, never less than the parser.
bool beyond_expressions(const std::string& what) {
  return what.find("not less than one") != std::string::npos ||
         what.find("inches behind feet") != std::string::npos;
}

TEST(QuantityPattern, TakesWhatTheParserTakes) {
  constexpr Dimension dimensions[] = {Dimension::length, Dimension::mass, Dimension::stress,
                                      Dimension::angle};
  std::mt19937_64 random(20240501);
  for (const Dimension dimension : dimensions) {
    const std::regex pattern(quantity_pattern(dimension));
    int taken = 0;
    for (int i = 0; i < 40000; ++i) {
      const std::string text = random_text(random);
      const auto parsed = parse_quantity(dimension, text);
      const bool matched = std::regex_search(text, pattern);
      if (parsed.value) ++taken;
      if (parsed.value.has_value() != matched) {
        EXPECT_TRUE(matched && beyond_expressions(parsed.what)) << '"' << text << "\" " << parsed.what;
      }
    }
    EXPECT_GT(taken, 20) << "the random texts must reach both sides";
  }
}

TEST(ParseQuantity, NoTextCrashesOrHasNoMessage) {
  std::mt19937_64 random(7);
  for (int i = 0; i < 50000; ++i) {
    std::string text(random() % 24, '\0');
    for (char& c : text) c = static_cast<char>(random());
    const auto parsed = parse_quantity(static_cast<Dimension>(random() % 4), text);
    ASSERT_NE(parsed.value.has_value(), !parsed.what.empty());
  }
}

}  // namespace
}  // namespace bedwright
