#include "yaml/nearest.h"

#include <gtest/gtest.h>

namespace bedwright {
namespace {

TEST(EditDistance, CountsEdits) {
  EXPECT_EQ(edit_distance("", "abc"), 3u);
  EXPECT_EQ(edit_distance("kitten", "sitting"), 3u);  // the textbook pair
  EXPECT_EQ(edit_distance("rail_lenght", "rail_length"), 1u);
  EXPECT_EQ(edit_distance("ABC", "abc"), 0u);
}

TEST(Nearest, FindsTheWordMeantAndNoOther) {
  const std::vector<std::string> keys{"rail_length", "bunk_pitch", "datum"};
  EXPECT_EQ(nearest("rail_lenght", keys), "rail_length");
  EXPECT_EQ(nearest("Datum", keys), "datum");
  EXPECT_EQ(nearest("colour", keys), std::nullopt);
  EXPECT_EQ(nearest(std::string(100000, 'a'), keys), std::nullopt);
  EXPECT_EQ(suggestion("datun", keys), "did you mean datum?");
  EXPECT_EQ(suggestion("colour", keys), "one of rail_length, bunk_pitch, datum");
}

}  // namespace
}  // namespace bedwright
