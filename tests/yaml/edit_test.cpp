#include "yaml/edit.h"

#include <gtest/gtest.h>

namespace bedwright {
namespace {

const std::string file =
    "# a bed\n"
    "track:\n"
    "  rail_length: 80 in   # one section\n"
    "  clamps:\n"
    "    - {bunk: 5}\n"
    "    - bunk: 9\n"
    "  log_stops: [4, 7, 10]\n"
    "axle: {position: \"139 in\"}  # \xC3\xBC\n"
    "jacks: [17 in, 223 in]\n";

std::string replaced(const std::string& what, const std::string& with) {
  std::string text = file;
  return text.replace(text.find(what), what.size(), with);
}

TEST(WithValue, ReplacesAScalarAndNothingElse) {
  EXPECT_EQ(with_value(file, "track.rail_length", "84 in"), replaced("80 in", "84 in"));
  EXPECT_EQ(with_value(file, "track.clamps[1].bunk", "6"), replaced("bunk: 5", "bunk: 6"));
  EXPECT_EQ(with_value(file, "track.clamps[2].bunk", "8"), replaced("bunk: 9", "bunk: 8"));
  EXPECT_EQ(with_value(file, "track.log_stops[2]", "8"), replaced("7", "8"));
  EXPECT_EQ(with_value(file, "axle.position", "140 in"), replaced("\"139 in\"", "140 in"));
  EXPECT_EQ(with_value(file, "jacks[2]", "224 in"), replaced("223 in", "224 in"));
}

TEST(WithValue, AddsAMissingKeyWhereItBelongs) {
  EXPECT_EQ(with_value(file, "track.datum", "middle"),
            replaced("  rail_length", "  datum: middle\n  rail_length"));
  EXPECT_EQ(with_value(file, "axle.fraction", "0.5"), replaced("{position", "{fraction: 0.5, position"));
  EXPECT_EQ(with_value(file, "bolts.bunk", "1-1/4 in"), file + "\nbolts:\n  bunk: 1-1/4 in\n");
}

TEST(WithValue, QuotesWhatYamlWouldReadOtherwise) {
  EXPECT_EQ(with_value("a: {b: 1}\n", "a.b", "'x, y'"), "a: {b: 'x, y'}\n");
  EXPECT_EQ(with_value("a: b", "c", "d"), "a: b\n\nc: d\n");
}

TEST(WithValue, GivesNothingRatherThanAnotherMeaning) {
  EXPECT_EQ(with_value(file, "jacks", "[1 in]"), std::nullopt) << "a list is not replaced";
  EXPECT_EQ(with_value(file, "jacks[3]", "1 in"), std::nullopt);
  EXPECT_EQ(with_value("a: &x 1\nb: *x\n", "b", "2"), std::nullopt) << "an alias";
  EXPECT_EQ(with_value("a: [1\n", "a[1]", "2"), std::nullopt) << "a broken file";
}

TEST(WithEntry, AddsTheListAnEntryOrAValue) {
  const std::string one = *with_entry(file, "overrides", "frame.tabs.slot_length", "1-1/4 in");
  EXPECT_EQ(one, file + "\noverrides:\n  - {key: frame.tabs.slot_length, value: 1-1/4 in}\n");
  const std::string two = *with_entry(one, "overrides", "frame.tabs.length", "4 in");
  EXPECT_EQ(two, file +
                     "\noverrides:\n  - {key: frame.tabs.length, value: 4 in}\n  - {key: "
                     "frame.tabs.slot_length, value: 1-1/4 in}\n");
  EXPECT_EQ(with_entry(two, "overrides", "frame.tabs.length", "5 in"),
            file +
                "\noverrides:\n  - {key: frame.tabs.length, value: 5 in}\n  - {key: frame.tabs.slot_length, "
                "value: 1-1/4 in}\n");
  EXPECT_EQ(with_entry("overrides: []\n", "overrides", "kit.a", "1"),
            "overrides: [{key: kit.a, value: 1}]\n");
  EXPECT_EQ(with_entry("overrides: [{key: kit.b, value: 2}]\n", "overrides", "kit.a", "1, 2"),
            "overrides: [{key: kit.a, value: \"1, 2\"}, {key: kit.b, value: 2}]\n");
}

}  // namespace
}  // namespace bedwright
