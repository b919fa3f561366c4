#include "compare/compare.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "support/demo.h"

namespace bedwright {
namespace {

using testing::bed_of;
using ::testing::Contains;
using testing::demo_job;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::Not;

struct Pair {
  Job a, b;
  Bed bed_a = bed_of(a), bed_b = bed_of(b);
  Comparison result = compare({a, bed_a}, {b, bed_b}, {Printing::inches, inch / 16});

  const PartChange& part(const std::string& name) const {
    for (const PartChange& p : result.parts)
      if (p.name == name) return p;
    throw std::runtime_error("no part " + name);
  }
  Told told_a(int stops = 0) const { return {a.order.order, "orders/first.yaml", stops}; }
  Told told_b(int stops = 0) const { return {b.order.order, "orders/second.yaml", stops}; }
  std::string text(int stops_b = 0) const { return comparison_text(result, told_a(), told_b(stops_b), 100); }
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
  EXPECT_THAT(
      main.how,
      Contains(HasSubstr(
          "length 20 ft 0 in (6096.0 mm) becomes 26 ft 8 in (8128.0 mm): 6 ft 8 in (2032.0 mm) longer")));
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
  const Pair longer{demo_job("base", {"frame.tabs.slot_length=1 in"}),
                    demo_job("base", {"frame.tabs.slot_length=1-1/4 in"})};
  EXPECT_THAT(longer.part("tab plate").how,
              ElementsAre("track bolt: 9/16 in x 1 in slot becomes 9/16 in x 1-1/4 in slot"));
  EXPECT_THAT(longer.part("tab plate").rework, HasSubstr("can be cut on"));
  const Pair shorter{demo_job("base", {"frame.tabs.slot_length=1-1/4 in"}),
                     demo_job("base", {"frame.tabs.slot_length=1 in"})};
  EXPECT_EQ(shorter.part("tab plate").rework, "");
  EXPECT_THAT(shorter.text(), HasSubstr("cannot be used in second.yaml: tab plate (24, which change)"));
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

std::string section(const std::string& text, const std::string& title) {
  const std::size_t at = text.find("\n" + title);
  if (at == std::string::npos) return "";
  return text.substr(at + 1, text.find("\n\n", at + 1) - at - 1);
}

TEST(Compare, SaysAtTheTopWhichOrderIsStopped) {
  const Pair p{demo_job("base"), demo_job("wrong")};
  EXPECT_THAT(
      p.text(6),
      ::testing::StartsWith(
          "QB-1041 against QB-1045\nQB-1041 goes together\n"
          "QB-1045 is stopped: 6 stops (see check); do not cut, drill or re-use pieces for it yet\n"));
  EXPECT_THAT(p.text(1), HasSubstr("QB-1045 is stopped: 1 stop (see check)"));
  EXPECT_THAT(p.text(0), HasSubstr("\nQB-1045 goes together\n"));
}

TEST(Compare, AFrameThatStandsGivesAndTakesNoPieces) {
  for (const bool first : {true, false}) {
    const Pair p{demo_job(first ? "lot_frame" : "base"), demo_job(first ? "base" : "lot_frame")};
    ASSERT_EQ(p.result.stands_a, first);
    ASSERT_EQ(p.result.stands_b, !first);
    for (const char* name : {"main", "cross member", "tongue", "corner gusset"}) {
      EXPECT_TRUE(p.part(name).welded_in) << name;
      EXPECT_EQ(p.part(name).rework, "") << name;
    }
    for (const HeadLine& h : p.result.bed) {
      if (h.what == "steel the shop makes") {
        EXPECT_LT(std::stod(first ? h.a : h.b), 100) << "only the jack plates";
      }
    }
    // The plates behind the jacks are bolted on.
    EXPECT_FALSE(p.part("jack plate").welded_in);
    const std::string text = p.text();
    EXPECT_THAT(
        text,
        HasSubstr(
            "\nQB-1044 is on a frame that stands: its made parts are welded in and are no shelf parts\n"));
    const std::string shelf = section(text, "On the shelf");
    for (const char* name :
         {"\n  main", "\n  cross member", "\n  tongue", "\n  corner gusset", "\n  end member", "\n  tab"})
      EXPECT_THAT(shelf, Not(HasSubstr(name)));
    EXPECT_THAT(shelf, HasSubstr("\n  jack plate: 6 of 6\n"));
    EXPECT_THAT(shelf, HasSubstr("from the kit and bought, alike in both, and can serve"));
    EXPECT_THAT(section(text, "Made parts that serve both"), Not(HasSubstr("tongue")));
    EXPECT_THAT(section(text, "Welded into a frame that stands"), HasSubstr("\n  tongue: 2 in both, alike"));
  }
  const Pair none{demo_job("base"), demo_job("base")};
  for (const PartChange& c : none.result.parts) EXPECT_FALSE(c.welded_in) << c.name;
}

TEST(Compare, APartOfAnotherNameSaysSoAndIsMarkedAnew) {
  // One section for front and rear makes both one part, of another name.
  const Pair p{demo_job("base"),
               demo_job("base", {"frame.front_member.section=C5x6.7", "order.number=QB-2"})};
  const auto renamed = std::find_if(p.result.parts.begin(), p.result.parts.end(), [](const PartChange& c) {
    return c.fate == Fate::same && c.name != c.name_b;
  });
  ASSERT_NE(renamed, p.result.parts.end());
  const std::string label = renamed->name + " (there: " + renamed->name_b + ")";
  EXPECT_THAT(section(p.text(), "Made parts that serve both"), HasSubstr(label));
  EXPECT_THAT(section(p.text(), "On the shelf"), HasSubstr(label));
  EXPECT_THAT(section(p.text(), "On the shelf"),
              HasSubstr("Pieces scribed or marked for QB-1041 bear its part names, number and revision: "
                        "re-mark them for\n  QB-2 before they are used."));
  const Pair alike{demo_job("base"), demo_job("base")};
  EXPECT_THAT(alike.text(), Not(HasSubstr("re-mark")));
}

TEST(Compare, AnInchOrderIsToldInInches) {
  const Pair p{demo_job("base"),
               demo_job("base", {"jacks=[17 in, 3050.7 mm, 223 in]", "axle.position=2600.7 mm",
                                 "limits.tip_clearance=1.7 mm"})};
  const std::string text = p.text();
  // Millimetres only behind inches, in brackets.
  EXPECT_THAT(text, Not(::testing::ContainsRegex("[^(0-9.][0-9.]+ mm")));
  EXPECT_THAT(text, HasSubstr("10 ft 7/64 in (3050.7 mm)"));
  const Pair metric{demo_job("metric"), demo_job("metric", {"jacks=[430 mm, 118-1/3 in, 5570 mm]"})};
  const Comparison in_metric =
      compare({metric.a, metric.bed_a}, {metric.b, metric.bed_b}, {Printing::metric, 1});
  const std::string metric_text = comparison_text(in_metric, metric.told_a(), metric.told_b(), 100);
  EXPECT_THAT(metric_text, Not(::testing::ContainsRegex("[0-9] in([,)\n]| [(x])")));
  EXPECT_THAT(metric_text, HasSubstr("3005.7 mm"));
}

TEST(Compare, TwoOfOneNumberAreCalledByRevisionElseByFile) {
  const Pair revisions{
      demo_job("base"),
      demo_job("base", {"order.revision=B", "revisions=[{revision: B, date: 2026-11-02, what: Pads}]"})};
  EXPECT_THAT(revisions.text(), ::testing::StartsWith("QB-1041: revision A against revision B\n"));
  const Pair files{demo_job("base"), demo_job("base", {"jacks=[]"})};
  EXPECT_THAT(files.text(),
              ::testing::StartsWith("QB-1041: first.yaml against second.yaml\nfirst.yaml goes together\n"));
  const Job &a = files.a, &b = files.b;
  EXPECT_THAT(
      comparison_text(files.result, {a.order.order, "old/my.yaml"}, {b.order.order, "new/my.yaml"}, 100),
      ::testing::StartsWith("QB-1041: old/my.yaml against new/my.yaml\n"));
  EXPECT_THAT(comparison_text(files.result, {a.order.order, "my.yaml"}, {b.order.order, "my.yaml"}, 100),
              ::testing::StartsWith("QB-1041: the first against the second\n"));
}

TEST(Compare, KeysOrderedDifferentlyAreListed) {
  const auto ordered = [](const std::vector<std::string>& sets) {
    const Pair p{demo_job("base"), demo_job("base", sets)};
    std::vector<std::string> lines;
    for (const HeadLine& h : p.result.ordered) lines.push_back(h.what + ": " + h.a + " | " + h.b);
    return lines;
  };
  EXPECT_THAT(ordered({}), IsEmpty());
  EXPECT_THAT(ordered({"work.log.diameter=22 in"}), ElementsAre("work.log.diameter: 12 in | 22 in"));
  // Of the frame and the kit too, however they came to differ.
  EXPECT_THAT(ordered({"frame.tabs.plate.pad_thickness=1/2 in"}),
              ElementsAre("frame.tabs.plate.pad_thickness: 3/8 in | 1/2 in"));
  EXPECT_THAT(ordered({"kit.rail.joint_gap=1/16 in"}),
              ElementsAre(::testing::StartsWith("kit.rail.joint_gap: ")));
  EXPECT_THAT(ordered({"limits.tip_clearance=1/8 in", "road.share_low=0.12", "track.clamps=[]"}),
              ElementsAre("track.clamps: {bunk: 5}, {bunk: 9} | none",
                          "limits.tip_clearance: 1/16 in | 1/8 in", "road.share_low: 0.1 | 0.12"));
  EXPECT_THAT(ordered({"axle.position=138 in"}), ElementsAre("axle.position: 137 in | 138 in"));
  EXPECT_THAT(ordered({"jacks=[17 in, 120 in]"}),
              ElementsAre("jacks: 17 in, 120 in, 223 in | 17 in, 120 in"));
  // A hundredth of a millimetre reads alike to a tenth, and is reported all the same; another way to write it
  // is not.
  EXPECT_THAT(ordered({"tolerances.cut_position=0.51 mm"}),
              ElementsAre("tolerances.cut_position: 0.5 mm | 0.51 mm"));
  EXPECT_THAT(ordered({"track.rail_length=6 ft 8 in"}), IsEmpty());
  // Pairs placed from the rear and between are reported by their own keys, not again by their places.
  EXPECT_THAT(ordered({"jacks=[17 in]", "jacks_from_rear=[17 in]", "jacks_between=1"}),
              ElementsAre("jacks: 17 in, 120 in, 223 in | 17 in", "jacks_from_rear: none | 17 in",
                          "jacks_between: 0 | 1"));
  // Whose it is, is in the title.
  EXPECT_THAT(ordered({"order.number=QB-2", "order.customer=Another", "order.date=2026-12-01"}), IsEmpty());
  const Pair kits{demo_job("base"), demo_job("one_extension")};
  EXPECT_THAT(section(kits.text(), "Ordered differently"), HasSubstr("\n  frame  "));
}

// A catalogue that says otherwise of a bolt does not make it another one to buy.
TEST(Compare, HardwareIsTheSameByWhatItIsBoughtAs) {
  Pair p{demo_job("base"), demo_job("base")};
  for (Part& part : p.bed_b.parts)
    if (auto* hardware = std::get_if<Hardware>(&part.form)) hardware->size.head_height += 1;
  const Comparison again = compare({p.a, p.bed_a}, {p.b, p.bed_b}, {Printing::inches, inch / 16});
  ASSERT_EQ(again.hardware.size(), p.result.hardware.size());
  for (const HardwareChange& h : again.hardware) EXPECT_EQ(h.in_a, h.in_b) << h.name;
}

// Every made item of either order is counted exactly once.
TEST(Compare, CountsAddUpToTheBeds) {
  const Pair p{demo_job("base"), demo_job("one_extension")};
  int in_a = 0, in_b = 0;
  for (const PartChange& c : p.result.parts) in_a += c.in_a, in_b += c.in_b;
  for (const HardwareChange& h : p.result.hardware) in_a += h.in_a, in_b += h.in_b;
  const auto shown = [](const Bed& bed) {
    return std::count_if(bed.items.begin(), bed.items.end(), [](const Item& i) { return i.shown; });
  };
  EXPECT_EQ(in_a, shown(p.bed_a));
  EXPECT_EQ(in_b, shown(p.bed_b));
}

TEST(CompareJson, SaysTheSame) {
  const Pair p{demo_job("base"), demo_job("one_extension")};
  const auto json = nlohmann::json::parse(comparison_json(p.result, p.told_a(), p.told_b(3)));
  EXPECT_EQ(json.at("format"), "bedwright compare");
  EXPECT_EQ(json.at("version"), 1);
  EXPECT_EQ(json.at("parts").size(), p.result.parts.size());
  EXPECT_EQ(json.at("parts")[0].at("origin"), "made");
  EXPECT_EQ(json.at("a").at("stops"), 0);
  EXPECT_EQ(json.at("b").at("stops"), 3);
  EXPECT_EQ(json.at("b").at("file"), "orders/second.yaml");
  EXPECT_EQ(json.at("b").at("frame_stands"), false);
  EXPECT_EQ(json.at("ordered").size(), p.result.ordered.size());
}

}  // namespace
}  // namespace bedwright
