// The Bed's welds as symbols: what a sheet prints for each.
#pragma once

#include "bed/bed.h"
#include "params/order.h"
#include "sheets/marks.h"

namespace bedwright {

// `alike`: how many such welds the sheet stands for; said in the tail. A weld
// that runs along two edges is one symbol with its length on each, one on both sides
// of a web a symbol on both sides of the line.
WeldMark weld_mark(const Weld& weld, int alike, const Figures& figures);

// Length of one run of the weld.
Mm weld_run(const Weld& weld);

}  // namespace bedwright
