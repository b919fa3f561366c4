// One strip of a face, as the drill drawing shows it: outline, holes, their
// numbers, running dimensions along and across.
#pragma once

#include <string>
#include <vector>

#include "draw/list2d.h"
#include "params/order.h"
#include "sheets/drill/drill_rows.h"

namespace bedwright {

struct StripLook {
  Mm text = 0;  // height of a capital
  FirstEnd first_end = FirstEnd::unnamed;
  bool upright = true;  // see face_view
  Heading heading;      // for the units
};

struct Strip {
  List2d list;                  // 1:1; x = 0 at the strip's front
  std::vector<int> unlabelled;  // numbers that found no place beside their hole
};

// Where the part of the face between its ends runs, mitres counted.
Box2 face_bounds(const Member& member, Face face);

// Strips of about equal length, cut clear of the holes by `clear` where that can
// be: n + 1 distances along, first and last the face's ends.
std::vector<Mm> strip_cuts(const Member& member, const DrillRows& rows, Face face, int strips, Mm clear);

// The strip from cuts[number] to cuts[number + 1].
Strip drill_strip(const Member& member, const DrillRows& rows, Face face, const std::vector<Mm>& cuts,
                  std::size_t number, const StripLook& look);

// Places at least `pitch` apart, in order, as near as can be (least squares) to
// the ascending places given.
std::vector<Mm> spread(const std::vector<Mm>& places, Mm pitch);

}  // namespace bedwright
