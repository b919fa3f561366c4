// One order's figures, in inches and in metric. What is expected is worked out by hand from
// 1 in = 25.4 mm, 1 lb = 0.45359237 kg and g = 9.80665 m/s2.
#include "units/figures.h"

#include <gtest/gtest.h>

#include "units/parse.h"

namespace bedwright {
namespace {

const Figures inches{Printing::inches, inch / 16}, metric{Printing::metric, 1};

TEST(Figures, SayBothUnitsOrMillimetres) {
  EXPECT_EQ(inches.say(3 * inch / 16), "3/16 in (4.8 mm)");
  EXPECT_EQ(inches.say(77.5 * inch), "6 ft 5-1/2 in (1968.5 mm)");
  EXPECT_EQ(inches.say(0.05), "0.002 in (0.1 mm)");
  EXPECT_EQ(inches.say(2.6), "about 7/64 in (2.6 mm)");
  EXPECT_EQ(inches.say(-inch / 4), "-1/4 in (-6.4 mm)");
  EXPECT_EQ(metric.say(4.76), "4.8 mm");
}

TEST(Figures, SetValuesReadBackWithinAPlace) {
  for (const Figures& figures : {inches, metric}) {
    for (const Mm value : {3 * inch / 16, 31.75, 1968.5, 77.777, 0.5, -4.2, -inch / 16, 656.1667}) {
      const auto parsed = parse_quantity(Dimension::length, figures.set(value));
      ASSERT_TRUE(parsed.value.has_value()) << figures.set(value) << ": " << parsed.what;
      EXPECT_NEAR(*parsed.value, value, same_place);
    }
  }
  EXPECT_EQ(inches.set(1.25 * inch), "1-1/4 in");
}

TEST(Figures, AMostOnAThirtySecondStaysOnIt) {
  EXPECT_EQ(inches.set_at_most(7 * inch / 32), "7/32 in");
  for (int n = 1; n <= 400; ++n) {
    const auto parsed = parse_quantity(Dimension::length, inches.set_at_most(n * inch / 32));
    ASSERT_TRUE(parsed.value.has_value()) << n;
    EXPECT_NEAR(*parsed.value, n * inch / 32, 1e-9) << n;
  }
}

TEST(Figures, RoundUpGoesToTheNextStepButNotPastOne) {
  EXPECT_NEAR(inches.round_up(0.99 * inch / 16), inch / 16, 1e-12);
  EXPECT_NEAR(inches.round_up(3 * inch / 16), 3 * inch / 16, 1e-12);
  EXPECT_NEAR(metric.round_up(4.01), 4.5, 1e-12);
}

TEST(Figures, WordsOfFilesReadBackAndNoOthers) {
  for (const Printing p : {Printing::inches, Printing::metric})
    EXPECT_EQ(printing_called(printing_word(p)), p);
  EXPECT_EQ(printing_word(Printing::inches), "inch");
  EXPECT_THROW(printing_called("inches"), std::invalid_argument);
  EXPECT_THROW(printing_called(""), std::invalid_argument);
}

TEST(Figures, LengthsInSentences) {
  EXPECT_EQ(inches.brief(118 * inch), "118 in");
  EXPECT_EQ(inches.brief(656.2), "about 25-53/64 in (656.2 mm)");
  EXPECT_EQ(metric.brief(656.24), "656.2 mm");
  EXPECT_EQ(inches.customer(77.5 * inch), "77-1/2 in");
  EXPECT_EQ(inches.customer(9 * inch / 64), "9/64 in");
  EXPECT_EQ(inches.customer(36.45 * inch), "36-7/16 in (36.450 in)");
  EXPECT_EQ(metric.customer(1968.5), "1968.5 mm");
  EXPECT_EQ(inches.place(2616.2), "103 in");
  EXPECT_EQ(metric.place(2560.4), "2560 mm");
  EXPECT_EQ(inches.small(0.62), "0.024 in (0.62 mm)");
  EXPECT_EQ(inches.in_one_unit().small(0.62), "0.024 in");
  EXPECT_EQ(inches.kerf(1.5), "0.0591 in");
  EXPECT_EQ(metric.kerf(1.5), "1.50 mm");
}

TEST(Figures, SetDecimalIsCloseToWhatWasTyped) {
  EXPECT_EQ(inches.set_decimal(62.3 * inch), "62.3 in");
  EXPECT_EQ(metric.set_decimal(1582.4), "1582.4 mm");
}

TEST(Figures, TapeAndSizeOnDrawings) {
  EXPECT_EQ(inches.tape_figure(1968.5), "77-1/2");
  EXPECT_EQ((Figures{Printing::inches, inch / 8}.tape_figure(3 * inch / 16 + 0.1)), "1/4");
  EXPECT_EQ(inches.size_length(14.2875), "9/16 in");
  EXPECT_EQ(inches.size_figure(inch / 64), "1/64");
  EXPECT_EQ(metric.tape_length(1968.5), "1968.5 mm");
  EXPECT_EQ(metric.size_figure(14.0), "14");
  EXPECT_EQ(inches.tape_label(1968.5), "77-1/2 (1968.5 mm)");
  EXPECT_EQ(inches.size_note(14.2875), "9/16 in (14.3 mm)");
  EXPECT_EQ(metric.size_note(14.2875), "14.3 mm");
  EXPECT_EQ(inches.rule_reading(14.2875), "9/16 in / 14.3 mm");
  EXPECT_EQ(inches.running(1968.5), "77-1/2  (77.500 in, 1968.5 mm)");
  EXPECT_EQ(metric.running(1968.5), "1968.5");
  EXPECT_EQ(metric.running_words(1968.5), "1968.5 mm");
  EXPECT_EQ(inches.size_to_make(1231.9), "48-1/2 in (48.500 in, 1231.9 mm)");
  EXPECT_EQ(inches.error_figure(1.6), "0.063");
  EXPECT_EQ(metric.error_figure(2), "2.0");
}

TEST(Figures, ATablesHeadsMatchItsCells) {
  using Row = std::vector<std::string>;
  EXPECT_EQ(inches.heads("HOLE"), (Row{"HOLE", "in", "mm"}));
  EXPECT_EQ(inches.cells(1968.5), (Row{"77-1/2", "77.500", "1968.5"}));
  EXPECT_EQ(metric.heads("HOLE"), (Row{"HOLE mm"}));
  EXPECT_EQ(metric.cells(1968.5), (Row{"1968.5"}));
  EXPECT_EQ(inches.size_heads("Dia."), (Row{"Dia. in", "mm"}));
  EXPECT_EQ(inches.size_cells(14.2875), (Row{"9/16", "14.3"}));
  for (const Figures& f : {inches, metric}) {
    EXPECT_EQ(f.heads("A").size(), f.cells(1).size());
    EXPECT_EQ(f.narrow_heads("A").size(), f.narrow_cells(1).size());
    EXPECT_EQ(f.size_heads("A").size(), f.size_cells(1).size());
  }
}

TEST(Figures, OwnUnitAloneIsLeftOff) {
  EXPECT_EQ(inches.without_own_unit("1-1/4 in"), "1-1/4");
  EXPECT_EQ(inches.without_own_unit("35 mm"), "35 mm");
  EXPECT_EQ(metric.without_own_unit("35 mm"), "35");
}

TEST(Figures, LoadsInBothUnitsOrOne) {
  EXPECT_EQ(inches.mass(944.2), "2082 lb (944 kg)");
  EXPECT_EQ(inches.in_one_unit().mass(944.2), "2082 lb");
  EXPECT_EQ(metric.mass(944.2), "944 kg");
  EXPECT_EQ(inches.force(2460), "553 lbf (2.46 kN)");
  EXPECT_EQ(inches.stress(63.4), "9.2 ksi (63 MPa)");
  EXPECT_EQ(inches.moment(2.34e6), "20.7 kip-in (2.34 kN m)");
  EXPECT_EQ(inches.along_weld(217), "1.24 kip/in (217 N/mm)");
  EXPECT_EQ(metric.turning(2.336e6), "2336 N m");
  EXPECT_EQ(inches.in_one_unit().turning(2.336e6), "1723 lbf-ft");
  EXPECT_EQ(metric.force(-1), "0.00 kN") << "no minus before a nought";
  EXPECT_EQ(inches.mass_cell(944.2), "2082 (944 kg)");
  EXPECT_EQ(metric.mass_cell(944.2), "944");
  EXPECT_EQ(inches.fine_mass(386), "851.0 lb");
  EXPECT_EQ(inches.section_modulus(49161.2), "3.00 in3");
  EXPECT_EQ(metric.inertia(1.594e6), "159.4 cm4");
  EXPECT_EQ(inches.elasticity(29000 * ksi), "29,000,000 psi");
  EXPECT_EQ(metric.elasticity(29000 * ksi), "199,948 MPa");
}

TEST(Figures, ARatingIsEnoughForWhatItMustCarry) {
  EXPECT_EQ(inches.rating(3500 * pound), "3500 lb");
  EXPECT_EQ(inches.rating(3500.01 * pound), "3501 lb");
  EXPECT_EQ(metric.rating(1587.6), "1588 kg");
}

TEST(Figures, MeasuredFiguresAreInThePrintedUnit) {
  EXPECT_EQ(inches.printed("kg").name, "lb");
  EXPECT_DOUBLE_EQ(907.18474 / inches.printed("kg").one, 2000);
  EXPECT_EQ(metric.printed("MPa").name, "MPa");
  EXPECT_EQ(metric.printed("MPa").one, 1);
  EXPECT_EQ(inches.printed("%").name, "%");
  EXPECT_NEAR(1388 / inches.line_load_unit().one, 7926, 0.5);  // N/mm in lb/in
}

TEST(Figures, ABoltsLengthGoesByItsStandard) {
  EXPECT_EQ(figures_of_standard(false).set(38.1), "1-1/2 in");
  EXPECT_EQ(figures_of_standard(true).set(35), "35 mm");
}

}  // namespace
}  // namespace bedwright
