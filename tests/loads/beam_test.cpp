#include "loads/beam.h"

#include <gtest/gtest.h>

#include <random>

#include "loads/hermite.h"

namespace bedwright {
namespace {

using testing::Hermite;

struct Case {
  std::vector<double> supports;
  std::vector<BeamLoad> loads;
  double length = 0, ei = 0;
};

// Supports and loads anywhere on a beam of metres, whole millimetres so that the
// other solver's nodes are the same places.
Case random_case(std::mt19937& random, int most_supports) {
  const auto upto = [&](int n) { return static_cast<double>(random() % static_cast<unsigned>(n)); };
  Case c;
  c.length = 2000 + upto(6000);
  c.ei = 1e11 * (1 + upto(100));
  const auto count = 2 + random() % static_cast<unsigned>(most_supports - 1);
  while (c.supports.size() < count) {
    const double x = upto(static_cast<int>(c.length));
    if (std::none_of(c.supports.begin(), c.supports.end(), [&](double s) { return std::abs(s - x) < 50; }))
      c.supports.push_back(x);
  }
  std::sort(c.supports.begin(), c.supports.end());
  const auto loads = 1 + random() % 5;
  for (unsigned i = 0; i < loads; ++i) {
    const double from = upto(static_cast<int>(c.length)),
                 to = random() % 2 ? from : from + upto(static_cast<int>(c.length - from) + 1);
    c.loads.push_back({from, to, 10 + upto(20000)});
  }
  return c;
}

std::vector<double> stations(const Case& c) {
  std::vector<double> x{0, c.length};
  for (const BeamLoad& l : c.loads) x.push_back(l.from), x.push_back(l.to);
  for (double s : c.supports) x.push_back(s);
  std::sort(x.begin(), x.end());
  x.erase(std::unique(x.begin(), x.end()), x.end());
  return x;
}

Beam beam_of(const Case& c) {
  std::vector<BeamSupport> supports;
  for (double x : c.supports) supports.push_back({x, false});
  return Beam(supports, stations(c), c.ei);
}

// Every set of supports is tried: the one where all push and the beam stands on or
// above the others.
struct Found {
  std::vector<double> reactions;
  std::vector<double> down, slope;  // at the stations
};

std::optional<Found> by_brute_force(const Case& c) {
  const std::vector<double> x = stations(c);
  double total = 0;
  for (const BeamLoad& l : c.loads) total += l.force;
  for (unsigned set = 0; set < 1u << c.supports.size(); ++set) {
    std::vector<double> held;
    for (std::size_t i = 0; i < c.supports.size(); ++i)
      if (set >> i & 1) held.push_back(c.supports[i]);
    if (held.size() < 2) continue;
    Hermite h(x, c.ei);
    for (const BeamLoad& l : c.loads)
      l.to > l.from ? h.even(l.from, l.to, l.force) : h.point(l.from, l.force);
    h.solve(held);
    double most = 0;
    for (double p : x) most = std::max(most, std::abs(h.down(p)));
    bool good = true;
    for (std::size_t i = 0; i < c.supports.size(); ++i) {
      const double s = c.supports[i];
      good = good && (set >> i & 1 ? h.reaction(s) >= -1e-7 * total : h.down(s) <= 1e-7 * most);
    }
    if (!good) continue;
    Found f;
    for (std::size_t i = 0; i < c.supports.size(); ++i)
      f.reactions.push_back(set >> i & 1 ? h.reaction(c.supports[i]) : 0);
    for (double p : x) f.down.push_back(h.down(p)), f.slope.push_back(h.slope(p));
    return f;
  }
  return std::nullopt;
}

TEST(Beam, FindsTheSupportsInTouchThatASearchOfAllSetsFinds) {
  std::mt19937 random(1);
  int lifted = 0, tipped = 0;
  for (int trial = 0; trial < 400; ++trial) {
    const Case c = random_case(random, 6);
    const Beam beam = beam_of(c);
    const LoadField field = beam.field(c.loads);
    const auto state = beam.solve(field);
    const auto found = by_brute_force(c);
    ASSERT_EQ(state.has_value(), found.has_value()) << trial;
    if (!state) {
      ++tipped;
      continue;
    }
    double total = 0, most = 0;
    for (const BeamLoad& l : c.loads) total += l.force;
    for (double d : found->down) most = std::max(most, std::abs(d));
    for (std::size_t i = 0; i < c.supports.size(); ++i)
      EXPECT_NEAR(state->reactions[i], found->reactions[i], 1e-5 * total) << trial;
    BeamCurves bent;
    beam.bend(field, *state, bent);
    double steepest = 0;
    for (double d : found->slope) steepest = std::max(steepest, std::abs(d));
    for (std::size_t i = 0; i < found->slope.size(); ++i)
      EXPECT_NEAR(bent.slope[static_cast<Eigen::Index>(i)], found->slope[i], 1e-5 * steepest + 1e-12)
          << trial;
    for (std::size_t i = 0; i < found->down.size(); ++i)
      EXPECT_NEAR(bent.down[static_cast<Eigen::Index>(i)], found->down[i], 1e-5 * most + 1e-9) << trial;
    lifted += state->touching.size() < c.supports.size();
  }
  EXPECT_GT(lifted, 100) << "cases where a support lifts off are among them";
  EXPECT_GT(tipped, 10) << "and cases that tip";
}

TEST(Beam, BalancesForcesAndMomentsInAThousandRandomCases) {
  std::mt19937 random(2);
  int stood = 0;
  for (int trial = 0; stood < 1000; ++trial) {
    const Case c = random_case(random, 12);
    const Beam beam = beam_of(c);
    const auto state = beam.solve(beam.field(c.loads));
    if (!state) continue;
    ++stood;
    double total = 0, moment = 0, up = 0, up_moment = 0;
    for (const BeamLoad& l : c.loads) total += l.force, moment += l.force * (l.from + l.to) / 2;
    for (std::size_t i = 0; i < c.supports.size(); ++i) {
      EXPECT_GE(state->reactions[i], -1e-9 * total);
      up += state->reactions[i], up_moment += state->reactions[i] * c.supports[i];
    }
    EXPECT_NEAR(up, total, 1e-9 * total) << trial;
    EXPECT_NEAR(up_moment, moment, 1e-9 * total * c.length) << trial;
  }
}

TEST(Beam, StartingFromAnotherCasesSupportsGivesTheSameAnswer) {
  std::mt19937 random(3);
  for (int trial = 0; trial < 300; ++trial) {
    const Case c = random_case(random, 8);
    const Beam beam = beam_of(c);
    const LoadField field = beam.field(c.loads);
    const auto cold = beam.solve(field);
    std::vector<int> all(c.supports.size());
    for (std::size_t i = 0; i < all.size(); ++i) all[i] = static_cast<int>(i);
    const auto warm = beam.solve(field, all);
    ASSERT_EQ(cold.has_value(), warm.has_value());
    if (!cold) continue;
    double total = 0;
    for (const BeamLoad& l : c.loads) total += l.force;
    for (std::size_t i = 0; i < all.size(); ++i)
      EXPECT_NEAR(cold->reactions[i], warm->reactions[i], 1e-7 * total) << trial;
  }
}

TEST(Beam, ASupportThatHoldsDownPulls) {
  // An overhang loaded beyond two supports: the far one must pull, or the beam tips.
  const std::vector<BeamLoad> load{{3000, 3000, 1000}};
  const Beam loose({{0, false}, {2000, false}}, {0, 3000}, 1e12),
      bolted({{0, true}, {2000, true}}, {0, 3000}, 1e12);
  EXPECT_FALSE(loose.solve(loose.field(load)).has_value());
  const auto state = bolted.solve(bolted.field(load));
  ASSERT_TRUE(state.has_value());
  EXPECT_NEAR(state->reactions[0], -500, 1e-9);
  EXPECT_NEAR(state->reactions[1], 1500, 1e-9);
}

TEST(Beam, TellsTheMomentUnderAWheelBetweenStations) {
  // Simple beam, load off every station: M = P a b / L.
  const Beam beam({{0, false}, {1000, false}}, {0, 500, 1000}, 1e12);
  const std::vector<BeamLoad> wheel{{300, 300, 800}};
  const LoadField none = beam.field({});
  LoadField all = none;
  all += beam.field(wheel);
  const auto state = beam.solve(all);
  EXPECT_NEAR(beam.bending_at(300, none, wheel, *state), 800.0 * 300 * 700 / 1000, 1e-6);
}

TEST(Beam, RefusesSupportsOutOfOrder) {
  EXPECT_THROW(Beam({{0, false}}, {0}, 1), std::invalid_argument);
  EXPECT_THROW(Beam({{10, false}, {0, false}}, {0}, 1), std::invalid_argument);
}

}  // namespace
}  // namespace bedwright
