#include "loads/body.h"

#include <gtest/gtest.h>

#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_job;

TEST(Body, APlatesInertiaIsThatOfItsBox) {
  Plate plate;
  plate.outline = rectangle({0, 0}, {300, 200});
  plate.thickness = 20;
  const Body b = body_of({{Kind::jack_plate}, "A36", Origin::made, plate});
  const Vec3 i = inertia(b);
  EXPECT_NEAR(i.x, b.mass * (200 * 200 + 20 * 20) / 12 * 1e-6, 1e-9);
  EXPECT_NEAR(i.y, b.mass * (300 * 300 + 20 * 20) / 12 * 1e-6, 1e-9);
  EXPECT_NEAR(i.z, b.mass * (300 * 300 + 200 * 200) / 12 * 1e-6, 1e-9);
}

TEST(Body, AMembersInertiaFollowsFromItsProfile) {
  const Job job = demo_job("base");
  const Section& s = *job.catalog.section("C6x8.2");
  const AreaProperties a = area_properties(profile(s));
  const Mm length = 3000;
  const Body b = body_of({{Kind::main}, "A36", Origin::made, Member{s, length, 0, 0, {}}});
  const double rho = b.mass / (a.area * length);
  const Vec3 i = inertia(b);
  EXPECT_NEAR(i.x, rho * length * (a.about_x + a.about_y) * 1e-6, 1e-3 * i.x);
  EXPECT_NEAR(i.y, (b.mass * length * length / 12 + rho * length * a.about_x) * 1e-6, 1e-4 * i.y);
}

TEST(Body, TogetherMovesTheCentreByMoments) {
  const Body a{2, {0, 0, 0}, Eigen::Matrix3d::Zero()}, b{6, {400, 0, 0}, Eigen::Matrix3d::Zero()};
  const Body both = together(a, b);
  EXPECT_DOUBLE_EQ(both.centre.x, 300);
  EXPECT_NEAR(inertia(both).z, (2 * 300.0 * 300 + 6 * 100.0 * 100) * 1e-6, 1e-12);
}

TEST(Body, TheBedsWeightsAddUp) {
  for (const std::string& order : testing::good_orders) {
    const Bed bed = testing::demo_bed(order);
    Kg all = 0;
    for (const Item& item : bed.items)
      if (item.shown) all += mass(bed.parts[item.part]);
    const BedWeights w = weigh(bed);
    Kg listed = 0;
    for (const Weight& weight : w.weights) listed += weight.mass;
    EXPECT_NEAR(listed, all, 1e-9 * all) << order;
    EXPECT_NEAR(w.frame.mass + w.track.mass + w.head.mass + w.gear.mass, all, 1e-9 * all) << order;
  }
}

// Held against where each part comes from.
TEST(Body, EachPartIsCarriedByWhoBringsIt) {
  for (const std::string& order : testing::good_orders) {
    const Bed bed = testing::demo_bed(order);
    Kg frame = 0, track = 0, head = 0, gear = 0;
    for (const Item& item : bed.items) {
      if (!item.shown) continue;
      const Part& part = bed.parts[item.part];
      const Kind kind = item.id.kind;
      const bool of_frame = item.bolt < 0 ? part.origin != Origin::kit
                                          : kind == Kind::jack_bolt || kind == Kind::tongue_jack_bolt;
      (kind == Kind::head                          ? head
       : kind == Kind::axle || kind == Kind::wheel ? gear
       : of_frame                                  ? frame
                                                   : track) += mass(part);
    }
    const BedWeights w = weigh(bed);
    EXPECT_NEAR(w.frame.mass, frame, 1e-9 * frame) << order;
    EXPECT_NEAR(w.track.mass, track, 1e-9 * track) << order;
    EXPECT_NEAR(w.head.mass, head, 1e-9 * head) << order;
    EXPECT_NEAR(w.gear.mass, gear, 1e-9 * gear) << order;
  }
}

TEST(Body, WhatIsNoItemIsNotWeighedAsFrame) {
  Bed bed = testing::demo_bed("base");
  for (Kind kind : {Kind::none, Kind::joint, Kind::bolt_size}) {
    bed.items.front().id.kind = kind;
    EXPECT_THROW(weigh(bed), std::logic_error);
  }
}

}  // namespace
}  // namespace bedwright
