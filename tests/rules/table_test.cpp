// The table, what it reads as one and the order of findings.
#include "rules/table.h"

#include <sstream>

#include "rules/scene.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::Not;

std::vector<Finding> two_findings() {
  Finding stop;
  stop.code = "TIP";
  stop.subjects = {Identity{Kind::bunk_bolt, Side::right, 7}, main_r};
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

// --- what is read as one ---------------------------------------------------------

Finding about(std::vector<Subject> subjects, const std::string& remedy = "use longer ones") {
  Finding f;
  f.code = "BOLT-SHORT";
  f.subjects = std::move(subjects);
  f.measured = 1, f.limit = 2, f.margin = -1;
  f.unit = "threads";
  f.message = "it is short";
  f.remedy = remedy;
  return f;
}

// The lines that say where else a finding holds.
std::vector<std::string> others(const std::vector<Finding>& findings) {
  std::vector<std::string> all;
  std::istringstream lines(findings_table(findings, {{}, 200, false}));
  for (std::string line; std::getline(lines, line);)
    if (const auto at = line.find("The same at"); at != std::string::npos) all.push_back(line.substr(at));
  return all;
}

Identity clamp(int number, int bunk, Pose pose) {
  return {Kind::clamp, Side::middle, number, 0, End::none, bunk, pose};
}

TEST(Alike, OfOneKindAreOneAndTheOthersAreMarked) {
  const auto bolt = [](Side side, int number) { return Identity{Kind::bunk_bolt, side, number}; };
  EXPECT_THAT(
      others({about({bolt(Side::left, 1)}), about({bolt(Side::left, 2)}), about({bolt(Side::right, 12)})}),
      testing::ElementsAre("The same at 2 more: bunk bolt L2, R12."));
  EXPECT_THAT(others({about({Identity{Kind::jack_bolt, Side::left, 1, 1}}),
                      about({Identity{Kind::jack_bolt, Side::left, 1, 4}})}),
              testing::ElementsAre("The same at 1 more: jack bolt L1.4."));
  EXPECT_THAT(others({about({clamp(1, 5, Pose::in_outer)}), about({clamp(2, 9, Pose::out_inner)})}),
              testing::ElementsAre("The same at 1 more: clamp 2 on bunk 9, leaning out, inner end."));
}

TEST(Alike, AnotherKindAnotherEndOrAnotherSecondThingIsNot) {
  EXPECT_THAT(others({about({bunk_bolt_r1}), about({track_bolt_r1})}), testing::IsEmpty());
  EXPECT_THAT(others({about({Identity{Kind::track_stop, Side::left, 0, 0, End::front}}),
                      about({Identity{Kind::track_stop, Side::left, 0, 0, End::rear}})}),
              testing::IsEmpty());
  EXPECT_THAT(others({about({Identity{Kind::track_stop, Side::left, 0, 0, End::front}}),
                      about({Identity{Kind::track_stop, Side::right, 0, 0, End::front}})}),
              testing::ElementsAre("The same at 1 more: track stop front R."));
  EXPECT_THAT(others({about({bunk_bolt_r1, main_r}), about({bunk_bolt_r1, rail_r1})}), testing::IsEmpty());
  EXPECT_THAT(others({about({bunk_bolt_r1, main_r}), about({bunk_bolt_r1})}), testing::IsEmpty());
}

TEST(Alike, TheOnlyOneOfItsKindIsLikeItselfAlone) {
  const auto head = [](Pose pose) { return Identity{Kind::head, Side::middle, 0, 0, End::none, 0, pose}; };
  EXPECT_THAT(others({about({head(Pose::locked)}), about({head(Pose::running)})}), testing::IsEmpty());
  EXPECT_THAT(others({about({head(Pose::running)}), about({head(Pose::running)})}),
              testing::ElementsAre("The same at 1 more: head running."));
}

TEST(Alike, WhatIsSpokenOfInWordsOfItsOwnIsLikeItselfAlone) {
  const auto load = [](int number, const char* text) {
    return Subject({Kind::tongue_load, Side::middle, number}, text);
  };
  EXPECT_THAT(others({about({load(1, "tongue load, empty")}), about({load(2, "tongue load, loaded")})}),
              testing::IsEmpty());
}

TEST(Alike, APartIsCalledAsThePartIs) {
  const Part plate{{Kind::tab}, "A36", Origin::made, Plate{}};
  EXPECT_THAT(others({about({plate}), about({plate})}),
              testing::ElementsAre("The same at 1 more: tab plate."));
  const Part left{{Kind::main, Side::left}, "A36", Origin::made, Member{}},
      right{main_r, "A36", Origin::made, Member{}};
  EXPECT_THAT(others({about({left}), about({right})}), testing::ElementsAre("The same at 1 more: main R."));
}

TEST(Alike, TheWayOutIsTheSameButForTheNamesInIt) {
  const auto moved = [](const Identity& tab, const char* way) {
    Finding f = about({bunk_bolt_r1, tab}, "move ");
    add_name(f, tab);
    f.remedy += way;
    return f;
  };
  const Identity tab_r12{Kind::tab, Side::right, 12};
  EXPECT_EQ(moved(tab_r12, " 1/8 in rearward").remedy, "move tab R12 1/8 in rearward");
  EXPECT_THAT(others({moved(tab_r1, " 1/8 in rearward"), moved(tab_r12, " 1/8 in rearward")}),
              testing::SizeIs(1));
  EXPECT_THAT(others({moved(tab_r1, " 1/8 in rearward"), moved(tab_r12, " 1/8 in forward")}),
              testing::IsEmpty());
  // A thing that no finding is about is part of the way out.
  const auto beside = [](int number) {
    Finding f = about({bunk_bolt_r1}, "move ");
    add_name(f, some(number));
    return f;
  };
  EXPECT_THAT(others({beside(1), beside(2)}), testing::IsEmpty());
}

// --- in order ----------------------------------------------------------------------

TEST(RunChecks, SortsBySeverityCodeAndIdentity) {
  SmallBed s;
  s.bed.track.joints = {5000};
  s.bed.track.total_length = 9000;
  for (const int number : {3, 1, 2}) s.box(some(number), {0, 0, 0}, {10, 10, 10});
  const auto found = s.run();
  ASSERT_EQ(found.size(), 7u);
  EXPECT_THAT(about(found[0]), testing::ElementsAre(some(1), some(2)));
  EXPECT_THAT(about(found[1]), testing::ElementsAre(some(3), some(1)));
  EXPECT_THAT(about(found[2]), testing::ElementsAre(some(3), some(2)));
  EXPECT_EQ(found[3].code, "GUSSET-BOLTS");
  EXPECT_EQ(found[5].code, "JOINT-SUPPORT");
}

TEST(RunChecks, SortsNinthBeforeTenthAndLeftBeforeRight) {
  const auto jack = [](Side side, int number) { return Identity{Kind::jack, side, number}; };
  SmallBed s;
  s.box(some(1), {0, 0, 0}, {10, 10, 10});
  for (const Identity& id : {jack(Side::right, 10), jack(Side::right, 9), jack(Side::left, 100)})
    s.box(id, {0, 0, 0}, {10, 10, 10});
  std::vector<Identity> second;
  for (const auto& [a, b] : {std::pair{1, 2}, std::pair{1, 3}, std::pair{2, 3}})
    s.bed.joined.push_back({a, b, ""});
  for (const Finding& f : s.run()) second.push_back(f.subjects.at(1).id);
  EXPECT_THAT(second,
              testing::ElementsAre(jack(Side::left, 100), jack(Side::right, 9), jack(Side::right, 10)));
}

}  // namespace
}  // namespace bedwright
