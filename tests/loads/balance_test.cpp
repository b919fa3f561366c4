// The base bed weighed and balanced by hand, from its parts as the files state them and
// the weights of AISC Manual tables 1-5 and 1-7 (from memory): never from the program's
// own masses. Plates at 0.2836 lb/in3.
#include "loads/balance.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <stdexcept>

#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;

// Pounds, and inches behind the front end of the track.
struct Sum {
  double weight = 0, moment = 0;
  void add(double pounds, double at) { weight += pounds, moment += pounds * at; }
  double centre() const { return moment / weight; }
};

constexpr double plate = 0.2836;

// Frame: C6x8.2 mains and ends, C4x5.4 across, C5x6.7 tongue, jacks, coupler, tongue jack.
Sum frame_by_hand() {
  Sum s;
  s.add(2 * 20 * 8.2, 120);        // mains, 240 in
  s.add(44.0 / 12 * 8.2, -0.96);   // front member, its flange ahead of the mains
  s.add(44.0 / 12 * 8.2, 240.96);  // rear member
  for (int i = 1; i <= 6; ++i) s.add(43.6 / 12 * 5.4, 240.0 * i / 7);  // cross members, 36 in at most
  const double run = (38 + 4.75) / 0.9063;                             // tongue, 25 degrees
  s.add(2 * run / 12 * 6.7, (-38 + 4.75) / 2);
  s.add(9, -38);                       // coupler
  s.add(13, -24);                      // tongue jack
  s.add(8 * 14 * 0.375 * plate, -24);  // its plate
  for (const double x : {17.0, 120.0, 223.0}) s.add(2 * (14 + 6 * 4 * 0.375 * plate + 1.5), x);
  s.add(2 * 32 * 0.25 * plate, 237);  // corner gussets, 8 x 8 / 2
  const double tab = (3 * 4.375 * 0.5 + 3 * 2 * 0.375) * plate;
  for (int section = 0; section < 3; ++section)
    for (const double at : {5.5, 28.5, 51.5, 74.5}) s.add(2 * tab, 80 * section + at);
  return s;
}

// Track: L4x3x1/4 rails at 5.8 lb/ft, L2-1/2x2-1/2x3/16 bunks at 3.07 lb/ft, what sits on it.
Sum track_by_hand() {
  Sum s;
  s.add(2 * 20 * 5.8, 120);
  for (int bunk = 0; bunk <= 12; ++bunk) s.add(48.0 / 12 * 3.07 + 0.5, 20 * bunk);  // with two bolts
  s.add(2 * 2 * (9 * 1.5 * 0.25 * plate + 1), 120);
  s.add(4 * 2.5, 120);
  s.add(3 * 7, 140);
  s.add(2 * 9, 125);
  s.add(24 * 0.35, 120);  // track bolts
  return s;
}

Sum gear_by_hand(double axle) {
  Sum s;
  s.add(165 + 2 * 48, axle);
  return s;
}

// Moments about the ball's vertical through the axle: share = (axle - centre) / (axle - ball).
double share(const Sum& all, double axle) { return (axle - all.centre()) / (axle + 41); }

Sum together(std::initializer_list<Sum> all) {
  Sum sum;
  for (const Sum& s : all) sum.weight += s.weight, sum.moment += s.moment;
  return sum;
}

const TowCondition& way(const Tow& tow, const TravelCase& travel) {
  const auto at = std::find_if(tow.conditions.begin(), tow.conditions.end(),
                               [&](const TowCondition& c) { return c.travel == travel; });
  if (at == tow.conditions.end()) throw std::logic_error("the bed is not weighed in that way");
  return *at;
}

TEST(Balance, TheBaseBedAsWeighedByHand) {
  const Job job = demo_job("base");
  const Tow tow = run_loads(job, testing::bed_of(job)).tow;
  const double axle = 137;
  Sum head;
  head.add(610, 104);
  const Sum bare = together({frame_by_hand(), gear_by_hand(axle)}), off = together({bare, track_by_hand()}),
            on = together({off, head});
  for (const auto& [travel, sum] : {std::pair{TravelCase{HeadAt::off, false, true}, bare},
                                    std::pair{TravelCase{HeadAt::off, false, false}, off},
                                    std::pair{TravelCase{HeadAt::front, false, false}, on}}) {
    const TowCondition& c = way(tow, travel);
    ASSERT_TRUE(c.judged);
    EXPECT_NEAR(c.mass / pound, sum.weight, 0.02 * sum.weight);
    EXPECT_NEAR(c.share, share(sum, axle), 0.006);
    // The tongue jack stands 14 in behind the front cut: 137 + 24 in ahead of the axle.
    EXPECT_NEAR(c.jack / c.mass, share(sum, axle) * (axle + 41) / (axle + 24), 0.006);
    EXPECT_GT(c.share, 0.10);
  }
  EXPECT_LT(way(tow, {HeadAt::front, false, false}).share, 0.15);
  // The head's own part, which no other weight blurs: 610 lb, 33 in ahead of the axle.
  EXPECT_NEAR(
      (way(tow, {HeadAt::front, false, false}).tongue - way(tow, {HeadAt::off, false, false}).tongue) / pound,
      610 * 33.0 / 178, 0.01);
  // It tips back with the head so far behind the axle that the rest no longer holds it.
  EXPECT_NEAR(tow.tips_behind / inch, axle + off.weight * (axle - off.centre()) / 610, 4);
}

// Each bed of the demos, in every way it is towed or stands on its jack.
TEST(Balance, EveryDemoHoldsItsTongueDownInEveryWay) {
  for (const char* order : {"base", "one_extension", "metric", "lot_frame", "sizes"}) {
    const Job job = demo_job(order);
    const Tow tow = run_loads(job, testing::bed_of(job)).tow;
    int ways = 0;
    for (const TowCondition& c : tow.conditions) {
      if (!c.judged) continue;
      ++ways;
      EXPECT_GE(c.share, 0.10) << order;
      EXPECT_GT(c.jack, 0) << order;
      if (c.travel.laden()) {
        EXPECT_LE(c.share, 0.15) << order;
      }
    }
    EXPECT_EQ(ways, 3) << order << ": head on, head off, bare frame";
    EXPECT_TRUE(way(tow, {HeadAt::off, false, false}).judged) << order;
    EXPECT_TRUE(way(tow, {HeadAt::off, false, true}).judged) << order;
  }
}

// A way that the order does not name is not one that is safe.
TEST(Balance, AWayNotNamedIsWarnedOf) {
  const Job job = demo_job(
      "base", {"road.travels=[{head: front}]", "kit.head.lock_offset=32 in", "axle.position=105 in"});
  const Bed bed = testing::bed_of(job);
  int warned = 0;
  for (const Finding& f : load_findings(job, bed, run_loads(job, bed), {})) {
    if (f.code == "TOW-SHARE") ADD_FAILURE() << f.message;
    if (f.code != "HITCH-TIP") continue;
    ++warned;
    EXPECT_EQ(f.severity, Severity::warn);
  }
  EXPECT_GE(warned, 1);
}

}  // namespace
}  // namespace bedwright
