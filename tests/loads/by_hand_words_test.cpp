// The sums as they are printed, worked again from the figures in their own lines and from what
// the files in params/ state; steels by their grades; the load that keeps a tongue down.
#include <gtest/gtest.h>

#include "loads/balance.h"
#include "loads/by_hand.h"
#include "loads/steel.h"
#include "loads/worked.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using namespace testing;

struct Printed {
  Job job = demo_job(
      "base", {"axle.position=137 in", "kit.head.lock_offset=104 in", "kit.head.mass=610 lb",
               "kit.head.mass_y=3 in", "jacks=[17 in, 120 in, 223 in]", "work.log.diameter=20 in",
               "work.log.length=16 ft", "work.log.crook=0 in", "work.log.taper=0 in", "work.landing=1"});
  Bed bed = bed_of(job);
  LoadsResult loads = run_loads(job, bed);
  std::string line(const std::string& begins) const {
    for (const std::string& text : worked_lines(job, bed, loads))
      if (text.starts_with(begins)) return text;
    throw std::runtime_error("no line begins " + begins);
  }
};

// The number after these words.
double after(const std::string& text, const std::string& words) {
  const std::size_t at = text.find(words);
  if (at == std::string::npos) throw std::runtime_error("no '" + words + "' in " + text);
  return std::stod(text.substr(at + words.size()));
}

TEST(ByHandWords, JacksAndLoadsBalanceAsPrinted) {
  const Printed p;
  const std::string jacks = p.line("Balance"), loads = p.line("On them");
  const double log = heaviest_of_its_kind * 2199.1,
               bed = weight(both({frame_of_base(), track_of_base(), axles_at({137})}));
  EXPECT_NEAR(after(jacks, "together "), bed + 610 + log, 0.01 * bed);
  EXPECT_NEAR(after(loads, "together "), bed + 610 + log, 0.01 * bed);
  EXPECT_NEAR(after(loads, ", head "), 610, 0.5);
  // Kip inches about the front of the track: what the jacks push is what lies on them.
  const auto kip_in = [](const std::string& text) {
    return after(text, text.substr(text.find("lb", text.find("together ")), 4));
  };
  EXPECT_NEAR(kip_in(jacks), kip_in(loads), 0.2);
  const double at = after(loads, "head 610 lb at "),
               log_at = after(loads.substr(loads.find(", log ")), " at ");
  const double by_hand =
      moment(both({frame_of_base(), track_of_base(), axles_at({137})})) + 610 * at + log * log_at;
  EXPECT_NEAR(kip_in(loads), by_hand / 1000, 0.01 * by_hand / 1000);
}

// 5 w L^3 / 384 EI + P L^3 / 48 EI on one main, 103 in between its jacks: half of what rests
// spread over 240 in, and half the head.
TEST(ByHandWords, TheRoughCheckOfTheSag) {
  const std::string text = Printed().line("Sag");
  const double even =
      (weight(both({frame_of_base(), track_of_base(), axles_at({137})})) + heaviest_of_its_kind * 2199.1) /
      2 * 103 / 240;
  EXPECT_NEAR(after(text, "L = "), 103, 0.01);
  EXPECT_NEAR(after(text, ": 5 x "), even, 0.01 * even);
  EXPECT_NEAR(after(text, "/ 384 EI + "), 305, 0.6);
  const double sag = (5 * even / 384 + 305 / 48.0) * std::pow(103, 3) / (29e6 * 13.1);
  EXPECT_NEAR(after(text, "/ 48 EI = "), sag, 0.001);
}

TEST(ByHandWords, TheTonguesLever) {
  EXPECT_NEAR(after(Printed().line("Tongue, head locked front"), "in / "), 137 + 41, 0.01);
}

// ASTM A36: 36 ksi; A572 grade 50, A529 grade 50 and A992: 50 ksi; EN 10025: 235, 275, 355 MPa.
TEST(ByHandWords, GradesHaveTheirYield) {
  for (const auto& [grade, yield] : {std::pair{"A36", 36 * ksi},
                                     {"A572", 50 * ksi},
                                     {"A572-50", 50 * ksi},
                                     {"A529", 50 * ksi},
                                     {"A992", 50 * ksi},
                                     {"S235", 235.0},
                                     {"S275", 275.0},
                                     {"S355", 355.0}})
    EXPECT_NEAR(yield_of_grade(grade).value(), yield, 1e-9) << grade;
  Job job = demo_job("base");
  EXPECT_NEAR(frame_yield(job.frame) / ksi, 36, 1e-9);
  job.frame.grade = "unheard of";
  EXPECT_NEAR(frame_yield(job.frame) / ksi, 36, 1e-9);
  job.frame.yield_strength = 400;
  EXPECT_NEAR(frame_yield(job.frame), 400, 1e-9);
}

// AISC 360 table J2.5 and section J4.2, as the Manual's part 8 prints it: 928 lb an inch for each
// sixteenth of an E70 fillet; the steel beside it 0.60 Fu / 2, Fu 360 MPa.
TEST(ByHandWords, AFilletOrTheSteelBesideIt) {
  const double unit = pound_force / inch;
  EXPECT_NEAR(weld_line_allowable(inch / 4, 0) / unit, 4 * 928, 2);
  EXPECT_NEAR(weld_line_allowable(inch / 4, inch) / unit, 4 * 928, 2);
  EXPECT_NEAR(weld_line_allowable(inch / 4, 4), 0.6 * 360 / 2 * 4, 1e-9);
}

// AISC Manual tables 1-5 and 1-7 (from memory): section moduli.
TEST(ByHandWords, SectionsBendAsTheManualSays) {
  const Job job = demo_job("base");
  const auto modulus = [&](const char* name) {
    return bending_of(*job.catalog.section(name)).modulus / std::pow(inch, 3);
  };
  EXPECT_NEAR(modulus("C6x8.2"), 4.38, 0.03);
  EXPECT_NEAR(modulus("C5x6.7"), 3.00, 0.03);
  EXPECT_NEAR(modulus("C4x5.4"), 1.93, 0.02);
  // From its outline, as a kit's own angle is: L4x3x1/4 lying on its long leg would be S = 0.585.
  Section own = *job.catalog.section("C6x8.2");
  own.published.reset();
  EXPECT_NEAR(bending_of(own).modulus / std::pow(inch, 3), 4.38, 0.05);
  EXPECT_NEAR(bending_of(own).inertia / std::pow(inch, 4), 13.1, 0.15);
}

// Head locked near the front end, axle for that at 103 in: without the head a load on the second
// bunk, at 20 in, keeps a tenth on the coupler. (T + m (103 - 20) / 144) = (W + m) / 10.
TEST(ByHandWords, TheLoadThatKeepsTheTongueDown) {
  const Job job =
      demo_job("base", {"kit.head.lock_offset=32 in", "axle.position=103 in", "kit.head.mass=610 lb"});
  const Bed bed = bed_of(job);
  const LoadsResult loads = run_loads(job, bed);
  const Lumps off = both({frame_of_base(), track_of_base(), axles_at({103})});
  const double needed = (0.10 * weight(off) - tongue_of(off, 103)) / (83.0 / 144 - 0.10);
  for (const TowCondition& c : loads.tow.conditions)
    if (c.travel == TravelCase{HeadAt::off, false, false}) {
      const auto load = ballast(job, bed, loads, c);
      ASSERT_TRUE(load);
      EXPECT_NEAR(load->at / inch, 20, 1e-6);
      EXPECT_GE(load->mass / pound, needed - 15);
      EXPECT_LE(load->mass / pound, needed + 25);
      // Rounded up to ten pounds, and no further.
      const double least = (0.10 * c.mass - c.tongue) / (83.0 / 144 - 0.10) / pound;
      EXPECT_NEAR(load->mass / pound, std::ceil(least / 10) * 10, 1e-6);
    }
}

}  // namespace
}  // namespace bedwright
