// Beams against published formulas. AISC: Steel Construction Manual, part 3, beam
// diagrams and formulas (table 3-23). Roark: Roark's Formulas for Stress and
// Strain, table of shear, moment and deflection of beams. Figures from memory
// unless said otherwise.
#include <gtest/gtest.h>

#include <cmath>

#include "loads/beam.h"

namespace bedwright {
namespace {

constexpr double ei = 1.0e12;
constexpr Mm l = 2400;

struct Answer {
  std::vector<double> reactions;
  BeamCurves bent;
};

Answer bend(const std::vector<Mm>& supports, const std::vector<Mm>& stations,
            const std::vector<BeamLoad>& loads) {
  std::vector<BeamSupport> held;
  for (Mm x : supports) held.push_back({x, true});
  const Beam beam(held, stations, ei);
  const LoadField field = beam.field(loads);
  const BeamState state = beam.solve(field).value();
  Answer a;
  a.reactions = state.reactions;
  beam.bend(field, state, a.bent);
  return a;
}

// AISC table 3-23, case 1: simple beam, uniformly distributed load.
TEST(PublishedBeams, SimpleBeamEvenLoad) {
  const double w = 3;
  const Answer a = bend({0, l}, {0, l / 4, l / 2, l}, {{0, l, w * l}});
  EXPECT_NEAR(a.reactions[0], w * l / 2, 1e-6);
  EXPECT_NEAR(a.bent.moment[2], w * l * l / 8, 1e-3);
  EXPECT_NEAR(a.bent.down[2], 5 * w * std::pow(l, 4) / (384 * ei), 1e-9);
  const double x = l / 4;  // w x (l^3 - 2 l x^2 + x^3) / 24 EI
  EXPECT_NEAR(a.bent.down[1], w * x * (l * l * l - 2 * l * x * x + x * x * x) / (24 * ei), 1e-9);
  EXPECT_NEAR(a.bent.shear[1], w * (l / 2 - x), 1e-6);
  EXPECT_NEAR(a.bent.slope[0], w * l * l * l / (24 * ei), 1e-12);  // Roark: w l^3 / 24 EI at the ends
  EXPECT_NEAR(a.bent.slope[3], -w * l * l * l / (24 * ei), 1e-12);
}

// AISC table 3-23, case 7: simple beam, concentrated load at centre.
TEST(PublishedBeams, SimpleBeamLoadAtCentre) {
  const double p = 5000;
  const Answer a = bend({0, l}, {l / 2}, {{l / 2, l / 2, p}});
  EXPECT_NEAR(a.bent.moment[0], p * l / 4, 1e-3);
  EXPECT_NEAR(a.bent.down[0], p * std::pow(l, 3) / (48 * ei), 1e-9);
}

// AISC table 3-23, case 8: simple beam, concentrated load at any point. Roark, the
// same case, gives the same deflection under the load: P a^2 b^2 / 3 EI l.
TEST(PublishedBeams, SimpleBeamLoadAnywhere) {
  const double p = 5000, at = 700, b = l - at;
  const Answer a = bend({0, l}, {at}, {{at, at, p}});
  EXPECT_NEAR(a.reactions[0], p * b / l, 1e-6);
  EXPECT_NEAR(a.reactions[1], p * at / l, 1e-6);
  EXPECT_NEAR(a.bent.moment[0], p * at * b / l, 1e-3);
  EXPECT_NEAR(a.bent.down[0], p * at * at * b * b / (3 * ei * l), 1e-9);
}

// AISC table 3-23, case 26: beam overhanging one support, concentrated load at the
// end of the overhang a: down at the end P a^2 (l + a) / 3 EI; up between, at
// l / sqrt(3), by P a l^2 / (9 sqrt(3) EI).
TEST(PublishedBeams, OverhangLoadAtItsEnd) {
  const double p = 2000, over = 800, x = l / std::sqrt(3.0);
  const Answer a = bend({0, l}, {x, l, l + over}, {{l + over, l + over, p}});
  EXPECT_NEAR(a.reactions[0], -p * over / l, 1e-6);
  EXPECT_NEAR(a.reactions[1], p * (l + over) / l, 1e-6);
  EXPECT_NEAR(a.bent.moment[1], -p * over, 1e-3);
  EXPECT_NEAR(a.bent.down[2], p * over * over * (l + over) / (3 * ei), 1e-9);
  EXPECT_NEAR(a.bent.down[0], -p * over * l * l / (9 * std::sqrt(3.0) * ei), 1e-9);
}

// AISC table 3-23, case 24: beam overhanging one support, uniform load over all:
// reactions w (l^2 - a^2) / 2l and w (l + a)^2 / 2l, moment w a^2 / 2 over the support.
TEST(PublishedBeams, OverhangEvenLoad) {
  const double w = 2, over = 900;
  const Answer a = bend({0, l}, {l}, {{0, l + over, w * (l + over)}});
  EXPECT_NEAR(a.reactions[0], w * (l * l - over * over) / (2 * l), 1e-6);
  EXPECT_NEAR(a.reactions[1], w * (l + over) * (l + over) / (2 * l), 1e-6);
  EXPECT_NEAR(a.bent.moment[0], -w * over * over / 2, 1e-3);
}

// AISC table 3-23, case 29: continuous beam, two equal spans, uniform load on one:
// reactions 7/16, 5/8, -1/16 of w l; moment -1/16 w l^2 over the middle.
TEST(PublishedBeams, TwoSpansOneLoaded) {
  const double w = 3;
  const Answer a = bend({0, l, 2 * l}, {l}, {{0, l, w * l}});
  EXPECT_NEAR(a.reactions[0], 7.0 / 16 * w * l, 1e-6);
  EXPECT_NEAR(a.reactions[1], 5.0 / 8 * w * l, 1e-6);
  EXPECT_NEAR(a.reactions[2], -1.0 / 16 * w * l, 1e-6);
  EXPECT_NEAR(a.bent.moment[0], -w * l * l / 16, 1e-3);
}

// The same with supports that only push: the far one lets go, and the loaded span
// carries w l^2 / 8 alone.
TEST(PublishedBeams, TwoSpansOneLoadedOnSupportsThatOnlyPush) {
  const double w = 3;
  const Beam beam({{0, false}, {l, false}, {2 * l, false}}, {l / 2, l}, ei);
  const LoadField field = beam.field({{0, l, w * l}});
  const BeamState state = beam.solve(field).value();
  EXPECT_EQ(state.touching, (std::vector<int>{0, 1}));
  EXPECT_NEAR(state.reactions[0], w * l / 2, 1e-6);
  // Clear of it by the slope of a simple beam's end, w l^3 / 24 EI, times l.
  EXPECT_NEAR(beam.down_at_support(field, state, 2), -w * std::pow(l, 4) / (24 * ei), 1e-9);
}

// AISC table 3-23, case 30: two equal spans, load at the middle of one: reactions
// 13/32, 11/16, -3/32 of P; moment 3/32 P l over the middle.
TEST(PublishedBeams, TwoSpansLoadInOne) {
  const double p = 4000;
  const Answer a = bend({0, l, 2 * l}, {l / 2, l}, {{l / 2, l / 2, p}});
  EXPECT_NEAR(a.reactions[0], 13.0 / 32 * p, 1e-6);
  EXPECT_NEAR(a.reactions[1], 11.0 / 16 * p, 1e-6);
  EXPECT_NEAR(a.reactions[2], -3.0 / 32 * p, 1e-6);
  EXPECT_NEAR(a.bent.moment[0], 13.0 / 64 * p * l, 1e-3);
  EXPECT_NEAR(a.bent.moment[1], -3.0 / 32 * p * l, 1e-3);
}

// Two equal spans, even load on both: 3/8 and 10/8 of w l, -w l^2 / 8, deflection
// w l^4 / 185 EI near 0.4215 l (AISC table 3-23; Hicks, Civil Engineering Formulas,
// table 2.1, read in a published copy: 3/8, 5/8 + 5/8, 1/8).
TEST(PublishedBeams, TwoSpansBothLoaded) {
  const double w = 3;
  const Answer a = bend({0, l, 2 * l}, {0.4215 * l, l}, {{0, 2 * l, 2 * w * l}});
  EXPECT_NEAR(a.reactions[0], 3.0 / 8 * w * l, 1e-6);
  EXPECT_NEAR(a.reactions[1], 10.0 / 8 * w * l, 1e-6);
  EXPECT_NEAR(a.bent.moment[1], -w * l * l / 8, 1e-3);
  EXPECT_NEAR(a.bent.down[0], w * std::pow(l, 4) / (185 * ei), 0.002 * w * std::pow(l, 4) / (185 * ei));
}

// A worked three-span beam of handbooks: equal spans, even load on all. Reactions
// 0.400, 1.100, 1.100, 0.400 of w l; moments 0.080 at 0.400 l, -0.100 over the
// inner supports, 0.025 in the middle, of w l^2; deflection 0.0069 w l^4 / EI at
// 0.446 l. (AISC table 3-23, case 39; Hicks, Civil Engineering Formulas, table 2.1;
// both read in published copies.)
TEST(PublishedBeams, ThreeSpansAllLoaded) {
  const double w = 3;
  const Answer a = bend({0, l, 2 * l, 3 * l}, {0.4 * l, 0.446 * l, l, 1.5 * l}, {{0, 3 * l, 3 * w * l}});
  for (int i : {0, 3}) EXPECT_NEAR(a.reactions[i], 0.400 * w * l, 1e-6);
  for (int i : {1, 2}) EXPECT_NEAR(a.reactions[i], 1.100 * w * l, 1e-6);
  EXPECT_NEAR(a.bent.moment[0], 0.080 * w * l * l, 1e-3);
  EXPECT_NEAR(a.bent.moment[2], -0.100 * w * l * l, 1e-3);
  EXPECT_NEAR(a.bent.moment[3], 0.025 * w * l * l, 1e-3);
  EXPECT_NEAR(a.bent.down[1], 0.0069 * w * std::pow(l, 4) / ei, 0.00005 * w * std::pow(l, 4) / ei);
}

// The same beam with the third span empty (AISC table 3-23, case 37; read in a
// published copy): reactions 0.383, 1.200, 0.450, -0.033 of w l; moments 0.0735,
// 0.0534 in the spans, -0.0333 over the third support, of w l^2.
TEST(PublishedBeams, ThreeSpansTwoLoaded) {
  const double w = 3;
  const Answer a = bend({0, l, 2 * l, 3 * l}, {0.383 * l, l, 1.583 * l, 2 * l}, {{0, 2 * l, 2 * w * l}});
  const double reactions[] = {0.383, 1.200, 0.450, -0.033};
  for (int i = 0; i < 4; ++i) EXPECT_NEAR(a.reactions[i], reactions[i] * w * l, 0.0006 * w * l);
  EXPECT_NEAR(a.bent.moment[0], 0.0735 * w * l * l, 0.0001 * w * l * l);
  EXPECT_NEAR(a.bent.moment[3], -0.0333 * w * l * l, 0.0001 * w * l * l);
}

}  // namespace
}  // namespace bedwright
