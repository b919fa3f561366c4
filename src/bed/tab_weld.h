// The weld of a mounting tab as lines, and what its bolt's load does to it. Rules about
// tabs at work (WELD-LOAD) and on the road (TAB-ROAD) both judge it by this.
#pragma once

#include <vector>

#include "bed/bed.h"

namespace bedwright {

// The two lines of a tab's weld, one at each end of the tab along the bed, and its
// bolt's load off them.
struct TabWeld {
  int weld = -1, bolt = -1;
  bool flat = false;  // on the flange: lines across the bed; else on the web: lines up and down
  Mm line = 0;        // length of each
  Mm apart = 0;       // from line to line, along the bed
  Mm off = 0;         // from the middle of the lines, across the bed, to the bolt
  Vec3 middle;        // of the tab's contact with the main
};

// Tabs with a bolt and a weld, in the Bed's order of welds.
std::vector<TabWeld> tab_welds(const Bed& bed);

// Greatest load a millimetre of either line carries (N/mm) under `upright` N up or down
// and `along` N fore or aft at the bolt, by the elastic method: the weld as two lines
// without thickness, L long and `apart`. Upright: direct shear P / (2 L) and bending
// P off / (L^2 / 3); on the flange both act up and down and add, on the web they act
// square to each other. Along: direct shear H / (2 L), and the couple H off / apart
// that one line takes against the other, across the bed. `turning`, N mm: what comes to the
// bending where the load stands off the bolt. (AISC Manual, part 8.)
double line_load(const TabWeld& weld, Newton upright, Newton along = 0, double turning = 0);

}  // namespace bedwright
