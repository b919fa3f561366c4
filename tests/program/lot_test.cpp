// A lot of twenty frames that stand, each a little other than lot_frame_7.yaml, against three
// tracks: which take it, after how much work. What each row must say is worked out by hand from
// where tabs and holes are.
#include <fmt/format.h>
#include <gmock/gmock.h>

#include <chrono>
#include <cmath>
#include <fstream>
#include <iostream>
#include <numeric>
#include <sstream>

#include "support/demo.h"
#include "support/run_program.h"

namespace bedwright {
namespace {

using namespace testing;
using ::testing::HasSubstr;

// Inches, in sixteenths.
std::string inches(double x) {
  const int all = static_cast<int>(std::lround(x * 16)), whole = all / 16, rest = all % 16;
  if (rest == 0) return fmt::format("{} in", whole);
  const int by = std::gcd(rest, 16);
  return whole > 0 ? fmt::format("{}-{}/{} in", whole, rest / by, 16 / by)
                   : fmt::format("{}/{} in", rest / by, 16 / by);
}

std::string list_of(const std::vector<double>& places) {
  std::string text;
  for (const double x : places) text += (text.empty() ? "" : ", ") + inches(x);
  return "[" + text + "]";
}

struct LotFrame {
  double length = 252, first = 7, pitch = 14;  // mains; tabs from their front end
  const char* slot = "1 in";
  double line = 1.25;
  std::vector<double> jacks = {14, 126, 238};
  double axle = 143;
  double not_on_the_left = 0;  // a tab that only the right side has
  double low = 0;              // one measured so much below the others
};

// By number: 1 is the demo's own.
std::vector<LotFrame> lot() {
  std::vector<LotFrame> all(20);
  all[1].slot = "3/4 in";
  all[2].slot = "9/16 in";
  all[3].line = 1.5;
  all[4].first = 6;
  all[5].first = 5.5, all[5].pitch = 15;
  for (const int i : {6, 7}) all[i].length = 270, all[i].jacks = {14, 135, 256}, all[i].axle = 153;
  all[7].first = 10, all[7].pitch = 15;
  for (const int i : {8, 9}) all[i].length = 240, all[i].jacks = {14, 120, 226}, all[i].axle = 136;
  all[9].first = 5.5, all[9].pitch = 15.25, all[9].slot = "1-1/8 in";
  all[10].pitch = 28;
  all[11].pitch = 7;
  all[12].first = 7.0625;
  all[13].pitch = 14.0625;
  all[14].length = 300, all[14].jacks = {14, 150, 286}, all[14].axle = 170;
  all[15].jacks = {14, 133, 238};
  all[16].axle = 150;
  all[17].length = 168, all[17].jacks = {14, 84, 154}, all[17].axle = 97;
  all[18].not_on_the_left = 49;
  all[19].low = 3 / 32.0;
  return all;
}

void put(std::string& text, const std::string& was, const std::string& is) {
  const std::size_t at = text.find(was);
  if (at == std::string::npos) throw std::runtime_error("lot_frame_7.yaml has no " + was);
  text.replace(at, was.size(), is);
}

void write_frame(const fs::path& file, int number, const LotFrame& f) {
  std::string text = content(std::string(BEDWRIGHT_SOURCE) + "/params/frames/lot_frame_7.yaml");
  std::vector<double> tabs, cross;
  for (double x = f.first; x <= f.length - 2; x += f.pitch) tabs.push_back(x);
  for (double x = 36; x <= f.length - 20; x += 36) cross.push_back(x);
  put(text, "Lot frame 7, tabs every 14 in", fmt::format("Frame {}", number));
  put(text, "length: 252 in", "length: " + inches(f.length));
  put(text, "[36 in, 72 in, 108 in, 144 in, 180 in, 216 in]", list_of(cross));
  put(text,
      "[7 in, 21 in, 35 in, 49 in, 63 in, 77 in, 91 in, 105 in, 119 in, 133 in, 147 in, 161 in, 175 in, 189 "
      "in, "
      "203 in, 217 in, 231 in, 245 in]",
      list_of(tabs));
  put(text, "slot_length: 1 in", std::string("slot_length: ") + f.slot);
  put(text, "[14 in, 126 in, 238 in]", list_of(f.jacks));
  put(text, "existing: 143 in", "existing: " + inches(f.axle));
  std::string more;
  if (f.not_on_the_left > 0) {
    std::vector<double> left = tabs;
    std::erase_if(left, [&](double x) { return std::abs(x - f.not_on_the_left) < 0.01; });
    more += "  left: {existing: " + list_of(left) + "}\n";
  }
  if (f.low > 0) {
    more += "  heights:\n";
    for (const double x : tabs)
      more += fmt::format("    - {{at: {}, left: 0 in, right: {} in}}\n", inches(x),
                          std::abs(x - 63) < 0.01 || std::abs(x - 49) < 0.01 ? -f.low : 0.0);
  }
  put(text, "  existing_line: 1-1/4 in", more + "  existing_line: " + inches(f.line));
  std::ofstream(file, std::ios::binary) << text;
}

// Minutes of the shop of our own story.
const char* times =
    "times={cut_off_tab: 12, file_tab: 10, add_tab: 30, drill_hole: 6, move_jack: 20, shim_tab: 3}";

class Lot : public Program {
 protected:
  void SetUp() override {
    Program::SetUp();
    int number = 0;
    for (const LotFrame& f : lot()) {
      ++number;
      files.push_back(folder / fmt::format("frame_{:02}.yaml", number));
      write_frame(files.back(), number, f);
    }
  }
  Outcome offer(const std::string& order, const std::vector<std::string>& sets) const {
    std::vector<std::string> words = {"offer", order_path(order)};
    for (const std::string& set : sets) words.insert(words.end(), {"--set", set});
    words.emplace_back("--frames");
    words.insert(words.end(), files.begin(), files.end());
    const auto start = std::chrono::steady_clock::now();
    Outcome out = run(words);
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - start;
    if (std::getenv("BEDWRIGHT_SAY")) std::cout << order << "\n" << out.out << took.count() << " s\n";
    return out;
  }
  static std::string row(const std::string& table, int number) {
    std::istringstream in(table);
    const std::string name = fmt::format("Frame {} ", number);
    for (std::string line; std::getline(in, line);)
      if (line.starts_with(name)) return line;
    return "no row " + name;
  }
  std::vector<std::string> files;
};

// Cut off, filed, drilled, welded on, shimmed, hours: "-" where there is none.
std::string figures(const std::string& row) {
  std::istringstream in(row);
  std::string word, all;
  for (int i = 0; i < 8 && in >> word; ++i)
    if (i >= 2) all += (all.empty() ? "" : " ") + word;  // behind "Frame 7"
  return all;
}

// Rails of 84 in with holes at 7, 35, 49 and 77 in of each.
TEST_F(Lot, TwentyFramesAgainstTheLongTrack) {
  const std::string table = offer("lot_frame", {times}).out;
  SCOPED_TRACE(table);
  for (const int same : {1, 16}) {
    EXPECT_THAT(row(table, same), HasSubstr("as it stands")) << same;
    EXPECT_EQ(figures(row(table, same)), "- - - - - 0.0") << same;
  }
  // Round holes of 9/16 in leave a bolt of 1/2 in 1/32 in each way, and less than the rails are
  // out: all 24 tabs are filed, 10 minutes each.
  EXPECT_EQ(figures(row(table, 3)), "- 24 - - - 4.0");
  EXPECT_THAT(row(table, 3), HasSubstr("after this work"));
  // Every second tab: none under 49, 77, 133, 161, 217 and 245 in, on either side; 30 minutes each.
  EXPECT_EQ(figures(row(table, 11)), "- - - 12 - 6.0");
  EXPECT_THAT(row(table, 11), HasSubstr("pinned at its middle"));
  // All an inch off: 24 off at 12 minutes, 24 on at 30.
  EXPECT_EQ(figures(row(table, 5)), "24 - - 24 - 16.8");
  // One tab that the left side alone lacks.
  EXPECT_EQ(figures(row(table, 19)), "- - - 1 - 0.5");
  // Of the two on the right that are low a bolt goes through the one at 49 in; 3 minutes.
  EXPECT_EQ(figures(row(table, 20)), "- - - - 1 0.1");
  for (const auto& [number, code] :
       {std::pair(4, "TAB-LINE"), {9, "HOLE-NO-TAB"}, {17, "TOW-SHARE"}, {18, "HOLE-NO-TAB"}}) {
    EXPECT_THAT(row(table, number), HasSubstr("no: ")) << number;
    EXPECT_THAT(row(table, number), HasSubstr(code)) << number;
  }
  // The least work stands first.
  EXPECT_LT(table.find("Frame 1 "), table.find("Frame 3 "));
  EXPECT_LT(table.find("Frame 3 "), table.find("Frame 5 "));
  EXPECT_LT(table.find("Frame 5 "), table.find("Frame 18 "));
}

// Rails of 90 in with holes at 7, 35, 49 and 70 in of each: on the demo's frame 6 places off and 9
// on, both sides, as its order has them: 12 x 12 and 18 x 30 minutes.
TEST_F(Lot, TwentyFramesAgainstTheNinetyTrack) {
  const std::string table = offer("lot_frame_90", {times, "overrides=[]"}).out;
  SCOPED_TRACE(table);
  EXPECT_EQ(figures(row(table, 1)), "12 - - 18 - 11.4");
  EXPECT_THAT(row(table, 1), HasSubstr("after this work"));
  // The left lacks its tab at 49 in besides.
  EXPECT_EQ(figures(row(table, 19)), "12 - - 19 - 11.9");
  EXPECT_THAT(row(table, 18), HasSubstr("no: "));
}

// Without the shop's minutes there are no hours, and that is said.
TEST_F(Lot, WithoutTimesTheHoursAreNotKnown) {
  const std::string table = offer("lot_frame", {}).out;
  SCOPED_TRACE(table);
  EXPECT_EQ(figures(row(table, 3)), "- 24 - - - ?");
  EXPECT_THAT(table, HasSubstr("HOURS ?"));
}

}  // namespace
}  // namespace bedwright
