// Inertia of forms against closed form, each large enough in what it tests to be seen.
#include <gtest/gtest.h>

#include "loads/body.h"
#include "support/demo.h"

namespace bedwright {
namespace {

constexpr double pi = 3.14159265358979;

// A plate 100 square with a hole of 40 in its middle: a square's m a^2 / 6 less a disc's place,
// which is at the middle and so takes nothing from a point's view; 30 off the middle it takes
// m_h d^2 and shifts the centre.
TEST(ByHandBody, AHoleIsTakenOutWhereItIs) {
  Plate plate;
  plate.outline = rectangle({0, 0}, {100, 100});
  plate.thickness = 10;
  plate.holes.push_back({{80, 50}, 40, 40, 0, Process::cut, Kind::jack_bolt});
  const Body b = body_of({{Kind::jack_plate}, "A36", Origin::made, plate});
  const double rho = b.mass / (100 * 100 - pi * 20 * 20), whole = rho * 10000, hole = rho * pi * 400;
  const double centre = (whole * 50 - hole * 80) / (whole - hole);
  EXPECT_NEAR(b.centre.x, centre, 1e-6);
  const double about_y = whole * (100 * 100 + 10 * 10) / 12 + whole * (50 - centre) * (50 - centre) -
                         hole * (80 - centre) * (80 - centre);
  EXPECT_NEAR(inertia(b).y * 1e6, about_y, 1e-6 * about_y);
}

// A slot 20 wide and 60 long: pi/4 d^2 + d (l - d).
TEST(ByHandBody, ASlotTakesItsArea) {
  Plate plate;
  plate.outline = rectangle({0, 0}, {100, 100});
  plate.thickness = 10;
  plate.holes.push_back({{50, 90}, 20, 60, 0, Process::cut, Kind::jack_bolt});
  const Body b = body_of({{Kind::jack_plate}, "A36", Origin::made, plate});
  const double slot = pi * 100 + 20 * 40, rho = b.mass / (10000 - slot);
  const double centre = (10000 * 50 - slot * 90) / (10000 - slot);
  const double about_x = rho * (10000 * (100 * 100 + 10 * 10) / 12.0 + 10000 * (50 - centre) * (50 - centre) -
                                slot * (90 - centre) * (90 - centre));
  EXPECT_NEAR(inertia(b).x * 1e6, about_x, 1e-6 * about_x);
}

// A short channel, both ends cut alike at 45 degrees: each slice lies as far along as it lies
// across, so that along the bed the spread is L^2 / 12 + the section's across, AISC Manual table
// 1-5: Iy / A of C6x8.2 = 0.687 / 2.39 in2 (from memory).
TEST(ByHandBody, MitredEndsLeanTheMember) {
  const Job job = testing::demo_job("base");
  const Section& s = *job.catalog.section("C6x8.2");
  const Mm length = 40;
  const Radians lean = 45 * degree;
  const Body b = body_of({{Kind::main}, "A36", Origin::made, Member{s, length, lean, lean, {}}});
  const double across = 0.687 / 2.39 * inch * inch;
  EXPECT_NEAR(b.second(0, 0) / b.mass, length * length / 12 + across, 0.02 * across);
}

// A bought block, and one that is round: m r^2 / 2 about its axis, m (r^2 / 4 + h^2 / 12) across it;
// two of them as one by their volumes.
TEST(ByHandBody, BoughtThingsByTheirEnvelope) {
  Bought box;
  box.mass = 12;
  box.envelope.push_back({{}, {0, 0, 0}, {100, 60, 20}});
  box.centre_of_mass = {50, 30, 10};
  const Vec3 i = inertia(body_of({{Kind::jack}, "", Origin::bought, box}));
  EXPECT_NEAR(i.x * 1e6, 12 * (60 * 60 + 20 * 20) / 12.0, 1e-6);
  EXPECT_NEAR(i.z * 1e6, 12 * (100 * 100 + 60 * 60) / 12.0, 1e-6);
}

TEST(ByHandBody, ARoundThingBesideASquareOne) {
  Bought both;
  both.mass = 10;
  Block round;
  round.low = {-50, -50, 0};
  round.high = {50, 50, 40};
  round.radius = 50;
  Block square;
  square.low = {-50, -50, 40};
  square.high = {50, 50, 80};
  both.envelope = {round, square};
  const double v_round = pi * 2500 * 40, v_square = 10000 * 40, all = v_round + v_square;
  const double about = 10 * (v_round / all * 2500 / 2 + v_square / all * 20000 / 12);
  EXPECT_NEAR(inertia(body_of({{Kind::jack}, "", Origin::bought, both})).z * 1e6, about, 1e-6 * about);
}

}  // namespace
}  // namespace bedwright
