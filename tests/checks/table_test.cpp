// The table, the figures in it, the rule book's text and the order of findings.
#include "checks/table.h"

#include <set>
#include <sstream>

#include "checks/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::Not;

TEST(Figures, SayBothUnitsOrMillimetres) {
  const Figures inches{Printing::inches, inch / 16}, metric{Printing::metric, 1};
  EXPECT_EQ(inches.say(3 * inch / 16), "3/16 in (4.8 mm)");
  EXPECT_EQ(inches.say(77.5 * inch), "6 ft 5-1/2 in (1968.5 mm)");
  EXPECT_EQ(inches.say(0.05), "0.002 in (0.1 mm)");
  EXPECT_EQ(inches.say(2.6), "about 7/64 in (2.6 mm)");
  EXPECT_EQ(inches.say(-inch / 4), "-1/4 in (-6.4 mm)");
  EXPECT_EQ(metric.say(4.76), "4.8 mm");
}

TEST(Figures, SetValuesReadBackWithinAPlace) {
  for (const Figures& figures : {Figures{Printing::inches, inch / 16}, Figures{Printing::metric, 1}}) {
    for (const Mm value : {3 * inch / 16, 31.75, 1968.5, 77.777, 0.5, -4.2, -inch / 16, 656.1667}) {
      const auto parsed = parse_quantity(Dimension::length, figures.set(value));
      ASSERT_TRUE(parsed.value.has_value()) << figures.set(value) << ": " << parsed.what;
      EXPECT_NEAR(*parsed.value, value, same_place);
    }
  }
  EXPECT_EQ((Figures{Printing::inches, inch / 16}.set(1.25 * inch)), "1-1/4 in");
}

TEST(Figures, RoundUpGoesToTheNextStepButNotPastOne) {
  const Figures inches{Printing::inches, inch / 16}, metric{Printing::metric, 1};
  EXPECT_NEAR(inches.round_up(0.99 * inch / 16), inch / 16, 1e-12);
  EXPECT_NEAR(inches.round_up(3 * inch / 16), 3 * inch / 16, 1e-12);
  EXPECT_NEAR(metric.round_up(4.01), 4.5, 1e-12);
}

TEST(Explain, EveryRuleHasItsEntryAndItsOwnCode) {
  std::set<std::string> codes;
  for (const Rule& rule : rules()) {
    codes.insert(rule.code);
    const auto text = explain(rule.code);
    ASSERT_TRUE(text.has_value());
    for (const char* field : {rule.asks, rule.formula, rule.limit, rule.source, rule.change}) {
      EXPECT_GT(std::string(field).size(), 0u);
      EXPECT_THAT(*text, HasSubstr(field));
    }
  }
  EXPECT_EQ(codes.size(), rules().size());
  EXPECT_FALSE(explain("NO-SUCH").has_value());
}

std::vector<Finding> two_findings() {
  Finding stop;
  stop.code = "TIP";
  stop.subjects = {"bunk bolt R7", "main R"};
  stop.measured = -2.38125, stop.limit = 1.5875, stop.margin = -3.96875;
  stop.unit = "mm";
  stop.message =
      "the tip of the bolt meets main R and lifts the rail by 3/32 in (2.4 mm), which is far more than it "
      "may";
  stop.remedy = "use 1/2 in x 1-1/4 in bolts";
  stop.changes = {{"bolts.bunk", "1-1/4 in"}};
  Finding warn = stop;
  warn.code = "JOINT-SUPPORT";
  warn.severity = Severity::warn;
  warn.subjects = {};
  warn.changes = {};
  return {stop, warn};
}

TEST(Table, WrapsToTheWidthAndNamesEverything) {
  for (const int width : {60, 72, 140}) {
    const std::string text = findings_table(two_findings(), {{}, width, false});
    std::istringstream lines(text);
    for (std::string line; std::getline(lines, line);)
      EXPECT_LE(line.size(), static_cast<std::size_t>(width)) << line;
    EXPECT_THAT(text, Not(HasSubstr("\x1b")));
    EXPECT_THAT(text, HasSubstr("--set 'bolts.bunk=1-1/4 in'"));
    EXPECT_THAT(text, HasSubstr("bunk bolt R7"));
    EXPECT_THAT(text, HasSubstr("1 stop, 1 warning, no notes"));
  }
}

TEST(Table, ColoursOnlyWhenAsked) {
  EXPECT_THAT(findings_table(two_findings(), {{}, 80, true}), HasSubstr("\x1b[31mstop\x1b[0m"));
}

TEST(Table, OfNothingSaysSo) { EXPECT_EQ(findings_table({}, {}), "no stops, no warnings, no notes\n"); }

TEST(RunChecks, SortsBySeverityCodeAndName) {
  SmallBed s;
  s.bed.track.joints = {5000};
  s.bed.track.total_length = 9000;
  for (const char* name : {"z", "a", "m"}) s.box(name, {0, 0, 0}, {10, 10, 10});
  const auto found = s.run();
  ASSERT_EQ(found.size(), 7u);
  EXPECT_THAT(found[0].subjects, testing::ElementsAre("a", "m"));
  EXPECT_THAT(found[1].subjects, testing::ElementsAre("z", "a"));
  EXPECT_THAT(found[2].subjects, testing::ElementsAre("z", "m"));
  EXPECT_EQ(found[3].code, "GUSSET-BOLTS");
  EXPECT_EQ(found[5].code, "JOINT-SUPPORT");
}

TEST(RunChecks, SortsNumbersInNamesAsNumbers) {
  SmallBed s;
  s.box("post", {0, 0, 0}, {10, 10, 10});
  for (const char* name : {"stop R10", "stop R9", "stop R100"}) s.box(name, {0, 0, 0}, {10, 10, 10});
  std::vector<std::string> second;
  for (const auto& [a, b] : {std::pair{1, 2}, std::pair{1, 3}, std::pair{2, 3}})
    s.bed.joined.push_back({a, b, ""});
  for (const Finding& f : s.run()) second.push_back(f.subjects.at(1));
  EXPECT_THAT(second, testing::ElementsAre("stop R9", "stop R10", "stop R100"));
}

}  // namespace
}  // namespace bedwright
