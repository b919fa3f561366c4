// Mains and members that are tubes: where their steel, welds and drains come, against figures
// worked out by hand from the light demo's files, typed here.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <algorithm>

#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_bed;
using testing::demo_job;

// RHS 100x60x4 and RHS 80x40x4 (EN 10219-2): corners 8 mm outside. Spacing 900 mm outer side to
// outer side; three rails of 1500 mm; tongue 110 mm back; corner gussets 160 mm.
constexpr Mm corner = 8, depth = 100, wide = 60, half_spacing = 450, length = 4500;

const Member& member(const Bed& bed, const Identity& part) {
  return std::get<Member>(bed.parts[bed.part(part)].form);
}

std::vector<const Weld*> welds(const Bed& bed, WeldLine line) {
  std::vector<const Weld*> all;
  for (const Weld& w : bed.welds)
    if (w.line == line) all.push_back(&w);
  return all;
}

TEST(Closed, mains_drain_underneath_behind_the_tongue_and_ahead_of_the_gussets) {
  const Bed bed = demo_bed("light");
  const Member& main = member(bed, {Kind::main});
  EXPECT_NEAR(main.length, length, 1e-9);
  // 160 mm of gusset and 2 in of room, to the millimetre: 211 mm from either end.
  ASSERT_EQ(main.holes.size(), 2U);
  std::vector<Mm> places;
  for (const FaceHole& h : main.holes) {
    EXPECT_EQ(h.face, Face::bottom_flange);
    EXPECT_EQ(h.hole.purpose, Kind::drain);
    EXPECT_EQ(h.hole.process, Process::drilled);
    EXPECT_NEAR(h.hole.diameter, 10, 1e-9);
    EXPECT_NEAR(h.hole.at.y, wide / 2, 1e-9);
    places.push_back(h.hole.at.x);
  }
  EXPECT_THAT(places, ::testing::UnorderedElementsAre(::testing::DoubleNear(211, 1e-9),
                                                      ::testing::DoubleNear(length - 211, 1e-9)));
  // Water runs down: on both sides the hole's wall is the lowest steel of the main.
  for (const Side side : both_sides) {
    const int item = bed.item({Kind::main, side});
    EXPECT_NEAR(bounds(bed, item).low.z, -depth, 1e-6);
    for (int hole = 0; hole < 2; ++hole)
      EXPECT_NEAR(hole_in_world(bed, ply_through(bed, item, hole)).centre.z, -depth, 1e-6);
  }
}

TEST(Closed, cross_members_end_at_the_inner_sides_and_are_welded_up_both_of_theirs) {
  const Bed bed = demo_bed("light");
  // 900 less twice 60 is 780, a mark of the tape.
  EXPECT_NEAR(member(bed, {Kind::cross_member}).length, 780, 1e-9);
  const auto all = welds(bed, WeldLine::tube_sides);
  ASSERT_FALSE(all.empty());
  EXPECT_TRUE(welds(bed, WeldLine::web_sides).empty());
  for (const Weld* w : all) {
    ASSERT_EQ(w->runs.size(), 2U);
    // RHS 80x40x4: flat over 80 - 16, its two sides 40 apart.
    EXPECT_NEAR(w->length, 2 * (80 - 2 * corner), 1e-6);
    EXPECT_NEAR(std::abs(w->runs[0].from.x - w->runs[1].from.x), 40, 1e-6);
    for (const WeldRun& r : w->runs) EXPECT_NEAR(std::abs(r.from.y), half_spacing - wide, 1e-6);
    EXPECT_NEAR(w->leg, 4, 1e-9);  // welds.leg
  }
}

TEST(Closed, end_members_are_welded_up_the_inner_side_and_tabs_across_the_flat) {
  const Bed bed = demo_bed("light");
  const auto ends = welds(bed, WeldLine::inner_side);
  ASSERT_EQ(ends.size(), 4U);
  for (const Weld* w : ends) EXPECT_NEAR(w->length, depth - 2 * corner, 1e-6);
  for (const Weld* w : welds(bed, WeldLine::across_flange)) {
    // The plate reaches 52 mm in; the top is flat from 8 to 52.
    EXPECT_NEAR(w->length, 2 * (52 - corner), 1e-6);
    for (const WeldRun& r : w->runs) EXPECT_NEAR(std::abs(r.from.y), half_spacing - corner, 1e-6);
  }
}

// Springs 40 mm wide (the frame's file) are welded on flat steel: the underside is flat from
// 8 to 52 mm, so they stand from 10 to 50.
TEST(Closed, springs_stand_midway_under_the_flat) {
  const Bed bed = demo_bed("light");
  const Bought& axle = std::get<Bought>(bed.parts[bed.part({Kind::axle})].form);
  int springs = 0;
  for (const Block& b : axle.envelope) {
    if (b.radius > 0) continue;
    ++springs;
    EXPECT_NEAR(std::min(std::abs(b.low.y), std::abs(b.high.y)), half_spacing - 50, 1e-9);
    EXPECT_NEAR(std::max(std::abs(b.low.y), std::abs(b.high.y)), half_spacing - 10, 1e-9);
  }
  EXPECT_EQ(springs, 2);
}

TEST(Closed, no_bolt_goes_through_a_tube_and_jack_plates_hang_below) {
  const Bed bed = demo_bed("light");
  for (const Bolt& bolt : bed.bolts)
    for (const Ply& ply : bolt.plies) {
      const Member* m = std::get_if<Member>(&bed.part_of(ply.item).form);
      EXPECT_FALSE(m && is_closed(m->section)) << "a nut inside a tube";
    }
  const auto plates = welds(bed, WeldLine::plate_ends);
  EXPECT_EQ(plates.size(), 6U);  // three pairs of jacks
  for (const Weld* w : plates) {
    EXPECT_NEAR(w->length, 2 * (depth - 2 * corner), 1e-6);
    EXPECT_NEAR(w->leg, 4, 1e-9);  // welds.leg, none being named for it
    EXPECT_NEAR(bounds(bed, w->a).high.z, -corner, 1e-6);
  }
  // The upper bolts, 150 - 25 mm down, have half a wrench's width under the tube's 100 mm.
  for (const Bolt& bolt : bed.bolts)
    if (bolt.id.kind == Kind::jack_bolt) {
      EXPECT_LE(bolt.seat.z, -125 + 1e-6);
      EXPECT_EQ(bolt.plies.size(), 2U);
    }
}

TEST(Closed, what_a_tube_asks_is_said_in_one_sentence) {
  const auto said = [](const std::vector<std::string>& sets) {
    try {
      demo_job("light", sets);
    } catch (const std::runtime_error& e) {
      return std::string(e.what());
    }
    return std::string("nothing");
  };
  using ::testing::AllOf;
  using ::testing::HasSubstr;
  EXPECT_THAT(said({"frame.jack.below=110 mm"}),
              AllOf(HasSubstr("frame.jack.below"), HasSubstr("through the mains or too near them"),
                    HasSubstr("make it 143 mm")));
  EXPECT_THAT(said({"frame.main.section=UPE 100", "frame.front_member.section=RHS 80x60x4"}),
              AllOf(HasSubstr("frame.front_member.section"), HasSubstr("is a tube, and the mains' flanges")));
  EXPECT_THAT(said({"frame.tongue.section=RHS 80x60x4"}),
              AllOf(HasSubstr("frame.tongue.section"), HasSubstr("not of the shape wanted here, a channel")));
}

// A hole filed into the light order: each of its sections, drained or not, is refused or laid out.
TEST(Closed, tubes_are_drained_or_refused) {
  Job job = demo_job("light");
  job.frame.drain_hole = 0;
  EXPECT_TRUE(member(testing::bed_of(job), {Kind::main}).holes.empty());
}

}  // namespace
}  // namespace bedwright
