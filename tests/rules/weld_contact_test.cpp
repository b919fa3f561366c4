// WELD-CONTACT and HOLE-FIT up and down: just past the limit, and the twin just inside.
#include "rules/small_bed.h"

namespace bedwright {
namespace {

using ::testing::IsEmpty;
using ::testing::SizeIs;

// A plate on another, `gap` above it and lapping it by `lap` along x.
SmallBed lapped(Mm gap, Mm lap) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {100, 100}, 6);
  const int upper = s.plate(some(2), {100 - lap, 0, 6 + gap}, {100, 100}, 6);
  s.bed.welds.push_back({under, upper, 6, 100});
  return s;
}

TEST(WeldContact, ASixteenthOfAnInchIsTheWidestGap) {
  EXPECT_THAT(lapped(inch / 16 - 0.01, 50).of("WELD-CONTACT"), IsEmpty());
  const auto found = lapped(inch / 16 + 0.01, 50).of("WELD-CONTACT");
  ASSERT_THAT(found, SizeIs(1));
  EXPECT_NEAR(found[0].measured, inch / 16 + 0.01, 1e-9);
  EXPECT_LT(found[0].margin, 0);
}

TEST(WeldContact, AnEdgeInCommonIsNoPlaceForAWeld) {
  EXPECT_THAT(lapped(0, 3.01).of("WELD-CONTACT"), IsEmpty());
  EXPECT_THAT(lapped(0, 2.99).of("WELD-CONTACT"), SizeIs(1));
  EXPECT_THAT(lapped(0, 0).of("WELD-CONTACT"), SizeIs(1));
}

TEST(WeldContact, AppliesToABoughtJointToo) {
  SmallBed s = lapped(20, 50);
  s.bed.welds[0].leg = 0;
  EXPECT_THAT(s.of("WELD-CONTACT"), SizeIs(1));
}

// Up-and-down errors count for a bolt that lies: 0.8 mm of room each way takes
// 0.79, not 0.81.
TEST(HoleFit, CountsUpAndDownForABoltThatLies) {
  for (const auto& [z, stops] : {std::pair(0.79, 0u), std::pair(0.81, 1u)}) {
    SmallBed s;
    const int back = s.plate(some(1), {0, 0, 0}, {200, 200}, 6, {round_hole({}, 13.5)});
    const int front = s.plate(some(2), {0, 0, 0}, {200, 200}, 6, {round_hole({}, 13.5)});
    // Both stood up, faces along y, one behind the other.
    s.bed.items[front].placement = {{0, 0, 0}, {1, 0, 0}, {0, 0, 1}};
    s.bed.items[back].placement = {{0, 6, 0}, {1, 0, 0}, {0, 0, 1}};
    Bolt bolt;
    bolt.id = {Kind::jack_bolt, Side::right, 1, 1};
    bolt.size = half_inch();
    bolt.length = 34;
    bolt.seat = {0, -6, 0};
    bolt.direction = {0, 1, 0};
    bolt.under_head = {bolt.size.flat};
    bolt.under_nut = {bolt.size.flat};
    bolt.plies = {{front, 0, 6, 0}, {back, 0, 6, 0}};
    bolt.stack_up = {{"drilling", 0, 0, 0, 0, z, z}};
    s.bed.bolts.push_back(bolt);
    EXPECT_THAT(s.of("HOLE-FIT"), SizeIs(stops)) << z;
  }
}

}  // namespace
}  // namespace bedwright
