// Rows of the planted-fault matrix for rules that ask more than one thing of a bolt and its
// holes: what the rule's first row does not reach.
#include "planted/matrix.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

// Two plates of 6, the upper with a hole of 14, `hole` in the lower, a half inch bolt down
// through both at the upper one's hole; its washers are 34.9 across.
SmallBed through(Hole hole) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {200, 200}, 6, {hole});
  const int top = s.plate(some(2), {0, 0, 6}, {200, 200}, 6, {round_hole({}, 14)});
  s.bolt(bunk_bolt_r1, {top, under}, 34);
  return s;
}

Findings narrow_hole(double past) {
  SmallBed s = through(round_hole({}, 14));
  s.bed.bolts[0].plies[1].smaller = 14 - inch / 2 + past * hair;
  return s.run();
}

}  // namespace

std::vector<Planted> fit_rows() {
  return {
      {"WASHER-COVER", "slot as long as the washer is wide",
       [](double past) { return through(slot({}, 14, 34.9 + past * hair, 0)).run(); }},
      {"WASHER-COVER", "slot's end at the washer's rim, the bolt 0.5 mm off its middle",
       [](double past) {
         return through(slot({0.5, 0}, 14, 33.9 + past * hair, 0)).run();
       }},
      {"HOLE-FIT", "hole that may come out as narrow as its bolt", narrow_hole},
  };
}

}  // namespace bedwright
