// The map over a small grid: what it says of each combination is what checking
// that combination says.
#include "offer/map.h"

#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <sstream>

#include "loads/worked.h"
#include "offer/picture.h"
#include "offer/table.h"
#include "rules/loads/rules.h"
#include "support/demo.h"
#include "support/made_up.h"

namespace bedwright {
namespace {

using ::testing::HasSubstr;
using testing::order_path;

// No kernel here: what only it can decide stays a warning.
const JudgeMaker check;

std::vector<Finding> findings_of(const std::vector<std::string>& sets) {
  return examine(testing::demo_job("sizes", sets)).bed->findings;
}

Grid small_grid() {
  return Grid({{"track.rail_length", {"72 in", "80 in", "84 in"}},
               {"track.bunk_pitch", {"20 in", "24 in"}},
               {"track.extension_count", {"0", "1"}}});
}

// Each near miss takes as long as a map of hundreds: only where they are what is tested.
OfferMap drawn(PartOf part = {}, unsigned threads = 2, int near_misses = 0) {
  MapSettings settings;
  settings.threads = threads;
  settings.near_misses = near_misses;
  return draw_map(order_path("sizes"), {}, small_grid(), part, check, settings);
}

MapFile file_of(OfferMap map) {
  return {"0.1.0", "QB-1", "A", "2026-11-09", "digest", Printing::inches, {"Kit: made up."}, std::move(map)};
}

TEST(Map, SaysOfEachCombinationWhatCheckingItSays) {
  const OfferMap map = drawn();
  ASSERT_EQ(map.rows.size(), 12u);
  int stopped = 0;
  for (const MapRow& row : map.rows) {
    const auto findings = findings_of(map.grid.sets_of(row.combination));
    const auto stops = std::count_if(findings.begin(), findings.end(),
                                     [](const Finding& f) { return f.severity == Severity::stop; });
    EXPECT_EQ(row.stops, stops) << row.combination;
    EXPECT_EQ(row.fit == Fit::fits, stops == 0);
    stopped += stops > 0;
    if (row.fit == Fit::stopped) {
      EXPECT_THAT(row.by_rule, HasSubstr(row.code));
    }
  }
  EXPECT_GT(stopped, 0);
  EXPECT_LT(stopped, 12) << "a map where all is alike shows nothing";
}

TEST(Map, ARemainderStopsTheCombinationsWhosePitchDoesNotDivide) {
  for (const MapRow& row : drawn().rows) {
    const auto sets = small_grid().sets_of(row.combination);
    const bool divides = (sets[0] == "track.rail_length=80 in" && sets[1] == "track.bunk_pitch=20 in") ||
                         (sets[0] == "track.rail_length=72 in" && sets[1] == "track.bunk_pitch=24 in");
    EXPECT_EQ(row.by_rule.find("RAIL-REMAINDER") == std::string::npos, divides) << sets[0] << " " << sets[1];
  }
}

TEST(Map, IsTheSameWithAnyNumberOfThreads) {
  EXPECT_EQ(map_json(file_of(drawn({}, 1))), map_json(file_of(drawn({}, 3))));
}

TEST(Map, PartsMergeIntoTheWholeByteForByte) {
  constexpr int few = 2;
  const MapFile whole_file = file_of(drawn({}, 2, few));
  const std::string whole = map_json(whole_file);
  std::vector<MapFile> parts;
  for (const std::uint64_t k : {2, 1, 3}) {
    const auto read = read_map_json(map_json(file_of(drawn({k, 3}, 2, few))));
    ASSERT_TRUE(std::holds_alternative<MapFile>(read)) << std::get<std::string>(read);
    parts.push_back(std::get<MapFile>(read));
  }
  const auto all = merged(parts, few);
  ASSERT_TRUE(std::holds_alternative<MapFile>(all)) << std::get<std::string>(all);
  EXPECT_EQ(map_json(std::get<MapFile>(all)), whole);
  EXPECT_EQ(map_csv(std::get<MapFile>(all)), map_csv(whole_file));
}

TEST(Map, PartsThatDoNotBelongTogetherAreRefused) {
  MapFile a = file_of(drawn({1, 2})), b = file_of(drawn({2, 2}));
  const auto fault = [](std::vector<MapFile> parts) {
    return std::get<std::string>(merged(std::move(parts), 3));
  };
  EXPECT_THAT(fault({}), HasSubstr("no part"));
  EXPECT_THAT(fault({a}), HasSubstr("part 2 of 2 is missing"));
  EXPECT_THAT(fault({a, a}), HasSubstr("given twice"));
  const MapFile good = b;
  b.digest = "another";
  EXPECT_THAT(fault({a, b}), HasSubstr("another run"));
  b = good;
  b.holds_for = {"Kit: another."};
  EXPECT_THAT(fault({a, b}), HasSubstr("another run"));
}

TEST(Map, ATextThatIsNoMapIsRefused) {
  const auto fault = [](const std::string& text) { return std::get<std::string>(read_map_json(text)); };
  EXPECT_THAT(fault("{"), HasSubstr("no map"));
  EXPECT_THAT(fault("{}"), HasSubstr("cannot be read"));
  EXPECT_THAT(fault("{\"format\": \"bedwright report\"}"), HasSubstr("no map"));
  std::string short_of_a_row = map_json(file_of(drawn()));
  const auto from = short_of_a_row.find("{\"n\":3,"), to = short_of_a_row.find("{\"n\":4,");
  EXPECT_THAT(fault(short_of_a_row.erase(from, to - from)), HasSubstr("does not hold the rows"));
}

TEST(Map, WhatCannotBeLaidOutSaysWhy) {
  const OfferMap map = draw_map(order_path("sizes"), {}, Grid({{"track.clamps[1].bunk", {"5", "500"}}}), {},
                                check, {1, 0, {}});
  EXPECT_EQ(map.rows[1].fit, Fit::impossible);
  EXPECT_THAT(map.rows[1].change, HasSubstr("there is no bunk 500"));
}

TEST(NearMisses, FewestRulesFirstAndWhatIsOfferedClearsThem) {
  // Bolts too short for every combination, which a longer one cures; two rails by
  // two pitches, so that two have a remainder as well, which nothing does while
  // rail and pitch are what is varied.
  MapSettings settings;
  settings.near_misses = 3;
  const Grid two_by_two(
      {{"track.rail_length", {"72 in", "80 in"}}, {"track.bunk_pitch", {"20 in", "18 in"}}});
  // The axle and the log stops stand where both good combinations keep their tongue down, with the
  // locked head clear: else nothing single cures them.
  const std::vector<std::string> set{"bolts.track=1 in", "axle.fraction=0.59", "track.log_stops=[4, 8]"};
  const OfferMap map = draw_map(order_path("sizes"), set, two_by_two, {}, check, settings);
  ASSERT_EQ(map.near.size(), 3u);
  int with_change = 0;
  for (const NearMiss& n : map.near) {
    EXPECT_EQ(map.rows[n.combination].fit, Fit::stopped);
    EXPECT_FALSE(n.remedies.empty());
    const bool has_remainder = map.rows[n.combination].by_rule.find("RAIL-REMAINDER") != std::string::npos;
    EXPECT_EQ(n.changes.empty(), has_remainder);
    if (n.changes.empty()) continue;
    ++with_change;
    std::vector<std::string> sets = map.grid.sets_of(n.combination);
    sets.insert(sets.begin(), set.begin(), set.end());
    for (const Change& c : n.changes) {
      EXPECT_NE(c.key, "track.rail_length") << "what is varied is not changed";
      sets.push_back(c.key + "=" + c.value);
    }
    for (const Finding& f : findings_of(sets)) EXPECT_NE(f.severity, Severity::stop) << f.message;
  }
  EXPECT_EQ(with_change, 2);
}

MapRow stopped_by(std::uint64_t n, const std::string& rules, int stops, double margin) {
  MapRow row;
  row.combination = n;
  row.fit = Fit::stopped;
  row.by_rule = rules;
  row.stops = stops;
  row.margin = margin;
  return row;
}

TEST(NearMisses, ShowMoreThanOneWayToMiss) {
  std::vector<MapRow> rows;
  for (std::uint64_t i = 0; i < 20; ++i)
    rows.push_back(stopped_by(i, "RAIL-REMAINDER 1", 1, -static_cast<double>(i)));
  rows.push_back(stopped_by(20, "TIP 2", 2, -1));
  rows.push_back(stopped_by(21, "TIP 4, CLASH 1", 5, -1));
  EXPECT_THAT(nearest_rows(rows, 12), ::testing::ElementsAre(0, 1, 2, 3, 20, 21));
  EXPECT_THAT(nearest_rows(rows, 3), ::testing::ElementsAre(0, 1, 2));
}

// A bed too weak is no near miss because a hole is a hair out too.
TEST(Map, LoadsBindBeforeLengths) {
  const auto finding = [](const char* code, double measured, double limit, const char* unit) {
    Finding f;
    f.code = code;
    f.severity = Severity::stop;
    f.subjects = {testing::made_up_thing("x")};
    f.measured = measured, f.limit = limit, f.margin = limit - measured, f.unit = unit;
    return f;
  };
  Finding warning = finding("REACH", 30, 60, "degrees");
  warning.severity = Severity::warn;
  Examination weak = examine(testing::demo_job("sizes"));
  weak.bed->findings = {finding("HOLE-FIT", 2, 1.9, "mm"), finding("STAND-SAG", 4, 1.5, "mm"), warning};
  const MapRow row = row_of(*weak.bed);
  EXPECT_EQ(row.code, "STAND-SAG");
  EXPECT_EQ(row.by_rule, "HOLE-FIT 1, STAND-SAG 1");
  EXPECT_EQ(row.warned_by, "REACH 1");
}

// A tab's weld near what it carries binds before a bolt's tip with room.
TEST(Map, AWeldNearItsLimitBinds) {
  const Grid grid(std::vector<Varied>{{"limits.tab_load", {"3100 lb"}}});
  const OfferMap map = draw_map(order_path("sizes"), {}, grid, {}, check, {1, 0, {}});
  ASSERT_EQ(map.rows[0].fit, Fit::fits);
  EXPECT_EQ(map.rows[0].code, "WELD-LOAD");
  EXPECT_GT(map.rows[0].used, 0.85);
}

// Loads count like the rest: a margin in percent of the limit, and what they stop is not offered.
TEST(Map, CarriesLoads) {
  const Grid grid({{"frame.coupler.rating", {"1000 lb", "10000 lb"}}});
  const OfferMap map = draw_map(order_path("sizes"), {}, grid, {}, check, {1, 0, {}});
  EXPECT_EQ(map.rows[0].fit, Fit::stopped);
  EXPECT_EQ(map.rows[0].code, "TOW-COUPLER");
  EXPECT_EQ(map.rows[0].unit, "%");
  const Job job = testing::demo_job("sizes", {"frame.coupler.rating=1000 lb"});
  const LoadsResult loads = run_loads(job, testing::bed_of(job));
  Kg heaviest = 0;
  for (const TowCondition& c : loads.tow.conditions)
    if (c.judged) heaviest = std::max(heaviest, c.mass);
  EXPECT_NEAR(map.rows[0].margin, 100 * (1 - heaviest / (1000 * pound)), 1e-5);
  EXPECT_EQ(map.rows[1].fit, Fit::fits);
  EXPECT_LT(map.rows[1].used, 1);
  // Nothing is nearer to its limit than what is said to bind.
  for (const LoadMargin& m : load_margins(job, loads)) {
    if (m.code == "TOW-WIDTH" || m.code == "TOW-COUPLER") continue;
    EXPECT_LE(m.used, map.rows[1].used + 1e-6) << name(m);
  }
}

// The last key turns fastest; each combination once, with what was found of it.
TEST(MapCsv, HasALineACombinationAndItsKeysAsColumns) {
  const OfferMap map = drawn();
  std::istringstream csv(map_csv(file_of(map)));
  const auto line = [&] {
    std::string text;
    std::getline(csv, text);
    return text;
  };
  EXPECT_EQ(line(),
            "track.rail_length,track.bunk_pitch,track.extension_count,fits,stops,warnings,rule,margin,unit,"
            "used,at,stopped by,warned by,change\r");
  std::size_t n = 0;
  for (const char* rail : {"72 in", "80 in", "84 in"})
    for (const char* pitch : {"20 in", "24 in"})
      for (const char* extensions : {"0", "1"}) {
        const auto findings =
            findings_of({std::string("track.rail_length=") + rail, std::string("track.bunk_pitch=") + pitch,
                         std::string("track.extension_count=") + extensions});
        const auto stops = std::count_if(findings.begin(), findings.end(),
                                         [](const Finding& f) { return f.severity == Severity::stop; });
        const MapRow& row = map.rows.at(n++);
        EXPECT_THAT(line(), ::testing::StartsWith(fmt::format("{},{},{},{},{},{},{},", rail, pitch,
                                                              extensions, stops == 0 ? "yes" : "no", stops,
                                                              row.warnings, row.code)));
      }
  EXPECT_EQ(line(), "");
  EXPECT_TRUE(csv.eof());
}

// A made-up map, no two of its figures alike: each in its own column, lengths in inches
// where the order prints inches, nothing where there is nothing to say.
TEST(MapCsv, HasEachFigureInItsColumn) {
  MapFile file = file_of({Grid({{"a.key", {"10 in", "11 in"}}, {"b.key", {"red", "blue"}}}), {}, {}, {}});
  file.map.rows = {
      {0, Fit::fits, 0, 2, "", "REACH 2", "TIP", 2.54, "mm", 0.75, "track bolt R3", ""},
      {1, Fit::stopped, 3, 1, "TIP 2, CLASH 1", "EDGE 1", "CLASH", -25.4, "mm", 0, "clamp 1", "move it"},
      {2, Fit::impossible, 0, 0, "", "", "", 0, "", 0, "", "there is no bunk 500"},
      {3, Fit::fits, 0, 0, "", "", "TOW-COUPLER", 12.5, "%", 0.875, "coupler", ""},
  };
  const std::string head =
      "a.key,b.key,fits,stops,warnings,rule,margin,unit,used,at,stopped by,warned by,change\r\n";
  const std::string last = "11 in,blue,yes,0,0,TOW-COUPLER,12.500,%,0.875,coupler,,,\r\n";
  EXPECT_EQ(map_csv(file),
            head + "10 in,red,yes,0,2,TIP,0.100,in,0.750,track bolt R3,,REACH 2,\r\n" +
                "10 in,blue,no,3,1,CLASH,-1.000,in,,clamp 1,\"TIP 2, CLASH 1\",EDGE 1,move it\r\n" +
                "11 in,red,cannot,0,0,,,,,,,,there is no bunk 500\r\n" + last);
  file.printing = Printing::metric;
  EXPECT_EQ(map_csv(file),
            head + "10 in,red,yes,0,2,TIP,2.540,mm,0.750,track bolt R3,,REACH 2,\r\n" +
                "10 in,blue,no,3,1,CLASH,-25.400,mm,,clamp 1,\"TIP 2, CLASH 1\",EDGE 1,move it\r\n" +
                "11 in,red,cannot,0,0,,,,,,,,there is no bunk 500\r\n" + last);
}

}  // namespace
}  // namespace bedwright
