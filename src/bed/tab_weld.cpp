// Finds each tab's weld lines in the Bed, and the load per length along them.
#include "bed/tab_weld.h"

#include <algorithm>
#include <cmath>

namespace bedwright {
namespace {

Mm overlap(Mm a_low, Mm a_high, Mm b_low, Mm b_high) {
  return std::max(0.0, std::min(a_high, b_high) - std::max(a_low, b_low));
}
Mm middle(Mm a_low, Mm a_high, Mm b_low, Mm b_high) {
  return (std::max(a_low, b_low) + std::min(a_high, b_high)) / 2;
}

int bolt_through(const Bed& bed, int item) {
  for (std::size_t b = 0; b < bed.bolts.size(); ++b)
    for (const Ply& ply : bed.bolts[b].plies)
      if (bed.bolts[b].in_place && ply.item == item) return static_cast<int>(b);
  return -1;
}

}  // namespace

std::vector<TabWeld> tab_welds(const Bed& bed) {
  std::vector<TabWeld> all;
  for (std::size_t w = 0; w < bed.welds.size(); ++w) {
    const Weld& weld = bed.welds[w];
    if (bed.items[weld.a].id.kind != Kind::tab || weld.leg <= 0) continue;
    const int bolt = bolt_through(bed, weld.a);
    if (bolt < 0) continue;
    const Box3 a = bounds(bed, weld.a), b = bounds(bed, weld.b);
    TabWeld t;
    t.weld = static_cast<int>(w);
    t.bolt = bolt;
    t.flat = overlap(a.low.y, a.high.y, b.low.y, b.high.y) > overlap(a.low.z, a.high.z, b.low.z, b.high.z);
    t.line = weld.length / 2;
    if (t.line <= same_place) continue;  // nothing to lay it on: WELD-CONTACT reports it
    t.apart = overlap(a.low.x, a.high.x, b.low.x, b.high.x);
    if (t.apart <= same_place) continue;  // it stands beyond the main's end: WELD-STEEL reports it
    t.middle = {middle(a.low.x, a.high.x, b.low.x, b.high.x), middle(a.low.y, a.high.y, b.low.y, b.high.y),
                middle(a.low.z, a.high.z, b.low.z, b.high.z)};
    // A tube is flat only between its rounded corners: the lines lie where they were laid.
    if (!weld.runs.empty()) {
      const Vec3 line = 0.5 * (weld.runs.front().from + weld.runs.front().to);
      (t.flat ? t.middle.y : t.middle.z) = t.flat ? line.y : line.z;
    }
    t.off = std::abs(bed.bolts[bolt].seat.y - t.middle.y);
    all.push_back(t);
  }
  return all;
}

double line_load(const TabWeld& weld, Newton upright, Newton along, double turning) {
  const double shear = upright / (2 * weld.line),
               bending = (upright * weld.off + turning) / (weld.line * weld.line / 3);
  const double fore_aft = along / (2 * weld.line),
               couple = along > 0 ? along * weld.off / (weld.apart * weld.line) : 0;
  return weld.flat ? std::hypot(shear + bending, fore_aft, couple)
                   : std::hypot(shear, fore_aft, bending + couple);
}

}  // namespace bedwright
