// Distances and common volumes that follow from the dimensions by hand.
#include "kernel/exact_distance.h"

#include <gtest/gtest.h>

#include <numbers>

#include "kernel/sample.h"

namespace bedwright {
namespace {

Bought box(Vec3 low, Vec3 high) {
  Bought b;
  b.envelope = {{{}, low, high, 0}};
  return b;
}

struct Pair {
  Bed bed;
  Pair(const Form& a, Placement at_a, const Form& b, Placement at_b) {
    bed.add_item({bed.add_part({{Kind::main}, "", Origin::made, a}), at_a, {Kind::main, Side::left}});
    bed.add_item({bed.add_part({{Kind::tab}, "", Origin::made, b}), at_b, {Kind::tab, Side::right, 7}});
  }
  Closeness measure(Extent extent = Extent::whole) {
    ExactPairs pairs(bed);
    const Closeness closeness = pairs.measure(0, 1, extent);
    EXPECT_NEAR(pairs.shared(0, 1, extent), closeness.common_volume, 1e-3);
    return closeness;
  }
};

TEST(ExactDistance, boxes_apart_touching_overlapping) {
  const Bought a = box({0, 0, 0}, {10, 10, 10}), b = box({0, 0, 0}, {20, 20, 20});
  const Closeness apart = Pair(a, {}, b, {{13, 14, 0}}).measure();
  EXPECT_NEAR(apart.gap, 5, 1e-9);
  EXPECT_EQ(apart.common_volume, 0);
  const Closeness touching = Pair(a, {}, b, {{10, 0, 0}}).measure();
  EXPECT_EQ(touching.gap, 0);
  EXPECT_EQ(touching.common_volume, 0);
  const Closeness over = Pair(a, {}, b, {{7, 0, 0}}).measure();
  EXPECT_EQ(over.gap, 0);
  EXPECT_NEAR(over.common_volume, 300, 1e-6);
}

TEST(ExactDistance, one_inside_the_other) {
  const Closeness inside =
      Pair(box({0, 0, 0}, {10, 10, 10}), {{5, 5, 5}}, box({0, 0, 0}, {30, 30, 30}), {}).measure();
  EXPECT_EQ(inside.gap, 0);
  EXPECT_NEAR(inside.common_volume, 1000, 1e-6);
}

TEST(ExactDistance, touching_turned) {
  // Turned by an angle with no exact sine: faces meet only up to rounding.
  const Placement turned{{3, 4, 5}, {std::cos(0.7), std::sin(0.7), 0}, {-std::sin(0.7), std::cos(0.7), 0}};
  Placement beside = turned;
  beside.origin = turned.point({10, 0, 0});
  const Closeness touching =
      Pair(box({0, 0, 0}, {10, 10, 10}), turned, box({0, 0, 0}, {20, 20, 20}), beside).measure();
  EXPECT_EQ(touching.gap, 0);
  EXPECT_NEAR(touching.common_volume, 0, 1e-3);
}

// A bolt in a hole with clearance all round: the shank stands (hole - bolt) / 2
// off less the offset, and its head is level with the plate or above it.
TEST(ExactDistance, shank_in_its_hole) {
  Plate plate = sample::tab();
  plate.holes = {sample::round_hole({40, 37.5}, 14.3)};
  const Hardware bolt = sample::hardware(HardwareKind::bolt, 40);
  const Closeness centred = Pair(bolt, {{40, 37.5, plate.thickness + 5}}, plate, {}).measure();
  EXPECT_NEAR(centred.gap, (14.3 - 12.7) / 2, 1e-6);
  EXPECT_EQ(centred.common_volume, 0);
  const Closeness offset = Pair(bolt, {{40.3, 37.5, plate.thickness + 5}}, plate, {}).measure();
  EXPECT_NEAR(offset.gap, (14.3 - 12.7) / 2 - 0.3, 1e-6);
  const Closeness seated = Pair(bolt, {{40, 37.5, plate.thickness}}, plate, {}).measure();
  EXPECT_EQ(seated.gap, 0);
  EXPECT_NEAR(seated.common_volume, 0, 1e-6);
}

TEST(ExactDistance, shank_through_steel_and_left_out) {
  Plate plate = sample::tab();
  plate.holes.clear();
  Pair pair(sample::hardware(HardwareKind::bolt, 40), {{40, 37.5, plate.thickness + 5}}, plate, {});
  const Closeness whole = pair.measure();
  EXPECT_EQ(whole.gap, 0);
  EXPECT_NEAR(whole.common_volume, std::numbers::pi / 4 * 12.7 * 12.7 * plate.thickness, 1e-4);
  const Closeness head = pair.measure(Extent::without_shank);
  EXPECT_NEAR(head.gap, 5, 1e-9);
  EXPECT_EQ(head.common_volume, 0);
}

// The tip of a bolt over a channel's tapered flange, from below: the distance is
// square to the slope of 2 in 12.
TEST(ExactDistance, point_to_tapered_flange) {
  const Section section = sample::channel();
  const Member member{section, 500, 0, 0, {}};
  const Mm y = 28;
  const Mm thickness =
      section.flange_thickness + channel_flange_slope * ((section.flange + section.web) / 2 - y);
  const Mm below = 10, half = 0.5;
  // A cube's upper corner edges at y +- half; the thicker side of the flange is nearer the web.
  const Mm face_at_near = thickness + channel_flange_slope * half;
  const Vec3 centre{250, y, section.depth / 2 - thickness - below - half};
  const Closeness c = Pair(member, {}, box({-half, -half, -half}, {half, half, half}), {centre}).measure();
  const Mm drop = below - (face_at_near - thickness);
  EXPECT_NEAR(c.gap, drop / std::hypot(1.0, channel_flange_slope), 1e-6);
}

TEST(ExactDistance, bought_items_block_by_block) {
  Bought two = box({0, 0, 0}, {10, 10, 10});
  two.envelope.push_back({{}, {0, 0, 30}, {10, 10, 40}, 0});
  const Closeness c = Pair(two, {}, box({0, 0, 0}, {10, 10, 10}), {{5, 0, 35}}).measure();
  EXPECT_EQ(c.gap, 0);
  EXPECT_NEAR(c.common_volume, 5 * 10 * 5, 1e-6);
}

// A box cuts the top off a prism on a triangle of base 40 and height 30: above half
// the height a quarter of its area is left.
TEST(ExactDistance, prisms) {
  Bought prism;
  prism.envelope = {prism_block({{}, {0, 1, 0}, {0, 0, 1}}, {{-20, 0}, {20, 0}, {0, 30}}, 0, 50)};
  const Closeness over = Pair(prism, {}, box({10, -100, 15}, {30, 100, 100}), {}).measure();
  EXPECT_NEAR(over.common_volume, 20.0 * 40 * 30 / 2 / 4, 1e-6);
  EXPECT_NEAR(Pair(prism, {}, box({0, -5, 33}, {50, 5, 40}), {}).measure().gap, 3, 1e-9);
}

TEST(ExactDistance, trouble_names_the_part) {
  Section broken = sample::channel();
  broken.flange_thickness = 0;
  Pair pair(Member{broken, 100, 0, 0, {}}, {}, box({0, 0, 0}, {1, 1, 1}), {});
  try {
    pair.measure();
    FAIL() << "measured";
  } catch (const std::runtime_error& e) {
    EXPECT_NE(std::string(e.what()).find("part main cannot be made a solid"), std::string::npos) << e.what();
  }
}

}  // namespace
}  // namespace bedwright
