// A section through one tab with its rail, heights, places across and welds.
#pragma once

#include "draw/list2d.h"
#include "sheets/sheets.h"

namespace bedwright {

// Through tab R1, looking forward, the kerb side to the right.
List2d tab_section(const SheetInput& input);

}  // namespace bedwright
