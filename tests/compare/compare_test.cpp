#include "compare/compare.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include "support/demo.h"

namespace bedwright {
namespace {

using ::testing::Contains;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;
using testing::bed_of;
using testing::demo_job;

struct Pair {
  Job a, b;
  Bed bed_a = bed_of(a), bed_b = bed_of(b);
  Comparison result = compare({a, bed_a}, {b, bed_b}, {Printing::inches, inch / 16});

  const PartChange& part(const std::string& name) const {
    for (const PartChange& p : result.parts)
      if (p.name == name) return p;
    throw std::runtime_error("no part " + name);
  }
  std::string text() const { return comparison_text(result, a.order.order, b.order.order, 100); }
};

TEST(Compare, AnOrderAgainstItselfIsAllTheSame) {
  const Pair p{demo_job("base"), demo_job("base")};
  EXPECT_THAT(p.result.bed, IsEmpty());
  for (const PartChange& c : p.result.parts) {
    EXPECT_EQ(c.fate, Fate::same) << c.name;
    EXPECT_EQ(c.in_a, c.in_b) << c.name;
  }
  for (const HardwareChange& h : p.result.hardware) EXPECT_EQ(h.in_a, h.in_b) << h.name;
  EXPECT_THAT(p.text(), Not(HasSubstr("Made parts that change")));
}

TEST(Compare, OneMoreSectionKeepsTheTabsAndLengthensTheMains) {
  const Pair p{demo_job("base"), demo_job("base", {"track.extension_count=1"})};
  const PartChange& tab = p.part("tab plate");
  EXPECT_EQ(tab.fate, Fate::same);
  EXPECT_EQ(tab.in_b - tab.in_a, 2 * tab.in_a / 6) << "three sections become four, so a third more tabs";
  const PartChange& main = p.part("main");
  EXPECT_EQ(main.fate, Fate::changed);
  EXPECT_THAT(main.how, Contains(HasSubstr("length 20 ft 0 in (6096.0 mm) becomes 26 ft 8 in (8128.0 mm): 6 ft 8 in (2032.0 mm) longer")));
  EXPECT_EQ(main.rework, "") << "a shorter piece makes no longer one";
  EXPECT_EQ(p.part("corner gusset").fate, Fate::same);
  EXPECT_THAT(p.text(), ::testing::ContainsRegex("rail sections +3 +4"));
}

TEST(Compare, AShorterMainCanBeCutFromALongerOne) {
  // No jacks, so no holes in the mains.
  const Pair p{demo_job("base", {"track.extension_count=1", "jacks=[]"}), demo_job("base", {"jacks=[]"})};
  EXPECT_EQ(p.part("main").rework, "a piece on the shelf can be cut to length");
  EXPECT_THAT(p.text(), HasSubstr("main: 2 of 2 after work; a piece on the shelf can be cut to length"));
}

TEST(Compare, ALongerSlotCanBeCutOnAShorterOneNot) {
  const Pair longer{demo_job("base", {"frame.tabs.slot_length=1 in"}), demo_job("base", {"frame.tabs.slot_length=1-1/4 in"})};
  EXPECT_THAT(longer.part("tab plate").how, ElementsAre("track bolt: 9/16 in x 1 in slot becomes 9/16 in x 1-1/4 in slot"));
  EXPECT_THAT(longer.part("tab plate").rework, HasSubstr("can be cut on"));
  const Pair shorter{demo_job("base", {"frame.tabs.slot_length=1-1/4 in"}), demo_job("base", {"frame.tabs.slot_length=1 in"})};
  EXPECT_EQ(shorter.part("tab plate").rework, "");
  EXPECT_THAT(shorter.text(), HasSubstr("cannot be used in the second: tab plate (24, which change)"));
}

TEST(Compare, AThickerPlateIsAnother) {
  const Pair p{demo_job("base"), demo_job("base", {"frame.jack.plate_thickness=1/2 in"})};
  EXPECT_THAT(p.part("jack plate").how, ElementsAre("thickness 3/8 in (9.5 mm) becomes 1/2 in (12.7 mm)"));
  EXPECT_EQ(p.part("jack plate").rework, "");
}

TEST(Compare, HolesThatMoveAreToldByPlace) {
  const Pair p{demo_job("base"), demo_job("base", {"jacks=[17 in, 121 in, 223 in]"})};
  const PartChange& main = p.part("main");
  EXPECT_EQ(main.fate, Fate::changed);
  EXPECT_THAT(main.how, Contains(HasSubstr("4 holes gone, from its front end at 118 in, 122 in")));
  EXPECT_THAT(main.how, Contains(HasSubstr("4 new holes, from its front end at 119 in, 123 in; 8 stay")));
  EXPECT_EQ(main.rework, "") << "a hole in a wrong place stays there";
}

TEST(Compare, AnotherTabStyleIsNewAndTheOldIsGone) {
  const Pair p{demo_job("base"), demo_job("one_extension")};
  EXPECT_EQ(p.part("tab plate").fate, Fate::only_a);
  EXPECT_EQ(p.part("clip tab").fate, Fate::only_b);
  EXPECT_EQ(p.part("clip tab").in_b, 32);
}

// Every made item of either order is counted exactly once.
TEST(Compare, CountsAddUpToTheBeds) {
  const Pair p{demo_job("base"), demo_job("one_extension")};
  int in_a = 0, in_b = 0;
  for (const PartChange& c : p.result.parts) in_a += c.in_a, in_b += c.in_b;
  for (const HardwareChange& h : p.result.hardware) in_a += h.in_a, in_b += h.in_b;
  const auto shown = [](const Bed& bed) { return std::count_if(bed.items.begin(), bed.items.end(), [](const Item& i) { return i.shown; }); };
  EXPECT_EQ(in_a, shown(p.bed_a));
  EXPECT_EQ(in_b, shown(p.bed_b));
}

TEST(CompareJson, SaysTheSame) {
  const Pair p{demo_job("base"), demo_job("one_extension")};
  const auto json = nlohmann::json::parse(comparison_json(p.result, p.a.order.order, p.b.order.order));
  EXPECT_EQ(json.at("format"), "bedwright compare");
  EXPECT_EQ(json.at("version"), 1);
  EXPECT_EQ(json.at("parts").size(), p.result.parts.size());
  EXPECT_EQ(json.at("parts")[0].at("origin"), "made");
}

}  // namespace
}  // namespace bedwright
