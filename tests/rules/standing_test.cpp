// STANDING: nothing of a frame that stands is made again, and what the order bolts to it lies
// where the frame has its holes. Figures by hand, from params/frames/lot_frame_7.yaml.
#include "bed/names.h"
#include "rules/findings_of_code.h"
#include "rules/rule_list.h"
#include "rules/scene.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using ::testing::AllOf;
using testing::bed_of;
using testing::check;
using testing::demo_job;
using ::testing::HasSubstr;
using ::testing::IsEmpty;
using ::testing::SizeIs;

std::vector<Finding> standing_of(const Job& job, const Bed& bed) {
  const Scene scene(CheckInput{bed, job.order.limits, &job, nullptr, job.order.order.figures()});
  std::vector<Finding> findings;
  check_standing(scene, findings);
  return findings;
}

// All that the shop would make or buy for the frame is there; the track and the bolts are not.
TEST(Standing, TheWholeFrameStandsAndNothingElseDoes) {
  const Bed bed = testing::demo_bed("lot_frame");
  for (const Part& part : bed.parts) {
    const bool of_track = part.origin == Origin::kit, hardware = std::holds_alternative<Hardware>(part.form);
    EXPECT_EQ(part.origin == Origin::standing, !of_track && !hardware) << name(part);
    EXPECT_NE(part.origin, Origin::made) << name(part);
    std::vector<Hole> holes;
    if (const Member* m = std::get_if<Member>(&part.form)) {
      for (const FaceHole& h : m->holes) holes.push_back(h.hole);
    } else if (const Plate* p = std::get_if<Plate>(&part.form)) {
      holes = p->holes;
    }
    for (const Hole& h : holes) EXPECT_EQ(h.process, Process::as_bought) << name(part);
  }
  for (const Weld& weld : bed.welds) EXPECT_TRUE(stands(bed, weld)) << name(bed.items[weld.a]);
  for (const Bolt& bolt : bed.bolts)
    EXPECT_EQ(stands(bed, bolt), bolt.id.kind == Kind::jack_bolt || bolt.id.kind == Kind::tongue_jack_bolt)
        << name(bolt);
  const Bed made = testing::demo_bed("base");
  for (const Part& part : made.parts) EXPECT_NE(part.origin, Origin::standing) << name(part);
}

// A drawing whose tabs have fixed places is made when its file says that it does not stand.
TEST(Standing, AFrameThatIsYetToBeMadeIsMade) {
  std::vector<std::string> drawing = {"frame.tabs.existing=[5-1/2 in]", "frame.tabs.existing_line=1-1/4 in",
                                      "frame.main.length=240 in"};
  const auto origin = [&] {
    const Bed bed = testing::demo_bed("base", drawing);
    return bed.parts[static_cast<std::size_t>(bed.part({Kind::main}))].origin;
  };
  EXPECT_EQ(origin(), Origin::standing);
  drawing.emplace_back("frame.standing=false");
  EXPECT_EQ(origin(), Origin::made);
}

TEST(Standing, TheDemoIsLeftAsItIs) { EXPECT_THAT(check(demo_job("lot_frame"), "STANDING"), IsEmpty()); }

TEST(Standing, APartMadeAgainIsStopped) {
  const Job job = demo_job("lot_frame");
  Bed bed = bed_of(job);
  bed.parts[static_cast<std::size_t>(bed.part({Kind::main}))].origin = Origin::made;
  const auto found = standing_of(job, bed);
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_NEAR(found[0].measured, 2, 1e-9);
  EXPECT_THAT(found[0].message, HasSubstr("2 of main would be cut"));
}

TEST(Standing, AHoleDrilledAgainIsStopped) {
  const Job job = demo_job("lot_frame");
  Bed bed = bed_of(job);
  Member& main = std::get<Member>(bed.parts[static_cast<std::size_t>(bed.part({Kind::main}))].form);
  main.holes.at(0).hole.process = Process::drilled;
  const auto found = standing_of(job, bed);
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, 1, 1e-9);
  EXPECT_THAT(found[0].message, HasSubstr("1 holes would be made in its main"));
}

// Its jacks are at 14, 126 and 238 in; half a mark of the 1/16 in tape is 1/32 in.
TEST(Standing, JacksElsewhereAreStoppedAndTheOrderPutRight) {
  EXPECT_THAT(check(demo_job("lot_frame", {"jacks[2]=126-1/32 in"}), "STANDING"), IsEmpty());
  const auto found = check(demo_job("lot_frame", {"jacks[2]=120 in"}), "STANDING");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, 6 * inch, 1e-6);
  EXPECT_THAT(found[0].message, AllOf(HasSubstr("10 ft 0 in"), HasSubstr("nothing is drilled")));
  ASSERT_FALSE(found[0].changes.empty());
  const Change& change = found[0].changes[0];
  EXPECT_THAT(check(demo_job("lot_frame", {"jacks[2]=120 in", change.key + "=" + change.value}), "STANDING"),
              IsEmpty());
}

// The mains' front end 3 in ahead of the track: the same jacks are 11, 123 and 235 in behind
// the track's front end.
TEST(Standing, PlacesAreFromTheMainsFrontEnd) {
  const std::vector<std::string> ahead = {"frame.main.front_overhang=3 in", "jacks=[11 in, 123 in, 235 in]",
                                          "axle.position=140 in"};
  // The track then runs 3 in past the mains' rear end, which is a note.
  const auto stops = [](const std::vector<std::string>& sets) {
    auto found = check(demo_job("lot_frame", sets), "STANDING");
    std::erase_if(found, [](const Finding& f) { return f.severity != Severity::stop; });
    return found;
  };
  EXPECT_THAT(stops(ahead), IsEmpty());
  EXPECT_THAT(stops({ahead[0]}), SizeIs(2));
}

TEST(Standing, WhatWasNotMeasuredIsStopped) {
  const auto found = check(demo_job("lot_frame", {"frame.jack.existing=[]"}), "STANDING");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::stop);
  EXPECT_THAT(found[0].remedy, HasSubstr("jack.existing"));
}

// The tabs at 189 in off, new ones at 187 in, the slots at 49 in (the fourth) filed from 1 in to
// 1-1/2 in: what is made and welded is those two new tabs with their pads, and nothing else.
TEST(StandingChanges, OnlyWhatIsAddedIsMade) {
  const Job job = demo_job("lot_frame", {"frame.tabs.to_cut_off=[189 in]", "frame.tabs.to_add=[187 in]",
                                         "frame.tabs.to_file=[{at: 49 in, slot_length: 1-1/2 in}]"});
  const Bed bed = bed_of(job);
  EXPECT_THAT(standing_of(job, bed), IsEmpty());
  std::vector<std::string> made;
  for (const Part& part : bed.parts)
    if (part.origin == Origin::made) made.push_back(name(part));
  EXPECT_THAT(made, ::testing::UnorderedElementsAre("new tab plate", "new tab pad"));
  int to_lay = 0;
  for (const Weld& weld : bed.welds) {
    if (stands(bed, weld)) continue;
    ++to_lay;
    EXPECT_EQ(bed.items[weld.a].id.number, 19) << name(bed.items[weld.a]);
  }
  EXPECT_EQ(to_lay, 4);
  for (const Side side : both_sides) {
    EXPECT_FALSE(bed.find_item({Kind::tab, side, 14}));
    const auto hole = [&](int number) {
      return hole_in_world(bed, ply_through(bed, bed.item({Kind::tab, side, number}), 0));
    };
    EXPECT_NEAR(hole(19).centre.x, 187 * inch, 1e-6);
    EXPECT_NEAR(hole(4).centre.x, 49 * inch, 1e-6);
    EXPECT_NEAR(hole(4).hole.length, 1.5 * inch, 1e-6);
    EXPECT_NEAR(hole(5).hole.length, 1 * inch, 1e-6);
    EXPECT_NEAR(hole(19).hole.length, 1 * inch, 1e-6);
    EXPECT_EQ(bed.part_of(bed.item({Kind::tab, side, 4})).origin, Origin::standing);
  }
}

// Done and written down, the same frame has nothing left to be made.
TEST(StandingChanges, AMendedFrameStandsAsItWasToBe) {
  const Bed to_do =
                bed_of(demo_job("lot_frame", {"frame.tabs.to_file=[{at: 49 in, slot_length: 1-1/2 in}]"})),
            done = bed_of(demo_job("lot_frame", {"frame.tabs.filed=[{at: 49 in, slot_length: 1-1/2 in}]"}));
  EXPECT_EQ(to_do.parts.size(), done.parts.size());
  for (std::size_t i = 0; i < done.parts.size(); ++i) EXPECT_EQ(to_do.parts[i].form, done.parts[i].form);
  for (const Part& part : done.parts) EXPECT_NE(part.origin, Origin::made) << name(part);
}

// A rail hole moved to 28 in, half way between the tabs at 21 and 35 in: new tabs there, and
// nothing else is asked for. Past the mains it is told how far tabs can go: 252 in less half a
// tab of 3 in and its fillet of 1/4 in.
TEST(StandingChanges, AHoleWithoutATabAsksForNewTabs) {
  const std::string moved = "kit.mounting.positions=[7 in, 28 in, 49 in, 77 in]";
  const auto found = check(demo_job("lot_frame", {moved}), "HOLE-NO-TAB");
  ASSERT_THAT(found, SizeIs(6));  // 28, 112 and 196 in, both sides
  ASSERT_THAT(found[0].changes, SizeIs(1));
  const Change& change = found[0].changes[0];
  EXPECT_EQ(change.key + "=" + change.value, "frame.tabs.to_add=[28 in, 112 in, 196 in]");
  EXPECT_THAT(check(demo_job("lot_frame", {moved, change.key + "=" + change.value}), "HOLE-NO-TAB"),
              IsEmpty());

  const auto past = check(demo_job("lot_frame", {"track.rail_length=90 in"}), "HOLE-NO-TAB");
  ASSERT_FALSE(past.empty());
  EXPECT_THAT(past.back().remedy, AllOf(HasSubstr("the track runs 6-3/4 in"), HasSubstr("20 ft 10-1/4 in")));
  EXPECT_THAT(past.back().changes, IsEmpty());
}

// A rail hole moved to 46-1/2 in, 2-1/2 in ahead of the tab at 49 in: a new tab of 3 in has no place
// beside the old one. One of 1 in, at 48 in, is within what counts as its own tab, whose slot of
// 1 in cannot be filed so long. Either way the old tab goes for a new one, and that clears it.
TEST(StandingChanges, ATabInTheWayIsReplaced) {
  for (const auto& [hole, code] : {std::pair("46-1/2 in", "HOLE-NO-TAB"), std::pair("48 in", "HOLE-FIT")}) {
    const std::string moved = std::string("kit.mounting.positions=[7 in, 35 in, ") + hole + ", 77 in]";
    const auto found = check(demo_job("lot_frame", {moved}), code);
    ASSERT_FALSE(found.empty()) << hole;
    ASSERT_THAT(found[0].changes, SizeIs(1)) << hole;
    const Change& change = found[0].changes[0];
    EXPECT_EQ(change.key, "frame.tabs.to_replace");
    EXPECT_THAT(change.value, HasSubstr(std::string("{at: 49 in, with: ") + hole + "}"));
    // New tabs are laid out by tape, and less exact than measured ones: pinned at the middle.
    EXPECT_THAT(
        check(demo_job("lot_frame", {moved, "track.datum=middle", change.key + "=" + change.value}), code),
        IsEmpty());
  }
}

// 270 in of track on 252 in of main; its last hole 20 in ahead of its end may stand no nearer
// to the mains' end than half a tab of 3 in and a fillet of 1/4 in: 18-1/4 in past.
TEST(StandingChanges, ATrackPastItsMainsIsTold) {
  const auto found = check(demo_job("lot_frame_90"), "STANDING");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_NEAR(found[0].measured, 18 * inch, 1e-6);
  EXPECT_NEAR(found[0].limit, 18.25 * inch, 1e-6);
}

}  // namespace
}  // namespace bedwright
