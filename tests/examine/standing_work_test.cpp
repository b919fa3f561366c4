// Work on a frame that stands, side by side: shims from measured heights, tabs of one side alone,
// jacks bolted up elsewhere. Figures by hand, from params/frames/lot_frame_7.yaml: tabs every 14 in
// from 7 in, three rails of 84 in with holes at 7, 35, 49 and 77 in of each.
#include <fmt/format.h>

#include <map>

#include "bed/names.h"
#include "bed/rail_gaps.h"
#include "examine/examine.h"
#include "rules/findings_of_code.h"
#include "rules/height/height.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using ::testing::AllOf;
using testing::bed_of;
using testing::check;
using testing::demo_job;
using ::testing::ElementsAre;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

struct Height {
  int left = 0, right = 0;  // in 1/32 in
};

// Every tab at the line but for these, by their place in inches.
std::string heights(const std::map<int, Height>& off, double lean = 0) {
  std::string text;
  for (int at = 7; at <= 245; at += 14) {
    const auto it = off.find(at);
    const Height h = it == off.end() ? Height{} : it->second;
    text += fmt::format("{}{{at: {} in, left: {:.4f} in, right: {:.4f} in}}", text.empty() ? "" : ", ", at,
                        h.left / 32.0 + lean * at, h.right / 32.0 + lean * at);
  }
  return "frame.tabs.heights=[" + text + "]";
}

std::vector<std::string> shimmed(const Bed& bed) {
  std::vector<std::string> all;
  for (const Bolt& bolt : bed.bolts)
    if (bolt.shim.value_or(0) > 0)
      all.push_back(
          fmt::format("{} {:g}/32", name(bed.items[bolt.plies.back().item]), *bolt.shim / inch * 32));
  return all;
}

// A low tab is shimmed by what it is low; a lean along the bed is the jacks' to take out.
TEST(MeasuredShims, ALowTabIsShimmedAndALeanIsNot) {
  EXPECT_THAT(shimmed(bed_of(demo_job("lot_frame"))), IsEmpty());
  EXPECT_THAT(shimmed(bed_of(demo_job("lot_frame", {heights({})}))), IsEmpty());
  for (const double lean : {0.0, 0.004, -0.004})
    EXPECT_THAT(shimmed(bed_of(demo_job("lot_frame", {heights({{35, {0, -4}}, {133, {-2, 0}}}, lean)}))),
                ElementsAre("tab L10 2/32", "tab R3 4/32"))
        << lean;
}

// A high tab, though no bolt goes through it, lifts its rail off all the others of its side.
TEST(MeasuredShims, AHighTabLiftsItsRailOffAllOthers) {
  const Job job = demo_job("lot_frame", {heights({{105, {3, 0}}})});
  const Bed bed = bed_of(job);
  const auto all = shimmed(bed);
  ASSERT_THAT(all, SizeIs(12));
  for (const std::string& one : all) EXPECT_THAT(one, AllOf(HasSubstr("tab L"), HasSubstr(" 3/32")));
  // 3/32 in is 1/16 and 1/32.
  const std::vector<Shim> packed = shims(job, bed);
  ASSERT_THAT(packed, SizeIs(2));
  for (const Shim& shim : packed) EXPECT_EQ(shim.count, 12);
  EXPECT_NEAR(packed[0].thickness, inch / 32, 1e-9);
  EXPECT_NEAR(packed[1].thickness, inch / 16, 1e-9);
}

// Tops at 0, 1 and 3 along, 0, 0.03 and 0 high: a level rail over the middle one stands 0.03 over the
// other two. Leaning by s > 0 it stands 0.03 + 2 s over the last, by s < 0 0.03 - s over the first.
TEST(MeasuredShims, TheRailLiesWhereTheWidestGapIsLeast) {
  const RailGaps gaps = rail_gaps({{0, 0}, {1, 0.03}, {3, 0}}, {});
  ASSERT_THAT(gaps.left, SizeIs(3));
  EXPECT_NEAR(gaps.left[0], 0.03, 1e-9);
  EXPECT_NEAR(gaps.left[1], 0, 1e-9);
  EXPECT_NEAR(gaps.left[2], 0.03, 1e-9);
  // Both sides have one slope: a side that leans against the other takes half each.
  const RailGaps twisted = rail_gaps({{0, 0}, {100, 1}}, {{0, 0}, {100, -1}});
  EXPECT_NEAR(twisted.left[0], 1, 1e-6);
  EXPECT_NEAR(twisted.right[1], 1, 1e-6);
}

TEST(MeasuredShims, PacksAreMadeOfTheFewestShims) {
  EXPECT_THAT(shims_of(7, 1), ElementsAre(4, 2, 1));
  EXPECT_THAT(shims_of(8, 1), ElementsAre(8));
  EXPECT_THAT(shims_of(0, 1), IsEmpty());
  EXPECT_NEAR(pack_for(0.49, 1), 0, 1e-12);
  EXPECT_NEAR(pack_for(0.51, 1), 1, 1e-12);
}

// The bolt through a pack of 3/8 in is longer by that, to the next stock length, and no other is.
TEST(MeasuredShims, ABoltThroughAPackIsLonger) {
  const Bed flat = bed_of(demo_job("lot_frame")),
            low = bed_of(demo_job("lot_frame", {heights({{35, {0, -12}}})}));
  for (std::size_t i = 0; i < flat.bolts.size(); ++i) {
    const bool has_pack = low.bolts[i].shim.value_or(0) > 0;
    EXPECT_EQ(has_pack, flat.bolts[i].id == (Identity{Kind::track_bolt, Side::right, 2}))
        << name(flat.bolts[i]);
    const Mm more = low.bolts[i].length - flat.bolts[i].length;
    // Stock goes by quarters of an inch.
    EXPECT_GE(more, has_pack ? inch / 4 - 1e-9 : 0) << name(flat.bolts[i]);
    EXPECT_LE(more, has_pack ? inch / 2 + 1e-9 : 0) << name(flat.bolts[i]);
  }
  EXPECT_THAT(check(demo_job("lot_frame", {heights({{35, {0, -12}}})}), "BOLT-SHORT"), IsEmpty());
  // Named by the owner it is not chosen, and then it is too short.
  const std::string named =
      fmt::format("bolts.track={} in", flat.bolts[flat.bolt(track_bolt_r1)].length / inch);
  EXPECT_THAT(check(demo_job("lot_frame", {heights({{35, {0, -12}}}), named}), "BOLT-SHORT"), SizeIs(1));
}

// limits.most_shim is 3/8 in: 12/32 is a note, 13/32 a stop.
TEST(MeasuredShims, ATooThickPackIsStoppedAndTheTabRenewed) {
  const auto note = check(demo_job("lot_frame", {heights({{35, {0, -12}}})}), "RAIL-SHIM");
  ASSERT_THAT(note, SizeIs(1));
  EXPECT_EQ(note[0].severity, Severity::note);
  const std::vector<std::string> low = {heights({{35, {0, -13}}})};
  const auto stop = check(demo_job("lot_frame", low), "RAIL-SHIM");
  ASSERT_THAT(stop, SizeIs(1));
  EXPECT_EQ(stop[0].severity, Severity::stop);
  EXPECT_NEAR(stop[0].measured, 13.0 / 32 * inch, 1e-6);
  ASSERT_THAT(stop[0].changes, SizeIs(2));
  EXPECT_EQ(stop[0].changes[0].key, "frame.tabs.right.to_replace");
  for (const Change& change : stop[0].changes)
    for (const Finding& f :
         check(demo_job("lot_frame", {low[0], change.key + "=" + change.value}), "RAIL-SHIM"))
      EXPECT_NE(f.severity, Severity::stop) << change.key << ": " << f.message;
  // A tab that carries no bolt is cut off.
  const std::vector<std::string> high = {heights({{105, {13, 0}}})};
  const auto cut = check(demo_job("lot_frame", high), "RAIL-SHIM");
  ASSERT_THAT(cut, SizeIs(1));
  ASSERT_FALSE(cut[0].changes.empty());
  EXPECT_EQ(cut[0].changes[0].key + "=" + cut[0].changes[0].value, "frame.tabs.left.to_cut_off=[105 in]");
  EXPECT_THAT(check(demo_job("lot_frame", {high[0], "frame.tabs.left.to_cut_off=[105 in]"}), "RAIL-SHIM"),
              IsEmpty());
}

TEST(MeasuredShims, EveryTabThatStandsIsMeasured) {
  const auto refused = [](const std::string& set) {
    try {
      demo_job("lot_frame", {set});
    } catch (const std::runtime_error& e) {
      return std::string(e.what());
    }
    return std::string();
  };
  EXPECT_THAT(refused("frame.tabs.heights=[{at: 7 in, left: 0 in, right: 0 in}]"),
              AllOf(HasSubstr("left tab at"), HasSubstr("21 in")));
  EXPECT_THAT(refused("frame.tabs.heights=[{at: 8 in, left: 0 in}]"),
              HasSubstr("the nearest is 177.8 mm (7 in)"));
  EXPECT_EQ(refused(heights({})), "");
}

// Cut off, filed and added on the left alone: the right stays as it is.
TEST(OneSidedWork, IsDoneOnItsSideAlone) {
  const Bed bed =
      bed_of(demo_job("lot_frame", {"frame.tabs.left.to_cut_off=[21 in]", "frame.tabs.left.to_add=[28 in]",
                                    "frame.tabs.right.to_file=[{at: 35 in, slot_length: 1-1/2 in}]",
                                    "frame.tabs.left.to_replace=[{at: 231 in, with: 230 in}]"}));
  const auto hole = [&](Side side, int number) {
    return hole_in_world(bed, ply_through(bed, bed.item({Kind::tab, side, number}), 0));
  };
  EXPECT_FALSE(bed.find_item({Kind::tab, Side::left, 2}));
  EXPECT_TRUE(bed.find_item({Kind::tab, Side::right, 2}));
  EXPECT_NEAR(hole(Side::left, 19).centre.x, 28 * inch, 1e-6);
  EXPECT_NEAR(hole(Side::left, 20).centre.x, 230 * inch, 1e-6);
  EXPECT_FALSE(bed.find_item({Kind::tab, Side::right, 19}));
  EXPECT_NEAR(hole(Side::left, 3).hole.length, 1 * inch, 1e-6);
  EXPECT_NEAR(hole(Side::right, 3).hole.length, 1.5 * inch, 1e-6);
}

// Written back: the left side has a list of its own.
TEST(OneSidedWork, ASideWithTabsOfItsOwnStandsSo) {
  const std::string left =
      "frame.tabs.left.existing=[7 in, 28 in, 35 in, 49 in, 63 in, 77 in, 91 in, 105 in, 119 in, 133 in, 147 "
      "in, 161 in, 175 in, 189 in, 203 in, 217 in, 231 in, 245 in]";
  const Bed bed = bed_of(demo_job("lot_frame", {left}));
  const auto x = [&](Side side) {
    return hole_in_world(bed, ply_through(bed, bed.item({Kind::tab, side, 2}), 0)).centre.x;
  };
  EXPECT_NEAR(x(Side::left), 28 * inch, 1e-6);
  EXPECT_NEAR(x(Side::right), 21 * inch, 1e-6);
  // Both sides alike cannot be meant where one has no tab there.
  EXPECT_THROW(demo_job("lot_frame", {left, "frame.tabs.to_cut_off=[21 in]"}), std::runtime_error);
  EXPECT_NO_THROW(demo_job("lot_frame", {left, "frame.tabs.right.to_cut_off=[21 in]"}));
}

// The left side alone has no tab at 35 in: the work asked for is the left's.
TEST(OneSidedWork, WhatOneSideLacksIsAskedOfThatSide) {
  const std::string left =
      "frame.tabs.left.existing=[7 in, 21 in, 49 in, 63 in, 77 in, 91 in, 105 in, 119 in, 133 in, 147 in, "
      "161 "
      "in, 175 in, 189 in, 203 in, 217 in, 231 in, 245 in]";
  const auto found = check(demo_job("lot_frame", {left}), "HOLE-NO-TAB");
  ASSERT_THAT(found, SizeIs(1));
  ASSERT_THAT(found[0].changes, SizeIs(1));
  const Change& change = found[0].changes[0];
  EXPECT_EQ(change.key + "=" + change.value, "frame.tabs.left.to_add=[35 in]");
  EXPECT_THAT(found[0].remedy, AllOf(HasSubstr("left side"), HasSubstr("35 in")));
  EXPECT_THAT(check(demo_job("lot_frame", {left, change.key + "=" + change.value}), "HOLE-NO-TAB"),
              IsEmpty());
}

// Bunk bolts of the 90 in rail come down on tabs that no hole of it wants, at 91 and 119 in: they
// come off, both at once, and nothing else about tips and clearances is left.
TEST(TabsInTheWay, ComeOff) {
  const auto stops = [](const std::vector<std::string>& sets) {
    Job job = demo_job("lot_frame_90", sets);
    Bed bed = bed_of(job);
    auto findings = examine(std::move(job), std::move(bed))->findings;
    std::erase_if(findings, [](const Finding& f) { return f.severity != Severity::stop; });
    return findings;
  };
  EXPECT_THAT(stops({}), IsEmpty());
  const auto found = stops({"frame.tabs.to_cut_off=[]"});
  ASSERT_FALSE(found.empty());
  bool offered = false;
  for (const Finding& f : found)
    for (const Change& c : f.changes)
      if (c.key == "frame.tabs.to_cut_off" && c.value == "[91 in, 119 in]") {
        offered = true;
        EXPECT_THAT(f.remedy, AllOf(HasSubstr("cut off both tabs at"), ::testing::Not(HasSubstr("move"))));
      }
  EXPECT_TRUE(offered) << found[0].code << ": " << found[0].remedy;
}

// The pair at 126 in to 120 in: four holes in each main are drilled in place, the four it left
// stay, and all else of the frame stands.
TEST(JacksMoved, TheirHolesAreDrilledInPlaceAndTheOldOnesStay) {
  const Job job =
      demo_job("lot_frame", {"jacks[2]=120 in", "frame.jack.to_move=[{from: 126 in, to: 120 in}]"});
  const Bed bed = bed_of(job);
  const Member& main = std::get<Member>(bed.parts[static_cast<std::size_t>(bed.part({Kind::main}))].form);
  std::map<Process, int> holes;
  for (const FaceHole& h : main.holes) {
    ++holes[h.hole.process];
    if (h.hole.process == Process::on_site) {
      // 4 in between bolts along: 2 in either side of the middle.
      EXPECT_NEAR(std::abs(h.hole.at.x - 120 * inch), 2 * inch, 1e-6);
    }
  }
  EXPECT_EQ(holes[Process::on_site], 4);
  EXPECT_EQ(holes[Process::as_bought], 12);
  EXPECT_EQ(holes[Process::drilled], 0);
  for (const Part& part : bed.parts) EXPECT_NE(part.origin, Origin::made) << name(part);
  EXPECT_THAT(check(job, "STANDING"), IsEmpty());
  // Written back it is the same bed, with nothing left to be done.
  const Job done = demo_job("lot_frame", {"jacks[2]=120 in", "frame.jack.existing=[14 in, 120 in, 238 in]",
                                          "frame.jack.old_holes=[126 in]"});
  EXPECT_THAT(check(done, "STANDING"), IsEmpty());
  const Bed mended = bed_of(done);
  const Member& again =
      std::get<Member>(mended.parts[static_cast<std::size_t>(mended.part({Kind::main}))].form);
  ASSERT_EQ(again.holes.size(), main.holes.size());
  for (std::size_t i = 0; i < main.holes.size(); ++i)
    EXPECT_EQ(again.holes[i].hole.at.x, main.holes[i].hole.at.x);
}

TEST(JacksMoved, WhatIsDrilledAndNotAskedForIsStopped) {
  const Job job = demo_job("lot_frame");
  Bed bed = bed_of(job);
  std::get<Member>(bed.parts[static_cast<std::size_t>(bed.part({Kind::main}))].form)
      .holes.at(0)
      .hole.process = Process::on_site;
  const auto findings = examine(job, bed)->findings;
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
    return f.code == "STANDING" && f.severity == Severity::stop;
  }));
}

// A fourth pair: bought, with plates that are made; the three that stand are left.
TEST(JacksMoved, AFurtherPairIsBoughtAndItsPlatesMade) {
  const Job job =
      demo_job("lot_frame", {"jacks=[14 in, 70 in, 126 in, 238 in]", "frame.jack.to_add=[70 in]"});
  EXPECT_THAT(check(job, "STANDING"), IsEmpty());
  const Bed bed = bed_of(job);
  std::vector<std::string> made;
  for (const Part& part : bed.parts)
    if (part.origin == Origin::made) made.push_back(name(part));
  EXPECT_THAT(made, ElementsAre("new jack plate"));
  int to_bolt = 0;
  for (const Bolt& bolt : bed.bolts)
    if (bolt.id.kind == Kind::jack_bolt && !stands(bed, bolt)) ++to_bolt;
  EXPECT_EQ(to_bolt, 8);
}

// The order has them elsewhere: as the frame has them, or moved there.
TEST(JacksMoved, IsOfferedWhereTheOrderHasThemElsewhere) {
  const auto found = check(demo_job("lot_frame", {"jacks[2]=120 in"}), "STANDING");
  ASSERT_THAT(found, SizeIs(1));
  ASSERT_THAT(found[0].changes, SizeIs(2));
  const Change& moved = found[0].changes[1];
  EXPECT_EQ(moved.key + "=" + moved.value, "frame.jack.to_move=[{from: 126 in, to: 120 in}]");
  EXPECT_THAT(check(demo_job("lot_frame", {"jacks[2]=120 in", moved.key + "=" + moved.value}), "STANDING"),
              IsEmpty());
}

}  // namespace
}  // namespace bedwright
