// The bed at work against hand statics: mains on two pairs of jacks and rails on two tabs a
// section, which balance alone decides; a third pair by the force method; head, log and
// push from what the files in params/ state. Sections: AISC Manual tables 1-5 and 1-7,
// E = 29 000 ksi (AISC 360), from memory.
#include <gtest/gtest.h>

#include <functional>

#include "loads/beam.h"
#include "loads/by_hand.h"
#include "loads/loads.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using namespace testing;

constexpr double part = 0.02;                    // hand weights leave out holes, paint and weld
constexpr double e = 29.0e6;                     // psi
constexpr double i_main = 13.1, s_main = 4.38;   // C6x8.2, in4 and in3
constexpr double i_rail = 1.33, s_rail = 0.585;  // L4x3x1/4 on its long leg
constexpr double s_bunk = 0.295;                 // L2-1/2x2-1/2x3/16
// pi/4 x (20/12)^2 x 16 ft x 63 lb/ft3
constexpr double log_weight = heaviest_of_its_kind * 2199.1;

void expect_near(double found, double by_hand, double tolerance = part) {
  EXPECT_NEAR(found, by_hand, tolerance * std::abs(by_hand));
}

struct Work {
  Job job;
  Bed bed;
  Stand stand;
  explicit Work(
      const std::vector<std::string>& sets, const std::function<void(Job&)>& change = [](Job&) {})
      : job(made(sets, change)), bed(bed_of(job)), stand(run_loads(job, bed).stand) {}
  double from() const { return bed.track.head_from / inch; }
  double to() const { return bed.track.head_to / inch; }

 private:
  static Job made(const std::vector<std::string>& sets, const std::function<void(Job&)>& change) {
    std::vector<std::string> all{"axle.position=137 in", "kit.head.mass=610 lb", "kit.head.mass_y=3 in"};
    all.insert(all.end(), straight_log.begin(), straight_log.end());
    all.insert(all.end(), sets.begin(), sets.end());
    Job job = demo_job("base", all);
    change(job);
    return job;
  }
};

// On one wheel each side, without a log.
void head_alone(Job& job) {
  job.order.work.log.reset();
  job.kit.head.wheel_base = 0;
}

// One main's part of frame, track and gear: half, and what stands to its side of the middle.
Lumps half_the_bed(double side, const std::vector<double>& jacks = {17, 223}) {
  return both({times(both({frame_of_base(jacks), track_of_base(), axles_at({137})}), 0.5),
               {{120, 120, side * aside_of_track / 44}}});
}

// The worst of something over the head's places.
double worst(const Work& w, const std::function<double(double head)>& figure) {
  double most = 0;
  for (int i = 0; i <= 80; ++i) most = std::max(most, figure(w.from() + i * (w.to() - w.from()) / 80));
  return most;
}

constexpr double right_of_head = 0.5 + 3.0 / 44, left_of_head = 0.5 - 3.0 / 44;

TwoSupports main_under(double head, double share) {
  return {17, 223, both({half_the_bed(share > 0.5 ? 1 : -1), {{head, head, 610 * share}}})};
}

TEST(ByHandWork, MainsOnTwoPairsOfJacks) {
  const Work w({"jacks=[17 in, 223 in]"}, head_alone);
  const double m = worst(w, [](double x) { return main_under(x, right_of_head).most_bending(0, 240); });
  expect_near(std::abs(w.stand.main_moment) / (pound_force * inch), m);
  expect_near(w.stand.main_stress / (0.001 * ksi), m / s_main);
  const double sag = worst(w, [](double x) {
    double most = 0;
    for (double down : main_under(x, right_of_head).down(0, 240, e * i_main, 960))
      most = std::max(most, std::abs(down));
    return most;
  });
  expect_near(w.stand.main_sag / inch, sag);
  EXPECT_NEAR(w.stand.sag_x / inch, 120, 6);
  EXPECT_NEAR(w.stand.sag, w.stand.main_sag + w.stand.rail_sag, 1e-9);
  EXPECT_NEAR(w.stand.sag_limit / inch, 1.0 / 16, 1e-9);
  const double steepest = worst(w, [](double x) {
    const auto down = main_under(x, right_of_head).down(0, 240, e * i_main, 960);
    double most = 0;
    for (std::size_t i = 1; i < down.size(); ++i)
      most = std::max(most, std::abs(down[i] - down[i - 1]) / 0.25);
    return most;
  });
  expect_near(w.stand.slope, steepest, 0.03);
  EXPECT_NEAR(w.stand.main_allowed / ksi, 36 / 1.67, 1e-6);
}

// Shear is the most just beside a jack: its push less what overhangs beyond it.
TEST(ByHandWork, WebsBesideAJack) {
  const Work w({"jacks=[17 in, 223 in]"}, head_alone);
  const double v = worst(w, [](double x) {
    const TwoSupports main = main_under(x, right_of_head);
    return std::max({std::abs(main.shear(17)), std::abs(main.shear(223 - 1e-6)),
                     std::abs(main.shear(17 - 1e-6)), std::abs(main.shear(223))});
  });
  expect_near(w.stand.main_shear / pound_force, v);
  expect_near(w.stand.web_stress / (0.001 * ksi), v / (6 * 0.2));
  EXPECT_NEAR(w.stand.web_allowed / ksi, 0.6 * 36 / 1.67, 1e-6);  // AISC 360 section G2.1
}

TEST(ByHandWork, JacksUnderTheHead) {
  const Work w({"jacks=[17 in, 223 in]"}, head_alone);
  ASSERT_EQ(w.stand.jacks.size(), 4u);
  const JackLoad &left = w.stand.jacks[0], &right = w.stand.jacks[2];
  expect_near(right.most / pound_force, main_under(w.from(), right_of_head).front());
  expect_near(right.least / pound_force, main_under(w.to(), right_of_head).front());
  expect_near(left.most / pound_force, main_under(w.from(), left_of_head).front());
  // Drawn where a main sags most: the head near the middle.
  const double middle = w.stand.head_x / inch;
  EXPECT_NEAR(middle, 120, 12);
  expect_near(right.drawn / pound_force, main_under(middle, right_of_head).front());
  expect_near(left.drawn / pound_force, main_under(middle, left_of_head).front());
}

const std::vector<double> three_pairs{17, 120, 223};

// A third pair half way takes what brings that place back up: its sag without it, over
// L^3 / 48 EI for each pound.
double middle_push(double head, double share, double mass = 610) {
  const TwoSupports without{17, 223, both({half_the_bed(1, three_pairs), {{head, head, mass * share}}})};
  return without.down(17, 223, e * i_main, 824)[412] / (std::pow(206, 3) / (48 * e * i_main));
}

TEST(ByHandWork, AThirdPairOfJacksByTheForceMethod) {
  const Work w({"jacks=[17 in, 120 in, 223 in]"}, head_alone);
  ASSERT_EQ(w.stand.jacks.size(), 6u);
  const double most = worst(w, [](double x) { return middle_push(x, right_of_head); });
  expect_near(w.stand.jacks[4].most / pound_force, most);
  // With that push the main is a beam on two supports again.
  const auto held_up = [](double x, double share) {
    return TwoSupports{
        17, 223,
        both({half_the_bed(1, three_pairs), {{x, x, 610 * share}, {120, 120, -middle_push(x, share)}}})};
  };
  const double m = worst(w, [&](double x) { return held_up(x, right_of_head).most_bending(0, 240); });
  expect_near(std::abs(w.stand.main_moment) / (pound_force * inch), m, 0.03);
  const double sag = worst(w, [&](double x) {
    double deepest = 0;
    for (double down : held_up(x, right_of_head).down(0, 240, e * i_main, 960))
      deepest = std::max(deepest, std::abs(down));
    return deepest;
  });
  expect_near(w.stand.main_sag / inch, sag, 0.05);
}

// A head of 9000 lb between the rear pairs lifts the mains off the front one: they then
// stand on the two behind it.
TEST(ByHandWork, AJackThatTheMainLiftsOff) {
  const Work w({"jacks=[17 in, 120 in, 223 in]"}, [](Job& job) {
    head_alone(job);
    job.kit.head.mass = 9000 * pound;
  });
  const double lifts = worst(w, [](double x) {
    const TwoSupports on_two{120, 223, both({half_the_bed(1, three_pairs), {{x, x, 9000 * right_of_head}}})};
    return x > 120 ? -on_two.down(0, 240, e * i_main, 960)[17 * 4] : 0;
  });
  ASSERT_GT(lifts, 0);
  expect_near(w.stand.jacks[3].lifts / inch, lifts, 0.03);
  EXPECT_EQ(w.stand.jacks[3].least, 0);
}

// On bunks as on even springs: W (1/n + off d / sum of d^2), each bunk d from their middle.
Lumps on_bunks(double weight, double length, double middle) {
  Lumps under;
  for (double x : bunks_of_base)
    if (std::abs(x - middle) <= length / 2) under.push_back({x, x, 0});
  const double n = static_cast<double>(under.size());
  double mean = 0, squares = 0;
  for (const Lump& l : under) mean += l.from / n;
  for (const Lump& l : under) squares += (l.from - mean) * (l.from - mean);
  for (Lump& l : under) l.pounds = weight * (1 / n + (middle - mean) * (l.from - mean) / squares);
  return under;
}
double heaviest(const Lumps& bunks) {
  return std::max_element(bunks.begin(), bunks.end(),
                          [](const Lump& a, const Lump& b) { return a.pounds < b.pounds; })
      ->pounds;
}

// A log 16 ft long, its middle at 120 in, lies on the nine bunks from 40 to 200 in; against
// its stops its middle is 5 in to the left.
TEST(ByHandWork, ALogOnTwoPairsOfJacks) {
  const Work w({"jacks=[17 in, 223 in]", "work.log.position=120 in", "work.log.diameter=20 in",
                "work.log.length=16 ft", "work.log.species=northern red oak"},
               [](Job& job) { job.kit.head.wheel_base = 0; });
  expect_near(w.stand.log_mass / pound, log_weight, 1e-4);
  expect_near(w.stand.bunk_load / pound_force, heaviest(on_bunks(log_weight, 192, 120)), 1e-4);
  const Lumps log = times(on_bunks(log_weight, 192, 120), 0.5 + 5.0 / 44);
  const double m = worst(w, [&](double x) {
    return TwoSupports{17, 223, both({half_the_bed(-1), log, {{x, x, 610 * left_of_head}}})}.most_bending(
        0, 240);
  });
  expect_near(std::abs(w.stand.main_moment) / (pound_force * inch), m);
  EXPECT_EQ(w.stand.side, Side::left);
}

// 100 in of the same log with its middle at 67 in: on five bunks from 20 to 100 in, 7 in off
// their middle.
TEST(ByHandWork, ALogOffTheMiddleOfItsBunks) {
  const Work w({"work.log.position=67 in", "work.log.length=100 in", "work.log.diameter=20 in",
                "work.log.species=northern red oak"});
  const double weight = log_weight * 100 / 192;
  expect_near(w.stand.bunk_load / pound_force, heaviest(on_bunks(weight, 100, 67)), 1e-4);
}

// Two tabs a section: 5-1/2 in from its ends. The middle section, from 80 to 160 in.
struct Rail {
  double bunk_part, wheel_part, bunk;
  TwoSupports under(double head, double wheel_base = 26) const {
    Lumps all{{80, 160, 5.8 * 80 / 12}};
    for (double x : bunks_of_base)
      if (x >= 80 && x <= 160) all.push_back({x, x, bunk * bunk_part});
    for (const double wheel : {head - wheel_base / 2, head + wheel_base / 2})
      if (wheel >= 80 && wheel <= 160) all.push_back({wheel, wheel, 305 * wheel_part});
    return {85.5, 154.5, all};
  }
};

TEST(ByHandWork, ARailOnTwoTabs) {
  const Work w({"kit.mounting.max_pitch=70 in", "work.log.position=120 in", "work.log.diameter=20 in",
                "work.log.length=16 ft", "work.log.species=northern red oak"});
  const double bunk = heaviest(on_bunks(log_weight, 192, 120));
  double m = 0, sag = 0, push = 0;
  for (const Rail& rail :
       {Rail{0.5 + 5.0 / 49, 0.5 - 3.0 / 49, bunk}, Rail{0.5 - 5.0 / 49, 0.5 + 3.0 / 49, bunk}})
    for (double x = 80; x <= 160; x += 0.5) {
      const TwoSupports under = rail.under(x);
      m = std::max(m, under.most_bending(80, 160));
      for (double down : under.down(80, 160, e * i_rail, 320)) sag = std::max(sag, std::abs(down));
      push = std::max({push, under.front(), under.rear()});
    }
  expect_near(w.stand.rail_moment / (pound_force * inch), m, 0.03);
  expect_near(w.stand.rail_stress / (0.001 * ksi), m / s_rail, 0.05);
  expect_near(w.stand.rail_sag / inch, sag, 0.05);
  EXPECT_NEAR(w.stand.rail_sag_x / inch, 120, 4);
  expect_near(w.stand.tab_load / pound_force, push, 0.03);
  EXPECT_NEAR(w.stand.kit_allowed / ksi, 36 / 1.67, 1e-6);
  // A bunk between its bolts, 3-1/4 in inside the rails' heels: simple, loaded 5 in off its middle.
  expect_near(w.stand.bunk_stress / (0.001 * ksi), bunk * (21.25 - 5) * (21.25 + 5) / 42.5 / s_bunk, 0.04);
}

// Without head and log a rail carries itself, 5.8 lb/ft: w L^2 / 8 less w a^2 / 2 of its ends.
TEST(ByHandWork, ARailUnderItsOwnWeight) {
  const Work w({"kit.mounting.max_pitch=70 in"}, [](Job& job) {
    job.order.work.log.reset();
    job.kit.head.mass = 0.001 * pound;
  });
  const double even = 5.8 / 12;
  expect_near(w.stand.rail_moment / (pound_force * inch), even * (69 * 69 / 8.0 - 5.5 * 5.5 / 2));
  expect_near(w.stand.tab_load / pound_force, even * 40);
}

// AISC Manual table 3-23 (from memory). Case 7, away from the load: P x / 2. Two loads alike, as
// far from each support: P a under both.
TEST(ByHandWork, TheMomentBetweenStations) {
  const Beam beam({{0, false}, {1000, false}}, {0, 500, 1000}, 1e12);
  const LoadField none = beam.field({}), middle = beam.field({{500, 500, 800}});
  EXPECT_NEAR(beam.bending_at(300, middle, {}, beam.solve(middle).value()), 400.0 * 300, 1e-6);
  const std::vector<BeamLoad> wheels{{300, 300, 800}, {700, 700, 800}};
  const BeamState state = beam.solve(beam.field(wheels)).value();
  for (const double x : {300.0, 700.0})
    EXPECT_NEAR(beam.bending_at(x, none, wheels, state), 800.0 * 300, 1e-6);
}

// A log of 20 in pushed against stops 9 in high with 0.3 of its weight; bunks' flats 3-5/8 in
// above the mains' tops, the road 25-1/4 in below them. Feet: 22 in to the web, a plate and a
// flange of 3/8 in, half a post of 2 in.
TEST(ByHandWork, ALogRolledAgainstItsStops) {
  const Work w({"work.log.diameter=20 in", "work.log.length=16 ft", "work.log.species=northern red oak"});
  const double bed = weight(both({frame_of_base(), track_of_base(), axles_at({137})})) + 610,
               aside = 610 * 3 + aside_of_track, feet = 22 + 0.375 + 0.375 + 1, high = 3.625 + 9 + 25.25;
  EXPECT_NEAR(w.stand.foot_y / inch, feet, 1e-6);
  EXPECT_NEAR(w.stand.push_height / inch, high, 1e-6);
  expect_near(w.stand.push / pound_force, 0.3 * log_weight, 1e-4);
  const double holds = bed * feet + aside + log_weight * (feet - 5);
  expect_near(w.stand.push_factor, holds / (0.3 * log_weight * high));
  expect_near(w.stand.roll_on_factor, (bed * feet - aside) / (log_weight * (24.5 - feet)));
}

// Under 18 in across a log is pushed at its middle, below the stops' tops.
TEST(ByHandWork, ASmallLogIsPushedAtItsMiddle) {
  const Work w({"work.log.diameter=12 in"});
  EXPECT_NEAR(w.stand.push_height / inch, 3.625 + 6 + 25.25, 1e-6);
}

}  // namespace
}  // namespace bedwright
