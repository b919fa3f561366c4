#include "offer/grid.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace bedwright {
namespace {

using ::testing::ElementsAre;

const Grid grid({{"a", {"1", "2", "3"}}, {"b", {"x", "y"}}});

TEST(Grid, NumbersEveryCombinationTheLastChangingFastest) {
  ASSERT_EQ(grid.size(), 6u);
  EXPECT_THAT(grid.sets_of(0), ElementsAre("a=1", "b=x"));
  EXPECT_THAT(grid.sets_of(1), ElementsAre("a=1", "b=y"));
  EXPECT_THAT(grid.sets_of(5), ElementsAre("a=3", "b=y"));
}

TEST(Grid, RefusesMoreThanItCanNumber) {
  const std::vector<std::string> many(10'000, "1");
  EXPECT_EQ(Grid({{"a", many}, {"b", many}}).size(), 100'000'000u);
  EXPECT_EQ(Grid({{"a", many}, {"b", many}, {"c", many}, {"d", many}, {"e", many}, {"f", many}}).size(),
            std::nullopt);
}

TEST(PartOf, CoversEveryCombinationOnceInNearlyEvenParts) {
  for (const std::uint64_t count : {0u, 1u, 7u, 100u, 4901u})
    for (const std::uint64_t of : {1u, 2u, 3u, 16u, 100u}) {
      std::uint64_t at = 0;
      for (std::uint64_t k = 1; k <= of; ++k) {
        const PartOf part{k, of};
        EXPECT_EQ(part.from(count), at);
        EXPECT_LE(part.to(count) - part.from(count), count / of + 1);
        at = part.to(count);
      }
      EXPECT_EQ(at, count);
    }
}

TEST(ParsePart, TakesKOfN) {
  ASSERT_TRUE(parse_part("3/16"));
  EXPECT_EQ(parse_part("3/16")->number, 3u);
  for (const char* bad : {"", "3", "0/4", "5/4", "1/0", "-1/4", "1/4x", "1/1000000", "a/b", "1/"})
    EXPECT_FALSE(parse_part(bad)) << bad;
}

}  // namespace
}  // namespace bedwright
