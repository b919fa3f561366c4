// Printed names, as the shop reads them.
#include "bed/names.h"

#include <gtest/gtest.h>

namespace bedwright {
namespace {

TEST(Names, OfThings) {
  EXPECT_EQ(name(Identity{Kind::tab, Side::right, 7}), "tab R7");
  EXPECT_EQ(name(Identity{Kind::front_member}), "front member");
  EXPECT_EQ(name(Identity{Kind::jack_bolt, Side::left, 1, 3}), "jack bolt L1.3");
  EXPECT_EQ(name(Identity{Kind::stop_bolt, Side::left, 0, 0, End::front}), "track stop bolt front L");
  Identity nut{Kind::track_bolt, Side::right, 3};
  nut.piece = Piece::nut;
  EXPECT_EQ(name(nut), "track bolt R3 nut");
  EXPECT_EQ(name(Identity{Kind::clamp, Side::middle, 1, 0, End::none, 5, Pose::in_outer}),
            "clamp 1 on bunk 5, leaning in, outer end");
  EXPECT_EQ(name(Identity{Kind::head, Side::middle, 0, 0, End::none, 0, Pose::running}), "head running");
}

TEST(Names, MarksTellOneFromOthersOfItsKind) {
  EXPECT_EQ(mark({Kind::tab, Side::right, 7}), "R7");
  EXPECT_EQ(mark({Kind::jack_bolt, Side::left, 1, 3}), "L1.3");
  EXPECT_EQ(mark({Kind::stop_bolt, Side::left, 0, 0, End::front}), "front L");
  EXPECT_EQ(mark({Kind::tongue_jack_bolt, Side::middle, 2}), "2");
  EXPECT_EQ(mark({Kind::coupler}), "");
}

TEST(Names, OfParts) {
  const Part plate{{Kind::tab}, "A36", Origin::made, Plate{}},
      clip{{Kind::tab}, "A36", Origin::made, Member{}},
      rail{{Kind::rail, Side::left}, "steel", Origin::kit, Member{}};
  EXPECT_EQ(name(plate), "tab plate");
  EXPECT_EQ(name(clip), "clip tab");
  EXPECT_EQ(name(rail), "rail section L");
  BoltSize size;
  size.name = "1/2 in";
  EXPECT_EQ(name(Part{{Kind::hardware}, "", Origin::bought, Hardware{HardwareKind::bolt, size, 38.1}}),
            "bolt 1/2 in x 1.5 in");
  EXPECT_EQ(name(Part{{Kind::hardware}, "", Origin::bought, Hardware{HardwareKind::nut, size, 0}}),
            "nut 1/2 in");
}

// Names are looked up nowhere, but a person must be able to.
TEST(Names, NoTwoKindsShareOne) {
  for (int a = 1; a < kind_count; ++a)
    for (int b = 1; b < a; ++b)
      if (!word(static_cast<Kind>(a)).empty()) {
        EXPECT_NE(word(static_cast<Kind>(a)), word(static_cast<Kind>(b))) << a << " and " << b;
      }
}

TEST(Names, OtherWordsStandOnlyWhileTheyAreInUse) {
  Words other = shop_words();
  other.item[static_cast<int>(Kind::tab)] = "ear";
  {
    const WordsInUse in_use(other);
    EXPECT_EQ(name(Identity{Kind::tab, Side::right, 7}), "ear R7");
  }
  EXPECT_EQ(name(Identity{Kind::tab, Side::right, 7}), "tab R7");
}

}  // namespace
}  // namespace bedwright
