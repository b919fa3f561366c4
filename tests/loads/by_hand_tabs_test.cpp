// Tabs, their welds and the track bolts against hand statics from what the files in params/
// state. Strengths: AISC 360 tables J3.2 and J2.5, sections J3.7 and J4.2; the elastic
// method for welds as lines, AISC Manual part 8. From memory.
#include <gtest/gtest.h>

#include "bed/tab_weld.h"
#include "loads/by_hand.h"
#include "loads/loads.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using namespace testing;

void expect_near(double found, double by_hand, double tolerance = 0.02) {
  EXPECT_NEAR(found, by_hand, tolerance * std::abs(by_hand));
}

LoadsResult loads_of(const std::string& order, const std::vector<std::string>& sets) {
  std::vector<std::string> all{"kit.head.lock_offset=104 in", "kit.head.mass=610 lb", "kit.head.mass_y=3 in"};
  all.insert(all.end(), sets.begin(), sets.end());
  const Job job = demo_job(order, all);
  return run_loads(job, bed_of(job));
}

const double area = 3.14159265 / 4 * 0.25;  // a 1/2 in bolt, in2

// Eight bolts a section share 0.8 g of the head and a third of the track; the head, its
// centre 22 in above the rails' tops and so 25 in above the tabs, turns over half a section
// (40 in) onto two bolts.
TEST(ByHandTabs, TrackBoltsUnderBraking) {
  const TabLoads t = loads_of("base", {}).tabs;
  const double carried = 610 + weight(track_of_base()) / 3;
  ASSERT_EQ(t.section_bolts, 8);
  expect_near(t.carried / pound, carried);
  expect_near(t.shear / pound_force, 0.8 * carried / 8);
  EXPECT_NEAR(t.above / inch, 25, 0.01);
  EXPECT_NEAR(t.across / inch, 46.5, 0.01);
  EXPECT_NEAR(t.along / inch, 40, 0.01);
  EXPECT_FALSE(t.sideways);
  expect_near(t.overturning / pound_force, 0.8 * 610 * 25 / 40 / 2, 1e-4);
  expect_near(t.lift / pound_force, 0.5 * carried / 8);
  const double tension = 0.8 * 610 * 25 / 40 / 2 + 0.5 * carried / 8, shear = 0.8 * carried / 8;
  expect_near(t.tension / pound_force, tension);
  expect_near(t.bolt_shear / (0.001 * ksi), shear / area);
  expect_near(t.bolt_tension / (0.001 * ksi), tension / area);
  EXPECT_NEAR(t.bolt_shear_allowed / ksi, 13.5, 1e-6);
  EXPECT_NEAR(t.bolt_tension_allowed / ksi, 22.5, 1e-6);  // so little shear leaves it whole
}

// 3 g sideways: over the 46-1/2 in between the rows, onto four bolts. Shear then takes from
// the tension that is allowed: (1.3 x 45 - 2 x 45 / 27 x f) / 2.
TEST(ByHandTabs, TrackBoltsInACorner) {
  const TabLoads t = loads_of("base", {"road.cornering=3", "kit.head.mass=3000 lb"}).tabs;
  EXPECT_TRUE(t.sideways);
  expect_near(t.overturning / pound_force, 3.0 * 3000 * 25 / 46.5 / 4, 1e-4);
  const double f = 3.0 * (3000 + weight(track_of_base()) / 3) / 8 / area / 1000;
  expect_near(t.bolt_shear / ksi, f);
  ASSERT_LT((1.3 * 45 - 2 * 45 / 27.0 * f) / 2, 22.5) << "the interaction is what limits";
  expect_near(t.bolt_tension_allowed / ksi, (1.3 * 45 - 2 * 45 / 27.0 * f) / 2, 0.03);
}

TEST(ByHandTabs, CargoIsHeldByTheBolts) {
  const std::string cargo = "road.cargo={mass: 400 lb, position: 110 in}";
  expect_near((loads_of("base", {cargo}).tabs.carried - loads_of("base", {}).tabs.carried) / pound, 400,
              1e-6);
}

// A plate of 1/2 in, 3 in long, bent at the web's back 1-1/4 in inside its hole. The weld:
// two lines 1-3/4 in long and 3 in apart, their middle 2-1/8 in inside the hole.
TEST(ByHandTabs, APlateTabOnTheRoad) {
  const LoadsResult loads = loads_of("base", {"kit.mounting.max_pitch=70 in"});
  const TabLoads& t = loads.tabs;
  ASSERT_EQ(t.section_bolts, 4);
  const TabOverABump bump;
  const double down = bump.down, turning = bump.turning;
  expect_near(t.vertical / pound_force, down);
  expect_near(t.tab_stress / (0.001 * ksi), (down * 1.25 + turning) / (3 * 0.25 / 6));
  EXPECT_NEAR(t.tab_allowed / ksi, 36 / 1.67, 1e-6);
  expect_near(
      t.tab_stress_at_work / (0.001 * ksi),
      (loads.stand.tab_push.load * 1.25 * inch + t.turning_at_work) / (pound_force * inch) / (3 * 0.25 / 6),
      1e-4);
  const double carried = 610 + weight(track_of_base()) / 3, along = 0.8 * carried / 4,
               tension = 0.8 * 610 * 25 / 40 / 2 + 0.5 * carried / 4, up = std::max(down, tension);
  const double line = 1.75, off = 2.125;
  const double square = up / (2 * line) + (up * off + turning) / (line * line / 3), fore = along / (2 * line),
               couple = along * off / (3 * line);
  expect_near(t.weld / (pound_force / inch), std::sqrt(square * square + fore * fore + couple * couple));
  expect_near(t.weld_allowed / (pound_force / inch), 928 * 4,
              0.001);  // AISC Manual part 8: 928 lb a sixteenth
}

// A clip of L3x3x1/4, 3 in long: bent at its heel, 1/4 in outside the web's back.
TEST(ByHandTabs, AClipTabOnTheRoad) {
  const LoadsResult loads =
      loads_of("one_extension", {"kit.mounting.max_pitch=70 in", "kit.head.lock_offset=104 in"});
  const TabLoads& t = loads.tabs;
  expect_near(t.tab_stress / (0.001 * ksi),
              (t.vertical * 1.0 * inch + t.turning) / (pound_force * inch) / (3.5 * 0.0625 / 6), 1e-4);
  const double wheel = 305 * (0.5 + 3.0 / 49);
  const TwoSupports rail(85.5, 154.5, {{80, 160, 5.8 * 80 / 12}, {91, 91, wheel}, {117, 117, wheel}});
  EXPECT_GT(t.vertical / pound_force, 2 * rail.front());
  // Lines up and down the web, as long as the clip's leg has web to lie on; square to each other.
  expect_near(t.weld_allowed / (pound_force / inch), 928 * 3, 0.001);
}

// Lines 50 long and 80 apart, 1000 fore and aft 30 off them: each line takes half along itself, and
// one pushes against the other across the bed with 1000 x 30 / 80. 10 and 7.5 a millimetre.
TEST(ByHandTabs, WeldLinesUnderBraking) {
  TabWeld weld;
  weld.line = 50;
  weld.apart = 80;
  weld.off = 30;
  for (const bool flat : {true, false}) {
    weld.flat = flat;
    EXPECT_NEAR(line_load(weld, 0, 1000), 12.5, 1e-9);
  }
}

// Lines at both ends of a tab 3 in long. On the flange: 1-3/4 in, their middle 2-1/8 in inside the
// hole. A clip's, on the web's back: half of what the weld is long, the hole 1-1/4 in outside.
TEST(ByHandTabs, WhereTheWeldsLie) {
  for (const auto& [order, off] : {std::pair{"base", 2.125}, {"one_extension", 1.25}}) {
    const Bed bed = demo_bed(order);
    const std::vector<TabWeld> welds = tab_welds(bed);
    ASSERT_GE(welds.size(), 24u) << order;
    for (const TabWeld& weld : welds) {
      EXPECT_NEAR(weld.apart / inch, weld.flat ? 3 : 3.5, 0.01) << order;
      EXPECT_NEAR(weld.off / inch, off, 0.07) << order;  // a tab lies on a mark of the tape
      EXPECT_NEAR(weld.line, bed.welds[weld.weld].length / 2, 1e-9) << order;
      if (weld.flat) {
        EXPECT_NEAR(weld.line / inch, 1.75, 0.01) << order;
      }
    }
  }
}

// A larger fillet is no stronger than the web beside it: 0.60 x 360 MPa / 2 on 0.2 in.
TEST(ByHandTabs, TheSteelBesideALargeFillet) {
  const TabLoads t = loads_of("one_extension", {"frame.tabs.weld_leg=1/4 in"}).tabs;
  EXPECT_NEAR(t.weld_allowed, 0.60 * 360 / 2 * 0.2 * 25.4, 1e-6);
}

}  // namespace
}  // namespace bedwright
