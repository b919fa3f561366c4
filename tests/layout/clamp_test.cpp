// The space a clamp sweeps holds it at every lean and place, and little else.
#include <gtest/gtest.h>

#include <cmath>
#include <random>

#include "geometry/convex.h"
#include "support/demo.h"

namespace bedwright {
namespace {

// Corners of the arm in (y, z), leaned so far inward and slid so far, from the bunk's
// top: by the kit's figures alone.
std::vector<Vec2> corners(const KitClamp& k, Radians lean, Mm slid) {
  std::vector<Vec2> all;
  for (const Mm along : {-k.arm_width / 2, k.arm_width / 2})
    for (const Mm up : {0.0, k.arm_height})
      all.push_back({slid + along * std::cos(lean) - up * std::sin(lean),
                     k.base_height + along * std::sin(lean) + up * std::cos(lean)});
  return all;
}

struct Swept {
  Placement place;
  Block base, arm;
};

Swept swept_of(const Job& job) {
  const Bed bed = testing::bed_of(job);
  const int item = bed.item({Kind::clamp, Side::middle, 1, 0, End::none, 5, Pose::between});
  const auto& envelope = std::get<Bought>(bed.part_of(item).form).envelope;
  return {bed.items[item].placement, envelope.at(0), envelope.at(1)};
}

// How far the point is outside the polygon; negative inside.
Mm outside(const std::vector<Vec2>& polygon, Vec2 p) {
  Mm most = -1e9;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 a = polygon[i], along = polygon[(i + 1) % polygon.size()] - a;
    most = std::max(most, -cross(along, p - a) / norm(along));
  }
  return most;
}

TEST(ClampSweep, HoldsEveryPoseAndReachesNoFurther) {
  std::mt19937 random(7);
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967295.0;
  };
  for (int round = 0; round < 60; ++round) {
    Job job = testing::demo_job("base");
    KitClamp& k = job.kit.clamp;
    k.arm_height = between(50, 400);
    k.arm_width = between(15, 60);
    k.lean_in = between(0, 40) * degree;
    k.lean_out = between(0, 40) * degree;
    k.travel_from = between(100, 200);
    k.travel_to = k.travel_from + between(150, 300);
    const Swept s = swept_of(job);
    Mm nearest_y = 1e9, furthest_y = -1e9, top = -1e9;
    for (int l = 0; l <= 400; ++l)
      for (int t = 0; t <= 10; ++t) {
        const Radians lean = -k.lean_out + (k.lean_in + k.lean_out) * l / 400;
        for (const Vec2& c : corners(k, lean, k.travel_from + (k.travel_to - k.travel_from) * t / 10)) {
          ASSERT_LT(outside(s.arm.base, c), 1e-6);
          nearest_y = std::min(nearest_y, c.x);
          furthest_y = std::max(furthest_y, c.x);
          top = std::max(top, c.y);
        }
      }
    // Tangents of arcs at steps of 2 degrees stand 0.015 % of the radius off them.
    const Mm off = 1.6e-4 * std::hypot(k.arm_height, k.arm_width / 2);
    EXPECT_NEAR(s.arm.low.x, nearest_y, off);
    EXPECT_NEAR(s.arm.high.x, furthest_y, off);
    EXPECT_NEAR(s.arm.high.y, top, off);
    // Along the bed it is the arm's own thickness, at the middle of the foot.
    EXPECT_NEAR(s.arm.high.z - s.arm.low.z, k.arm_thickness, 1e-9);
    EXPECT_NEAR((s.arm.high.z + s.arm.low.z) / 2, k.base_length / 2, 1e-9);
    EXPECT_NEAR(s.base.low.y, k.travel_from - k.base_width / 2, 1e-9);
    EXPECT_NEAR(s.base.high.y, k.travel_to + k.base_width / 2, 1e-9);
  }
}

// Points taken anywhere in the swept arm are in some pose of it, but for a sliver at
// the foot no higher than the foot's corners dip.
TEST(ClampSweep, IsNotMoreThanThePosesTogether) {
  const Job job = testing::demo_job("base");
  const KitClamp& k = job.kit.clamp;
  const Swept s = swept_of(job);
  std::mt19937 random(8);
  const Mm dip = k.base_height + k.arm_width / 2;
  int tried = 0;
  while (tried < 4000) {
    const double u = static_cast<double>(random()) / 4294967295.0,
                 v = static_cast<double>(random()) / 4294967295.0;
    const Vec2 p{s.arm.low.x + u * (s.arm.high.x - s.arm.low.x),
                 s.arm.low.y + v * (s.arm.high.y - s.arm.low.y)};
    if (outside(s.arm.base, p) > -0.1 || p.y < dip) continue;
    ++tried;
    bool in_some = false;
    for (int l = 0; l <= 370 && !in_some; ++l) {
      const Radians lean = -k.lean_out + (k.lean_in + k.lean_out) * l / 370;
      for (int across = -4; across <= 4 && !in_some; ++across) {
        // The slide, as far as it goes, that brings p so far across the arm.
        const Mm wanted = 0.999 * across * k.arm_width / 8, high = p.y - k.base_height;
        const Mm slid =
            std::clamp(p.x - (wanted - high * std::sin(lean)) / std::cos(lean), k.travel_from, k.travel_to);
        const Vec2 from_foot = p - Vec2{slid, k.base_height};
        const Mm along = from_foot.x * std::cos(lean) + from_foot.y * std::sin(lean),
                 up = -from_foot.x * std::sin(lean) + from_foot.y * std::cos(lean);
        in_some = std::abs(along) <= k.arm_width / 2 && up >= 0 && up <= k.arm_height;
      }
    }
    EXPECT_TRUE(in_some) << p.x << ", " << p.y;
  }
}

}  // namespace
}  // namespace bedwright
