// What was built from a release lies beside it and is never taken for another's.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::Not;

class BuiltBeds : public Program {
 protected:
  void SetUp() override {
    Program::SetUp();
    out = folder / "out";
    fs::copy(fs::path(BEDWRIGHT_SOURCE) / "params", folder / "params", fs::copy_options::recursive);
    order = folder / "params/orders/base.yaml";
    ASSERT_EQ(run({"draw", order, "--out", out}).code, 0);
    release = out / "QB-1041/A";
    file = out / "QB-1041/A.built.yaml";
  }
  void write(const std::string& text) const { std::ofstream(file, std::ios::binary) << text; }
  void replace(const fs::path& in, const std::string& what, const std::string& with) const {
    std::string text = content(in);
    ASSERT_NE(text.find(what), std::string::npos);
    std::ofstream(in, std::ios::binary) << text.replace(text.find(what), what.size(), with);
  }
  Outcome built(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words = {"built", release};
    words.insert(words.end(), more.begin(), more.end());
    return run(words);
  }
  fs::path out, order, release, file;
};

TEST_F(BuiltBeds, AreShownInListVerifyAndCompareAndTheReleaseStays) {
  const auto before = tree(release);
  ASSERT_EQ(built({"--serial", "QM-1", "--on", "2026-11-20", "--by", "E.W.", "--note",
                   "tab R7 \"1/16 in\" to the rear"})
                .code,
            0);
  EXPECT_EQ(tree(release), before);
  EXPECT_THAT(run({"orders", "--out", out}).out,
              ::testing::AllOf(HasSubstr("QM-1 2026-11-20\n"),
                               HasSubstr("  QM-1 as built: tab R7 \"1/16 in\" to the rear\n")));
  const auto json = nlohmann::json::parse(run({"orders", "--out", out, "--json"}).out);
  const auto bed = json.at("orders").at(0).at("built").at(0);
  EXPECT_EQ(bed.at("serial"), "QM-1");
  EXPECT_EQ(bed.at("notes").at(0), "tab R7 \"1/16 in\" to the rear");
  const Outcome verified = run({"verify", release});
  EXPECT_EQ(verified.code, 0);
  EXPECT_THAT(verified.out, HasSubstr("built: serial number QM-1, 2026-11-20, by E.W."));
  EXPECT_THAT(run({"compare", release, order}).out, HasSubstr("as built: tab R7 \"1/16 in\" to the rear"));
}

TEST_F(BuiltBeds, AreAddedToWhatStandsThereByHand) {
  ASSERT_EQ(built({"--serial", "QM-1", "--on", "2026-11-20"}).code, 0);
  replace(file, "beds:\n", "beds:   # finished and stamped\n");
  ASSERT_EQ(built({"--serial", "QM-2", "--on", "2026-11-25"}).code, 0);
  EXPECT_THAT(content(file), HasSubstr("# finished and stamped"));
  EXPECT_THAT(run({"orders", "--out", out}).out, HasSubstr("QM-1 2026-11-20, QM-2 2026-11-25"));
  const std::string written = content(file);
  const Outcome twice = built({"--serial", "QM-1"});
  EXPECT_EQ(twice.code, 2);
  EXPECT_THAT(twice.out, HasSubstr("QM-1 is on a bed of order QB-1041 revision A already (2026-11-20)"));
  // Beds on one line: nothing can be put behind them.
  const std::string mark = written.substr(written.find("release:"), 25);
  write(mark + "\nbeds: [{serial: QM-1, built_on: 2026-11-20}]\n");
  const std::string by_hand = content(file);
  const Outcome refused = built({"--serial", "QM-3"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.out, HasSubstr("add to its beds by hand"));
  EXPECT_EQ(content(file), by_hand);
}

TEST_F(BuiltBeds, BadInputIsOneSentenceWithItsPlace) {
  ASSERT_EQ(built({"--serial", "QM-1", "--on", "2026-11-20"}).code, 0);
  const std::string good = content(file);
  const auto expect_told = [&](const std::string& what) {
    EXPECT_THAT(run({"orders", "--out", out}).out, HasSubstr(what));
    const Outcome verified = run({"verify", out});
    EXPECT_EQ(verified.code, 1);
    EXPECT_THAT(verified.out, HasSubstr(what));
    EXPECT_EQ(built({"--serial", "QM-9"}).code, 2);
    write(good);
  };
  replace(file, "2026-11-20", "2026-11-31");
  expect_told(
      "A.built.yaml:6:5: beds[1].built_on: \"2026-11-31\" is no day of the calendar; write year-month-day");
  replace(file, "serial:", "seriel:");
  expect_told("A.built.yaml:5:5: beds[1].serial: is written ");
  replace(file, "release: ", "release: 0");
  expect_told("is not the release beside it");
  for (const std::vector<std::string>& more : {std::vector<std::string>{"--serial", "Q\x1b[31m"},
                                               {"--serial", " "},
                                               {"--serial", "Q", "--on", "20.11."},
                                               {"--note", "without a number"},
                                               {"--serial", "Q", "--note", "a\nb"}})
    EXPECT_EQ(built(more).code, 2);
  EXPECT_EQ(content(file), good);
  EXPECT_EQ(run({"built", out / "QB-1041", "--serial", "Q"}).code, 2);
}

TEST_F(BuiltBeds, StayWithTheReleaseTheyWereBuiltFrom) {
  ASSERT_EQ(built({"--serial", "QM-1", "--on", "2026-11-20"}).code, 0);
  const std::string written = content(file);
  replace(order, "position: 137 in", "position: 138 in");
  const Outcome drawn = run({"draw", order, "--out", out, "--replace", "axle too far forward"});
  ASSERT_EQ(drawn.code, 0) << drawn.out;
  EXPECT_THAT(drawn.out, HasSubstr("built: serial number QM-1"));
  EXPECT_FALSE(fs::exists(file));
  EXPECT_EQ(content(out / "QB-1041/A.withdrawn-1.built.yaml"), written);
  EXPECT_EQ(run({"verify", out}).code, 0);
  // Put back by hand, or left by a run that died, it is not taken for the new release's.
  write(written);
  EXPECT_THAT(run({"orders", "--out", out}).out, HasSubstr("is not the release beside it"));
}

}  // namespace
}  // namespace bedwright
