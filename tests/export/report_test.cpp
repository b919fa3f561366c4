// report.json against the form its header documents.
#include "export/report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "checks/rule.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;
using testing::ElementsAre;

std::vector<std::string> keys(const Json& object) {
  std::vector<std::string> names;
  for (const auto& [name, value] : object.items()) names.push_back(name);
  return names;
}

struct ReportTest : testing::Test {
  Order order;
  Bed bed;
  std::vector<Finding> findings;
  ReportTest() {
    order.order.number = "T-1";
    order.order.customer = "A \"quoted\" name";
    order.kit = "kit.yaml";
    bed.track.joints = {1968.5000000004, -1e-12};
    Finding f;
    f.code = "TIP";
    f.subjects = {"bunk bolt R7", "main R"};
    f.x = 1.23456789;
    f.margin = -1e-9;
    f.unit = "mm";
    f.message = "it does";
    f.changes = {{"bolts.bunk", "1-1/4 in"}};
    findings = {f, f};
    findings[1].severity = Severity::note;
  }
  Report report() const { return {"0.1.0", order, PacketState::draft, bed, findings}; }
};

TEST_F(ReportTest, HasTheDocumentedKeysInTheirOrder) {
  const Json json = Json::parse(report_json(report()));
  EXPECT_THAT(keys(json), ElementsAre("format", "version", "program", "order", "state", "counts", "findings",
                                      "track", "rules"));
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
  EXPECT_THAT(keys(json["track"]), ElementsAre("rail_length", "bunk_pitch", "total_length", "sections",
                                               "bunks", "remainder", "joints", "bunk_positions", "standoff",
                                               "gauge", "head_from", "head_to", "head_lock"));
  EXPECT_EQ(json["rules"].size(), rules().size());
  EXPECT_THAT(keys(json["rules"][0]),
              ElementsAre("code", "family", "asks", "formula", "limit", "source", "change"));
}

TEST_F(ReportTest, RoundsFiguresAndHasNoMinusZero) {
  const std::string text = report_json(report());
  const Json json = Json::parse(text);
  EXPECT_EQ(json["track"]["joints"].dump(), "[1968.5,0.0]");
  EXPECT_EQ(json["findings"][0]["place"]["x"].dump(), "1.234568");
  EXPECT_EQ(text.find("-0.0"), std::string::npos);
  EXPECT_EQ(text.back(), '\n');
}

TEST_F(ReportTest, IsTheSameTwiceAndSurvivesBytesThatAreNoText) {
  EXPECT_EQ(report_json(report()), report_json(report()));
  order.order.customer = "bad \xff byte";
  EXPECT_NO_THROW(Json::parse(report_json(report())));
}

TEST_F(ReportTest, TextNamesOrderStateAndFindings) {
  const std::string text = report_text(report());
  for (const char* part : {"T-1", "State: draft", "TIP", "bunk bolt R7", "1 stop, no warnings, 1 note"})
    EXPECT_THAT(text, testing::HasSubstr(part));
}

}  // namespace
}  // namespace bedwright
