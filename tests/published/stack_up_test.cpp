// Tolerance stack-up, worst case and root sum square, against published examples.
#include "bed/stack_up.h"

#include <gtest/gtest.h>

#include <array>
#include <cmath>

#include "rules/fit/hole_fit.h"

namespace bedwright {
namespace {

Contribution either(const char* what, Mm range) { return {what, range, range, 0, 0}; }

const BoltAxes axes = axes_of({0, 0, -1});

// metricmech.com/articles/tolerance-stackup-worked-example.html: a bore 40.00 +- 0.10
// holds a spacer 25.00 +- 0.05, a ring 2.00 +- 0.03 and a shoulder 10.00 +- 0.05; the
// gap is 3.00 +- 0.23 in the worst case. Its root sum square by the formula it gives:
// sqrt(0.0100 + 0.0025 + 0.0009 + 0.0025) = 0.1261.
TEST(StackUp, APublishedGapComesOutWorstCaseAndRootSumSquare) {
  const std::vector<Contribution> parts{either("bore", 0.10), either("spacer", 0.05), either("ring", 0.03),
                                        either("shoulder", 0.05)};
  const Reach reach = reach_of({40.00 - 25.00 - 2.00 - 10.00, 0}, parts, axes);
  EXPECT_NEAR(reach.worst.low[0], 2.77, 1e-9);
  EXPECT_NEAR(reach.worst.high[0], 3.23, 1e-9);
  EXPECT_NEAR(reach.rss.low[0], 3 - 0.1261, 5e-5);
  EXPECT_NEAR(reach.rss.high[0], 3 + 0.1261, 5e-5);
}

// mech.toolfusion.net, "Tolerance stack-up calculator": five parts of +- 0.1 mm in a
// row: worst case +- 0.5, root sum square +- 0.224; ten parts: +- 1.0 and +- 0.316.
TEST(StackUp, LikePartsInARowComeOutAsPublished) {
  struct Row {
    int parts;
    double worst, rss;
  };
  for (const Row& row : {Row{5, 0.5, 0.224}, Row{10, 1.0, 0.316}}) {
    const std::vector<Contribution> parts(static_cast<std::size_t>(row.parts), either("part", 0.1));
    const Reach reach = reach_of({0, 0}, parts, axes);
    EXPECT_NEAR(reach.worst.need(0), row.worst, 1e-9);
    EXPECT_NEAR(reach.rss.need(0), row.rss, 5e-4);
  }
}

// The same five parts as rail sections from the datum: what the layout and the choice
// of datum both add up with.
TEST(StackUp, RailSectionsAddUpTheSameWay) {
  const auto sections = along_track({5, 0, 1, 0.1, 0});
  ASSERT_EQ(sections.size(), 5u);
  const Reach reach = reach_of({0, 0}, sections, axes);
  EXPECT_NEAR(reach.worst.need(0), 0.5, 1e-9);
  EXPECT_NEAR(reach.rss.need(0), 0.224, 5e-4);
  // A joint only opens: all of it one way, half of it the mean's shift.
  const Reach joints = reach_of({0, 0}, along_track({0, 2, 1, 0.1, 0.4}), axes);
  EXPECT_NEAR(joints.worst.high[0], 0.8, 1e-9);
  EXPECT_NEAR(joints.worst.low[0], 0, 1e-9);
  EXPECT_NEAR(joints.rss.high[0], 0.4 + std::sqrt(2 * 0.2 * 0.2), 1e-9);
}

}  // namespace
}  // namespace bedwright
