// What the shop makes to set and check the bed with, worked out from the Bed: gauge
// spacers, string line, check strip. Plain figures; the sheets draw them.
#pragma once

#include <vector>

#include "draw/table2d.h"
#include "sheets/sheets.h"

namespace bedwright {

// Square tube across the bed between the inner faces of the rails' standing legs,
// lying on their flat legs.
struct GaugeSpacer {
  Mm length = 0;
  Mm left = 0, right = 0;  // y of its ends
  Mm bottom = 0;           // z of its underside
  Mm side = 0;             // of the tube
  Mm corner = 0;           // cut off both lower corners, to clear the rails' root fillets
  Mm tolerance = 0;        // of its length, either way
};

struct SpacerPlace {
  int section = 0;  // counted from 1
  Mm x = 0;         // of its middle
};

GaugeSpacer gauge_spacer(const SheetInput& input);

// At least two in each section, near its first and last track bolt, no further apart
// than `most_apart`, moved off what is in the way: nothing on the rails is within the
// tube's width, nor where a bar clamp's jaws bear. A place with no room is left out.
inline constexpr Mm spacers_most_apart = 48 * inch;  // common practice, no published source
std::vector<SpacerPlace> spacer_places(const SheetInput& input);
// One row for each place: its number, section, running dimension and the bunks it lies between.
Table2d spacer_table(const SheetInput& input);

// A line beside each main, held off the web's back by a block at each end.
struct StringLine {
  Mm block = 0;  // thickness
  Mm along = 0;  // the line's distance from the centre line
  Mm limit = 0;  // a hole may be off its reading by so much
};
StringLine string_line(const SheetInput& input);

// Tabs that are read alike.
struct TabReading {
  std::vector<Identity> tabs;
  Mm to_middle = 0;  // from the line inward to the hole's middle
  Mm to_edge = 0;    // to the hole's nearer edge, what a rule can be read at
};
std::vector<TabReading> tab_readings(const SheetInput& input);

// Rails whose track bolts one check strip fits: its length, and the holes from a section's front end.
struct CheckStrip {
  Mm length = 0;
  std::vector<Mm> holes;
  std::vector<Identity> rails;  // from the front, both sides
};
// As few as do for all rails.
std::vector<CheckStrip> check_strips(const SheetInput& input);

}  // namespace bedwright
