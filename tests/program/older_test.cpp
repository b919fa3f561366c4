// A release met again: by a later program, and by whoever wants single sheets of it.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::Not;

class MetAgain : public Program {
 protected:
  void SetUp() override {
    Program::SetUp();
    out = folder / "out";
    order = folder / "params/orders/base.yaml";
    fs::copy(fs::path(BEDWRIGHT_SOURCE) / "params", folder / "params", fs::copy_options::recursive);
    ASSERT_EQ(run({"draw", order, "--out", out}).code, 0);
    release = out / "QB-1041/A";
  }
  static void replace(const fs::path& in, const std::string& what, const std::string& with) {
    std::string text = content(in);
    ASSERT_NE(text.find(what), std::string::npos) << what;
    std::ofstream(in, std::ios::binary) << text.replace(text.find(what), what.size(), with);
  }
  // The digests are coreutils', not the program's.
  static std::string first_word(const std::string& command) { return outcome_of(command).out.substr(0, 64); }

  // As if another program had released it so: its manifest names what lies there now.
  void released_by(const std::string& version, const std::string& format = "bedwright-packet-2") const {
    auto json = nlohmann::ordered_json::parse(content(release / "manifest.json"));
    json["version"] = version;
    json["format"] = format;
    for (auto& file : json["files"]) {
      const fs::path path = release / file["path"].get<std::string>();
      file["bytes"] = fs::file_size(path);
      file["sha256"] = first_word("sha256sum < " + quoted(path));
    }
    json["input_sha256"] = first_word("cd " + quoted(release) +
                                      "; find inputs -type f | LC_ALL=C sort | xargs sha256sum | sha256sum");
    std::ofstream(release / "manifest.json", std::ios::binary) << json.dump(2) << "\n";
  }
  Outcome redrawn() const {
    EXPECT_EQ(run({"verify", release}).code, 0);
    return run({"verify", release, "--redraw"});
  }
  fs::path out, order, release;
};

TEST_F(MetAgain, WhatThisProgramWouldCutOtherwiseIsListed) {
  replace(release / "cut/jack_plate.dxf", "ENDSEC", "ENDSEC ");
  released_by("0.1.0");
  const Outcome again = redrawn();
  EXPECT_EQ(again.code, 1);
  EXPECT_THAT(again.out, HasSubstr("it was released by bedwright 0.1.0, this is"));
  EXPECT_THAT(again.out, HasSubstr("Cut files that would be written otherwise: cut/jack_plate.dxf\n"));
  EXPECT_THAT(again.out, Not(HasSubstr("Sheets that")));
  EXPECT_THAT(again.out, Not(HasSubstr("send again")));
}

TEST_F(MetAgain, TheSameFilesByAnOlderProgramAreTheSame) {
  released_by("0.1.0");
  const Outcome again = redrawn();
  EXPECT_EQ(again.code, 0);
  EXPECT_THAT(again.out, HasSubstr("and the same drawn again"));
}

TEST_F(MetAgain, ALaterProgramsReleaseIsNotJudgedByThisOne) {
  released_by("9.10.0");
  EXPECT_THAT(redrawn().out, HasSubstr("9.10.0, which is later than this"));
  released_by("9.10.0", "bedwright-packet-3");
  const auto before = tree(out);
  const Outcome verified = run({"verify", release});
  EXPECT_EQ(verified.code, 1);
  EXPECT_THAT(verified.out, HasSubstr("of the form bedwright-packet-3, written by bedwright 9.10.0"));
  const Outcome drawn = run({"draw", order, "--out", out});
  EXPECT_EQ(drawn.code, 2);
  EXPECT_THAT(drawn.out, HasSubstr("look at it with that program"));
  EXPECT_EQ(tree(out), before);
}

TEST_F(MetAgain, InputsThatNoLongerReadAreNamedWithWhatToChange) {
  replace(release / "inputs/order.yaml", "  tape: 1/16 in", "  tape_marks: 1/16 in");
  released_by("0.1.0");
  const Outcome again = redrawn();
  EXPECT_EQ(again.code, 1);
  EXPECT_THAT(again.out, HasSubstr("cannot be drawn again: "));
  const std::string text = content(release / "inputs/order.yaml");
  const auto line =
      1 + std::count(text.begin(), text.begin() + static_cast<long>(text.find("tape_marks")), '\n');
  EXPECT_THAT(again.out, HasSubstr("inputs/order.yaml:" + std::to_string(line) + ":3: order.tape_marks: "));
  EXPECT_THAT(again.out, HasSubstr("change there what is named above"));
}

TEST_F(MetAgain, SingleSheetsAreDrawnBesideTheReleaseAsOftenAsWanted) {
  const auto before = tree(release);
  ASSERT_EQ(run({"sheet", release.string() + "/", "tab_layout", "drill_main"}).code, 0);
  ASSERT_EQ(run({"sheet", release, "drill_main"}).code, 0);
  const fs::path extra = out / "QB-1041/extra/A";
  EXPECT_EQ(content(extra / "drill_main.svg"), before.at("sheets/drill_main.svg"));
  EXPECT_EQ(content(extra / "drill_main_2.svg"), before.at("sheets/drill_main_2.svg")) << "its further page";
  EXPECT_FALSE(fs::exists(extra / "tab_layout.svg"));
  EXPECT_THAT(outcome_of("pdftotext " + quoted(extra / "extra.pdf") + " - | grep -c 'QB-1041'").out,
              Not("0\n"));
  EXPECT_EQ(tree(release), before);
  EXPECT_EQ(run({"verify", out}).code, 0);
  EXPECT_EQ(run({"sheet", release, "drill"}).code, 2);
  std::ofstream(extra / "mine.txt") << "x";
  EXPECT_THAT(run({"sheet", release, "drill_main"}).out, HasSubstr("holds mine.txt"));
  EXPECT_TRUE(fs::exists(extra / "mine.txt"));
}

TEST_F(MetAgain, NoSheetIsPrintedThatIsNotTheReleases) {
  ASSERT_EQ(run({"sheet", release, "tab_layout"}).code, 0);
  replace(release / "sheets/drill_main.svg", "</svg>", "</svg> ");
  EXPECT_THAT(run({"sheet", release, "drill_main"}).out, HasSubstr("is not as it was released"));
  released_by("0.1.0");
  const Outcome refused = run({"sheet", release, "drill_main"});
  EXPECT_EQ(refused.code, 2);
  EXPECT_THAT(refused.out,
              HasSubstr("drill_main comes out otherwise than it was released (by bedwright 0.1.0"));
  replace(order, "position: 137 in", "position: 138 in");
  ASSERT_EQ(run({"draw", order, "--out", out, "--replace", "axle too far forward"}).code, 0);
  EXPECT_FALSE(fs::exists(out / "QB-1041/extra/A")) << "sheets of the one before under the new one's letter";
  EXPECT_TRUE(fs::exists(out / "QB-1041/extra/A.withdrawn-1/extra.pdf"));
  EXPECT_THAT(run({"sheet", out / "QB-1041/A.withdrawn-1", "tab_layout"}).out,
              HasSubstr("is withdrawn (axle too far forward)"));
}

}  // namespace
}  // namespace bedwright
