// Cut files: one made plate, flat, 1:1, nothing in the file that is not an
// operation of the table. One operation on each layer:
//   SCRIBE       part name, order and revision in single-stroke letters (open polylines)
//   CENTRE_MARK  a cross of two short lines at each hole that is drilled later; lines,
//                because a marker or a plasma marking pass follows lines, while points
//                are dropped by many programs
//   INNER_CUT    holes that are cut: circles, and slots as closed polylines
//   OUTER_CUT    the outline, a closed polyline with bulges, last
// Entities stand in the order they are run: marks before cuts, inside before out.
// Cut lines are the finished edge and kerf is the table's to take, unless a kerf is
// given: then the cut paths lie half of it outside the outline and inside the holes,
// and the head of the file says so.
#pragma once

#include <string>

#include "bed/bed.h"
#include "draw/list2d.h"
#include "params/order.h"

namespace bedwright {

// Each arm of a centre mark, from the hole's centre.
inline constexpr Mm centre_mark_arm = 3;

inline constexpr const char* inner_cut_layer = "INNER_CUT";
inline constexpr const char* outer_cut_layer = "OUTER_CUT";

struct Cut {
  List2d list;           // millimetres, lowest corner at (0, 0)
  Vec2 size;             // bounding size of the path that is cut last, mm
  Mm letter_height = 0;  // 0: the letters had no place and were left out
};

// The hole whose edge is `by` inside the hole's own. Throws std::invalid_argument
// when nothing would be left of it.
Hole inside(Hole hole, Mm by);

// Throws std::invalid_argument, naming the part, when it is no made plate, when
// a hole in it says it came with the part, when two holes share a place, or when
// the kerf leaves nothing of a hole.
Cut cut(const Part& part, const Heading& heading, Printing units = Printing::metric, Mm kerf = 0);

// The file of that part, in the units asked for; the head of the file states
// them, and the part's size in them, so that a file read at the wrong scale is noticed. And
// `issue`, where there is one (sheets/issue.h).
std::string cut_file(const Part& part, const Heading& heading, Printing units = Printing::metric, Mm kerf = 0,
                     const std::string& issue = {});

}  // namespace bedwright
