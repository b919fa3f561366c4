// Frames that stand, as the program is run: a survey to fill in, and which frames take a track.
#include <gmock/gmock.h>

#include <fstream>
#include <map>
#include <sstream>

#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;
using ::testing::StartsWith;

const std::string lot_7 = std::string(BEDWRIGHT_SOURCE) + "/params/frames/lot_frame_7.yaml";

// Filled in with what lot_frame_7.yaml has, its heights left out, the survey is that frame again; until then
// every empty line is told.
TEST_F(Program, ASurveyIsFilledInAndIsTheFrame) {
  const fs::path survey = folder / "lot_8.yaml";
  ASSERT_EQ(run({"new", "--survey", lot_7, survey}).code, 0);
  EXPECT_THAT(content(folder / "lot_8.pdf"), StartsWith("%PDF"));
  EXPECT_EQ(run({"new", "--survey", lot_7, survey}).code, 2) << "nothing is written over";
  const std::vector<std::string> check = {"check", order_path("lot_frame"), "--set",
                                          "frame=" + survey.string()};
  const Outcome empty = run(check);
  EXPECT_EQ(empty.code, 2);
  for (const char* key : {"name", "main.spacing", "main.length", "tabs.existing", "jack.existing"})
    EXPECT_THAT(empty.out, HasSubstr(key));
  const std::map<std::string, std::string> as_measured = {
      {"name", "Lot frame 7, tabs every 14 in"},
      {"section", "C6x8.2"},
      {"spacing", "44 in"},
      {"length", ""},
      {"back", "4-3/4 in"},
      {"hole_diameter", "9/16 in"},
      {"slot_length", "1 in"},
      {"existing_line", "1-1/4 in"},
      {"plate_thickness", "1/2 in"},
      {"pad_thickness", "3/8 in"},
      {"tyre_inside", "57 in"},
      {"ball_ahead", "3 in"},
      {"old_holes", "[]"},
  };
  // "length" and "existing" in the order they come: mains, tongue, tabs; cross members, tabs,
  // jacks, axle.
  const std::string tabs =
      "[7 in, 21 in, 35 in, 49 in, 63 in, 77 in, 91 in, 105 in, 119 in, 133 in, 147 in, 161 in, 175 in, "
      "189 in, 203 in, 217 in, 231 in, 245 in]";
  std::vector<std::string> lengths = {"3 in", "38 in", "252 in"},
                           existing = {"143 in", "[14 in, 126 in, 238 in]", tabs,
                                       "[36 in, 72 in, 108 in, 144 in, 180 in, 216 in]"};
  std::istringstream lines(content(survey));
  std::string filled;
  for (std::string line; std::getline(lines, line); filled += "\n") {
    const std::size_t mark = line.find(":   # MEASURE");
    if (mark != std::string::npos && line.substr(0, mark).ends_with("heights")) continue;  // not measured
    filled += line.substr(0, mark);
    if (mark == std::string::npos) continue;
    const std::string key = line.substr(line.find_first_not_of(' '), mark - line.find_first_not_of(' '));
    std::vector<std::string>* in_turn = key == "length" ? &lengths : key == "existing" ? &existing : nullptr;
    if (in_turn) {
      ASSERT_FALSE(in_turn->empty()) << line;
      filled += ": " + in_turn->back();
      in_turn->pop_back();
    } else {
      ASSERT_TRUE(as_measured.contains(key)) << line;
      filled += ": " + as_measured.at(key);
    }
  }
  std::ofstream(survey, std::ios::binary) << filled;
  const Outcome full = run(check);
  EXPECT_EQ(full.code, 0) << full.out;
  EXPECT_EQ(full.out, run({"check", order_path("lot_frame")}).out);
}

// What the 90 in rail asks of the frame on the lot, done and written into its file: the order
// without its overrides passes, its packet has nothing more to do to the frame, and cuts nothing.
TEST_F(Program, WorkDoneAndWrittenBackLeavesNothingToDo) {
  const std::string drawn = (folder / "out").string(), order = order_path("lot_frame_90");
  ASSERT_EQ(run({"draw", order, "--out", drawn}).code, 0);
  const fs::path before = folder / "out/QB-1047/A";
  EXPECT_TRUE(fs::exists(before / "sheets/frame_changes.pdf"));
  EXPECT_TRUE(fs::exists(before / "cut/new_tab_plate.dxf"));
  EXPECT_THAT(content(before / "lists/changes.csv"), HasSubstr("CUT OFF"));
  // As the sheet has it: off at 91, 119, 161, 189, 217 and 231 in; on at 70, 97, 125, 139, 160,
  // 187, 215, 229 and 250 in.
  std::string frame = content(lot_7);
  const std::string was =
      "[7 in, 21 in, 35 in, 49 in, 63 in, 77 in, 91 in, 105 in, 119 in, 133 in, 147 in, "
      "161 in, 175 in, 189 in, 203 in, 217 in, 231 in, 245 in]";
  const std::size_t at = frame.find(was);
  ASSERT_NE(at, std::string::npos);
  frame.replace(
      at, was.size(),
      "[7 in, 21 in, 35 in, 49 in, 63 in, 70 in, 77 in, 97 in, 105 in, 125 in, 133 in, 139 in, 147 in, "
      "160 in, 175 in, 187 in, 203 in, 215 in, 229 in, 245 in, 250 in]");
  const fs::path mended = folder / "lot_frame_7.yaml";
  std::ofstream(mended, std::ios::binary) << frame;
  // The next order is the same without what was to be done.
  std::string text = content(order);
  const auto put = [&](const std::string& was_there, const std::string& is) {
    for (std::size_t i = text.find(was_there); i != std::string::npos;
         i = text.find(was_there, i + is.size()))
      text.replace(i, was_there.size(), is);
  };
  ASSERT_NE(text.find("\noverrides:"), std::string::npos);
  text.erase(text.find("\noverrides:") + 1);
  put("../frames/lot_frame_7.yaml", mended.string());
  put("../", std::string(BEDWRIGHT_SOURCE) + "/params/");
  put("QB-1047", "QB-1048");
  const fs::path next = folder / "next.yaml";
  std::ofstream(next, std::ios::binary) << text;
  const Outcome again = run({"draw", next, "--out", drawn});
  EXPECT_EQ(again.code, 0) << again.out;
  const fs::path after = folder / "out/QB-1048/A";
  ASSERT_TRUE(fs::exists(after / "lists/changes.csv")) << again.out;
  EXPECT_THAT(content(after / "lists/changes.csv"), ::testing::Not(HasSubstr("1,")));
  EXPECT_FALSE(fs::exists(after / "sheets/frame_changes.pdf"));
  EXPECT_FALSE(fs::exists(after / "cut"));
  EXPECT_FALSE(fs::exists(after / "drill"));
}

TEST_F(Program, FramesOfTheLotAreTriedWithATrack) {
  const Outcome as_it_stands = run({"offer", order_path("lot_frame"), "--frames", lot_7});
  EXPECT_EQ(as_it_stands.code, 0) << as_it_stands.out;
  EXPECT_THAT(as_it_stands.out, HasSubstr("as it stands"));
  // The last hole of a track of 100 in rails lies past the mains: no work on tabs helps.
  const Outcome too_long =
      run({"offer", order_path("lot_frame"), "--set", "track.rail_length=100 in", "--frames", lot_7});
  EXPECT_EQ(too_long.code, 1);
  EXPECT_THAT(too_long.out, HasSubstr("HOLE-NO-TAB"));
}

}  // namespace
}  // namespace bedwright
