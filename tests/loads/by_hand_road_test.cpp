// The bed on the road against hand statics from what the files in params/ state: moments
// about the axle, the mains by balance, the tongue as a cantilever, its welds as lines
// (elastic method, AISC Manual part 8). Section moduli: AISC Manual table 1-5, from memory.
#include <gtest/gtest.h>

#include "loads/by_hand.h"
#include "loads/loads.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using namespace testing;

constexpr double part = 0.02;  // hand weights leave out holes, paint and weld

// The base bed with what these sums need of the order said here.
Job road_job(std::vector<std::string> sets = {}) {
  std::vector<std::string> all{"axle.position=137 in", "kit.head.lock_offset=104 in", "kit.head.mass=610 lb",
                               "kit.head.mass_y=3 in", "jacks=[17 in, 120 in, 223 in]"};
  all.insert(all.end(), sets.begin(), sets.end());
  return demo_job("base", all);
}

struct Road {
  Job job;
  LoadsResult loads;
  explicit Road(const std::vector<std::string>& sets = {})
      : job(road_job(sets)), loads(run_loads(job, bed_of(job))) {}
  const TowCondition& way(HeadAt head, bool cargo = false, bool bare = false) const {
    for (const TowCondition& c : loads.tow.conditions)
      if (c.travel == TravelCase{head, cargo, bare}) return c;
    throw std::logic_error("not a way it travels");
  }
};

void expect_near(double found, double by_hand, double tolerance = part) {
  EXPECT_NEAR(found, by_hand, tolerance * std::abs(by_hand));
}

TEST(ByHandRoad, CouplerAxleTyreAndTongueJack) {
  const Road r;
  const Lumps all = both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(610)});
  const TowCondition& c = r.way(HeadAt::front);
  const double tongue = tongue_of(all, 137), axle = weight(all) - tongue;
  expect_near(c.mass / pound, weight(all));
  expect_near(c.tongue / pound, tongue, 0.03);
  expect_near(100 * c.share, 100 * tongue / weight(all), 0.03);
  expect_near(c.axles / pound, axle);
  expect_near(c.axle / pound, axle);
  // 14 in behind the tongue's front cut, which is 38 in ahead of the mains.
  expect_near(c.jack / pound, weight(all) * (137 - centre(all)) / (137 + 24), 0.03);
  expect_near(r.loads.tongue.standing / pound, c.jack / pound, 1e-9);
}

// The head 12 in to the right and the log stops, 21 lb, 15 in to the left; tyres 57 in
// apart inside and 8-1/8 in wide.
TEST(ByHandRoad, TheHeavierTyreOfAHeadToOneSide) {
  const Road r({"kit.head.mass_y=12 in"});
  const Lumps all = both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(610)});
  const double axle = weight(all) - tongue_of(all, 137), aside = 610 * 12 + aside_of_track;
  expect_near(r.way(HeadAt::front).tyre / pound, axle / 2 + aside / (57 + 8.125));
}

TEST(ByHandRoad, TwoAxlesShareAlike) {
  const Road r({"frame.axle.count=2", "frame.axle.spread=33 in"});
  const Lumps all = both({frame_of_base(), track_of_base(), axles_at({120.5, 153.5}), head_at_lock(610)});
  const double axles = weight(all) - tongue_of(all, 137);
  expect_near(r.way(HeadAt::front).axles / pound, axles);
  expect_near(r.way(HeadAt::front).axle / pound, axles / 2);
  expect_near(r.way(HeadAt::front).tyre / pound, axles / 4 + (610 * 3 + aside_of_track) / (57 + 8.125) / 2);
}

// 400 lb of cargo, all else at it was: its own part of the tongue's load by the lever.
TEST(ByHandRoad, CargoByItsOwnLever) {
  const Road r({"road.cargo={mass: 400 lb, position: 60 in}"});
  const TowCondition &with = r.way(HeadAt::front, true), &without = r.way(HeadAt::front);
  EXPECT_NEAR((with.mass - without.mass) / pound, 400, 1e-6);
  EXPECT_NEAR((with.tongue - without.tongue) / pound, 400 * (137 - 60) / 178.0, 0.01);
}

// Bounds of a mass in the middle of its parts: 26 in behind the middle of the track the
// frame's length gives most of what resists turning. Frame and track as a rod of L^2 / 12,
// the head and the axle as points.
TEST(ByHandRoad, ResistsTurningAsARodWithPointsOnIt) {
  const Road r;
  const Lumps all = both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(610)});
  double about = 0;
  for (const Lump& l : all)
    about += l.pounds * ((l.to - l.from) * (l.to - l.from) / 12 + std::pow(l.middle() - centre(all), 2));
  const Vec3 found = r.way(HeadAt::front).inertia;
  const double unit = pound * inch * inch * 1e-6;
  // What lies across the bed turns with it: rails, mains and tyres about 22 to 33 in out.
  const double across = 2 * 20 * 8.2 * 22 * 22 + 2 * 20 * 5.8 * 24 * 24 + 2 * 48 * 32 * 32;
  expect_near(found.z / unit, about + across, 0.10);
  expect_near(found.y / unit, about, 0.10);
}

TEST(ByHandRoad, TheMainsOverABump) {
  const Road r;
  const Lumps bare = frame_of_base(), off = both({bare, track_of_base()}),
              on = both({off, head_at_lock(610)});
  const auto stress = [&](const Lumps& carried, double aside) {
    const double side = 0.5 + aside / weight(carried) / 44;
    return 2.0 * side * bent_by_hand(carried, 261, {124, 150}, 137) / s_c6x82;
  };
  expect_near(r.way(HeadAt::front).main_stress / (0.001 * ksi), stress(on, 610 * 3 + aside_of_track), 0.03);
  expect_near(r.way(HeadAt::off).main_stress / (0.001 * ksi), stress(off, std::abs(aside_of_track)), 0.03);
  expect_near(r.way(HeadAt::off, false, true).main_stress / (0.001 * ksi), stress(bare, 0), 0.03);
}

// A head of 5000 lb on wheels 70 in apart: where it stands is then most of what bends them.
TEST(ByHandRoad, TheMainsUnderAHeavyHeadOnLongWheels) {
  const Road r({"kit.head.mass=5000 lb", "kit.head.wheel_base=70 in", "kit.head.mass_y=8 in"});
  const Lumps on = both({frame_of_base(), track_of_base(), head_at_lock(5000, 104, 70)});
  const double side = 0.5 + (5000 * 8 + aside_of_track) / weight(on) / 44;
  expect_near(r.way(HeadAt::front).main_stress / (0.001 * ksi),
              2.0 * side * bent_by_hand(on, 261, {124, 150}, 137) / s_c6x82);
}

TEST(ByHandRoad, TheMainsUnderCargoAndTwoAxles) {
  const Road r(
      {"road.cargo={mass: 3000 lb, position: 70 in}", "frame.axle.count=2", "frame.axle.spread=33 in"});
  const Lumps on = both({frame_of_base(), track_of_base(), head_at_lock(610), {{70, 70, 3000}}});
  const double side = 0.5 + (610 * 3 + aside_of_track) / weight(on) / 44;
  expect_near(r.way(HeadAt::front, true).main_stress / (0.001 * ksi),
              2.0 * side * bent_by_hand(on, 2 * 261, {107.5, 133.5, 140.5, 166.5}, 137) / s_c6x82, 0.03);
}

// Twice the tongue's load at rest, 41 in ahead of the front member, on two C5x6.7.
TEST(ByHandRoad, TheTongueAsACantilever) {
  const Road r;
  const Lumps all = both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(610)});
  const double coupler = 2.0 * tongue_of(all, 137);
  const TongueLoads& t = r.loads.tongue;
  expect_near(t.coupler / pound_force, coupler, 0.03);
  EXPECT_NEAR(t.arm / inch, 41, 1e-9);
  expect_near(t.moment / (pound_force * inch), coupler * 41, 0.03);
  expect_near(t.stress / (0.001 * ksi), coupler * 41 / (2 * s_c5x67), 0.03);
  EXPECT_NEAR(t.allowed / ksi, 36 / 1.67, 1e-6);
}

TEST(ByHandRoad, TheTonguesWeldsAsLines) {
  const Road r;
  const TongueLoads& t = r.loads.tongue;
  const TongueWelds w;
  EXPECT_NEAR(t.weld_leg / inch, w.leg, 1e-9);
  expect_near(t.weld_length / inch, w.length);
  expect_near(t.weld_arm / inch, 41 + w.middle);
  expect_near(t.weld_far / inch, w.far);
  expect_near(t.weld_inertia / std::pow(inch, 3), w.inertia);
  // Over a bump twice the load at rest, half of it on each channel.
  const double load =
      tongue_of(both({frame_of_base(), track_of_base(), axles_at({137}), head_at_lock(610)}), 137);
  expect_near(t.weld / (0.001 * ksi), w.stress(load), 0.04);
}

// Front of the coupler, 10 in long and its ball 3 in ahead of the tongue, to the rear
// member's toes; its head's top as it travels, 30 in above the rails' tops; tyres of
// 27-1/2 in, their middle 5-1/2 in below the mains.
TEST(ByHandRoad, HowLongAndHighItIs) {
  const Road r;
  expect_near(r.loads.tow.width / inch, 57 + 2 * 8.125, 1e-6);
  expect_near(r.loads.tow.length / inch, 240 + 1.92 + 38 + 3, 0.01);
  expect_near(r.loads.tow.height / inch, 30 + 3.875 + 6 + 5.5 + 13.75, 0.01);
}

}  // namespace
}  // namespace bedwright
