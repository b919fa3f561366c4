// report.json against the form its header documents.
#include "packet/report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;
using ::testing::ElementsAre;

std::vector<std::string> keys(const Json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;
}

struct ReportTest : ::testing::Test {
  std::unique_ptr<Examined> examined;
  explicit ReportTest(const std::string& customer = "A \"quoted\" name") {
    Job job = bedwright::testing::demo_job("base");
    job.order.order.number = "T-1";
    job.order.order.customer = customer;
    Bed bed = bedwright::testing::bed_of(job);
    bed.track.joints = {1968.5000000004, -1e-12};
    examined = examine(std::move(job), std::move(bed));
    Finding f;
    f.code = "TIP";
    f.subjects = {Identity{Kind::bunk_bolt, Side::right, 7}, Identity{Kind::main, Side::right}};
    f.x = 1.23456789;
    f.margin = -1e-9;
    f.unit = "mm";
    f.message = "it does";
    f.changes = {{"bolts.bunk", "1-1/4 in"}};
    examined->findings = {f, f};
    examined->findings[1].severity = Severity::note;
  }
  Report report() const { return {"0.1.0", PacketState::draft, *examined}; }
};

TEST_F(ReportTest, HasTheDocumentedKeysInTheirOrder) {
  const Json json = Json::parse(report_json(report()));
  EXPECT_THAT(keys(json), ElementsAre("format", "version", "program", "order", "state", "counts", "findings",
                                      "track", "rules", "datum", "bolts", "loads"));
  EXPECT_EQ(json["format"], "bedwright report");
  EXPECT_EQ(json["version"], 1);
  EXPECT_EQ(json["state"], "draft");
  EXPECT_THAT(keys(json["program"]), ElementsAre("name", "version"));
  EXPECT_THAT(keys(json["order"]), ElementsAre("number", "customer", "date", "revision", "kit", "frame"));
  EXPECT_EQ(json["order"]["customer"], "A \"quoted\" name");
  EXPECT_EQ(json["counts"].dump(), R"({"stop":1,"warn":0,"note":1})");
  ASSERT_EQ(json["findings"].size(), 2u);
  EXPECT_THAT(keys(json["findings"][0]),
              ElementsAre("code", "severity", "subjects", "place", "measured", "limit", "margin", "unit",
                          "message", "remedy", "changes"));
  EXPECT_EQ(json["findings"][0]["subjects"].dump(), R"(["bunk bolt R7","main R"])");
  EXPECT_THAT(keys(json["track"]), ElementsAre("rail_length", "bunk_pitch", "total_length", "sections",
                                               "bunks", "remainder", "joints", "bunk_positions", "standoff",
                                               "gauge", "head_from", "head_to", "head_lock"));
  EXPECT_EQ(json["rules"].size(), all_rules().size());
  EXPECT_THAT(keys(json["rules"][0]),
              ElementsAre("code", "family", "asks", "formula", "limit", "source", "change"));
}

TEST_F(ReportTest, RoundsFiguresAndHasNoMinusZero) {
  const std::string text = report_json(report());
  const Json json = Json::parse(text);
  EXPECT_EQ(json["track"]["joints"].dump(), "[1968.5,0.0]");
  EXPECT_EQ(json["findings"][0]["place"]["x"].dump(), "1.234568");
  EXPECT_FALSE(std::regex_search(text, std::regex("-0(\\.0*)?[^0-9.]")));
  EXPECT_EQ(text.back(), '\n');
}

struct ReportTest_WithBadBytes : ReportTest {
  ReportTest_WithBadBytes() : ReportTest("bad \xff byte") {}
  void TestBody() override {}
  std::unique_ptr<Examined> take() { return std::move(examined); }
};

TEST_F(ReportTest, IsTheSameTwiceAndSurvivesBytesThatAreNoText) {
  EXPECT_EQ(report_json(report()), report_json(report()));
  examined = ReportTest_WithBadBytes().take();
  EXPECT_NO_THROW(Json::parse(report_json(report())));
}

TEST_F(ReportTest, TextNamesOrderStateAndFindings) {
  const std::string text = report_text(report());
  for (const char* part : {"T-1", "State: draft", "TIP", "bunk bolt R7", "1 stop, no warnings, 1 note"})
    EXPECT_THAT(text, ::testing::HasSubstr(part));
}

}  // namespace
}  // namespace bedwright
