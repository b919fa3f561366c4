// Figures as one order's papers print them: in inches or in metric units, on its own
// tape. Every caller asks here, and nowhere else is it asked which of the two it is;
// where a step or a stock size differs between them, it has a name here too.
#pragma once

#include <string>
#include <vector>

#include "units/units.h"

namespace bedwright {

enum class Printing { inches, metric };

// "inch", "metric": as files say it. The second throws std::invalid_argument for any other word.
std::string printing_word(Printing printing);
Printing printing_called(const std::string& word);

// Millimetres with one decimal, none where it is 0: "1968.5", "1968".
std::string mm_figure(Mm length);
// Inches with three decimals: "77.500".
std::string inch_figure(Mm length);

// A unit and how much of the program's own it is.
struct PrintedUnit {
  double one = 1;
  std::string name;
};

struct Figures {
  Printing printing = Printing::inches;
  Mm mark = inch / 16;  // smallest mark of the layout tape
  bool alone = false;   // loads of an inch order without the metric figure in brackets

  // The same with loads in the order's one unit, as in a sum or a table.
  Figures in_one_unit() const { return {printing, mark, true}; }

  // --- Lengths in sentences.
  // "3/16 in (4.8 mm)", "6 ft 5-1/2 in (1968.5 mm)", "4.8 mm". The fraction is the
  // nearest 1/64 in, with "about" before it when it is more than 0.005 in off; below
  // 1/128 in it is a decimal. Millimetres are to 0.1 mm.
  std::string say(Mm length) const;
  // Short where a 1/64 in says it, "118 in"; else as above.
  std::string brief(Mm length) const;
  // For a person without the drawings: what the tape shows, with the exact figure where
  // that is another ("36-7/16 in (36.438 in)"); a size below a foot to 1/64 in.
  std::string customer(Mm length) const;
  // A place along the bed, to 1/16 in or whole millimetres: "103 in", "2560 mm".
  std::string place(Mm x) const;
  // A sag or a thickness: "0.024 in (0.62 mm)", "0.62 mm".
  std::string small(Mm length) const;
  // The width of a cut: "0.0591 in", "1.50 mm".
  std::string kerf(Mm width) const;

  // --- Values for a --set, within 1e-4 mm: "1-1/4 in", "35 mm"; millimetres where
  // inches come out on no 1/64.
  std::string set(Mm length) const;
  // The same of a most or a least, rounded to the side that keeps it.
  std::string set_at_most(Mm length) const;
  std::string set_at_least(Mm length) const;
  // As a decimal, close to what was typed: "62.3 in", "1582.4 mm".
  std::string set_decimal(Mm length) const;

  // --- Lengths on drawings and lists.
  // A layout distance to the tape's mark, "77-1/2", and a size to 1/64 in, "9/16";
  // millimetres with at most one decimal, "1968.5". Without and with the unit.
  std::string tape_figure(Mm length) const;
  std::string size_figure(Mm size) const;
  std::string tape_length(Mm length) const;
  std::string size_length(Mm size) const;
  // "77-1/2 (1968.5 mm)", "9/16 (14.3 mm)"; "1968.5" in metric.
  std::string tape_label(Mm length) const;
  std::string size_label(Mm size) const;
  // A size in a note: "9/16 in (14.3 mm)", "14.3 mm".
  std::string size_note(Mm size) const;
  // A size to read off a rule: "9/16 in / 14.3 mm", "14.3 mm".
  std::string rule_reading(Mm size) const;
  // A running dimension: "77-1/2  (77.500 in, 1968.5 mm)", "1968.5"; `running_words`
  // with the unit in metric too.
  std::string running(Mm length) const;
  std::string running_words(Mm length) const;
  // To make something by: "48-1/2 in (48.500 in, 1231.9 mm)", "1231.9 mm".
  std::string tape_to_make(Mm length) const;
  std::string size_to_make(Mm size) const;
  // An error, finer than the tape: "0.063", "1.6".
  std::string error_figure(Mm error) const;
  // Heads and cells of a table's columns for one distance: "HOLE", "in", "mm" with
  // "77-1/2", "77.500", "1968.5"; in metric "HOLE mm" with "1968.5". The narrow ones
  // leave out the millimetres beside the inches.
  std::vector<std::string> heads(const std::string& what) const;
  std::vector<std::string> cells(Mm length) const;
  std::vector<std::string> narrow_heads(const std::string& what) const;
  std::vector<std::string> narrow_cells(Mm length) const;
  // The same for a size: "Dia. in", "mm" with "9/16", "14.3"; "Dia. mm" with "14.3".
  std::vector<std::string> size_heads(const std::string& what) const;
  std::vector<std::string> size_cells(Mm size) const;
  // Whether exact figures stand beside those of the tape.
  bool exact_beside() const { return in_inches(); }

  const char* unit() const { return in_inches() ? "in" : "mm"; }
  const char* unit_word() const { return in_inches() ? "inches" : "millimetres"; }
  const char* unit_head() const { return in_inches() ? "inches" : "mm"; }      // "PART, inches"
  const char* units_told() const { return in_inches() ? "inch (mm)" : "mm"; }  // in a title block
  // A text with its unit left off where that is the order's own: "1-1/4", but "35 mm".
  std::string without_own_unit(std::string text) const;

  // --- Loads; in brackets beside inches, the metric figure, unless `alone`.
  std::string mass(Kg m) const;                   // "2082 lb (944 kg)", "944 kg"
  std::string force(Newton f) const;              // "553 lbf (2.46 kN)", "2.46 kN"
  std::string stress(Mpa s) const;                // "9.2 ksi (63 MPa)", "63 MPa"
  std::string moment(double n_mm) const;          // "20.7 kip-in (2.34 kN m)", "2.34 kN m"
  std::string along_weld(double n_per_mm) const;  // "1.24 kip/in (217 N/mm)", "217 N/mm"
  std::string turning(double n_mm) const;         // moments on the pictures: "1723 lbf-ft", "2340 N m"
  std::string ground(Mpa p) const;                // under a foot: "1500 lb/ft2 (72 kPa)", "72 kPa"
  // In one unit always.
  std::string fine_mass(Kg m) const;         // "850.9 lb", "386.0 kg"
  std::string rating(Kg m) const;            // a rating that is enough for it: "3500 lb", "1588 kg"
  std::string section_modulus(Mm3 s) const;  // "3.00 in3", "49.2 cm3"
  std::string inertia(Mm4 i) const;          // "3.8 in4", "159.4 cm4"
  std::string elasticity(Mpa e) const;       // "29,000,000 psi", "199,948 MPa"
  // For a table whose head names the unit: "2082", "944"; "2082 (944 kg)", "944".
  std::string mass_figure(Kg m) const;
  std::string mass_cell(Kg m) const;
  const char* mass_cell_unit() const { return in_inches() ? "lb (kg)" : "kg"; }
  // A load on a line of weld as a figure of its own.
  PrintedUnit line_load_unit() const;  // lb/in, N/mm
  // What a figure of that unit ("mm", "kg", "MPa") is printed in; any other as it is.
  PrintedUnit printed(const std::string& unit) const;
  PrintedUnit length_scale() const { return printed("mm"); }
  PrintedUnit moment_scale() const;  // lbf-ft, N m

  // --- Steps that values are rounded to or tried in.
  Mm step() const { return either(inch / 16, 0.5); }       // a remedy
  Mm shop_step() const { return either(inch / 16, 1); }    // made by hand: a fillet, a cut corner
  Mm setting_step() const { return either(inch / 4, 5); }  // set by hand: a spacer, a block
  Mm overall_step() const { return either(inch / 4, 1); }  // sizes over all
  Mm place_step() const { return either(inch, 10); }       // places along the bed: a jack, an axle, a log
  Mm coarse_step() const { return either(inch, 25); }      // rails, bunks, logs
  Mm tongue_step() const { return either(inch / 2, 10); }  // how far a tongue runs back
  Mm slot_step() const { return either(inch / 16, 2); }    // a tab's slot
  Mm shim_step() const {
    return either(inch / 32, 0.5);
  }                                                     // the thinnest shim; each next one is twice as thick
  Mm travel_step() const { return either(inch, 25); }   // a jack's travel
  Mm tab_step() const { return either(inch / 4, 10); }  // a tab's length
  Kg rating_step() const { return either(10 * pound, 5); }  // a rating past those usually sold
  // Jacks come in steps of 500 lb or 250 kg: common practice, no published source.
  Kg jack_step() const { return either(500 * pound, 250); }
  // Up to the next `step`, with a hair's allowance for rounding.
  Mm round_up(Mm length) const;
  // Down to a whole inch or centimetre.
  Mm whole_down(Mm place) const;

  // --- What the shop has: round sizes and stock.
  Mm hand_width() const { return either(2 * inch, 50); }  // flat bar, and room for a clamp
  Mm scale_bar_unit() const { return either(inch, 20); }
  std::vector<Mm> usual_tubes() const;   // sides of square tube, largest first
  std::vector<Mm> usual_plates() const;  // thicknesses

  // --- Drawing practice that goes with the units: ISO's paper and first angle, or
  // ANSI's and third.
  bool iso_practice() const { return !in_inches(); }

 private:
  bool in_inches() const { return printing == Printing::inches; }
  double either(double inches, double metric) const { return in_inches() ? inches : metric; }
  std::string both(const std::string& inches, const std::string& metric) const;
};

// Figures of a standard that is one of the two whatever the order prints in, such as a bolt's.
Figures figures_of_standard(bool metric);

}  // namespace bedwright
