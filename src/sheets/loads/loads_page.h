// The loads of a bed as two A3 pages: pictures of what bears on it, its sag and
// moment curves to scale, tables; then the sums and what is taken for granted.
// Black on white; no text meets another.
#pragma once

#include <vector>

#include "draw/list2d.h"
#include "loads/loads.h"
#include "sheets/sheet.h"

namespace bedwright {

// Millimetres on paper, 420 x 297, from the lower left corner.
inline constexpr Mm loads_page_width = 420, loads_page_height = 297;

// Of a trial: stamped NOT FOR FABRICATION.
std::vector<List2d> loads_pages(const Job& job, const Bed& bed, const LoadsResult& loads, const Issue& issue);

// What changed, beside the code of a page that has no title block. Nothing where a sheet
// has no note.
void write_note(Sheet& page);

}  // namespace bedwright
