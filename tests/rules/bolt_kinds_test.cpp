// The exact choice of bolt lengths: by hand, against brute force over every set of
// lengths, and against GLPK's integer solver (glpsol of Debian's glpk-utils).
#include "rules/fit/bolt_kinds.h"

#include <unistd.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <random>
#include <sstream>

#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

LengthSet from(int low, int high) {
  LengthSet s;
  for (int i = low; i <= high; ++i) s.set(i);
  return s;
}

// Pieces of each length, the longest first: what a choice costs, least first.
using Cost = std::pair<int, std::vector<int>>;

Cost cost_of(const std::vector<LengthSet>& suits, const std::vector<int>& takes, int lengths, int chosen) {
  std::vector<int> pieces(lengths, 0);
  for (std::size_t h = 0; h < suits.size(); ++h) {
    EXPECT_TRUE(suits[h][takes[h]]) << "hole " << h << " takes a length that does not suit it";
    ++pieces[lengths - 1 - takes[h]];
  }
  return {chosen, pieces};
}

Cost cost_of(const std::vector<LengthSet>& suits, const LengthChoice& choice, int lengths) {
  return cost_of(suits, choice.takes, lengths, static_cast<int>(choice.lengths.size()));
}

// Every subset of the lengths, each hole with the shortest it has.
Cost brute_force(const std::vector<LengthSet>& suits, int lengths) {
  Cost best{lengths + 1, {}};
  for (unsigned subset = 1; subset < (1u << lengths); ++subset) {
    std::vector<int> takes;
    for (const LengthSet& s : suits) {
      int first = 0;
      while (first < lengths && !(s[first] && (subset >> first & 1))) ++first;
      if (first == lengths) break;
      takes.push_back(first);
    }
    if (takes.size() != suits.size()) continue;
    best = std::min(best, cost_of(suits, takes, lengths, std::popcount(subset)));
  }
  return best;
}

// Sets as holes have them, an interval of lengths, some with a length taken out of it.
std::vector<LengthSet> random_holes(std::mt19937& dice, int holes, int lengths, int widest) {
  std::vector<LengthSet> all;
  while (static_cast<int>(all.size()) < holes) {
    const int low = static_cast<int>(dice() % static_cast<unsigned>(lengths));
    LengthSet s =
        from(low, std::min(lengths - 1, low + static_cast<int>(dice() % static_cast<unsigned>(widest))));
    if (dice() % 3 == 0) s.reset(dice() % static_cast<unsigned>(lengths));
    if (s.any()) all.push_back(s);
  }
  return all;
}

TEST(FewestLengths, OneServesAllWhereOneCan) {
  const auto choice = fewest_lengths({from(1, 3), from(2, 5), from(2, 2)});
  ASSERT_TRUE(choice);
  EXPECT_THAT(choice->lengths, ElementsAre(2));
  EXPECT_THAT(choice->takes, ElementsAre(2, 2, 2));
}

TEST(FewestLengths, OfAsFewTheFewestLongOnes) {
  // Two lengths are needed: 1 for the first hole. The other three take 3 or 4; or
  // 2 for one of them and still one of 4 for the rest.
  const auto choice = fewest_lengths({from(1, 1), from(3, 4), from(2, 3), from(3, 3)});
  ASSERT_TRUE(choice);
  EXPECT_THAT(choice->lengths, ElementsAre(1, 3));
}

TEST(FewestLengths, AHoleNothingSuitsIsNoChoice) {
  EXPECT_FALSE(fewest_lengths({from(1, 2), LengthSet()}));
  EXPECT_THAT(fewest_lengths({})->lengths, IsEmpty());
}

TEST(FewestLengths, AgreesWithEverySubsetOnSmallCases) {
  std::mt19937 dice(20261005);
  for (int round = 0; round < 3000; ++round) {
    const int lengths = 1 + static_cast<int>(dice() % 9);
    const auto suits = random_holes(dice, 1 + static_cast<int>(dice() % 12), lengths, 4);
    const auto choice = fewest_lengths(suits);
    ASSERT_TRUE(choice);
    ASSERT_EQ(cost_of(suits, *choice, lengths), brute_force(suits, lengths)) << "round " << round;
  }
}

// --- against GLPK -------------------------------------------------------------

bool have_glpsol() { return std::system("command -v glpsol >/dev/null 2>&1") == 0; }

// The model: y_k, length k is stocked; x_h_k, hole h takes it. `fixed`: the number
// of lengths and the pieces of the longest ones already settled; minimises the
// next of them.
std::string model(const std::vector<LengthSet>& suits, int lengths, const std::vector<int>& fixed) {
  std::ostringstream lp;
  const auto sum_y = [&] {
    for (int k = 0; k < lengths; ++k) lp << " + y" << k;
  };
  const auto pieces = [&](int k) {
    bool any = false;
    for (std::size_t h = 0; h < suits.size(); ++h)
      if (suits[h][k]) {
        lp << " + x" << h << "_" << k;
        any = true;
      }
    if (!any) lp << " + 0 y0";
  };
  lp << "Minimize\n cost:";
  if (fixed.empty())
    sum_y();
  else
    pieces(lengths - static_cast<int>(fixed.size()));
  lp << "\nSubject To\n";
  for (std::size_t h = 0; h < suits.size(); ++h) {
    lp << " h" << h << ":";
    for (int k = 0; k < lengths; ++k)
      if (suits[h][k]) lp << " + x" << h << "_" << k;
    lp << " = 1\n";
    for (int k = 0; k < lengths; ++k)
      if (suits[h][k]) lp << " u" << h << "_" << k << ": x" << h << "_" << k << " - y" << k << " <= 0\n";
  }
  for (std::size_t f = 0; f < fixed.size(); ++f) {
    lp << " f" << f << ":";
    if (f == 0)
      sum_y();
    else
      pieces(lengths - static_cast<int>(f));
    lp << " <= " << fixed[f] << "\n";
  }
  lp << "Binary\n";
  for (int k = 0; k < lengths; ++k) lp << " y" << k << "\n";
  for (std::size_t h = 0; h < suits.size(); ++h)
    for (int k = 0; k < lengths; ++k)
      if (suits[h][k]) lp << " x" << h << "_" << k << "\n";
  lp << "End\n";
  return lp.str();
}

int solved(const std::string& lp) {
  namespace fs = std::filesystem;
  const fs::path folder = fs::temp_directory_path() / ("bolt-kinds-" + std::to_string(::getpid()));
  fs::create_directories(folder);
  const fs::path in = folder / "model.lp", out = folder / "model.sol";
  std::ofstream(in) << lp;
  const std::string run = "glpsol --lp '" + in.string() + "' --write '" + out.string() + "' >/dev/null 2>&1";
  EXPECT_EQ(std::system(run.c_str()), 0);
  // "s mip ROWS COLUMNS o OBJECTIVE": o for an optimum proved.
  std::ifstream solution(out);
  std::string line;
  int objective = -1;
  while (std::getline(solution, line)) {
    int rows = 0, columns = 0;
    char status = 0;
    double value = 0;
    if (std::sscanf(line.c_str(), "s mip %d %d %c %lf", &rows, &columns, &status, &value) == 4 &&
        status == 'o')
      objective = static_cast<int>(std::lround(value));
  }
  fs::remove_all(folder);
  EXPECT_GE(objective, 0) << "the solver proved no optimum";
  return objective;
}

TEST(FewestLengths, AgreesWithAnIntegerSolverOnLargeCases) {
  if (!have_glpsol()) GTEST_SKIP() << "glpsol is not installed (Debian: glpk-utils)";
  std::mt19937 dice(20261012);
  for (int round = 0; round < 6; ++round) {
    const int lengths = 20;
    const auto suits = random_holes(dice, 200, lengths, 5);
    const auto choice = fewest_lengths(suits);
    ASSERT_TRUE(choice);
    const Cost ours = cost_of(suits, *choice, lengths);
    std::vector<int> theirs;
    for (int level = 0; level <= lengths; ++level) theirs.push_back(solved(model(suits, lengths, theirs)));
    EXPECT_EQ(ours.first, theirs.front()) << "round " << round;
    EXPECT_EQ(ours.second, std::vector<int>(theirs.begin() + 1, theirs.end())) << "round " << round;
  }
}

// --- the rule ------------------------------------------------------------------

// Two stacks of plates; the shorter bolt of each alone, or one length for both.
SmallBed two_stacks(Mm first, Mm second, Mm thicker) {
  SmallBed s;
  const auto stack = [&](const Identity& bolt, int plate, Mm x, Mm thickness, Mm length) {
    const int under = s.plate(some(plate), {x, 0, 0}, {100, 100}, 6, {round_hole({}, 14)});
    const int top = s.plate(some(plate + 1), {x, 0, 6}, {100, 100}, thickness, {round_hole({}, 14)});
    s.bolt(bolt, {top, under}, length);
  };
  stack(bunk_bolt_r1, 1, 0, 6, first);
  stack(track_bolt_r1, 3, 200, thicker, second);
  return s;
}

TEST(BoltKinds, SaysWhenOneLengthWouldServeBoth) {
  // Stacks of 28 and 31; 1-1/4 in (31.75) suits the first from 30.95 up, 1-1/2 in
  // (38.1) stands 10.6 past the first nut at its longest: more than 3/8 in allows.
  Job job;
  SmallBed s = two_stacks(1.25 * inch, 1.5 * inch, 9);
  s.job = &job;
  EXPECT_THAT(s.of("BOLT-KINDS"), IsEmpty());
  // A quarter inch more past the nut allowed, 1-1/2 in serves both.
  s.limits.most_past_nut = 0.5 * inch;
  const auto found = s.of("BOLT-KINDS");
  ASSERT_EQ(found.size(), 1u);
  EXPECT_EQ(found[0].severity, Severity::note);
  EXPECT_EQ(found[0].measured, 2);
  EXPECT_EQ(found[0].limit, 1);
  ASSERT_EQ(found[0].changes.size(), 1u);
  EXPECT_EQ(found[0].changes[0].key, "bolts");
  EXPECT_EQ(found[0].changes[0].value, "{bunk: 1-1/2 in, track: 1-1/2 in}");
  SmallBed after = two_stacks(1.5 * inch, 1.5 * inch, 9);
  after.limits = s.limits;
  EXPECT_THAT(after.of("BOLT-KINDS"), IsEmpty());
}

TEST(BoltKinds, SaysWhichHolesTheKitsOwnLengthsServe) {
  Job job;
  job.kit.box = {
      {{"1/2 in", {}}, 1.25 * inch, 10}, {{"1/2 in", {}}, 1.5 * inch, 10}, {{"3/8 in", {}}, inch, 10}};
  const SmallBed s = two_stacks(1.25 * inch, 1.5 * inch, 9);
  const auto kinds = kinds_of_bolts(Scene({s.bed, s.limits, &job, nullptr, s.figures}));
  ASSERT_EQ(kinds.size(), 1u);
  EXPECT_TRUE(kinds[0].kit_serves);
  EXPECT_THAT(kinds[0].in_kit, ElementsAre(1.25 * inch, 1.5 * inch));
  EXPECT_EQ(kinds[0].holes[0].from_kit, 1.25 * inch);
  EXPECT_EQ(kinds[0].holes[1].from_kit, 1.5 * inch);
  job.kit.box.pop_back();
  job.kit.box.pop_back();
  EXPECT_FALSE(kinds_of_bolts(Scene({s.bed, s.limits, &job, nullptr, s.figures}))[0].kit_serves);
}

}  // namespace
}  // namespace bedwright
