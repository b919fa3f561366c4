#include "units/decimal.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <bit>
#include <charconv>
#include <cstdint>
#include <string>

namespace bedwright {
namespace {

TEST(Decimal, TakesPlainFigures) {
  EXPECT_EQ(decimal("80"), 80.0);
  EXPECT_EQ(decimal("-12.5"), -12.5);
  EXPECT_EQ(decimal(".5"), 0.5);
  EXPECT_EQ(decimal("5."), 5.0);
  EXPECT_EQ(decimal("3e-4"), 3e-4);
  EXPECT_EQ(decimal("0.000"), 0.0);
  EXPECT_EQ(decimal("0e-999"), 0.0);
}

TEST(Decimal, TakesNothingElse) {
  for (const char* text : {"", "-", ".", "-.", "+1", " 1", "1 ", "1,5", "1e", "1e+", "1-2", "0x10", "nan",
                           "inf", "infinity", "-inf", "1.2.3", "--1"})
    EXPECT_EQ(decimal(text), std::nullopt) << text;
}

TEST(Decimal, TakesNoFigureBeyondADouble) {
  for (const char* text :
       {"1e400", "-1e400", "1e-400", "2e-324", "-0.1e-99999999999999999999", "1e999999999999"})
    EXPECT_EQ(decimal(text), std::nullopt) << text;
  EXPECT_EQ(decimal("4e-324"), 4.9406564584124654e-324);  // the least there is
}

// Another reader of figures, where the compiler has one.
RC_GTEST_PROP(Decimal, IsTheNearestDouble, ()) {
  const auto digits = [](int most) {
    return *rc::gen::resize(
        most, rc::gen::container<std::string>(rc::gen::inRange('0', static_cast<char>('9' + 1))));
  };
  std::string text = *rc::gen::element<std::string>("", "-") + digits(25);
  if (*rc::gen::arbitrary<bool>()) text += "." + digits(25);
  if (*rc::gen::arbitrary<bool>()) text += "e" + std::to_string(*rc::gen::inRange(-340, 320));
  double wanted = 0;
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), wanted);
  const bool whole = error == std::errc{} && end == text.data() + text.size();
  const auto read = decimal(text);
  RC_ASSERT(read.has_value() == whole);
  if (whole) RC_ASSERT(std::bit_cast<std::uint64_t>(*read) == std::bit_cast<std::uint64_t>(wanted));
  RC_CLASSIFY(whole, "a figure");
}

}  // namespace
}  // namespace bedwright
