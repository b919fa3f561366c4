// Seats, wheels on upright legs, sinking feet, buckling and fatigue against published figures
// and hand statics from the files' raw figures.
#include "loads/details.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "loads/beam.h"
#include "loads/loads.h"
#include "loads/rail.h"
#include "loads/steel.h"
#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;

LoadsResult loads_of(const Job& job) { return run_loads(job, testing::bed_of(job)); }

// AASHTO Standard Specifications, 17th edition, table 10.3.1A, allowable fatigue ranges for
// redundant members at 500 000 and 2 000 000 cycles, ksi; rounded there. From memory.
TEST(Fatigue, AllowedRangesAreThePublishedOnes) {
  struct Row {
    char category;
    double half_million, two_million;
  };
  for (const Row& row :
       {Row{'A', 37, 24}, Row{'B', 29, 18}, Row{'C', 21, 13}, Row{'D', 16, 10}, Row{'E', 13, 8}}) {
    EXPECT_NEAR(allowed_range(row.category, 5e5) / ksi, row.half_million, 0.6) << row.category;
    EXPECT_NEAR(allowed_range(row.category, 2e6) / ksi, row.two_million, 0.6) << row.category;
  }
  EXPECT_NEAR(allowed_range('E', 1e9) / ksi, 4.5, 1e-9);
  EXPECT_NEAR(allowed_range('F', 1e9) / ksi, 8, 1e-9);
  EXPECT_THROW(allowed_range('Z', 1e6), std::invalid_argument);
}

// Heights drawn from Rayleigh's spread, counted: what even range wears as much at slope 3.
TEST(Fatigue, TheSwingIsTheCubeMeanOfARoughRoad) {
  double cubes = 0;
  constexpr int steps = 200000;
  for (int i = 0; i < steps; ++i) {
    const double height = 0.15 * std::sqrt(-2 * std::log(1 - (i + 0.5) / steps));
    cubes += std::pow(2 * height, 3) / steps;
  }
  const LoadsResult r = loads_of(demo_job("base"));
  EXPECT_NEAR(r.fatigue.swing, std::cbrt(cubes), 0.002);
  EXPECT_NEAR(r.fatigue.cycles, 20000.0 / 45 * 3600 * 2, 1);
  for (const FatigueDetail& d : r.fatigue.details) EXPECT_GT(d.range, 0) << d.what;
  // The main: at rest half of what a bump of two weights does.
  double main = 0;
  for (const TowCondition& c : r.tow.conditions)
    if (c.judged) main = std::max(main, c.main_stress);
  EXPECT_NEAR(r.fatigue.details.front().range, main / 2 * std::cbrt(cubes), 0.01 * main);
}

// C6x8.2 by the theory of elastic buckling of a beam under even moment: (pi / L) x square
// root of (E Iy G J + (pi E / L)^2 Iy Cw), with J = 0.0736 in4, Cw = 4.70 in6, Iy = 0.687 in4,
// Sx = 4.35 in3 (AISC Manual table 1-5, from memory).
TEST(Buckling, ALongChannelBucklesAsTheoryHasIt) {
  const Section main = *demo_job("base").catalog.section("C6x8.2");
  for (const double length : {180.0, 240.0, 300.0}) {
    const double pi = 3.14159265358979, e = 29000, g = 11200;
    const double by_theory =
        pi / length * std::sqrt(e * 0.687 * g * 0.0736 + std::pow(pi * e / length, 2) * 0.687 * 4.70) / 4.35;
    // Without the fillets its torsion constant is a tenth less: on the safe side.
    const double ratio = channel_strength(main, length * inch, 36 * ksi) / ksi / by_theory;
    EXPECT_GT(ratio, 0.92) << length;
    EXPECT_LT(ratio, 1.0) << length;
  }
  EXPECT_EQ(channel_strength(main, 36 * inch, 36 * ksi), 36 * ksi) << "braced as the demos are";
  // Between, on the straight line of equation F2-2 from the plastic moment (Zx = 5.16 in3) at
  // Lp = 1.76 x 0.536 in x 28.4 to 0.7 yield at the length where the theory gives that.
  const double lp = 1.76 * 0.536 * std::sqrt(29000 / 36.0);
  double lr = 60;
  const auto theory = [](double l) {
    return 3.14159265 / l *
           std::sqrt(29000 * 0.687 * 11200 * 0.0736 + std::pow(3.14159265 * 29000 / l, 2) * 0.687 * 4.70) /
           4.35;
  };
  while (theory(lr) > 0.7 * 36) lr += 0.1;
  const double plastic = 36 * 5.16 / 4.35, at = 110;
  EXPECT_NEAR(channel_strength(main, at * inch, 36 * ksi) / ksi,
              plastic - (plastic - 25.2) * (at - lp) / (lr - lp), 1.2);
}

TEST(Buckling, WideBracingIsStopped) {
  const LoadsResult near = loads_of(demo_job("base")),
                    wide = loads_of(demo_job("base", {"frame.cross_member.max_spacing=110 in"}));
  EXPECT_NEAR(near.stand.main_allowed / ksi, 36 / 1.67, 1e-6);
  EXPECT_GT(wide.stand.main_unbraced, 75 * inch);
  EXPECT_LT(wide.stand.main_allowed, 0.9 * near.stand.main_allowed);
}

// A main that is bent to what it bears braced as the demos are, and to more than it bears
// braced wide: the way out is bracing, and it clears.
TEST(Buckling, CrossMembersCloserTogetherAreOfferedAndClear) {
  const auto stopped = [](const std::vector<std::string>& sets, double landing) {
    Job job = demo_job("base", sets);
    job.order.work.landing = landing;
    const Bed bed = testing::bed_of(job);
    std::vector<Finding> found;
    for (const Finding& f : load_findings(job, bed, run_loads(job, bed), {}, false))
      if (f.code == "STAND-BEND" && f.subjects.front().id.kind == Kind::main) found.push_back(f);
    return found;
  };
  const std::vector<std::string> wide{"frame.cross_member.max_spacing=110 in"};
  double landing = 2;
  while (landing < 40 && stopped(wide, landing).empty()) landing += 0.25;
  const std::vector<Finding> found = stopped(wide, landing);
  ASSERT_EQ(found.size(), 1u);
  EXPECT_NE(found[0].message.find("held sideways only every"), std::string::npos) << found[0].message;
  const auto bracing = std::find_if(found[0].changes.begin(), found[0].changes.end(), [](const Change& c) {
    return c.key == "frame.cross_member.max_spacing";
  });
  ASSERT_NE(bracing, found[0].changes.end());
  EXPECT_TRUE(stopped({bracing->key + "=" + bracing->value}, landing).empty()) << bracing->value;
}

// A beam over two equal spans whose middle support goes down by d: that support gives up
// 6 E I d / L^3 (the deflection of a simple beam of 2 L, P (2 L)^3 / 48 E I), until it is free.
TEST(SunkSupport, GivesUpItsLoadAsASimpleBeamsDeflectionSays) {
  const Mm span = 2000;
  const double ei = 2e11;
  const auto middle = [&](Mm sunk) {
    const Beam beam({{0, false, 0}, {span, false, sunk}, {2 * span, false, 0}}, {0, span, 2 * span}, ei);
    return beam.solve(beam.field({{0, 2 * span, 1000}})).value().reactions[1];
  };
  EXPECT_NEAR(middle(0), 625, 1e-6);  // 5/8 of the load: AISC Manual table 3-23
  const Mm sunk = 2;
  EXPECT_NEAR(middle(0) - middle(sunk), 6 * ei * sunk / (span * span * span), 1e-6);
  EXPECT_EQ(middle(100), 0) << "it hangs clear";
}

TEST(SunkFeet, CostWhatTheTableSays) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const Bed bed = testing::bed_of(job);
    const BedWeights w = weigh(bed);
    const Stand now = stand_loads(job, bed, w);
    const std::vector<SunkFoot> feet = sunk_feet(job, bed, w);
    ASSERT_EQ(feet.size(), job.order.jacks.size()) << order;
    for (const SunkFoot& f : feet) {
      EXPECT_GE(f.enough, 0) << order;
      EXPECT_LT(f.enough, job.order.work.sag_limit + inch / 4) << order;
      if (!f.tips) {
        EXPECT_GT(f.out, now.sag) << order << " rails further out than level";
      }
    }
  }
}

// The kit's upright leg is 1/4 in thick and the bolts stand 1-1/4 in from its outer face: the
// wheels 1-1/8 in outside the bolts. Where nothing holds the rail, all of that turns the tab;
// where all does, none.
TEST(WheelOnItsLeg, StandsSoFarOutside) {
  const TabArm arm = tab_arm(demo_job("one_extension"));
  EXPECT_NEAR(arm.wheel_off / inch, 1.125, 1e-9);
  EXPECT_NEAR(turning_arm(arm, 0) / inch, 1.125, 1e-9);
  EXPECT_EQ(turning_arm(arm, 1e15), 0);
  // Rail and tab turn alike: (P a^2 / 2 + P t a) / EI = P (e - t) / hold.
  for (const double hold : {1e6, 5e6, 2e7}) {
    const Mm t = turning_arm(arm, hold);
    if (t <= 0) continue;
    EXPECT_NEAR((arm.arm * arm.arm / 2 + t * arm.arm) / arm.stiffness, (arm.wheel_off - t) / hold, 1e-12);
  }
}

// Without bunks the clip of one_extension carries wheel and arm alone: from raw figures, its
// 1/4 in leg 3-1/2 in long, web back to bolt 1-1/4 in.
TEST(WheelOnItsLeg, BendsAClipByItsWholeArmWhereNoBunkHoldsTheRail) {
  const Job job = demo_job("one_extension");
  Bed bed = testing::bed_of(job);
  const TabLoads with = run_loads(job, bed).tabs;
  EXPECT_GT(with.held, 0.1);
  EXPECT_LT(with.held, 1);
  const TabPush push = tab_push_locked(job, bed);
  bed.track.bunks.clear();
  const TabPush free = tab_push_locked(job, bed);
  EXPECT_NEAR(free.turning, free.wheels * 1.125 * inch, 1e-6 * free.turning);
  EXPECT_LT(push.turning, free.turning);
  const double modulus = 3.5 * 0.25 * 0.25 / 6;  // in3
  const double by_hand =
      2.0 * (push.load * (1.25 - 0.25) + push.turning / inch) / pound_force / modulus / 1000;
  // The rest of track and head comes on at the bolts too: a little more.
  EXPECT_GT(with.tab_stress / ksi, by_hand);
  EXPECT_LT(with.tab_stress / ksi, 1.3 * by_hand);
}

// 3/8 in of plate, 3/8 in of flange and half of a 2 in post: 1-3/4 in from the web, bolts 1/2 in
// and 2-1/2 in apart up and down.
TEST(JackSeat, PullsItsBoltsByItsArm) {
  const LoadsResult r = loads_of(demo_job("base"));
  ASSERT_TRUE(r.jack_seat);
  const double load = r.jack_seat->load / pound_force, area = 0.19635;
  EXPECT_NEAR(r.jack_seat->bolt_tension / ksi, load * 1.75 / 2.5 / 2 / area / 1000, 1e-3);
  EXPECT_NEAR(r.jack_seat->bolt_shear / ksi, load / 4 / area / 1000, 1e-3);
  double most = 0;
  for (const JackLoad& j : r.stand.jacks) most = std::max(most, j.most);
  EXPECT_EQ(r.jack_seat->load, most);
  // A log on bunk bolts 21-1/4 in off the middle, inside a web at 22 in; C4x5.4 has S = 1.93 in3.
  EXPECT_NEAR(r.jack_seat->cross_member / ksi, load * (1.75 + 0.75) / 1.93 / 1000, 0.02 * load / 1000);
}

// 1500 lb/ft2 is 10.4 psi.
TEST(JackFoot, WantsTimberForItsLoad) {
  const LoadsResult r = loads_of(demo_job("base", {"frame.jack.foot=5 in"}));
  ASSERT_TRUE(r.jack_foot);
  EXPECT_TRUE(r.jack_foot->stated);
  const double load = r.jack_seat->load / pound_force;
  EXPECT_NEAR(r.jack_foot->pressure / ksi, load / 25 / 1000, 1e-6);
  EXPECT_NEAR(r.jack_foot->pad / inch, std::sqrt(load / (1500.0 / 144)), 1e-6);
}

// Levers about the rear end of the lap, and AISC 360 J10.1 with the C6x8.2's flange of 0.343 in.
TEST(TongueSeat, LeversAboutItsLap) {
  const LoadsResult r = loads_of(demo_job("base"));
  const double down = std::max(r.tongue.coupler, r.tongue.braking_coupler) / 2 / pound_force;
  EXPECT_NEAR(r.tongue_seat.front / pound_force, down * (41 + 4.75) / 4.75, 0.5);
  EXPECT_NEAR(r.tongue_seat.allowed / pound_force, 6.25 * 36000 * 0.343 * 0.343 / 1.67 / 2, 1);
}

// Moments about the axle of the whole trailer braked at the ball, from the raw figures of the
// base order: axle at 137 in, ball at -41 in, 17-1/2 in above the road.
TEST(Braking, DipsTheNoseByMomentsAboutTheAxle) {
  const LoadsResult r = loads_of(demo_job("base"));
  double most = 0, push = 0;
  for (const TowCondition& c : r.tow.conditions) {
    if (!c.judged) continue;
    const double weight = c.mass / pound, ahead = 137 - c.centre.x / inch, high = c.above_road / inch - 17.5;
    most = std::max(most, (weight * ahead + 0.8 * weight * high) / (137 + 41));
    push = std::max(push, 0.8 * weight);
  }
  EXPECT_NEAR(r.tongue.braking_coupler / pound_force, most, 0.01 * most);
  EXPECT_NEAR(r.tongue.braking_push / pound_force, push, 0.1);
  // Two C5x6.7: S = 3.00 in3, A = 1.97 in2 each (AISC Manual table 1-5, from memory), at 25 degrees.
  const double bent = most * 41 / 6.0 / 1000, pushed = push / (2 * 1.97 * 0.9063) / 1000;
  EXPECT_NEAR(r.tongue.braking_stress / ksi, bent + pushed, 0.02 * (bent + pushed));
}

}  // namespace
}  // namespace bedwright
