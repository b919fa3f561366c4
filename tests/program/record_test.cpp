// What was released stays as it was released.
#include <fmt/format.h>
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>
#include <regex>

#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::Not;

class Record : public OwnParams {
 protected:
  void thicker_pads() { change(frame, "pad_thickness: 3/8 in", "pad_thickness: 1/2 in"); }
  void raise_to_b() {
    change(order, "revision: A", "revision: B");
    std::ofstream(order, std::ios::app)
        << "\nrevisions:\n  - {revision: A, date: 2026-10-05, what: First issue}\n"
           "  - {revision: B, date: 2026-11-02, by: E.W., what: Pads 1/2 in were 3/8 in}\n";
  }
  Outcome draw(const std::vector<std::string>& more = {}) const {
    std::vector<std::string> words = {"draw", order, "--out", out};
    words.insert(words.end(), more.begin(), more.end());
    return run(words);
  }
};

TEST_F(Record, TheSameAgainIsSaidAndTouchesNothing) {
  ASSERT_EQ(draw().code, 0);
  const auto before = tree(out);
  const auto written = fs::last_write_time(out / "QB-1041/A/manifest.json");
  const Outcome again = draw();
  EXPECT_EQ(again.code, 0);
  EXPECT_THAT(again.out, HasSubstr("Already released, the same: order QB-1041 revision A"));
  EXPECT_EQ(tree(out), before);
  EXPECT_EQ(fs::last_write_time(out / "QB-1041/A/manifest.json"), written);
}

TEST_F(Record, OtherSteelUnderTheSameLetterIsRefusedInTheShopsWords) {
  ASSERT_EQ(draw().code, 0);
  const auto before = tree(out);
  thicker_pads();
  const Outcome refused = draw();
  EXPECT_EQ(refused.code, 2);
  EXPECT_EQ(tree(out), before);
  EXPECT_THAT(refused.out, ::testing::ContainsRegex("frame.tabs.plate.pad_thickness  3/8 in +1/2 in\n"));
  EXPECT_THAT(refused.out, HasSubstr("tab pad: 24 in both\n      thickness 3/8 in (9.5 mm) becomes 1/2 in"));
  EXPECT_THAT(refused.out, HasSubstr("Cut files to send again: cut/tab_pad.dxf\n"));
  EXPECT_THAT(refused.out, HasSubstr("Sheets to print again: "));
  EXPECT_THAT(refused.out, Not(HasSubstr("cut/jack_plate.dxf")));
  // The entry that is shown is one that does: pasted, the order is released as B.
  const std::size_t from = refused.out.find("revisions:\n  - {revision: A"),
                    to = refused.out.find("\n\nTo take back");
  ASSERT_NE(from, std::string::npos);
  ASSERT_NE(to, std::string::npos);
  change(order, "revision: A", "revision: B");
  std::ofstream(order, std::ios::app) << "\n" << refused.out.substr(from, to - from) << "\n";
  const Outcome raised = draw();
  EXPECT_EQ(raised.code, 0) << raised.out;
  EXPECT_TRUE(fs::exists(out / "QB-1041/B/cut/tab_pad.dxf"));
}

TEST_F(Record, ANewLetterTellsWhatChangesAndWhatStaysGood) {
  ASSERT_EQ(draw().code, 0);
  const auto a = tree(out / "QB-1041/A");
  thicker_pads();
  change(order, "revision: A", "revision: B");
  const Outcome unsaid = draw();
  EXPECT_EQ(unsaid.code, 2);
  EXPECT_THAT(unsaid.out,
              HasSubstr("base.yaml:7:3: order.revision: B has no entry under revisions that "
                        "says what it changes; add at the order's end: revisions: [{revision: B"));
  change(order, "revision: B", "revision: A");
  raise_to_b();
  const Outcome drawn = draw();
  ASSERT_EQ(drawn.code, 0) << drawn.out;
  EXPECT_THAT(drawn.out, HasSubstr("Against revision A\n"));
  EXPECT_THAT(drawn.out, HasSubstr("Cut files to send again: cut/tab_pad.dxf\n"));
  const std::size_t stay = drawn.out.find("Made parts that stay good\n");
  ASSERT_NE(stay, std::string::npos);
  EXPECT_THAT(drawn.out.substr(stay), HasSubstr("jack plate (6)"));
  EXPECT_THAT(drawn.out.substr(stay, 300), Not(HasSubstr("tab pad")));
  // Every sheet has another letter on it; only those that show pads are printed again.
  EXPECT_NE(a.at("sheets/drill_main.svg"), content(out / "QB-1041/B/sheets/drill_main.svg"));
  std::smatch again;
  ASSERT_TRUE(std::regex_search(drawn.out, again, std::regex("Sheets to print again: ([^:]*)\n[A-Z]")));
  EXPECT_THAT(again[1].str(), Not(HasSubstr("drill_main")));
  EXPECT_EQ(tree(out / "QB-1041/A"), a);
}

TEST_F(Record, ReplaceKeepsTheOldOneBesideWithItsReason) {
  ASSERT_EQ(draw().code, 0);
  const auto first = tree(out / "QB-1041/A");
  thicker_pads();
  const Outcome drawn = draw({"--replace", "pads bent under the log"});
  ASSERT_EQ(drawn.code, 0) << drawn.out;
  EXPECT_EQ(tree(out / "QB-1041/A.withdrawn-1"), first);
  EXPECT_NE(tree(out / "QB-1041/A"), first);
  const auto note = nlohmann::json::parse(content(out / "QB-1041/A.withdrawn-1.json"));
  EXPECT_EQ(note.at("why"), "pads bent under the log");
  EXPECT_THAT(run({"orders", "--out", out}).out, HasSubstr("pads bent under the log"));
  EXPECT_EQ(run({"verify", out, "--redraw"}).code, 0);
  EXPECT_EQ(draw({"--replace", "x", "--draft"}).code, 2);
  EXPECT_EQ(draw({"--replace", ""}).code, 2);
  EXPECT_EQ(draw({"--replace", "a\x1b[31m"}).code, 2);
}

TEST_F(Record, ANumberOfAnotherCustomersIsRefusedBeforeAnythingIsWritten) {
  ASSERT_EQ(draw().code, 0);
  const auto before = tree(folder);
  change(order, "Pinchbeck Farm", "Marrable Brothers");
  for (const std::vector<std::string>& more : {std::vector<std::string>{}, {"--replace", "x"}, {"--draft"}}) {
    const Outcome refused = draw(more);
    EXPECT_EQ(refused.code, 2);
    EXPECT_THAT(refused.out, HasSubstr("order number QB-1041 is taken: revision A is released "
                                       "for Pinchbeck Farm, and this order is for Marrable Brothers"));
  }
  change(order, "Marrable Brothers", "Pinchbeck Farm");
  EXPECT_EQ(tree(folder), before);
}

TEST_F(Record, ATrialAndAStoppedBedLeaveEveryReleaseAlone) {
  ASSERT_EQ(draw().code, 0);
  const auto release = tree(out / "QB-1041/A");
  const Outcome trial = draw({"--set", "frame.tabs.plate.pad_thickness=1/2 in"});
  EXPECT_EQ(trial.code, 0);
  EXPECT_THAT(trial.out, HasSubstr("Trial, NOT FOR FABRICATION"));
  const auto files = tree(out / "QB-1041/trial");
  for (const auto& [path, bytes] : files) EXPECT_FALSE(path.ends_with(".dxf")) << path;
  EXPECT_THAT(files.at("sheets/general_arrangement.svg"), HasSubstr("NOT FOR FABRICATION"));
  EXPECT_EQ(draw({"--set", "bolts.bunk=1-1/2 in"}).code, 1);
  EXPECT_EQ(tree(out / "QB-1041/trial").size(), 3U);
  EXPECT_EQ(tree(out / "QB-1041/A"), release);
  // And the order itself, when it no longer goes together.
  change(order, "position: 137 in", "position: 60 in");
  EXPECT_EQ(draw().code, 1);
  EXPECT_EQ(tree(out / "QB-1041/A"), release);
}

TEST_F(Record, ATrialIsWrittenDownAsAnOrderCommentsAndAll) {
  fs::create_directories(folder / "mine");
  const fs::path file = folder / "mine" / "thicker.yaml";
  const std::vector<std::string> words = {"new",
                                          "--from",
                                          order,
                                          "--set",
                                          "frame.tabs.plate.pad_thickness=1/2 in",
                                          "--set",
                                          "axle.position=138 in",
                                          file};
  const Outcome made = run(words);
  ASSERT_EQ(made.code, 0) << made.out;
  EXPECT_THAT(content(file), ::testing::StartsWith("# A bed of the kit's own length."));
  EXPECT_THAT(content(file), HasSubstr("  position: 138 in"));
  const Job job = std::get<Job>(load_job(file.string(), {}));
  EXPECT_NEAR(job.frame.tabs.plate->pad_thickness, 12.7, 1e-9);
  EXPECT_NEAR(job.order.axle.position, 138 * 25.4, 1e-9);
  const auto written = content(file);
  EXPECT_EQ(run(words).code, 2);
  EXPECT_EQ(content(file), written);
  EXPECT_EQ(run({"new", "--from", order, "--set", "axle.positoin=1 in", folder / "x.yaml"}).code, 2);
  EXPECT_FALSE(fs::exists(folder / "x.yaml"));
}

TEST_F(Record, DrawnAgainFromItsOwnInputsItIsTheSame) {
  fs::create_directories(folder / "words");
  std::ofstream(folder / "words" / "letterhead.txt") << "Our shop\n";
  change(order, "  tape: 1/16 in", "  tape: 1/16 in\n  assembly_template: ../../words");
  ASSERT_EQ(draw().code, 0);
  const auto release = tree(out / "QB-1041/A");
  EXPECT_EQ(release.at("inputs/words/letterhead.txt"), "Our shop\n");
  // Alone on another machine: nothing is left of the files it was drawn from.
  fs::copy(out / "QB-1041/A/inputs", folder / "kept", fs::copy_options::recursive);
  fs::remove_all(folder / "params");
  fs::remove_all(folder / "words");
  ASSERT_EQ(run({"draw", folder / "kept/order.yaml", "--out", folder / "again"}).code, 0);
  EXPECT_EQ(tree(folder / "again/QB-1041/A"), release);
  const Outcome verified = run({"verify", out / "QB-1041/A", "--redraw"});
  EXPECT_EQ(verified.code, 0);
  EXPECT_THAT(verified.out, HasSubstr("files as they were written, and the same drawn again"));
}

TEST_F(Record, CatalogueFilesOfOneNameStayTwo) {
  fs::create_directories(folder / "params/more");
  fs::rename(folder / "params/catalog/angles.yaml", folder / "params/more/channels.yaml");
  change(order, "../catalog/angles.yaml", "../more/channels.yaml");
  ASSERT_EQ(draw().code, 0);
  EXPECT_TRUE(fs::exists(out / "QB-1041/A/inputs/catalog/2-channels.yaml"));
  EXPECT_EQ(run({"verify", out, "--redraw"}).code, 0);
}

TEST_F(Record, VerifyNamesWhatIsMissingChangedOrExtra) {
  ASSERT_EQ(draw().code, 0);
  const fs::path release = out / "QB-1041/A";
  EXPECT_EQ(run({"verify", release.string() + "/"}).code, 0);
  std::ofstream(release / "cut/jack_plate.dxf", std::ios::app) << " ";
  fs::remove(release / "lists/parts.csv");
  std::ofstream(release / "cut/more.dxf") << "x";
  const Outcome verified = run({"verify", release});
  EXPECT_EQ(verified.code, 1);
  for (const char* fault : {"A: cut/jack_plate.dxf was changed", "A: lists/parts.csv is missing",
                            "A: cut/more.dxf is none of its files"})
    EXPECT_THAT(verified.out, HasSubstr(fault));
  const Outcome drawn = draw();
  EXPECT_EQ(drawn.code, 2);
  EXPECT_THAT(drawn.out, HasSubstr("cut/jack_plate.dxf was changed"));
  EXPECT_EQ(run({"verify", folder / "nothing"}).code, 2);
  ASSERT_EQ(draw({"--replace", "edited by hand"}).code, 0);
  EXPECT_EQ(run({"verify", release, "--redraw"}).code, 0);
  EXPECT_TRUE(fs::exists(out / "QB-1041/A.withdrawn-1/cut/more.dxf"));
}

TEST_F(Record, ARevisionIsASafeFolderNameAndWordsHaveNoControlCharacters) {
  for (const char* revision : {"..", ".", "A.withdrawn-1", "trial", "Trial", "extra", "A/B", "'B C'",
                               "\"A\\u202e\"", "AAAAAAAAAAAAAAAAA"}) {
    const std::string before = content(order);
    change(order, "revision: A", fmt::format("revision: {}", revision));
    const Outcome refused = draw();
    EXPECT_EQ(refused.code, 2) << revision;
    EXPECT_THAT(refused.out, HasSubstr("base.yaml:7:3: order.revision: ")) << revision;
    std::ofstream(order, std::ios::binary) << before;
  }
  for (const char* words : {"\"Farm\\0\"", "\"\\eFarm\"", "\"Fa\\arm\"", "\"Fa\\x9brm\"", "\"Fa\\trm\""}) {
    const std::string before = content(order);
    change(order, "customer: Pinchbeck Farm", fmt::format("customer: {}", words));
    const Outcome refused = draw();
    EXPECT_EQ(refused.code, 2) << words;
    EXPECT_THAT(refused.out, HasSubstr("base.yaml:4:13: order.customer: has the control character "));
    EXPECT_EQ(refused.out.find_first_of(std::string("\0\x1b\x07\x9b", 4)), std::string::npos);
    std::ofstream(order, std::ios::binary) << before;
  }
  EXPECT_FALSE(fs::exists(out));
}

TEST_F(Record, StandardErrorClosedOrFullStopsNothing) {
  const std::string command = quoted(BEDWRIGHT_PROGRAM) + " draw " + quoted(order) + " --out " + quoted(out);
  EXPECT_EQ(outcome_of(command + " 2>&-").code, 0);
  EXPECT_EQ(run({"verify", out}).code, 0);
  EXPECT_EQ(outcome_of(command + " 2>/dev/full").code, 0);
  change(order, "revision: A", "revision: ..");
  EXPECT_EQ(outcome_of(command + " 2>/dev/full").code, 2);
  EXPECT_EQ(outcome_of(command + " 2>&-").code, 2);
  change(order, "revision: ..", "revision: A");
  // Nothing of what is printed gets into a file, whatever number its stream had.
  fs::remove_all(out);
  EXPECT_NE(outcome_of(command + " >&- 2>&-").code, 0);
  EXPECT_EQ(run({"verify", out}).code, 0);
}

TEST_F(Record, OrdersListsWhatWasDrawnAndFindsIt) {
  ASSERT_EQ(draw().code, 0);
  ASSERT_EQ(run({"draw", folder / "params/orders/metric.yaml", "--out", out}).code, 0);
  ASSERT_EQ(run({"draw", folder / "params/orders/wrong.yaml", "--out", out}).code, 1);
  const auto list = [&](std::vector<std::string> more) {
    more.insert(more.begin(), {"orders", "--out", out, "--json"});
    const auto json = nlohmann::json::parse(run(more).out);
    std::string all;
    for (const auto& o : json.at("orders"))
      all += o.at("number").get<std::string>() + " " + o.at("state").get<std::string>() + ";";
    return all;
  };
  EXPECT_EQ(list({}), "QB-1041 released;QB-1043 released;QB-1045 trial;");
  EXPECT_EQ(list({"--customer", "pinchbeck"}), "QB-1041 released;QB-1045 trial;");
  EXPECT_EQ(list({"--number", "1043"}), "QB-1043 released;");
  EXPECT_EQ(list({"--year", "2025"}), "");
  const Outcome table = run({"orders", "--out", out});
  EXPECT_THAT(table.out,
              ::testing::ContainsRegex("QB-1043  A +2026-10-19  released +[0-9]+ +[0-9]+  Aldermere Estate"));
  std::ofstream(out / "QB-1041/A/manifest.json") << "{}";
  EXPECT_THAT(run({"orders", "--out", out, "--customer", "nobody"}).out, HasSubstr("cannot be read"));
}

}  // namespace
}  // namespace bedwright
