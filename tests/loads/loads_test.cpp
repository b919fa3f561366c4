#include "loads/loads.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <random>

#include "bed/names.h"
#include "loads/log.h"
#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;

LoadsResult loads_of(const std::string& order, const std::vector<std::string>& sets = {}) {
  const Job job = demo_job(order, sets);
  return run_loads(job, testing::bed_of(job));
}

TEST(Tow, MovingTheAxleToTheEndsOfItsRangeGivesTheLimits) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const TowCondition c = run_loads(job, testing::bed_of(job)).tow.conditions.front();
    for (const auto& [place, share] : {std::pair{c.axle_from, 0.10}, {c.axle_to, 0.15}}) {
      Job moved = job;
      moved.order.axle.position = place;
      EXPECT_NEAR(run_loads(moved, testing::bed_of(moved)).tow.conditions.front().share, share, 1e-6)
          << order;
    }
  }
}

TEST(Tow, RecommendedPlacesAreOnTheTapeAndWithinTheRange) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const Tow t = run_loads(job, testing::bed_of(job)).tow;
    ASSERT_FALSE(t.axle_places.empty()) << order;
    const Mm grid = job.order.order.printing == Printing::inches ? inch : 10;
    for (Mm x : t.axle_places) {
      EXPECT_NEAR(x / grid, std::round(x / grid), 1e-9);
      EXPECT_GE(x, t.axle_from);
      EXPECT_LE(x, t.axle_to);
      for (Mm jack : job.order.jacks)
        for (int i = 0; i < job.frame.axle.count; ++i)
          for (double end : {-0.5, 0.5}) {
            const Mm hanger = x + (i - (job.frame.axle.count - 1) / 2.0) * job.frame.axle.spread +
                              end * job.frame.axle.spring_length;
            EXPECT_GE(std::abs(hanger - jack), job.frame.jack.plate_length / 2) << order;
          }
    }
  }
}

TEST(Tow, CargoIsACaseOfItsOwn) {
  const LoadsResult r = loads_of("base", {"road.cargo={mass: 400 lb, position: 110 in}"});
  ASSERT_GE(r.tow.conditions.size(), 2u);
  EXPECT_TRUE(r.tow.conditions[1].judged);
  EXPECT_EQ(r.tow.conditions[1].travel, (TravelCase{HeadAt::front, true}));
  EXPECT_NEAR(r.tow.conditions[1].mass - r.tow.conditions[0].mass, 400 * pound, 1e-9);
}

TEST(Tow, AnEqualisedTandemSharesAlike) {
  const LoadsResult r = loads_of("one_extension");
  const TowCondition& c = r.tow.conditions.front();
  EXPECT_NEAR(2 * c.axle, c.mass - c.tongue, 1e-9 * c.mass);
}

TEST(Log, WeighsPiOverFourTimesDiameterSquaredLengthAndDensity) {
  // 20 in x 16 ft of 63 lb/ft3 and a fifth more: pi/4 x (20/12)^2 x 16 x 63 x 1.2 = 2638.9 lb.
  EXPECT_NEAR(log_mass(demo_job("base", {"work.log.diameter=20 in", "work.log.length=16 ft"})),
              2638.9 * pound, 0.1 * pound);
}

TEST(Log, ItsBunksCarryItsWeightAndBalanceItsMiddle) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const Bed bed = testing::bed_of(job);
    const LogOnBunks log(job, bed);
    const auto places = log.places(5);
    EXPECT_GT(places.size(), 1u) << order;
    for (const auto& place : places) {
      double total = 0;
      for (const BeamLoad& b : place) {
        total += b.force;
        EXPECT_GE(b.force, 0) << order;
      }
      EXPECT_NEAR(total, log.mass() * gravity, 1e-6 * total) << order;
    }
    // Front-most, belly up: its front end on the first bunk, its middle half a length behind,
    // its weight so much nearer its butt, which is in front.
    double moment = 0, total = 0;
    for (const BeamLoad& b : places[1]) moment += b.force * b.from, total += b.force;
    EXPECT_NEAR(moment / total, bed.track.bunks.front().x + job.order.work.log->length / 2 - log.off_middle(),
                1e-4)
        << order;
  }
}

TEST(Log, OfNoKnownWoodIsNotWeightless) {
  Job job = demo_job("base");
  job.order.work.log->species.text = "cork";
  EXPECT_THROW(log_mass(job), std::invalid_argument);
}

// Under a log, a bunk that is not there is not one without stress.
TEST(Stand, ABunkThatIsNotThereIsToldOf) {
  const Job job = demo_job("base");
  Bed bed = testing::bed_of(job);
  const BedWeights weights = weigh(bed);
  EXPECT_GT(stand_loads(job, bed, weights).bunk_stress, 0);
  bed.items[bed.item({Kind::bunk, Side::middle, 1})].id.number = 99;
  EXPECT_THROW(stand_loads(job, bed, weights), NotInBed);
}

TEST(Stand, ItsJacksAreThoseOfTheBed) {
  for (const std::string& order : testing::good_orders) {
    const Job job = demo_job(order);
    const Bed bed = testing::bed_of(job);
    for (const JackLoad& k : run_loads(job, bed).stand.jacks)
      EXPECT_NEAR(bed.items[bed.item(k.id)].placement.origin.x, k.x, 1) << order << " " << name(k.id);
  }
}

TEST(Log, WithoutOneTheBedStillStandsUnderItsHead) {
  Job job = demo_job("base");
  job.order.work.log.reset();
  const LoadsResult r = run_loads(job, testing::bed_of(job));
  EXPECT_EQ(r.stand.log_mass, 0);
  EXPECT_GT(r.stand.main_sag, 0);
  EXPECT_LT(r.stand.main_sag, loads_of("base").stand.main_sag);
}

// All jacks of the case that is drawn carry bed, head and log, and balance them about
// the front of the track and about the centre line, on a thousand random ways to stand.
TEST(Stand, JacksBalanceBedHeadAndLogInAThousandRandomCases) {
  std::mt19937 random(7);
  const auto upto = [&](int n) { return static_cast<double>(random() % static_cast<unsigned>(n)); };
  int stood = 0, lifted = 0;
  for (const std::string& order : testing::good_orders) {
    Job job = demo_job(order);
    const Bed bed = testing::bed_of(job);
    const BedWeights weights = weigh(bed);
    const Body bare = together(together(weights.frame, weights.track), weights.gear);
    const int length = static_cast<int>(bed.track.total_length);
    for (int trial = 0; trial < 400; ++trial) {
      job.order.jacks.clear();
      for (unsigned i = 0; i < 2 + random() % 5; ++i) job.order.jacks.push_back(upto(length));
      job.order.jacks.push_back(upto(600));
      job.order.jacks.push_back(length - upto(600));
      job.order.work.log->diameter = 100 + upto(900);
      job.order.work.log->length = 800 + upto(length);
      job.kit.head.mass = 100 + upto(900);
      const Stand s = stand_loads(job, bed, weights);
      if (s.tips || !s.log_lies) continue;
      ++stood;
      const double down = gravity * (bare.mass + job.kit.head.mass + s.log_mass);
      double up = 0, pitch = 0, roll = 0;
      for (const JackLoad& k : s.jacks) {
        const double side = outward(k.id.side) / 2;
        EXPECT_GE(k.drawn, -1e-9 * down);
        EXPECT_GE(k.drawn, k.least - 1e-9 * down);
        EXPECT_LE(k.drawn, k.most + 1e-9 * down);
        up += k.drawn, pitch += k.drawn * k.x, roll += k.drawn * side * job.frame.main.spacing;
        lifted += k.lifts > 0;
      }
      const double pitch_down = gravity * (bare.mass * bare.centre.x + job.kit.head.mass * s.wheels_x +
                                           s.log_mass * s.log_position);
      const double roll_down = gravity * (bare.mass * bare.centre.y +
                                          job.kit.head.mass * job.kit.head.mass_y + s.log_mass * s.log_y);
      EXPECT_NEAR(up, down, 1e-9 * down) << order << " " << trial;
      EXPECT_NEAR(pitch, pitch_down, 1e-9 * down * length) << order << " " << trial;
      EXPECT_NEAR(roll, roll_down, 1e-9 * down * length) << order << " " << trial;
    }
  }
  EXPECT_GE(stood, 1000);
  EXPECT_GT(lifted, 100) << "jacks lift off in some of them";
}

TEST(Stand, EnvelopesHoldTheCaseThatIsDrawn) {
  for (const std::string& order : testing::good_orders) {
    const Stand s = loads_of(order).stand;
    for (const Envelope* e : {&s.curve.down, &s.curve.slope, &s.curve.moment, &s.curve.shear}) {
      ASSERT_EQ(e->drawn.size(), s.curve.x.size());
      for (std::size_t i = 0; i < e->drawn.size(); ++i) {
        const double slack = 1e-9 * (1 + std::abs(e->drawn[i]));
        EXPECT_GE(e->drawn[i], e->least[i] - slack) << order;
        EXPECT_LE(e->drawn[i], e->most[i] + slack) << order;
      }
    }
  }
}

TEST(Log, LetsGoOfABunkItWouldHaveToPull) {
  // Its middle near the front bunk under it: even springs would pull at the rear.
  Job job = demo_job("base", {"work.log.position=40 in", "work.log.taper=0 in"});
  const Bed bed = testing::bed_of(job);
  const auto places = LogOnBunks(job, bed).places(5);
  ASSERT_EQ(places.size(), 2u) << "belly down and belly up";
  for (const auto& place : places) {
    double total = 0, moment = 0;
    for (const BeamLoad& b : place) {
      EXPECT_GE(b.force, 0);
      total += b.force, moment += b.force * b.from;
    }
    EXPECT_NEAR(total, log_mass(job) * gravity, 1e-9 * total);
    EXPECT_NEAR(moment / total, 40 * inch, 1e-4);
  }
}

TEST(Log, OffItsBunksLiesNowhere) {
  EXPECT_FALSE(loads_of("base", {"work.log.position=1 in"}).stand.log_lies);
  EXPECT_FALSE(loads_of("base", {"work.log.length=15 in"}).stand.log_lies);
  EXPECT_TRUE(loads_of("base", {"work.log.length=21 in"}).stand.log_lies);
}

// A clamp that reaches out over the tyres: no recommended place puts a wheel at full
// bump under one.
TEST(Tow, RecommendedPlacesKeepWheelsFromUnderTheClamps) {
  // A wide range for the share, so that there are places on either side of the clamp.
  const std::vector<std::string> wide{"road.share_low=0.02", "road.share_high=0.25"};
  std::vector<std::string> clamped = wide;
  clamped.insert(clamped.end(), {"kit.clamp.travel_to=30 in", "track.clamps[1].bunk=8"});
  const Job job = demo_job("base", clamped);
  const Bed bed = testing::bed_of(job);
  const Tow free = loads_of("base", wide).tow, t = run_loads(job, bed).tow;
  ASSERT_FALSE(t.axle_places.empty());
  EXPECT_NE(free.axle_places, t.axle_places);
  const Mm radius = job.frame.axle.tyre_diameter / 2;
  for (Mm x : t.axle_places)
    for (const int clamp : bed.items_of(Kind::clamp)) {
      const Box3 box = bounds(bed, clamp);
      EXPECT_TRUE(x + radius <= box.low.x || x - radius >= box.high.x) << x << " " << box.low.x;
    }
}

TEST(Stand, AJackFarBeyondItsNeighbourLiftsOff) {
  const LoadsResult r = loads_of("one_extension", {"jacks=[17 in, 120 in, 303 in]"});
  EXPECT_GT(r.stand.jacks[0].lifts, 0);
  EXPECT_EQ(r.stand.jacks[0].least, 0);
  const Job job = demo_job("one_extension", {"jacks=[17 in, 120 in, 303 in]"});
  const Bed bed = testing::bed_of(job);
  const auto findings = load_findings(job, bed, r, {});
  EXPECT_TRUE(std::any_of(findings.begin(), findings.end(), [](const Finding& f) {
    return f.code == "JACK-LIFT" && f.severity == Severity::warn;
  }));
}

TEST(Stand, TipsWhenTheHeadLeavesTheJacksSpan) {
  const LoadsResult r = loads_of("base", {"jacks=[100 in, 120 in]", "work.log.length=10 ft"});
  EXPECT_TRUE(r.stand.tips);
  const LoadsResult one = loads_of("base", {"jacks=[120 in]"});
  EXPECT_FALSE(one.stand.jacks_enough);
}

TEST(Stand, SagGrowsWithTheLogAndShrinksWithTheMain) {
  const Stand now = loads_of("base").stand;
  EXPECT_GT(loads_of("base", {"work.log.diameter=24 in"}).stand.main_sag, now.main_sag);
  EXPECT_LT(loads_of("base", {"frame.main.section=C8x11.5"}).stand.main_sag, now.main_sag);
}

}  // namespace
}  // namespace bedwright
