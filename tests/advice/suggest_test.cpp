// The search for the smallest set of changes, and writing it into an order.
#include "advice/suggest.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <sstream>

#include "advice/rewrite.h"
#include "checks/rule.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using ::testing::UnorderedElementsAre;

Finding stop(const std::string& subject) {
  Finding f;
  f.code = "EDGE";
  f.subjects = {subject};
  return f;
}

// A made-up bed with faults a to d: each change clears what it names; "x=9" brings e.
std::optional<std::vector<Finding>> made_up(const std::vector<std::string>& sets) {
  std::set<std::string> left = {"a", "b", "c", "d"};
  for (const std::string& set : sets) {
    if (set == "x=1") left.erase("a"), left.erase("b");
    if (set == "y=1") left.erase("c");
    if (set == "z=1") left.erase("d");
    if (set == "w=1") left.erase("c"), left.erase("d");
    if (set == "x=9") left = {"e"};
    if (set == "v=1") left.erase("e");
    if (set == "u=1") return std::nullopt;
  }
  std::vector<Finding> findings;
  for (const std::string& s : left) findings.push_back(stop(s));
  return findings;
}

FreeValue value(const std::string& key, const std::string& v, int cost = 1) { return {{key, v}, cost}; }

std::vector<std::string> keys(const Suggestion& s) {
  std::vector<std::string> all;
  for (const Change& c : s.changes) all.push_back(c.key + "=" + c.value);
  return all;
}

TEST(Suggest, TakesTwoChangesWhereNoSingleOneDoes) {
  const Suggestion s = suggest({value("x", "1"), value("y", "1"), value("z", "1"), value("w", "1"), value("u", "1")}, *made_up({}), made_up, made_up);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=1", "w=1"));
}

TEST(Suggest, TakesThreeWhereNoTwoDo) {
  const Suggestion s = suggest({value("x", "1"), value("y", "1"), value("z", "1")}, *made_up({}), made_up, made_up);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=1", "y=1", "z=1"));
}

TEST(Suggest, ClearsAStopThatAnotherChangeBrings) {
  const Suggestion s = suggest({value("x", "9"), value("v", "1")}, *made_up({}), made_up, made_up);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=9", "v=1"));
}

TEST(Suggest, TheLeastCostlyOfEqualSets) {
  const Suggestion s = suggest({value("x", "1"), value("w", "1", 500), value("w2", "1", 100)}, *made_up({}),
                               [](const std::vector<std::string>& sets) {
                                 std::vector<std::string> same = sets;
                                 for (std::string& t : same)
                                   if (t == "w2=1") t = "w=1";
                                 return made_up(same);
                               },
                               made_up);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=1", "w=1")) << "the exact check knows no w2, so the cheaper set fails it";
}

TEST(Suggest, SaysWhatComesNearestWhenNothingDoes) {
  const Suggestion s = suggest({value("x", "1"), value("y", "1")}, *made_up({}), made_up, made_up);
  EXPECT_THAT(s.changes, IsEmpty());
  EXPECT_THAT(s.nearest, SizeIs(2));
  EXPECT_THAT(s.left, SizeIs(1));
}

TEST(Suggest, StopsAtItsLimitOfTriesAndSaysSo) {
  std::vector<FreeValue> many;
  for (int i = 0; i < 100; ++i) many.push_back(value("k" + std::to_string(i), "1"));
  const Suggestion s = suggest(many, *made_up({}), made_up, made_up, {3, 20});
  EXPECT_EQ(s.tries, 20);
  EXPECT_TRUE(s.gave_up);
}

TEST(FreeValues, AnOrdersOwnListIsAllThereIs) {
  Job job = testing::demo_job("base");
  job.order.free = {{{"track.datum", {}}, {"middle, rear", {}}}, {{"frame.tabs.slot_length", {}}, {"1 in..1-1/8 in/1/16 in", {}}}};
  const auto free = free_values(job, 13);
  ASSERT_THAT(free, SizeIs(5));
  EXPECT_EQ(free[0].change.value, "middle");
  EXPECT_EQ(free[4].change.value, "1-1/8 in");
  EXPECT_LT(free[1].cost, free[2].cost) << "what stands first is changed first";
}

TEST(FreeValues, LeaveTheTabsOfAFrameThatExistsAlone) {
  const Job lot = testing::demo_job("lot_frame");
  for (const FreeValue& f : free_values(lot, 10)) EXPECT_FALSE(f.change.key.starts_with("frame.tabs")) << f.change.key;
}

std::string content(const std::string& path) {
  std::ifstream in(path, std::ios::binary);
  std::stringstream text;
  text << in.rdbuf();
  return text.str();
}

// The changed text as a file beside the demo orders' folders, so that its paths hold.
TEST(Rewritten, ReadsAsTheOrderWithThoseValues) {
  const std::string before = content(testing::order_path("base"));
  const auto after = rewritten(before, {{"track.clamps[2].bunk", "8"}, {"jacks[1]", "18 in"}, {"frame.tabs.slot_length", "1-1/8 in"}, {"bolts.bunk", "1-1/4 in"}});
  ASSERT_TRUE(std::holds_alternative<std::string>(after)) << std::get<Change>(after).key;
  const auto moved = moved_paths(std::get<std::string>(after), BEDWRIGHT_SOURCE "/params/orders", ::testing::TempDir());
  ASSERT_TRUE(std::holds_alternative<std::string>(moved));
  const std::string path = ::testing::TempDir() + "/rewritten.yaml";
  std::ofstream(path, std::ios::binary) << std::get<std::string>(moved);
  const auto read = load_job(path, {});
  ASSERT_TRUE(std::holds_alternative<Job>(read)) << to_line(std::get<std::vector<Problem>>(read).front());
  const Job& job = std::get<Job>(read);
  EXPECT_EQ(job.order.track.clamps[1].bunk, 8);
  EXPECT_NEAR(job.order.jacks[0], 18 * inch, 1e-9);
  EXPECT_NEAR(job.frame.tabs.slot_length, 1.125 * inch, 1e-9);
  EXPECT_NEAR(job.order.bolts.bunk.value(), 1.25 * inch, 1e-9);
}

TEST(LineDiff, IsAUnifiedDiff) {
  const std::string before = "1\n2\n3\n4\n5\n6\n7\n8\n9\n", after = "1\n2\n3\n4\nfive\n6\n7\n8\n9\n10\n";
  EXPECT_EQ(line_diff(before, after, "a", "b"), "--- a\n+++ b\n@@ -2,8 +2,9 @@\n 2\n 3\n 4\n-5\n+five\n 6\n 7\n 8\n 9\n+10\n");
  EXPECT_EQ(line_diff(before, before, "a", "b"), "");
}

}  // namespace
}  // namespace bedwright
