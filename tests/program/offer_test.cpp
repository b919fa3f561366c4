// What offer writes: all of its files or none, and never over another's.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;

class OfferFiles : public Program {
 protected:
  void SetUp() override {
    Program::SetUp();
    map = folder / "maps/small";
  }
  // All of it fits: no time is spent on what would mend what does not.
  Outcome offer(const std::vector<std::string>& more, const fs::path& into) const {
    std::vector<std::string> words = {
        "offer", order_path("base"), "--vary", "axle.position=137in,138in", "--out", into};
    words.insert(words.end(), more.begin(), more.end());
    return run(words);
  }
  Outcome offer(const std::vector<std::string>& more = {}) const { return offer(more, map); }
  std::string list(const fs::path& of) const {
    return outcome_of("cd " + quoted(of) + " && sha256sum -c --strict offer.sha256 2>&1").out;
  }
  void expect_refused(const std::string& why) const {
    const auto before = tree(folder);
    const Outcome refused = offer({"--vary", "track.rail_length=72..96in/1in"});  // refused before the work
    EXPECT_EQ(refused.code, 2) << refused.out;
    EXPECT_THAT(refused.out, HasSubstr(why));
    EXPECT_THAT(refused.out, HasSubstr("nothing was touched"));
    EXPECT_EQ(tree(folder), before);
  }
  fs::path map;
};

// The list is read by coreutils' sha256sum, another program.
TEST_F(OfferFiles, AreReplacedAsAWhole) {
  ASSERT_EQ(offer().code, 0);
  const auto first = tree(map);
  ASSERT_TRUE(first.contains("offer.pdf"));
  EXPECT_THAT(list(map), ::testing::AllOf(HasSubstr("offer.csv: OK"), HasSubstr("offer.pdf: OK"),
                                          HasSubstr("offer.json: OK"), HasSubstr("offer.svg: OK")));
  ASSERT_EQ(offer({"--vary", "work.log.length=12ft,14ft"}).code, 0);
  const auto second = tree(map);
  EXPECT_NE(second.at("offer.csv"), first.at("offer.csv"));
  EXPECT_THAT(list(map), ::testing::Not(HasSubstr("FAILED")));
  std::size_t files = 0;
  for (const auto& entry : fs::directory_iterator(folder / "maps")) files += entry.path() != map;
  EXPECT_EQ(files, 1U) << "only the program's own folder beside it";
  EXPECT_EQ(tree(folder / "maps/.bedwright").size(), 1U) << "the lock";
}

TEST_F(OfferFiles, NeverTakeThePlaceOfAnothers) {
  fs::create_directories(map);
  std::ofstream(map / "offer.csv") << "my own prices\n";
  expect_refused("holds offer.csv, which this program did not write");
  fs::remove(map / "offer.csv");
  ASSERT_EQ(offer().code, 0) << "an empty folder will do";
  std::ofstream(map / "offer.csv", std::ios::app) << "my own note\n";
  expect_refused("holds offer.csv, which was changed since this program wrote it");
  fs::remove_all(map);
  ASSERT_EQ(offer().code, 0);
  fs::remove(map / "offer.pdf");
  fs::create_directories(map / "offer.pdf");
  std::ofstream(map / "offer.pdf/mine") << "x";
  expect_refused("holds offer.pdf/mine, which this program did not write");
  fs::remove_all(map);
  std::ofstream(map) << "a file\n";
  expect_refused("is not a folder");
}

TEST_F(OfferFiles, AreNotPutAmongReleases) {
  ASSERT_EQ(run({"draw", order_path("base"), "--out", folder / "out"}).code, 0);
  for (const char* place : {"out/QB-1041/B", "out/QB-1041/A", "out/QB-1041/A/more", "out/QB-1041"}) {
    const auto before = tree(folder);
    EXPECT_EQ(offer({}, folder / place).code, 2) << place;
    EXPECT_EQ(tree(folder), before) << place;
  }
}

TEST_F(OfferFiles, PartsStandBesideEachOtherAndReplaceOnlyParts) {
  const fs::path parts = folder / "parts";
  ASSERT_EQ(offer({"--part", "1/2"}, parts).code, 0);
  ASSERT_EQ(offer({"--part", "2/2"}, parts).code, 0);
  ASSERT_EQ(offer({"--part", "2/2"}, parts).code, 0) << "made again";
  const Outcome merged = run({"offer", "--merge", parts / "offer-1-of-2.json", "--merge",
                              parts / "offer-2-of-2.json", "--out", map});
  EXPECT_EQ(merged.code, 0) << merged.out;
  EXPECT_TRUE(fs::exists(map / "offer.pdf"));
  std::ofstream(parts / "offer-1-of-2.json") << "{\"mine\": 1}";
  const Outcome refused = offer({"--part", "1/2"}, parts);
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.out, HasSubstr("offer-1-of-2.json is there and is no part of a map"));
  EXPECT_EQ(content(parts / "offer-1-of-2.json"), "{\"mine\": 1}");
}

TEST_F(OfferFiles, TheFolderOneStandsInIsNotTakenAway) {
  fs::create_directories(map);
  const Outcome refused =
      outcome_of("cd " + quoted(map) + " && " + quoted(BEDWRIGHT_PROGRAM) + " offer " +
                 quoted(order_path("base")) + " --vary axle.position=137in,138in --out . 2>&1");
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.out, HasSubstr("is the folder you stand in"));
}

}  // namespace
}  // namespace bedwright
