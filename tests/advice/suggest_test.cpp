// The search for the smallest set of changes, and writing it into an order.
#include "advice/suggest.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <map>
#include <sstream>

#include "advice/rewrite.h"
#include "rules/rule.h"
#include "support/demo.h"
#include "support/made_up.h"

namespace bedwright {
namespace {

using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;
using ::testing::UnorderedElementsAre;

Finding stop(const std::string& subject) {
  Finding f;
  f.code = "EDGE";
  f.subjects = {testing::made_up_thing(subject)};
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
  const Suggestion s =
      suggest({value("x", "1"), value("y", "1"), value("z", "1"), value("w", "1"), value("u", "1")},
              *made_up({}), made_up, made_up);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=1", "w=1"));
}

TEST(Suggest, TakesThreeWhereNoTwoDo) {
  const Suggestion s =
      suggest({value("x", "1"), value("y", "1"), value("z", "1")}, *made_up({}), made_up, made_up);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=1", "y=1", "z=1"));
}

TEST(Suggest, NeverAWholeListAndOneOfItsEntries) {
  const auto told = [](const std::vector<std::string>& sets) -> std::optional<std::vector<Finding>> {
    std::vector<Finding> left;
    if (std::find(sets.begin(), sets.end(), "jacks=[1, 2]") == sets.end()) left.push_back(stop("a"));
    if (std::find(sets.begin(), sets.end(), "jacks[2]=3") == sets.end()) left.push_back(stop("b"));
    return left;
  };
  EXPECT_THAT(keys(suggest({value("jacks", "[1, 2]"), value("jacks[2]", "3")}, *told({}), told, told)),
              IsEmpty());
}

TEST(Suggest, ClearsAStopThatAnotherChangeBrings) {
  const Suggestion s = suggest({value("x", "9"), value("v", "1")}, *made_up({}), made_up, made_up);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=9", "v=1"));
}

// Left and right, and what the clamp meets, as the clash rule names them.
Finding between(const std::string& code, const std::vector<std::string>& subjects,
                Severity severity = Severity::stop) {
  Finding f;
  f.code = code;
  for (const std::string& s : subjects) f.subjects.push_back(testing::made_up_thing(s));
  f.severity = severity;
  return f;
}

TEST(Suggest, TheLeastCostlyOfEqualSets) {
  const auto known = [](const std::vector<std::string>& sets) {
    std::vector<std::string> same = sets;
    for (std::string& t : same)
      if (t == "w2=1") t = "w=1";
    return made_up(same);
  };
  const Suggestion s =
      suggest({value("x", "1"), value("w", "1", 500), value("w2", "1", 100)}, *made_up({}), known, known);
  EXPECT_THAT(keys(s), UnorderedElementsAre("x=1", "w2=1"));
}

TEST(Suggest, NotesAndWarningsDoNotMakeAFartherChangeTheLeastCostly) {
  const auto told = [](const std::vector<std::string>& sets) -> std::optional<std::vector<Finding>> {
    if (sets.front() == "near=1")
      return std::vector{between("BOLT-KINDS", {"bolts"}, Severity::note),
                         between("REACH", {"nut"}, Severity::warn)};
    return std::vector<Finding>{};
  };
  EXPECT_THAT(keys(suggest({value("far", "1", 9), value("near", "1", 3)}, {stop("a")}, told, told)),
              UnorderedElementsAre("near=1"));
}

TEST(Suggest, OfEquallyCostlyChangesTheOneWithFewerWarningsWhateverTheNotes) {
  const auto told = [](const std::vector<std::string>& sets) -> std::optional<std::vector<Finding>> {
    if (sets.front() == "a=1") return std::vector{between("REACH", {"nut"}, Severity::warn)};
    return std::vector<Finding>(5, between("BOLT-KINDS", {"bolts"}, Severity::note));
  };
  EXPECT_THAT(keys(suggest({value("a", "1"), value("b", "1")}, {stop("a")}, told, told)),
              UnorderedElementsAre("b=1"));
}

// A clash that only the kernel sees and only one value of many clears, not the nearest.
TEST(Suggest, AsksTheKernelOfEveryValueThatLooksClear) {
  std::vector<FreeValue> places;
  for (int i = 0; i < 200; ++i) places.push_back(value("jacks[2]", std::to_string(i), i));
  const Retry cheap = [](const auto&) { return std::vector<Finding>{}; };
  const Retry exact = [](const std::vector<std::string>& sets) {
    return sets == std::vector<std::string>{"jacks[2]=150"}
               ? std::vector<Finding>{}
               : std::vector{between("CLASH", {"tab L6", "jack plate L2"})};
  };
  EXPECT_THAT(keys(suggest(places, *exact({}), cheap, exact)), UnorderedElementsAre("jacks[2]=150"));
}

// Beside a fault anyone sees, so that it takes two changes.
TEST(Suggest, PairsWhatClearsAStopThatOnlyTheKernelSees) {
  std::vector<FreeValue> free = {value("bolt", "1")};
  for (int i = 0; i < 50; ++i) free.push_back(value("jacks[2]", std::to_string(i), i));
  const auto has = [](const std::vector<std::string>& sets, const char* set) {
    return std::find(sets.begin(), sets.end(), set) != sets.end();
  };
  const Retry cheap = [&](const std::vector<std::string>& sets) {
    return has(sets, "bolt=1") ? std::vector<Finding>{} : std::vector{stop("bolt")};
  };
  const Retry exact = [&](const std::vector<std::string>& sets) {
    auto left = *cheap(sets);
    if (!has(sets, "jacks[2]=33")) left.push_back(between("CLASH", {"tab L6", "jack plate L2"}));
    return left;
  };
  EXPECT_THAT(keys(suggest(free, *exact({}), cheap, exact)), UnorderedElementsAre("bolt=1", "jacks[2]=33"));
}

TEST(Suggest, TriesTogetherWhatOneFindingsRuleProposes) {
  const auto told = [](const std::vector<std::string>& sets) {
    const std::set<std::string> all(sets.begin(), sets.end());
    return all.contains("length=2") && all.contains("slot=3") ? std::vector<Finding>{}
                                                              : std::vector{stop("tab")};
  };
  std::vector<FreeValue> apart = {value("length", "2"), value("slot", "3"), value("other", "1")},
                         together = apart;
  together[0].proposed_by = together[1].proposed_by = {1};
  EXPECT_THAT(keys(suggest(apart, {stop("tab")}, told, told)), IsEmpty()) << "neither does anything alone";
  EXPECT_THAT(keys(suggest(together, {stop("tab")}, told, told)), UnorderedElementsAre("length=2", "slot=3"));
}

// Six mistakes that know nothing of each other.
std::optional<std::vector<Finding>> many_mistakes(const std::vector<std::string>& sets, int count) {
  std::vector<Finding> left;
  for (int i = 0; i < count; ++i)
    if (std::find(sets.begin(), sets.end(), "k" + std::to_string(i) + "=1") == sets.end())
      left.push_back(stop(std::to_string(i)));
  return left;
}

TEST(Suggest, AddsUpToSixOneByOneWhereThreeAreTooFew) {
  std::vector<FreeValue> free;
  for (int i = 0; i < 7; ++i) free.push_back(value("k" + std::to_string(i), "1"));
  SearchSettings adding;
  adding.most_added = 6;
  const auto five = [](const std::vector<std::string>& sets) { return many_mistakes(sets, 5); };
  const Suggestion s = suggest(free, *five({}), five, five, adding);
  EXPECT_THAT(keys(s), UnorderedElementsAre("k0=1", "k1=1", "k2=1", "k3=1", "k4=1"));
  EXPECT_TRUE(s.fewer_might_do);
  const auto seven = [](const std::vector<std::string>& sets) { return many_mistakes(sets, 7); };
  const Suggestion none = suggest(free, *seven({}), seven, seven, adding);
  EXPECT_THAT(none.changes, IsEmpty());
  EXPECT_THAT(none.nearest, SizeIs(6));
  EXPECT_THAT(none.left, SizeIs(1));
}

TEST(Suggest, LeavesOutWhatLaterOnesMadeNeedless) {
  // p does most at first, but what q and r must be there for does it as well.
  const std::map<std::string, std::set<std::string>> clears = {{"p=1", {"1", "2", "3", "4"}},
                                                               {"q=1", {"1", "2", "5"}},
                                                               {"r=1", {"3", "4", "6"}},
                                                               {"s=1", {"7", "8", "9"}},
                                                               {"t=1", {"10", "11", "12"}}};
  const auto told = [&](const std::vector<std::string>& sets) -> std::optional<std::vector<Finding>> {
    std::set<std::string> left = {"1", "2", "3", "4", "5", "6", "7", "8", "9", "10", "11", "12"};
    for (const std::string& set : sets)
      for (const std::string& s : clears.at(set)) left.erase(s);
    std::vector<Finding> findings;
    for (const std::string& s : left) findings.push_back(stop(s));
    return findings;
  };
  SearchSettings adding;
  adding.most_added = 6;
  const Suggestion s =
      suggest({value("p", "1"), value("q", "1"), value("r", "1"), value("s", "1"), value("t", "1")},
              *told({}), told, told, adding);
  EXPECT_THAT(keys(s), UnorderedElementsAre("q=1", "r=1", "s=1", "t=1"));
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
  job.order.free = {{{"track.datum", {}}, {"middle, rear", {}}},
                    {{"frame.tabs.slot_length", {}}, {"1 in..1-1/8 in/1/16 in", {}}}};
  const auto free = free_values(job, 13);
  ASSERT_THAT(free, SizeIs(5));
  EXPECT_EQ(free[0].change.value, "middle");
  EXPECT_EQ(free[4].change.value, "1-1/8 in");
  EXPECT_LT(free[1].cost, free[2].cost) << "what stands first is changed first";
}

std::map<std::string, int> costs_of(const std::vector<FreeValue>& free, const std::string& key) {
  std::map<std::string, int> all;
  for (const FreeValue& f : free)
    if (f.change.key == key && (!all.contains(f.change.value) || f.cost < all[f.change.value]))
      all[f.change.value] = f.cost;
  return all;
}

TEST(FreeValues, WhatARulePutsFirstCostsLessThanTheUsualSteps) {
  Finding share = stop("tongue load");
  share.changes = {{"axle.position", "97 in"}, {"axle.position", "101 in"}};
  const auto costs = costs_of(free_values(testing::demo_job("base"), 13, {share}), "axle.position");
  for (const auto& [value, cost] : costs) {
    if (value == "97 in") continue;
    EXPECT_LT(costs.at("97 in"), cost) << value;
  }
}

TEST(FreeValues, NeverWhatWasOrderedOrMeasuredUnlessTheOrderSaysSo) {
  Finding f = stop("mains");
  f.changes = {{"work.log.diameter", "18 in"}, {"tabs_found[1].x", "0 in"}, {"frame.main.section", "C7x9.8"}};
  Job job = testing::demo_job("base");
  for (const auto& free : {free_values(job, 13, {f}), free_values(job, 13, {}, {f})}) {
    EXPECT_THAT(costs_of(free, "work.log.diameter"), IsEmpty());
    EXPECT_THAT(costs_of(free, "tabs_found[1].x"), IsEmpty());
    EXPECT_THAT(costs_of(free, "frame.main.section"), SizeIs(1));
  }
  job.order.free = {{{"work.log.diameter", {}}, {"18 in", {}}}};
  const auto named = free_values(job, 13, {f}, {f});
  ASSERT_THAT(named, SizeIs(1));
  EXPECT_EQ(named[0].change.key, "work.log.diameter");
  EXPECT_FALSE(ordered_or_measured("workshop"));
}

TEST(FreeValues, AreNearestFirstFromWhatTheOrderHas) {
  const Job job = testing::demo_job("base", {"bolts.track=2 in", "frame.tabs.plate.pad_thickness=1/2 in"});
  const auto free = free_values(job, 13);
  const auto order_of = [&](const std::string& key) {
    std::vector<std::string> all;
    for (const FreeValue& f : free)
      if (f.change.key == key) all.push_back(f.change.value);
    return all;
  };
  const auto bolts = order_of("bolts.track"), pads = order_of("frame.tabs.plate.pad_thickness");
  ASSERT_GT(bolts.size(), 2u);
  EXPECT_THAT((std::vector{bolts[0], bolts[1]}), UnorderedElementsAre("1-3/4 in", "2-1/4 in"));
  ASSERT_GT(pads.size(), 2u);
  EXPECT_THAT((std::vector{pads[0], pads[1]}), UnorderedElementsAre("3/8 in", "5/8 in"));
  EXPECT_EQ(pads.back(), "1 in");
}

// Of a frame that stands only the work on what stands.
TEST(FreeValues, LeaveAFrameThatStandsAsItIs) {
  const Job lot = testing::demo_job("lot_frame");
  Finding found = stop("tab");
  found.changes = {{"frame.tabs.plate.pad_thickness", "1 in"},
                   {"frame.main.section", "C7x9.8"},
                   {"frame.tabs.to_cut_off", "[21 in]"}};
  EXPECT_THAT(costs_of(free_values(lot, 10, {found}), "frame.tabs.to_cut_off"), SizeIs(1));
  for (const FreeValue& f : free_values(lot, 10, {found}, {found}))
    EXPECT_TRUE(!f.change.key.starts_with("frame.") || f.change.key.starts_with("frame.tabs.to_"))
        << f.change.key;
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
  const auto after = rewritten(before, {{"track.clamps[2].bunk", "8"},
                                        {"jacks[1]", "18 in"},
                                        {"frame.tabs.slot_length", "1-1/8 in"},
                                        {"bolts.bunk", "1-1/4 in"}});
  ASSERT_TRUE(std::holds_alternative<std::string>(after)) << std::get<Change>(after).key;
  const auto moved =
      moved_paths(std::get<std::string>(after), BEDWRIGHT_SOURCE "/params/orders", ::testing::TempDir());
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

// An order named without a folder lies in the current one.
TEST(MovedPaths, StayWhereTheOrderStaysInTheCurrentFolder) {
  const std::string order = "order:\n  number: A\nkit: ../kits/k.yaml\n";
  EXPECT_EQ(std::get<std::string>(moved_paths(order, "", "")), order);
  EXPECT_EQ(std::get<std::string>(moved_paths(order, "", ".")), order);
  EXPECT_THAT(std::get<std::string>(moved_paths(order, "", "orders")), HasSubstr("kit: ../../kits/k.yaml"));
}

TEST(MovedPaths, TakeTheShopsOwnAssemblyWordsAlong) {
  const auto moved = moved_paths("order:\n  number: A\n  assembly_template: ours\nkit: ../kits/k.yaml\n",
                                 "/shop/orders", "/shop/tried/new");
  ASSERT_TRUE(std::holds_alternative<std::string>(moved));
  EXPECT_THAT(std::get<std::string>(moved), HasSubstr("assembly_template: ../../orders/ours\n"));
  EXPECT_THAT(std::get<std::string>(moved), HasSubstr("kit: ../../kits/k.yaml\n"));
}

TEST(LineDiff, IsAUnifiedDiff) {
  const std::string before = "1\n2\n3\n4\n5\n6\n7\n8\n9\n", after = "1\n2\n3\n4\nfive\n6\n7\n8\n9\n10\n";
  EXPECT_EQ(line_diff(before, after, "a", "b"),
            "--- a\n+++ b\n@@ -2,8 +2,9 @@\n 2\n 3\n 4\n-5\n+five\n 6\n 7\n 8\n 9\n+10\n");
  EXPECT_EQ(line_diff(before, before, "a", "b"), "");
}

}  // namespace
}  // namespace bedwright
