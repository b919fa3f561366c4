#include "examine/findings_json.h"

#include <gtest/gtest.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "support/demo.h"

namespace bedwright {
namespace {

using testing::order_path;

TEST(FindingsJson, SayNoMinusZeroAndNoMoreThanSixDecimals) {
  EXPECT_EQ(to_a_millionth(1.23456789), 1.234568);
  EXPECT_FALSE(std::signbit(to_a_millionth(-1e-9)));
  EXPECT_EQ(to_a_millionth(-2.5), -2.5);
}

TEST(FindingsJson, AProblemHasItsPlaceAndItsLine) {
  FileStore store;
  const Examination none = examine(store, order_path("base"), {"track.rail_length=80"});
  const auto json = unjudged_json(none);
  ASSERT_EQ(json.size(), 1u);
  ASSERT_EQ(json["problems"].size(), none.problems.size());
  const Problem& p = none.problems.at(0);
  EXPECT_EQ(json["problems"][0]["key"], "track.rail_length");
  EXPECT_EQ(json["problems"][0]["what"], p.what);
  EXPECT_EQ(json["problems"][0]["would_do"], p.would_do);
  EXPECT_EQ(json["problems"][0]["line"], p.where.line);
  EXPECT_EQ(json["problems"][0]["text"], to_line(p));
}

// base has pairs the cheap test leaves open; nothing else is wrong with it.
TEST(FindingsJson, ABedWithOpenPairsIsNotStoppedButSaysHowManyAreOpen) {
  FileStore store;
  const auto json = unjudged_json(examine(store, order_path("base")));
  EXPECT_EQ(json["stopped"], false);
  int clashes = 0;
  for (const auto& f : json["findings"]) {
    const bool clash = f["code"] == "CLASH" || f["code"] == "CLASH-MOVING";
    clashes += clash && f["severity"] == "warn";
  }
  EXPECT_GT(clashes, 0);
  EXPECT_EQ(json["open"], clashes);
  EXPECT_EQ(json["counts"]["stop"], 0);
  EXPECT_GE(json["counts"]["warn"].get<int>(), clashes);
}

TEST(FindingsJson, HasEveryFieldOfAFinding) {
  FileStore store;
  const Examination wrong = examine(store, order_path("wrong"));
  const auto json = unjudged_json(wrong);
  EXPECT_EQ(json["stopped"], true);
  const auto& list = json["findings"];
  ASSERT_EQ(list.size(), wrong.bed->findings.size());
  bool changes = false;
  for (std::size_t i = 0; i < list.size(); ++i) {
    const Finding& f = wrong.bed->findings[i];
    EXPECT_EQ(list[i]["code"], f.code);
    EXPECT_EQ(list[i]["message"], f.message);
    EXPECT_EQ(list[i]["remedy"], f.remedy);
    EXPECT_EQ(list[i]["unit"], f.unit);
    EXPECT_NEAR(list[i]["measured"].get<double>(), f.measured, 1e-6);
    EXPECT_NEAR(list[i]["limit"].get<double>(), f.limit, 1e-6);
    EXPECT_NEAR(list[i]["margin"].get<double>(), f.margin, 1e-6);
    EXPECT_NEAR(list[i]["place"]["x"].get<double>(), f.x, 1e-6);
    EXPECT_NEAR(list[i]["place"]["y"].get<double>(), f.y, 1e-6);
    EXPECT_NEAR(list[i]["place"]["z"].get<double>(), f.z, 1e-6);
    ASSERT_EQ(list[i]["subjects"].size(), f.subjects.size());
    for (std::size_t k = 0; k < f.subjects.size(); ++k) EXPECT_EQ(list[i]["subjects"][k], f.subjects[k].name);
    ASSERT_EQ(list[i]["changes"].size(), f.changes.size());
    for (std::size_t k = 0; k < f.changes.size(); ++k) {
      changes = true;
      EXPECT_EQ(list[i]["changes"][k]["key"], f.changes[k].key);
      EXPECT_EQ(list[i]["changes"][k]["value"], f.changes[k].value);
      EXPECT_EQ(list[i]["changes"][k]["brings"], f.changes[k].brings);
    }
  }
  EXPECT_TRUE(changes) << "no finding of this order has a change to hold";
}

}  // namespace
}  // namespace bedwright
