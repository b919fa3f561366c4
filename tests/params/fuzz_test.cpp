// Thousands of damaged inputs: none may crash, hang, or be refused without a
// line to look at.
#include <gtest/gtest.h>

#include "params/samples.h"
#include "support/damage.h"

namespace bedwright {
namespace {

using testing::Damage;

TEST(DamagedInput, IsAlwaysAJobOrProblemsWithALine) {
  const samples::Folder folder;
  Damage damage(1234);
  const std::pair<const char*, const std::string*> files[] = {
      {"order.yaml", &samples::order}, {"kit.yaml", &samples::kit}, {"frame.yaml", &samples::frame}};
  int jobs = 0, refused = 0;
  for (int i = 0; i < 4000; ++i) {
    const auto& [name, text] = files[damage.pick(3)];
    const std::string damaged = damage(*text);
    folder.write(name, damaged);
    const auto loaded = folder.load();
    folder.write(name, *text);
    if (std::holds_alternative<Job>(loaded)) {
      ++jobs;
      continue;
    }
    ++refused;
    const auto& problems = std::get<std::vector<Problem>>(loaded);
    ASSERT_FALSE(problems.empty()) << damaged;
    for (const Problem& problem : problems) {
      ASSERT_GT(problem.where.line, 0) << to_line(problem) << "\n" << damaged;
      ASSERT_GT(problem.where.column, 0) << to_line(problem);
      ASSERT_FALSE(problem.what.empty()) << damaged;
      ASSERT_FALSE(problem.would_do.empty()) << to_line(problem);
      ASSERT_EQ(to_line(problem).find('\n'), std::string::npos);
    }
  }
  // Only that the damage reaches both outcomes.
  EXPECT_GT(jobs, 0);
  EXPECT_GT(refused, 0);
}

TEST(DamagedOverrides, AreAlwaysAJobOrProblemsWithALine) {
  const samples::Folder folder;
  Damage damage(99);
  const std::vector<std::string> good{
      "track.rail_length=84 in", "kit.rail.thickness=1/4 in",          "jacks=[18 in, 222 in]",
      "track.clamps[2].bunk=4",  "frame.cross_member.existing=[8 in]", "kit.box={}"};
  for (int i = 0; i < 1500; ++i) {
    const auto loaded = folder.load({damage(good[damage.pick(good.size())])});
    if (std::holds_alternative<Job>(loaded)) continue;
    const auto& problems = std::get<std::vector<Problem>>(loaded);
    ASSERT_FALSE(problems.empty());
    for (const Problem& problem : problems) ASSERT_GT(problem.where.line, 0) << to_line(problem);
  }
}

}  // namespace
}  // namespace bedwright
