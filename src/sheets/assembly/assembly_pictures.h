// Pictures of the customer's assembly sheets.
#pragma once

#include "draw/list2d.h"
#include "sheets/sheets.h"

namespace bedwright {

// Names the shop's words may ask for: pictures and tables.
const std::vector<std::string>& assembly_pictures();

// Both rows of rail sections by name, front at the left, with bunks, what they carry,
// and jacks; along to scale, across not. No wider than `space`.
List2d section_strip(const SheetInput& input, Mm space);

// Rail, tab, main and one track bolt with what goes on it, cut across the bed on the
// kerb side, everything named.
List2d rail_on_tab(const SheetInput& input);

}  // namespace bedwright
