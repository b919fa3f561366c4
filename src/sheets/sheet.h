// One sheet of the drawing set: a 2D list in millimetres of paper, lower left
// corner of the paper at (0, 0), with border, title block, revisions and
// cautions around what the sheet's maker drew.
#pragma once

#include <string>
#include <vector>

#include "draw/list2d.h"
#include "formats/page.h"
#include "params/job.h"
#include "sheets/issue.h"

namespace bedwright {

// ASME Y14.1 sizes B and D, ISO 5457 sizes A3 and A1, landscape.
struct Paper {
  std::string name;
  Mm width = 0, height = 0;
};
Paper paper_of(const Heading& heading);

// Letter heights of ISO 3098-1: for labels, and for what is read at the bench.
inline constexpr Mm small_text = 2.5, bench_text = 3.5, large_text = 5;

// Layers, one for each kind of line; widths to ISO 128-2, thick and thin 2 : 1.
struct Pens {
  explicit Pens(List2d& list);
  int outline, thin, hidden, centre, dimension, text, table, weld, frame, stamp;
};

struct Sheet {
  std::string title;  // "TAB LAYOUT"
  std::string file;   // "tab_layout", a suffix for further pages
  std::string scale = "NONE";
  std::string material;
  std::string note = {};  // of what changed since the last release, in the title block's row
  List2d list;
};

// Left of whatever is drawn there is room for the mark of a change (sheets/changed.h).
inline constexpr Mm mark_room = 8;

// Where a sheet's maker may draw.
Box2 drawing_space(const Paper& paper, bool draft);

// Border, title block, revision table, cautions, the issue's code and, on a trial, the
// stamp. `number` counts from 1.
void add_surround(Sheet& sheet, const Job& job, const Paper& paper, const Issue& issue, std::size_t number,
                  std::size_t count);

// As the PDF and SVG writers take it; its title is the bookmark.
Page page_of(const Sheet& sheet, const Paper& paper);

// The height asked for or the next smaller one at which the text is no wider; the
// smallest when none is.
Mm height_for(const std::string& text, Mm height, Mm width);

}  // namespace bedwright
