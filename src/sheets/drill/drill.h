// Drill drawings: one made member with holes, every face that carries them drawn
// 1:1, running dimensions from one end, a schedule of sizes and a row for each hole.
//
// A page is laid out so that, plotted to fill an 11 x 17 in sheet, its letters are
// at least `drill_text_on_paper` high; long members are broken into strips with
// match marks. What does not fit the first page goes on to the next.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "draw/list2d.h"
#include "params/order.h"

namespace bedwright {

// 11 x 17 in sheet (ANSI size B, ASME Y14.1), the frame's margin, and the least
// height of a letter to read at arm's length (common practice, no published source).
inline constexpr Mm drill_paper_width = 17 * inch, drill_paper_height = 11 * inch;
inline constexpr Mm drill_paper_margin = 10;
inline constexpr Mm drill_text_on_paper = 2.6;

// Where a page is plotted: the space on paper, and whether the page stands alone
// (a frame, the order's line and its caution are then drawn) or goes on a sheet
// that has them, at a reduction of ISO 5455's kind.
struct DrillPaper {
  Mm width = drill_paper_width - 2 * drill_paper_margin;
  Mm height = drill_paper_height - 2 * drill_paper_margin;
  bool alone = true;
  std::string issue = {};  // in words, told by a page that stands alone (sheets/issue.h)
};

struct DrillDrawing {
  std::vector<List2d> pages;    // millimetres of the part; each in a space of the paper's shape, from (0, 0)
  double reduction = 1;         // millimetres of the part to one of paper
  Mm text_height = 0;           // in the drawing
  std::size_t strips = 0;       // the faces are broken into, all together
  std::vector<int> unlabelled;  // holes whose number found no place beside them (the table has them)
};

// Throws std::invalid_argument, naming the part, when it is no member the shop
// makes or has no holes to make.
DrillDrawing drill_drawing(const Bed& bed, int part, const Heading& heading, const DrillPaper& paper = {});

// One file for each page.
std::vector<std::string> drill_files(const DrillDrawing& drawing);

}  // namespace bedwright
