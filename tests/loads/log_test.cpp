// A crooked, tapered log on bunks that only push: statics, every set of bunks tried, cases in
// closed form.
#include "loads/log.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>

#include "loads/loads.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;

double total(const std::vector<BeamLoad>& place) {
  double sum = 0;
  for (const BeamLoad& b : place) sum += b.force;
  return sum;
}
double middle(const std::vector<BeamLoad>& place) {
  double sum = 0;
  for (const BeamLoad& b : place) sum += b.force * b.from;
  return sum / total(place);
}

// FPL Technical Note 218: northern red oak 63 lb/ft3, single logs up to a fifth more.
TEST(CrookedLog, IsTheHeaviestOfItsKind) {
  const Job job = demo_job(
      "base", {"work.log.diameter=20 in", "work.log.length=16 ft", "work.log.species=northern red oak"});
  const double pi = 3.14159265358979;
  EXPECT_NEAR(log_mass(job) / pound, pi / 4 * std::pow(20.0 / 12, 2) * 16 * 63 * 1.2, 0.1);
}

// The centre of a frustum of a cone lies (R^2 + 2Rr + 3r^2) / (R^2 + Rr + r^2) / 4 of its
// length from the butt (any table of solids).
TEST(CrookedLog, ItsWeightLiesTowardItsButtAsAFrustumsDoes) {
  const Job job =
      demo_job("base", {"work.log.diameter=20 in", "work.log.length=16 ft", "work.log.taper=4 in"});
  const double R = 11, r = 9, from_butt = 192 * (R * R + 2 * R * r + 3 * r * r) / (R * R + R * r + r * r) / 4;
  EXPECT_NEAR(LogOnBunks(job, testing::bed_of(job)).off_middle() / inch, 96 - from_butt, 1e-6);
}

// Every set of bunks is tried: pressed ones push, others stand clear. The springs' answer is
// the one set for which both hold.
TEST(CrookedLog, BearsOnTheOneSetOfBunksThatHolds) {
  int tried = 0, few = 0;
  for (const char* crook : {"0 in", "1/8 in", "1/2 in", "1 in"})
    for (const char* position : {"80 in", "100 in", "107 in", "131 in"}) {
      const Job job = demo_job(
          "base", {std::string("work.log.crook=") + crook, std::string("work.log.position=") + position,
                   "work.log.diameter=16 in", "work.log.length=10 ft", "work.log.taper=0 in"});
      const Bed bed = testing::bed_of(job);
      const LogOnBunks log(job, bed);
      const LogOrder& order = *job.order.work.log;
      for (const double times : {1.0, 2.0})
        for (const auto& place : log.places(1, times)) {
          const double weight = times * log.mass() * gravity;
          ASSERT_NEAR(total(place), weight, 1e-6 * weight);
          ASSERT_NEAR(middle(place), *order.position, 1e-5);
          std::vector<double> at;
          for (const BunkPlace& b : bed.track.bunks)
            if (std::abs(b.x - *order.position) <= order.length / 2 + 1e-6)
              at.push_back(b.x - *order.position);
          // Belly down or up: which of the two is told by the set that holds.
          int holds = 0;
          for (const bool down : {true, false})
            for (unsigned set = 1; set < (1u << at.size()); ++set) {
              double n = 0, first = 0, second = 0, load = 0, moment = 0;
              const auto gap = [&](double x) {
                const double along = x / (order.length / 2);
                return *order.crook * (down ? along * along : 1 - along * along);
              };
              for (std::size_t i = 0; i < at.size(); ++i)
                if (set >> i & 1)
                  n += 1, first += at[i], second += at[i] * at[i], load += gap(at[i]),
                      moment += gap(at[i]) * at[i];
              const double turned = n * second - first * first;
              if (turned < 1e-6) continue;
              const double need = weight / log.stiffness() + load;
              const double sink = (need * second - moment * first) / turned,
                           tilt = (moment * n - need * first) / turned;
              bool good = true, same = true;
              for (std::size_t i = 0; i < at.size(); ++i) {
                const double pressed = sink + tilt * at[i] - gap(at[i]);
                if ((set >> i & 1) ? pressed < -1e-9 : pressed > 1e-9) good = false;
                double force = 0;
                for (const BeamLoad& b : place)
                  if (std::abs(b.from - at[i] - *order.position) < 1e-3) force = b.force;
                if (std::abs(force - ((set >> i & 1) ? log.stiffness() * pressed : 0)) > 1e-5 * weight)
                  same = false;
              }
              if (good && same) ++holds;
            }
          EXPECT_GE(holds, 1) << crook << " at " << position;
          ++tried;
          few += place.size() <= 3;
        }
    }
  EXPECT_GT(tried, 50);
  EXPECT_GT(few, 10) << "crooked ones lie on few bunks";
}

// So crooked that its ends alone bear, or its belly on two: the lever rule.
TEST(CrookedLog, VeryCrookedLiesByTheLeverRule) {
  const Job job =
      demo_job("base", {"work.log.crook=20 in", "work.log.position=107 in", "work.log.length=10 ft",
                        "work.log.diameter=12 in", "work.log.taper=0 in"});
  const Bed bed = testing::bed_of(job);
  const LogOnBunks log(job, bed);
  const auto places = log.places(1);
  ASSERT_EQ(places.size(), 2u);
  for (const auto& place : places) {
    ASSERT_EQ(place.size(), 2u);
    const double weight = log.mass() * gravity, span = place[1].from - place[0].from;
    EXPECT_NEAR(place[0].force, weight * (place[1].from - 107 * inch) / span, 1e-6 * weight);
  }
  EXPECT_NEAR(places[0][1].from - places[0][0].from, 20 * inch, 1e-6) << "belly down: on neighbours";
  Mm first = 1e9, last = 0;
  for (const BunkPlace& b : bed.track.bunks)
    if (std::abs(b.x - 107 * inch) <= 60 * inch) first = std::min(first, b.x), last = std::max(last, b.x);
  EXPECT_NEAR(places[1][0].from, first, 1e-6) << "belly up: on the outermost";
  EXPECT_NEAR(places[1][1].from, last, 1e-6);
}

// A bunk as a simple beam between its bolts, the log on it off the middle (AISC Manual table
// 3-23, case 8): 3 E I L / (a b)^2, with raw figures of the kit: L2-1/2 x 2-1/2 x 3/16 has
// I = 0.547 in4 (AISC Manual table 1-7, from memory), bolts 42-1/2 in apart.
TEST(CrookedLog, ABunkIsAsStiffAsASimpleBeam) {
  const Job job = demo_job("base", {"work.log.diameter=20 in"});
  const double a = 21.25 - 5, b = 21.25 + 5;  // stops 16 in off the middle, 2 in wide: 15 - 10
  const double by_hand = 3 * 29e6 * 0.547 * 42.5 / (a * a * b * b);
  EXPECT_NEAR(LogOnBunks(job, testing::bed_of(job)).stiffness() / (pound_force / inch) / by_hand, 1, 0.02);
}

// Statics: two lines of jacks, one log straight and even at a stated place, as it lands. The
// rear left jack from raw figures: half of the weight, levers along and across.
TEST(LandingLog, LoadsJacksByTheLeverRuleWithSoManyWeights) {
  for (const double landing : {1.0, 2.0, 3.0}) {
    Job job = demo_job("base", {"jacks=[20 in, 220 in]", "work.log.crook=0 in", "work.log.taper=0 in",
                                "work.log.position=120 in", "work.log.diameter=16 in"});
    job.order.work.landing = landing;
    const Bed bed = testing::bed_of(job);
    const BedWeights w = weigh(bed);
    const Stand s = stand_loads(job, bed, w);
    const Body bare = together(together(w.frame, w.track), w.gear);
    // The log lies 16 - 1 in off the centre line less its radius: at y = -7 in, on the left.
    const double log = landing * log_mass(job) * (0.5 + 7.0 / 44) * 0.5;
    const double head = job.kit.head.mass * (0.5 - 3.0 / 44) * (bed.track.head_to / inch - 20) / 200;
    const double rest = bare.mass * (0.5 - bare.centre.y / inch / 44) * (bare.centre.x / inch - 20) / 200;
    const auto rear = std::find_if(s.jacks.begin(), s.jacks.end(), [](const JackLoad& j) {
      return j.id.side == Side::left && j.x > 200 * inch;
    });
    ASSERT_NE(rear, s.jacks.end());
    EXPECT_NEAR(rear->most / gravity, log + head + rest, 0.001 * rear->most / gravity) << landing;
  }
}

// What bunks, rails, tabs and mains are bent to grows with the landing; sag does not.
TEST(LandingLog, IsOneCaseForAllThatCarriesIt) {
  const auto stand = [](const char* landing) {
    const Job job = demo_job("base", {std::string("work.landing=") + landing});
    return run_loads(job, testing::bed_of(job));
  };
  const LoadsResult rest = stand("1"), lands = stand("2");
  EXPECT_GT(lands.stand.bunk_stress, 1.3 * rest.stand.bunk_stress);
  EXPECT_GT(lands.stand.main_stress, 1.2 * rest.stand.main_stress);
  EXPECT_GT(lands.stand.rail_stress, 1.2 * rest.stand.rail_stress);
  EXPECT_GT(lands.stand.tab_load, 1.2 * rest.stand.tab_load);
  EXPECT_GT(lands.tabs.weld_at_work, 1.2 * rest.tabs.weld_at_work);
  EXPECT_GT(lands.jack_seat->load, 1.2 * rest.jack_seat->load);
  EXPECT_EQ(lands.stand.sag, rest.stand.sag);
}

}  // namespace
}  // namespace bedwright
