// The map as pages: one cell for each combination.
//
// Columns are the values of the parameter that has most values, rows those of the next;
// each combination of the others has a panel of its own. A cell shows the worst
// margin and the letter of the rule that binds. One that fits has a heavy frame,
// so that it stands out without colour; one that cannot be laid out is crossed.
// The legend beneath tells which letter is which rule, and in what unit.
#pragma once

#include <vector>

#include "formats/page.h"
#include "offer/table.h"

namespace bedwright {

// A3 landscape. Last come the near misses, as text.
std::vector<Page> map_pages(const MapFile& file);

}  // namespace bedwright
