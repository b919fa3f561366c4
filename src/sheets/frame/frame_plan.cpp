// Draws each item's edges, dashed where another lies above.
#include "sheets/frame/frame_plan.h"

#include <algorithm>
#include <set>

#include "sheets/plan.h"

namespace bedwright {
namespace {

// An edge that runs along another part's edge is not under it.
constexpr Mm on_edge = 0.05;

struct Over {
  std::vector<Vec2> corners;  // convex, counter-clockwise
  Mm top = 0;
};

// The share [from, to] of the segment inside the convex polygon; from >= to when none.
std::pair<double, double> inside(Vec2 a, Vec2 b, const std::vector<Vec2>& polygon) {
  double enter = 0, leave = 1;
  for (std::size_t i = 0; i < polygon.size(); ++i) {
    const Vec2 side = polygon[(i + 1) % polygon.size()] - polygon[i];
    const Vec2 inward = (1 / norm(side)) * Vec2{-side.y, side.x};
    const Mm at_a = dot(inward, a - polygon[i]) - on_edge, at_b = dot(inward, b - polygon[i]) - on_edge;
    if (at_a < 0 && at_b < 0) return {1, 0};
    if (at_a < 0) enter = std::max(enter, at_a / (at_a - at_b));
    if (at_b < 0) leave = std::min(leave, at_a / (at_a - at_b));
  }
  return {enter, leave};
}

void draw_edge(List2d& list, Vec2 a, Vec2 b, std::vector<std::pair<double, double>> under, int scale,
               int seen, int hidden) {
  const auto put = [&](double from, double to, int layer) {
    const Vec2 p = (1.0 / scale) * (a + from * (b - a)), q = (1.0 / scale) * (a + to * (b - a));
    if (norm(q - p) > 0.05) list.add(Line{layer, p, q});
  };
  std::sort(under.begin(), under.end());
  double at = 0;
  for (const auto& [from, to] : under) {
    if (to <= at) continue;
    put(at, std::max(at, from), seen);
    put(std::max(at, from), to, hidden);
    at = to;
  }
  put(at, 1, seen);
}

}  // namespace

std::vector<int> frame_items(const Bed& bed) {
  std::set<int> welded;
  for (const Weld& w : bed.welds) welded.insert({w.a, w.b});
  std::vector<int> items;
  for (const int i : welded) {
    const Item& item = bed.items[i];
    if (is_frame_steel(bed.part_of(i)) && item.shown && item.id.kind != Kind::tab &&
        item.id.kind != Kind::tab_pad)
      items.push_back(i);
  }
  return items;
}

void draw_plan(List2d& list, const Bed& bed, const std::vector<int>& items, int scale, int seen, int hidden) {
  std::vector<Over> all;
  for (const int i : items) {
    Over over{footprint(bed, i), bounds(bed, i).high.z};
    turn_counter_clockwise(over.corners);
    all.push_back(over);
  }
  for (const Over& mine : all) {
    for (std::size_t k = 0; k < mine.corners.size(); ++k) {
      const Vec2 a = mine.corners[k], b = mine.corners[(k + 1) % mine.corners.size()];
      std::vector<std::pair<double, double>> under;
      for (const Over& other : all) {
        if (other.top <= mine.top + same_place) continue;
        const auto share = inside(a, b, other.corners);
        if (share.first < share.second) under.push_back(share);
      }
      draw_edge(list, a, b, under, scale, seen, hidden);
    }
  }
}

}  // namespace bedwright
