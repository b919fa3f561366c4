// RAIL-REMAINDER and JOINT-SUPPORT.
#include <cmath>

#include "rules/small_bed.h"

namespace bedwright {
namespace {

using testing::HasSubstr;
using testing::IsEmpty;
using testing::SizeIs;

SmallBed track(Mm rail, Mm pitch) {
  SmallBed s;
  s.bed.track.rail_length = rail;
  s.bed.track.bunk_pitch = pitch;
  return s;
}

TEST(RailRemainder, WholePitchesLeaveNothing) {
  EXPECT_THAT(track(80 * inch, 20 * inch).run(), IsEmpty());
  EXPECT_THAT(track(80 * inch + 5e-5, 20 * inch).run(), IsEmpty());
  EXPECT_THAT(track(80 * inch + 2e-4, 20 * inch).of("RAIL-REMAINDER"), SizeIs(1));
  EXPECT_THAT(track(80 * inch - 5e-5, 20 * inch).run(), IsEmpty());
}

TEST(RailRemainder, EachChangeOfferedClearsIt) {
  for (const Printing printing : {Printing::inches, Printing::metric}) {
    for (const double pitch : {24.0, 17.0, 22.3}) {
      SmallBed s = track(77.5 * inch, pitch * inch);
      s.figures.printing = printing;
      s.figures.mark = printing == Printing::inches ? inch / 16 : 1;
      const auto found = s.of("RAIL-REMAINDER");
      ASSERT_THAT(found, SizeIs(1));
      EXPECT_EQ(found[0].severity, Severity::stop);
      int lengths = 0;
      for (const Change& c : found[0].changes) {
        const double value = parse_quantity(Dimension::length, c.value).value.value();
        lengths += c.key == "track.rail_length";
        const SmallBed changed =
            c.key == "track.rail_length" ? track(value, pitch * inch) : track(77.5 * inch, value);
        EXPECT_THAT(changed.of("RAIL-REMAINDER"), IsEmpty()) << c.key << "=" << c.value;
      }
      EXPECT_EQ(lengths, 2);
    }
  }
}

TEST(RailRemainder, NamesTheNearestPitchesOnTheTape) {
  // 77-1/2 in over 24: 3 gives 25.833 (no mark of a tape), 4 gives 19-3/8, 2 gives 38-3/4.
  const auto found = track(77.5 * inch, 24 * inch).of("RAIL-REMAINDER").at(0);
  EXPECT_NEAR(found.measured, 5.5 * inch, 1e-9);
  EXPECT_THAT(found.remedy, HasSubstr("make the rail 6 ft 0 in (1828.8 mm)"));
  EXPECT_THAT(found.message, HasSubstr("holds 3 bunk pitches"));
  EXPECT_NEAR(change_of(found, "track.bunk_pitch"), 19.375 * inch, 1e-9);
  EXPECT_THAT(found.remedy, HasSubstr("or 38-3/4 in"));
}

SmallBed with_joint(Mm left_tab, Mm right_tab) {
  SmallBed s;
  s.bed.track.joints = {2000};
  s.bed.track.total_length = 4000;
  s.plate({Kind::tab, Side::left, 1}, {left_tab, -500, 0}, {100, 80}, 6, {round_hole({}, 14)});
  s.plate(tab_r1, {right_tab, 500, 0}, {100, 80}, 6, {round_hole({}, 14)});
  return s;
}

TEST(JointSupport, EachSideNeedsATabNearTheJoint) {
  const Mm limit = 8 * inch;
  EXPECT_THAT(with_joint(2000 - limit + 0.01, 2000 + limit - 0.01).of("JOINT-SUPPORT"), IsEmpty());
  const auto found = with_joint(2000 - limit + 0.01, 2000 + limit + 0.01).of("JOINT-SUPPORT");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_EQ(found[0].severity, Severity::warn);
  EXPECT_THAT(about(found[0]), testing::ElementsAre(Identity{Kind::joint, Side::right, 1}, tab_r1));
  EXPECT_NEAR(found[0].margin, -0.01, 1e-9);
}

TEST(JointSupport, ASideWithNoTabsAtAllIsFound) {
  SmallBed s = with_joint(2000, 2000);
  s.bed.items.pop_back();
  EXPECT_THAT(s.of("JOINT-SUPPORT").at(0).message, HasSubstr("no tab"));
}

}  // namespace
}  // namespace bedwright
