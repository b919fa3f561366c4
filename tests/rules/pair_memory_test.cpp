// What was judged once is known wherever the two stand the same way to each other, and
// of nothing else.
#include "rules/clash/pair_memory.h"

#include <gtest/gtest.h>

#include <cmath>
#include <thread>

#include "rules/small_bed.h"

namespace bedwright {
namespace {

using Question = PairMemory::Question;

// Two boxes; the second 40 along from the first, both turned and moved as one.
Bed two(const Placement& where, Mm size = 10, Mm away = 40) {
  SmallBed s;
  s.box(some(1), {0, 0, 0}, {20, 20, 20});
  s.box(some(2), {0, 0, 0}, {size, 20, 20});
  s.bed.items[0].placement = where;
  s.bed.items[1].placement = where;
  s.bed.items[1].placement.origin = where.point({away, 0, 0});
  return s.bed;
}

const Placement turned{
    {1234.5, -77, 3}, {std::cos(0.3), std::sin(0.3), 0}, {-std::sin(0.3), std::cos(0.3), 0}};

TEST(PairMemory, KnowsThePairAnywhere) {
  PairMemory memory;
  const Bed first = two({}), moved = two(turned);
  EXPECT_FALSE(memory.recall({first, 0, 1, false}));
  memory.keep({first, 0, 1, false}, {7, 8});
  for (const Bed* bed : {&first, &moved}) {
    const auto known = memory.recall({*bed, 0, 1, false});
    ASSERT_TRUE(known);
    EXPECT_EQ(known->gap, 7);
    EXPECT_EQ(known->common_volume, 8);
  }
}

TEST(PairMemory, DoesNotKnowWhatDiffers) {
  PairMemory memory;
  const Bed bed = two({});
  memory.keep({bed, 0, 1, false}, {7, 8});
  EXPECT_FALSE(memory.recall({bed, 1, 0, false}));
  EXPECT_FALSE(memory.recall({bed, 0, 1, true}));
  for (const Bed& other : {two({}, 10.001), two({}, 10, 40.00001)})
    EXPECT_FALSE(memory.recall({other, 0, 1, false}));
  Bed askew = two({});
  askew.items[1].placement = {askew.items[1].placement.origin, turned.x_axis, turned.y_axis};
  EXPECT_FALSE(memory.recall({askew, 0, 1, false}));
}

TEST(PairMemory, KeepsApartFormsThatHashAlike) {
  // Alike in everything the hash looks at: the blocks' number and the last one's far corner.
  PairMemory memory;
  Bed a = two({}), b = two({});
  std::get<Bought>(b.parts[1].form).envelope[0].low = {1, 1, 1};
  memory.keep({a, 0, 1, false}, {1, 0});
  EXPECT_FALSE(memory.recall({b, 0, 1, false}));
  memory.keep({b, 0, 1, false}, {2, 0});
  EXPECT_EQ(memory.recall({a, 0, 1, false})->gap, 1);
  EXPECT_EQ(memory.recall({b, 0, 1, false})->gap, 2);
}

TEST(PairMemory, ServesThreadsAtOnce) {
  PairMemory memory;
  const auto work = [&] {
    for (int i = 0; i < 500; ++i) {
      const Bed bed = two({}, 10 + i % 50);
      const Question question{bed, 0, 1, false};
      const auto known = memory.recall(question);
      if (known)
        EXPECT_EQ(known->gap, i % 50);
      else
        memory.keep(question, {static_cast<double>(i % 50), 0});
    }
  };
  std::thread other(work);
  work();
  other.join();
}

}  // namespace
}  // namespace bedwright
