// The room a tool takes against published tool sizes.
#include <gtest/gtest.h>

#include <cmath>

#include "published/catalog_files.h"
#include "rules/fit/reach.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

// A-A-1346A (U.S. commercial item description, ratcheting ring wrenches), table of
// dimensions: greatest outside diameter of the ring head by its opening. A socket's
// wall is no thicker than a ratcheting ring's: the usual socket we reckon with must
// lie within a tenth of it, and none under the nut's corners with a wall left.
TEST(Tools, SocketsAreAsThickAsPublishedRings) {
  const Catalog catalog = shipped_catalog({"fasteners_inch.yaml"});
  struct Row {
    const char* bolt;
    double opening, ring;
  };
  for (const Row& row : {Row{"1/4 in", 7. / 16, 0.695}, Row{"5/16 in", 1. / 2, 0.775},
                         Row{"3/8 in", 9. / 16, 0.868}, Row{"1/2 in", 3. / 4, 1.125}}) {
    const BoltSize* bolt = catalog.bolt(row.bolt);
    ASSERT_NE(bolt, nullptr) << row.bolt;
    ASSERT_NEAR(bolt->wrench, row.opening * inch, 1e-9) << row.bolt;
    const Mm socket = usual_tools(*bolt).socket_outside;
    EXPECT_NEAR(socket, row.ring * inch, 0.1 * row.ring * inch) << row.bolt;
    EXPECT_GT(socket, 1.2 * row.opening * inch) << row.bolt;  // corners of a hexagon: 1.155
  }
}

// Joshua Rose, Modern Machine-Shop Practice, on the wrench of figs. 445 to 448: turned
// over at each setting it moves a hexagon nut 30 degrees at a time, and the opening
// that admits it must be no less than 30 degrees and the width of the handle.
Grip through_an_opening(Mm spare) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {40, 40}, 6, {round_hole({}, 14)});
  const int top = s.plate(some(2), {0, 0, 6}, {40, 40}, 6, {round_hole({}, 14)});
  s.bolt(bunk_bolt_r1, {top, under}, 34);
  s.box(some(3), {-400, -400, -60}, {400, 400, -30});  // no socket
  const Mm half = 0.35 * half_inch().wrench, radius = 100;
  // Posts at the opening's two edges, and all round but for it. The frame of a nut
  // that looks down has its first axis along x and its second along -y.
  const auto post = [&](double turn, Mm aside) {
    const Vec3 at{radius * std::cos(turn) - aside * std::sin(turn),
                  -(radius * std::sin(turn) + aside * std::cos(turn)), 0};
    s.box(some(static_cast<int>(s.bed.items.size())), at + Vec3{-0.05, -0.05, -30},
          at + Vec3{0.05, 0.05, -2.6});
  };
  post(0, -half - spare);
  post(30 * degree, half + spare);
  for (int a = 40; a <= 350; a += 5) post(a * degree, 0);
  int first = 0;
  return grip_on(Scene({s.bed, s.limits, nullptr, nullptr, s.figures}), 0, BoltEnd::nut, first);
}

TEST(Tools, AWrenchTurnedOverNeedsThirtyDegreesAndItsHandlesWidth) {
  EXPECT_EQ(through_an_opening(0.2), Grip::short_swing);
  EXPECT_EQ(through_an_opening(-0.2), Grip::held);
}

TEST(Tools, WhatTheCatalogueStatesStands) {
  BoltSize size;
  size.wrench = 19;
  size.tools.socket_outside = 25;
  EXPECT_EQ(usual_tools(size).socket_outside, 25);
  EXPECT_NEAR(usual_tools(size).wrench_length, 190, 1e-9);
}

}  // namespace
}  // namespace bedwright
