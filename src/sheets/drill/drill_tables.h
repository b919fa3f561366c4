// The tables of a drill drawing.
#pragma once

#include "draw/table2d.h"
#include "params/order.h"
#include "sheets/drill/drill_rows.h"

namespace bedwright {

// Letter, count, diameter, slot, process, purpose; inch printing has millimetres beside.
Table2d size_table(const DrillRows& rows, const Heading& heading);

// Number, letter, face, distance along and across; inch printing has the tape's
// fraction with exact inches and millimetres beside.
Table2d hole_table(const DrillRows& rows, const Section& section, bool upright, const Heading& heading);

}  // namespace bedwright
