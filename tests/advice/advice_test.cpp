#include "advice/advice.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "support/demo.h"
#include "support/made_up.h"

namespace bedwright {

void PrintTo(const Change& c, std::ostream* out) {
  *out << c.key << "=" << c.value << " (brings " << c.brings << ")";
}

namespace {

using testing::demo_job;
using ::testing::ElementsAre;
using ::testing::Field;
using ::testing::IsEmpty;
using ::testing::SizeIs;

const Subject tab = Identity{Kind::tab}, head = Identity{Kind::head}, axle = Identity{Kind::axle};
Subject jack(Side side) { return Identity{Kind::jack, side, 1}; }
Subject clamp_on(int bunk) {
  return Identity{Kind::clamp, Side::middle, 1, 0, End::none, bunk, Pose::in_outer};
}
Subject bunk(int number) { return Identity{Kind::bunk, Side::middle, number}; }

Finding stop(const std::string& code, const Subject& subject, std::vector<Change> changes = {}) {
  Finding f;
  f.code = code;
  f.subjects = {subject};
  f.changes = std::move(changes);
  return f;
}

auto is(const std::string& key, const std::string& value, int brings) {
  return ::testing::AllOf(Field(&Change::key, key), Field(&Change::value, value),
                          Field(&Change::brings, brings));
}

TEST(Advise, KeepsWhatClearsDropsWhatDoesNotAndPutsTheCleanOneFirst) {
  std::vector<Finding> findings = {stop("EDGE", tab, {{"a", "1"}, {"b", "2"}, {"c", "3"}})};
  const Retry retry = [](const std::vector<std::string>& sets) -> std::optional<std::vector<Finding>> {
    if (sets.front() == "a=1") return std::vector{stop("CLASH", jack(Side::left))};  // clears, brings another
    if (sets.front() == "b=2") return std::vector{stop("EDGE", tab)};                // does not clear
    return std::vector<Finding>{};                                                   // clears everything
  };
  advise(demo_job("base"), 13, retry, findings);
  EXPECT_THAT(findings[0].changes, ElementsAre(is("c", "3", 0), is("a", "1", 1)));
}

TEST(Advise, AChangeThatCannotBeReadIsNoRemedy) {
  std::vector<Finding> findings = {stop("EDGE", tab, {{"a", "1"}})};
  advise(
      demo_job("base"), 13, [](const auto&) { return std::nullopt; }, findings);
  EXPECT_THAT(findings[0].changes, IsEmpty());
}

TEST(Advise, TriesEachDifferentChangeOnce) {
  std::vector<Finding> findings(50, stop("EDGE", tab, {{"a", "1"}}));
  int tries = 0;
  advise(
      demo_job("base"), 13,
      [&](const auto&) {
        ++tries;
        return std::vector<Finding>{};
      },
      findings);
  EXPECT_EQ(tries, 1);
  for (const Finding& f : findings) EXPECT_THAT(f.changes, SizeIs(1));
}

TEST(Advise, GivesUpAfterItsLimitOfTries) {
  std::vector<Finding> findings;
  for (int i = 0; i < 3 * most_tries; ++i) findings.push_back(stop("EDGE", tab, {{"a", std::to_string(i)}}));
  int tries = 0;
  advise(
      demo_job("base"), 13,
      [&](const auto&) {
        ++tries;
        return std::vector<Finding>{};
      },
      findings);
  EXPECT_EQ(tries, most_tries);
  EXPECT_THAT(findings.back().changes, IsEmpty()) << "a change that was not tried is not offered";
}

TEST(Advise, LeavesWarningsAlone) {
  std::vector<Finding> findings = {stop("EDGE", tab, {{"a", "1"}})};
  findings[0].severity = Severity::warn;
  advise(
      demo_job("base"), 13,
      [](const auto&) -> std::optional<std::vector<Finding>> {
        ADD_FAILURE() << "tried";
        return std::nullopt;
      },
      findings);
  EXPECT_THAT(findings[0].changes, SizeIs(1));
}

Finding clash(const Subject& a, const Subject& b) {
  Finding f = stop("CLASH-MOVING", a);
  f.subjects.push_back(b);
  return f;
}

std::vector<Change> advised(std::vector<Finding> now, const std::vector<Finding>& after) {
  now[0].changes = {{"a", "1"}};
  advise(
      demo_job("base"), 13,
      [&](const std::vector<std::string>& sets) { return sets.front() == "a=1" ? after : now; }, now);
  return now[0].changes;
}

TEST(Advise, CountsLeftAndRightAsTwoStops) {
  EXPECT_THAT(advised({clash(head, jack(Side::left))},
                      {clash(axle, jack(Side::left)), clash(axle, jack(Side::right))}),
              ElementsAre(is("a", "1", 2)));
}

TEST(Advise, TheLeftIsClearedThoughTheRightIsNot) {
  EXPECT_THAT(advised({clash(head, jack(Side::left)), clash(head, jack(Side::right))},
                      {clash(head, jack(Side::right))}),
              ElementsAre(is("a", "1", 0)));
}

TEST(Advise, AClampThatMeetsTheNextBunkInsteadIsNotCleared) {
  EXPECT_THAT(advised({clash(clamp_on(3), bunk(5))}, {clash(clamp_on(4), bunk(6))}), IsEmpty());
}

TEST(Candidates, AClampTriesTheNearestBunksWithoutAnotherClamp) {
  const Job job = demo_job("base", {"track.clamps=[{bunk: 3}, {bunk: 4}]"});
  const auto all = candidates(job, 6, stop("CLASH-MOVING", clamp_on(3)));
  EXPECT_THAT(all, ElementsAre(is("track.clamps[1].bunk", "2", 0), is("track.clamps[1].bunk", "5", 0),
                               is("track.clamps[1].bunk", "1", 0), is("track.clamps[1].bunk", "6", 0)));
}

TEST(Candidates, AJackMovesByInchesEitherWay) {
  const auto all =
      candidates(demo_job("base"), 13, stop("CLASH", Identity{Kind::jack_plate, Side::right, 2}));
  ASSERT_THAT(all, ::testing::Not(IsEmpty()));
  EXPECT_THAT(all[0], is("jacks[2]", "121 in", 0));  // the second pair stands at 120 in
  EXPECT_THAT(all[1], is("jacks[2]", "119 in", 0));
}

TEST(Candidates, NothingForWhatTheOrderCannotChange) {
  EXPECT_THAT(candidates(demo_job("base"), 13, stop("EDGE", tab)), IsEmpty());
}

}  // namespace
}  // namespace bedwright
