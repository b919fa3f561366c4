// What is said of a bed's loads: findings, margins, sums and words.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "loads/loads.h"
#include "loads/travel_name.h"
#include "loads/worked.h"
#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;

TEST(Findings, TheDemoOrdersHaveNoStopAndNoWarning) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const Bed bed = testing::bed_of(job);
    for (const Finding& f : load_findings(job, bed, run_loads(job, bed), {}))
      EXPECT_EQ(f.severity, Severity::note) << order << " " << f.code << " " << f.message;
  }
}

TEST(Findings, EveryCodeStandsInTheTableOnce) {
  std::vector<std::string> codes;
  for (const Rule& r : all_rules()) codes.push_back(r.code);
  std::sort(codes.begin(), codes.end());
  EXPECT_EQ(std::adjacent_find(codes.begin(), codes.end()), codes.end());
  for (const Rule& r : load_rules())
    for (const char* text : {r.family, r.asks, r.formula, r.limit, r.source, r.change})
      EXPECT_GT(std::string(text).size(), 2u) << r.code;
}

// Its share of the tongue's load is one finding for each way of travelling, the same whatever
// other ways the order has.
TEST(Findings, AWayOfTravellingIsKnownByItself) {
  const auto shares = [](const char* set) {
    const Job job = demo_job("base", {"axle.position=60 in", set});  // too far forward for all of them
    const Bed bed = testing::bed_of(job);
    std::vector<Subject> all;
    for (const Finding& f : load_findings(job, bed, run_loads(job, bed), {}))
      if (f.code == "TOW-SHARE") all.push_back(f.subjects.front());
    return all;
  };
  const auto front = shares("road.travels=[{head: front}]"),
             both = shares("road.travels=[{head: off}, {head: front}]");
  ASSERT_EQ(front.size(), 1u);
  ASSERT_EQ(both.size(), 2u);
  EXPECT_EQ(front[0].name, "tongue load, head locked front");
  EXPECT_NE(both[0].id, both[1].id);
  EXPECT_THAT(both, ::testing::Contains(front[0]));
}

TEST(Findings, AWideTrailerIsAWarning) {
  const Job job = demo_job("base", {"road.width_limit=70 in"});
  const Bed bed = testing::bed_of(job);
  const auto findings = load_findings(job, bed, run_loads(job, bed), {});
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
    return f.code == "TOW-WIDTH" && f.severity == Severity::warn;
  }));
}

TEST(Margins, AreOverOneJustWhereAFindingStops) {
  for (const char* set : {"axle.position=160 in", "frame.axle.tyre_rating=900 lb", "jacks=[17 in, 223 in]",
                          "work.log.diameter=36 in"}) {
    const Job job = demo_job("base", {set});
    const Bed bed = testing::bed_of(job);
    const LoadsResult r = run_loads(job, bed);
    std::vector<std::string> over, stopped;
    for (const LoadMargin& m : load_margins(job, r))
      if (m.used > 1) over.push_back(m.code);
    for (const Finding& f : load_findings(job, bed, r, {}))
      if (f.severity == Severity::stop) stopped.push_back(f.code);
    for (const std::string& code : over) EXPECT_THAT(stopped, ::testing::Contains(code)) << set;
    for (const std::string& code : stopped) EXPECT_THAT(over, ::testing::Contains(code)) << set;
  }
}

TEST(Say, HowItTravels) {
  EXPECT_EQ(name(TravelCase{HeadAt::front, false}), "head locked front");
  EXPECT_EQ(name(TravelCase{HeadAt::rear, true}), "head locked rear, cargo");
  EXPECT_EQ(name(TravelCase{HeadAt::off, false}), "head off");
  EXPECT_EQ(name(TravelCase{HeadAt::off, false, true}), "bare frame");
  EXPECT_EQ(name(TravelCase{HeadAt::off, true}, true), "head off, cargo");
  EXPECT_EQ(name(TravelCase{HeadAt::front, true}, true), "head front, cargo");
  EXPECT_EQ(name(LoadMargin{"TOW-AXLE", "axle", 0.5, TravelCase{HeadAt::rear, false}}),
            "axle, head locked rear");
  EXPECT_EQ(name(LoadMargin{"TOW-AXLE", "axle", 0.5, TravelCase{HeadAt::rear, false}}, true),
            "axle, head rear");
  EXPECT_EQ(name(LoadMargin{"STAND-SAG", "sag", 0.5}), "sag");
}

TEST(Worked, LinesAreInTheOrdersUnits) {
  const Job inches = demo_job("base"), metric = demo_job("metric");
  const Bed bed = testing::bed_of(inches), metric_bed = testing::bed_of(metric);
  for (const std::string& line : worked_lines(inches, bed, run_loads(inches, bed)))
    EXPECT_THAT(line, ::testing::Not(::testing::HasSubstr(" kg")));
  for (const std::string& line : worked_lines(metric, metric_bed, run_loads(metric, metric_bed)))
    EXPECT_THAT(line, ::testing::Not(::testing::HasSubstr(" lb")));
}

}  // namespace
}  // namespace bedwright
