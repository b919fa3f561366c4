#include "params/vary.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace bedwright {
namespace {

using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::SizeIs;

std::vector<std::string> values(const std::string& text) {
  const auto parsed = parse_values(text);
  if (const auto* bad = std::get_if<VaryFault>(&parsed)) return {"fault: " + bad->what};
  return std::get<std::vector<std::string>>(parsed);
}

TEST(Values, RunsOfLengthsTakeTheUnitOfTheirEnd) {
  EXPECT_THAT(values("72..75in/1in"), ElementsAre("72 in", "73 in", "74 in", "75 in"));
  EXPECT_THAT(values("1 in..1-1/4 in/1/16 in"),
              ElementsAre("1 in", "1-1/16 in", "1-1/8 in", "1-3/16 in", "1-1/4 in"));
  EXPECT_THAT(values("1900..2000 mm / 50 mm"), ElementsAre("1900 mm", "1950 mm", "2000 mm"));
  EXPECT_THAT(values("1..2in/0.3in"), ElementsAre("1 in", "1.3 in", "1.6 in", "1.9 in"));
  EXPECT_THAT(values("20..22deg/1deg"), ElementsAre("20 deg", "21 deg", "22 deg"));
}

TEST(Values, RunsOfNumbersAndValuesOneAfterAnother) {
  EXPECT_THAT(values("0..3"), ElementsAre("0", "1", "2", "3"));
  EXPECT_THAT(values("0.5..0.7/0.1"), ElementsAre("0.5", "0.6", "0.7"));
  EXPECT_THAT(values("20in,24in"), ElementsAre("20in", "24in"));
  EXPECT_THAT(values("front, middle"), ElementsAre("front", "middle"));
  EXPECT_THAT(values("2, 5..6"), ElementsAre("2", "5", "6"));
}

TEST(Values, CommasWithinBracketsAndPathsAreLeftAlone) {
  EXPECT_THAT(values("[17 in, 223 in],[20 in, 220 in]"), ElementsAre("[17 in, 223 in]", "[20 in, 220 in]"));
  EXPECT_THAT(values("../kits/a.yaml,../kits/b.yaml"), ElementsAre("../kits/a.yaml", "../kits/b.yaml"));
}

TEST(Values, FaultsSayWhat) {
  for (const char* bad :
       {"", "1,,2", "72..96in", "5..2", "1..2in/0in", "1in..2lb/1in", "a..b", "0..100000", "1,2,1"})
    EXPECT_THAT(values(bad), ElementsAre(HasSubstr("fault"))) << bad;
}

TEST(ParseVaried, SplitsTheKey) {
  const auto parsed = parse_varied("track.clamps[1].bunk=4..7");
  ASSERT_TRUE(std::holds_alternative<Varied>(parsed));
  EXPECT_EQ(std::get<Varied>(parsed).key, "track.clamps[1].bunk");
  EXPECT_THAT(std::get<Varied>(parsed).values, SizeIs(4));
  for (const char* bad : {"track.rail_length", "=3", "a..b=3", "x="})
    EXPECT_TRUE(std::holds_alternative<VaryFault>(parse_varied(bad))) << bad;
}

}  // namespace
}  // namespace bedwright
