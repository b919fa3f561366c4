// The rule book's entries: each whole, of its family, and about its own rule.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>
#include <sstream>
#include <string>
#include <vector>

#include "rules/rule.h"

namespace bedwright {
namespace {

// Every rule by its family, with words that only its own question and formula have.
struct Expected {
  const char *code, *family, *asks, *formula;
};
constexpr Expected book[] = {
    {"HOLE-NO-TAB", "hole fit", "under every mounting hole", "no tab in reach"},
    {"HOLE-FIT", "hole fit", "go through every hole it must", "root sum square"},
    {"HOLE-PAINT", "hole fit", "paint or zinc", "needed beyond the slots"},
    {"TAB-FOUND", "hole fit", "stand where it was laid out", "tabs_found"},
    {"DATUM", "hole fit", "track pinned", "pinned at front, middle and rear"},
    {"BOLT-SHORT", "stack", "enough thread", "- nut) / pitch"},
    {"BOLT-LONG", "stack", "too far past the nut", "length + length tolerance"},
    {"BOLT-THREAD", "stack", "under the nut's bearing face", "plain shank"},
    {"WASHER-FLAT", "stack", "seat square", "slope of the face"},
    {"WASHER-COVER", "stack", "cover the hole it bears on", "washer outside diameter"},
    {"TIP", "tip", "the bolt's tip", "last ply to the nearest thing"},
    {"BOLT-KINDS", "kinds of bolt", "fewer different bolt lengths", "fewest stock lengths"},
    {"REACH", "reach", "tool get on each bolt", "open-end wrench"},
    {"CLASH", "clash", "two solids in one place", "deeper than 0.05 mm"},
    {"CLASH-MOVING", "clash", "the head, the clamps and the wheels", "each of its states"},
    {"EDGE", "edge, spacing", "each hole and the edge", "to the nearest free edge"},
    {"HOLE-STEEL", "edge, spacing", "wholly in the steel", "the hole's rim"},
    {"SPACING", "edge, spacing", "between holes", "centre to centre in one face"},
    {"RAIL-REMAINDER", "rail joint", "whole number of bunk pitches", "less whole pitches"},
    {"JOINT-SUPPORT", "rail joint", "a tab near it", "nearest tab's hole"},
    {"JOINT-CLAMP", "rail joint", "slide away from the rail joints", "clamp's foot"},
    {"JOINT-GAP", "rail joint", "close enough for the wheels", "lets it stand open"},
    {"JOINT-STEP", "rail joint", "tops meet at one height", "standing leg's height"},
    {"GUSSET-BOLTS", "rail joint", "gusset hold both rails", "ahead of and behind"},
    {"TRACK-LENGTH", "rail joint", "track that was ordered", "sections x length tolerance"},
    {"CUT-HOLE", "cut", "plasma table cut each hole", "width of the hole / thickness"},
    {"CENTRE-MARK", "cut", "marked for the drill", "diameter < limits.table_hole"},
    {"CUT-WEB", "cut", "burn through", "hole's rim to the outline"},
    {"STOCK-PLATE", "cut", "plate the shop buys", "longer and shorter side"},
    {"LETTERS", "cut", "letters that can be read", "3 mm clear of every edge"},
    {"WELD-STEEL", "weld", "steel of both parts", "each run's root"},
    {"STANDING", "hole fit", "stands left as it is", "frame.jack.existing"},
    {"CROSS-SPACING", "weld", "cross members stand as close", "web to web"},
    {"TAB-LINE", "hole fit", "over the tab holes of a frame that stands", "existing_line"},
    {"CLEARANCE", "clash", "not to touch stay apart", "over whatever holds them"},
    {"WELD-CONTACT", "weld", "parts of each weld touch", "gap between the two"},
    {"WELD-LEAST", "weld", "large enough for its steel", "against the thinner part"},
    {"WELD-MOST", "weld", "leave its edge standing", "against the edge it runs along"},
    {"WELD-LOAD", "weld", "as a log lands", "elastic method"},
    {"TORCH", "weld", "a torch reach", "nozzle 4 in long"},
    {"HEAD-ON-RAILS", "travel", "head stay on its rails", "half of wheel_base"},
    {"TRACK-STOP", "travel", "stops stop the head", "foremost and rearmost boxes and a stop"},
    {"HEAD-LOCK", "travel", "locked between its stops", "ends of its travel"},
    {"ON-BUNK", "travel", "stay on their bunks", "over its whole slide"},
    {"BUNK-ON-RAIL", "rail joint", "whole on one rail section", "flat leg to the section's ends"},
    {"JACK-REACH", "ground", "jack reach the ground", "run all the way down"},
    {"ROAD-CLEAR", "ground", "hangs low clear the road", "ball to axle"},
    {"CREST", "ground", "clear a crest", "distance to its own wheels"},
    {"TURN", "ground", "in a tight turn", "turned about it degree by degree"},
    {"DEPARTURE", "ground", "clear a drive", "turned until it touches"},
    {"BALL-HEIGHT", "ground", "level on the towing ball", "height of the coupler's middle"},
    {"COUPLER-FIT", "ground", "one for this tongue", "behind the tongue's front cut"},
    {"SPRING-SEAT", "ground", "springs hang from steel", "half a spring from the axle"},
    {"TONGUE-END", "ground", "rear ends stay under", "outer corner of each channel"},
    {"RAIL-SHIM", "height", "How much shim", "highest tab top"},
    {"TIP-HEIGHT", "height", "lies lower than drawn", "from tab to tab"},
};

// An entry as it is printed: its head line, and what stands after each label.
struct Entry {
  std::string head;
  std::vector<std::string> labels;
  std::map<std::string, std::string> fields;
};

Entry read(const std::string& text) {
  Entry entry;
  std::istringstream lines(text);
  std::getline(lines, entry.head);
  for (std::string line; std::getline(lines, line);) {
    std::istringstream words(line);
    std::string label, value;
    words >> label;
    std::getline(words >> std::ws, value);
    entry.labels.push_back(label);
    entry.fields[label] = value;
  }
  return entry;
}

TEST(Explain, EveryRuleIsInTheBookAndNoOther) {
  std::multiset<std::string> expected, there;
  for (const Expected& e : book) expected.insert(e.code);
  for (const Rule& rule : rules()) there.insert(rule.code);
  EXPECT_EQ(there, expected);
  EXPECT_FALSE(explain("NO-SUCH").has_value());
  EXPECT_FALSE(explain("").has_value());
}

TEST(Explain, EveryRulesEntryIsWholeAndOfItsFamily) {
  for (const Expected& e : book) {
    const auto text = explain(e.code);
    ASSERT_TRUE(text.has_value()) << e.code;
    const Entry entry = read(*text);
    EXPECT_EQ(entry.head, std::string(e.code) + " (" + e.family + ")");
    EXPECT_THAT(entry.labels, testing::ElementsAre("asks", "formula", "limit", "source", "change")) << e.code;
    for (const auto& [label, value] : entry.fields) EXPECT_FALSE(value.empty()) << e.code << ": " << label;
    EXPECT_TRUE(entry.fields.at("asks").ends_with("?")) << e.code << ": " << entry.fields.at("asks");
  }
}

TEST(Explain, EveryRulePrintsItsOwnTextAndNoOther) {
  const auto has = [](const std::string& text, const char* words) {
    return text.find(words) != std::string::npos;
  };
  for (const Expected& e : book) {
    const Entry entry = read(explain(e.code).value_or(""));
    const std::string asks = entry.fields.at("asks"), formula = entry.fields.at("formula");
    for (const Expected& other : book) {
      EXPECT_EQ(has(asks, other.asks), &e == &other) << e.code << " asks: " << asks;
      EXPECT_EQ(has(formula, other.formula), &e == &other) << e.code << ", formula: " << formula;
    }
  }
}

TEST(Explain, PrintsEachFieldAfterItsOwnLabel) {
  const Rule made_up{"MADE-UP", "a family", "what?", "a sum", "seven", "a book", "the sum", nullptr};
  const Entry entry = read(entry_text(made_up));
  EXPECT_EQ(entry.head, "MADE-UP (a family)");
  EXPECT_EQ(entry.fields, (std::map<std::string, std::string>{{"asks", "what?"},
                                                              {"formula", "a sum"},
                                                              {"limit", "seven"},
                                                              {"source", "a book"},
                                                              {"change", "the sum"}}));
}

}  // namespace
}  // namespace bedwright
