#include "layout/layout.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <map>
#include <set>

#include "bed/names.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::bed_of;
using testing::demo_bed;
using testing::demo_job;
using ::testing::HasSubstr;

class DemoBed : public ::testing::TestWithParam<std::string> {};
INSTANTIATE_TEST_SUITE_P(Good, DemoBed, ::testing::ValuesIn(testing::good_orders));

// No two things are one identity, nor called the same.
TEST_P(DemoBed, IdentitiesAndNamesAreUnique) {
  const Bed bed = demo_bed(GetParam());
  std::set<Identity> items, bolts;
  std::set<std::string> item_names, part_names;
  for (const Item& item : bed.items) {
    EXPECT_TRUE(items.insert(item.id).second) << name(item);
    EXPECT_TRUE(item_names.insert(name(item)).second) << name(item);
  }
  for (const Bolt& bolt : bed.bolts) EXPECT_TRUE(bolts.insert(bolt.id).second) << name(bolt);
  for (const Part& part : bed.parts) EXPECT_TRUE(part_names.insert(name(part)).second) << name(part);
}

// A thing and its placed part are of one kind; a bolt's hardware is the bolt's.
TEST_P(DemoBed, ItemsAreOfTheirPartsKind) {
  const Bed bed = demo_bed(GetParam());
  for (const Item& item : bed.items) {
    const Kind part = bed.parts[item.part].id.kind;
    if (item.bolt >= 0) {
      EXPECT_EQ(part, Kind::hardware) << name(item);
      EXPECT_TRUE(is_same_thing(item.id, bed.bolts[item.bolt].id)) << name(item);
    } else if (part == Kind::end_member) {
      EXPECT_TRUE(item.id.kind == Kind::front_member || item.id.kind == Kind::rear_member) << name(item);
    } else {
      EXPECT_EQ(item.id.kind, part) << name(item);
    }
  }
}

TEST_P(DemoBed, WhatIsNotThereThrows) {
  const Bed bed = demo_bed(GetParam());
  EXPECT_THROW(bed.item({Kind::tab, Side::right, 999}), NotInBed);
  EXPECT_THROW(bed.part({Kind::log}), NotInBed);
  EXPECT_THROW(bed.bolt({Kind::track_bolt}), NotInBed);
  EXPECT_FALSE(bed.find_item({Kind::tab, Side::middle, 1}));
}

TEST_P(DemoBed, EveryPlyIsAHoleTheBoltPassesThrough) {
  const Bed bed = demo_bed(GetParam());
  for (const Bolt& bolt : bed.bolts) {
    ASSERT_TRUE(bolt.in_place) << name(bolt);
    EXPECT_GE(bolt.plies.size(), 2u) << name(bolt);
    for (const Ply& ply : bolt.plies) {
      const HoleInWorld hole = hole_in_world(bed, ply);
      const Vec3 to = hole.centre - bolt.seat;
      EXPECT_LT(norm(to - dot(to, bolt.direction) * bolt.direction), 2 * inch)
          << name(bolt) << " in " << name(bed.items[ply.item]);
      EXPECT_GT(hole.hole.diameter, bolt.size.diameter) << name(bolt);
    }
  }
}

TEST_P(DemoBed, PliesLieFaceToFaceAlongTheBolt) {
  // Each ply's steel starts where the one before ends, measured from the
  // items' own bounds, not from the thicknesses the bolt was given.
  const Bed bed = demo_bed(GetParam());
  for (const Bolt& bolt : bed.bolts) {
    Mm depth = 0;
    for (const Ply& ply : bolt.plies) {
      const Part& part = bed.part_of(ply.item);
      Mm thickness = 0, first = 0;
      if (const Plate* plate = std::get_if<Plate>(&part.form)) {
        const Vec3 a = bed.items[ply.item].placement.point({0, 0, 0}),
                   b = bed.items[ply.item].placement.point({0, 0, plate->thickness});
        first = std::min(dot(a - bolt.seat, bolt.direction), dot(b - bolt.seat, bolt.direction));
        thickness = plate->thickness;
      } else if (const Member* member = std::get_if<Member>(&part.form)) {
        const HoleFrame f = hole_frame(member->section, member->holes[ply.hole]);
        const Vec3 out = bed.items[ply.item].placement.point(f.centre);
        const Vec3 in = bed.items[ply.item].placement.point(f.centre - f.thickness * f.outward);
        first = std::min(dot(out - bolt.seat, bolt.direction), dot(in - bolt.seat, bolt.direction));
        thickness = f.thickness;
      } else {
        const Lug& lug = std::get<Bought>(part.form).lugs[ply.hole];
        first = dot(bed.items[ply.item].placement.point(lug.at) - bolt.seat, bolt.direction);
        thickness = lug.thickness;
      }
      EXPECT_NEAR(first, depth, 1e-6) << name(bolt) << " at " << name(bed.items[ply.item]);
      EXPECT_NEAR(ply.thickness, thickness, 1e-9);
      depth += thickness;
    }
  }
}

// Mirror symmetry, left to right, of everything that comes in pairs.
TEST_P(DemoBed, LeftMirrorsRight) {
  const Bed bed = demo_bed(GetParam());
  int pairs = 0;
  for (const Bolt& bolt : bed.bolts) {
    if (bolt.id.side != Side::left) continue;
    Identity other = bolt.id;
    other.side = Side::right;
    const Bolt* twin = &bed.bolts[bed.bolt(other)];
    EXPECT_NEAR(twin->seat.x, bolt.seat.x, 1e-6);
    EXPECT_NEAR(twin->seat.y, -bolt.seat.y, 1e-6);
    EXPECT_NEAR(twin->seat.z, bolt.seat.z, 1e-6);
    EXPECT_EQ(twin->length, bolt.length);
    ++pairs;
  }
  EXPECT_GE(pairs, 40);
}

TEST_P(DemoBed, MassCentreIsOnTheCentreLineButForClampsStopsAndHead) {
  const Bed bed = demo_bed(GetParam());
  Kg total = 0;
  double moment = 0;
  for (const Item& item : bed.items) {
    const Part& part = bed.parts[item.part];
    if (!item.shown || part.id.kind == Kind::clamp || part.id.kind == Kind::log_stop ||
        part.id.kind == Kind::head)
      continue;
    const Bought* bought = std::get_if<Bought>(&part.form);
    const Vec3 centre = item.placement.point(bought ? bought->centre_of_mass : centroid(part));
    total += mass(part);
    moment += mass(part) * centre.y;
  }
  EXPECT_GT(total, 300);
  EXPECT_NEAR(moment / total, 0, 1e-6);
}

TEST(Layout, BaseBedHasTheCountsOneWouldMakeByHand) {
  const Bed bed = demo_bed("base");
  std::map<std::string, int> count;
  for (std::size_t i = 0; i < bed.parts.size(); ++i)
    count[name(bed.parts[i])] = bed.count(static_cast<int>(i));
  EXPECT_EQ(count["rail section"], 6);
  EXPECT_EQ(count["bunk"], 13);
  EXPECT_EQ(count["tab plate"], 24);
  EXPECT_EQ(count["tab pad"], 24);
  EXPECT_EQ(count["main"], 2);
  EXPECT_EQ(count["tongue"], 2);
  EXPECT_EQ(count["joint gusset"], 4);
  EXPECT_EQ(count["track stop"], 4);
  EXPECT_EQ(count["jack"], 6);
  EXPECT_EQ(count["jack plate"], 6);
  EXPECT_EQ(count["wheel"], 2);
  EXPECT_EQ(count["corner gusset"], 2);
  std::map<Kind, int> bolts;
  for (const Bolt& b : bed.bolts) ++bolts[b.id.kind];
  EXPECT_EQ(bolts[Kind::track_bolt], 24);
  EXPECT_EQ(bolts[Kind::bunk_bolt], 26);
  EXPECT_EQ(bolts[Kind::gusset_bolt], 16);
  EXPECT_EQ(bolts[Kind::stop_bolt], 4);
  EXPECT_EQ(bolts[Kind::jack_bolt], 24);
  EXPECT_EQ(bolts[Kind::tongue_jack_bolt], 3);
}

// A length that fits between is a mark of the tape, no longer than the room and less
// than a mark short of it, and stands in the middle.
TEST(Layout, CrossMembersAreCutDownToTheTape) {
  for (const char* order : {"base", "metric"}) {
    const Job job = demo_job(order);
    const Bed bed = testing::bed_of(job);
    const Item& item = bed.items[bed.item({Kind::cross_member, Side::middle, 1})];
    const Member& cross = std::get<Member>(bed.parts[item.part].form);
    const Mm mark = job.order.order.tape;
    const Mm room =
        job.frame.main.spacing - 2 * std::get<Member>(bed.parts[bed.part({Kind::main})].form).section.web;
    EXPECT_NEAR(cross.length / mark, std::round(cross.length / mark), 1e-4) << order;
    EXPECT_LE(cross.length, room + 1e-6) << order;
    EXPECT_GT(cross.length, room - mark) << order;
    EXPECT_NEAR(item.placement.origin.y, -cross.length / 2, 1e-6) << order;
  }
}

TEST(Layout, TongueEndsAreSquareToTheBed) {
  const Bed bed = demo_bed("base");
  for (const Side side : both_sides) {
    const Item& item = bed.items[bed.item({Kind::tongue, side})];
    const Member& m = std::get<Member>(bed.parts[item.part].form);
    for (Mm y : {0.0, m.section.flange}) {
      const Vec3 front = item.placement.point({y * std::tan(m.start_mitre), y, 0});
      const Vec3 back = item.placement.point({m.length + y * std::tan(m.end_mitre), y, 0});
      EXPECT_NEAR(front.x, -38 * inch, 1e-6);
      EXPECT_NEAR(back.x, 4.75 * inch, 1e-5);
      EXPECT_GT(std::abs(front.y), 0.5) << "toes must not cross the centre line";
    }
  }
}

TEST(Layout, TabsComeToTheNearestMarkOfTheTape) {
  const Bed bed =
      demo_bed("base", {"track.rail_length=84 in", "track.bunk_pitch=21 in", "order.tape=1/16 in"});
  const std::vector<int> tabs = bed.items_of(Kind::tab);
  ASSERT_FALSE(tabs.empty());
  for (const int tab : tabs) {
    const double marks = bed.items[tab].placement.origin.x / (inch / 16);
    EXPECT_NEAR(marks, std::round(marks), 1e-6) << name(bed.items[tab]);
  }
}

TEST(Layout, AFoundTabMovesItsHoleAndNothingElse) {
  const Bed straight = demo_bed("base");
  const Bed moved = demo_bed("base", {"tabs_found=[{tab: R7, x: 3/16 in, y: -1/8 in}]"});
  ASSERT_EQ(straight.items.size(), moved.items.size());
  for (std::size_t i = 0; i < straight.items.size(); ++i) {
    const Vec3 by = moved.items[i].placement.origin - straight.items[i].placement.origin;
    const bool tab = straight.items[i].id == Identity{Kind::tab, Side::right, 7} ||
                     straight.items[i].id == Identity{Kind::tab_pad, Side::right, 7};
    EXPECT_NEAR(by.x, tab ? 3.0 / 16 * inch : 0, 1e-9) << name(straight.items[i]);
    EXPECT_NEAR(by.y, tab ? -1.0 / 8 * inch : 0, 1e-9) << name(straight.items[i]);
  }
}

TEST(Layout, AnExistingFrameKeepsItsTabsWhateverTheTrack) {
  const Bed bed = demo_bed("wrong");
  std::vector<Mm> tabs;
  for (const int tab : bed.items_of(Kind::tab))
    if (bed.items[tab].id.side == Side::right) tabs.push_back(bed.items[tab].placement.origin.x / inch);
  ASSERT_EQ(tabs.size(), 18u);
  for (std::size_t i = 0; i < tabs.size(); ++i) EXPECT_NEAR(tabs[i], 7 + 14.0 * static_cast<double>(i), 1e-9);
  EXPECT_TRUE(std::any_of(bed.bolts.begin(), bed.bolts.end(), [](const Bolt& b) { return !b.in_place; }));
}

std::string problems_of(const Job& job) {
  std::string all;
  const auto laid = lay_out(job);
  if (const auto* p = std::get_if<std::vector<Problem>>(&laid))
    for (const Problem& problem : *p) all += to_line(problem) + "\n";
  return all;
}

TEST(Layout, SaysWhatCannotBeMade) {
  EXPECT_THAT(problems_of(demo_job("base", {"frame.cross_member.section=C5x6.7"})),
              HasSubstr("does not fit between the flanges"));
  EXPECT_THAT(problems_of(demo_job("base", {"track.clamps=[{bunk: 14}]"})), HasSubstr("there is no bunk 14"));
  EXPECT_THAT(problems_of(demo_job("base", {"tabs_found=[{tab: R77, x: 1 in}]"})),
              HasSubstr("there is no tab R77"));
  EXPECT_EQ(problems_of(demo_job("base")), "");
}

}  // namespace
}  // namespace bedwright
