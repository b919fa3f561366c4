// Looks for a spot of each part that nothing hides, view by view.
#include "sheets/arrangement/balloons.h"

#include <fmt/format.h>

#include <algorithm>

#include "sheets/drill/drill_strip.h"
#include "sheets/sheet.h"

namespace bedwright {

Vec2 place_in_view(const ViewDirection& direction, Vec3 place) {
  const Vec3 right = unit(cross(direction.up, direction.toward_eye));
  const Vec3 up = unit(cross(direction.toward_eye, right));
  return {dot(place, right), dot(place, up)};
}

namespace {

// Places on a face are tried this far in from its edges, as shares of its size.
constexpr double shares[] = {0.5, 0.3, 0.7, 0.15, 0.85, 0.04, 0.96};

struct Sight {
  Vec2 low, high;  // of the box, as seen
  Mm depth = 0;    // of its face nearest the eye
  int item = 0;
};

std::vector<Sight> sights(const Bed& bed, const ViewDirection& view) {
  std::vector<Sight> all;
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    if (!bed.items[i].shown || bed.items[i].bolt >= 0) continue;
    const Box3 box = bounds(bed, static_cast<int>(i));
    const Vec2 a = place_in_view(view, box.low), b = place_in_view(view, box.high);
    all.push_back({{std::min(a.x, b.x), std::min(a.y, b.y)},
                   {std::max(a.x, b.x), std::max(a.y, b.y)},
                   std::max(dot(box.low, view.toward_eye), dot(box.high, view.toward_eye)),
                   static_cast<int>(i)});
  }
  return all;
}

// A place of the part's that nothing nearer the eye covers.
bool uncovered(const Bed& bed, int part, const ViewDirection& view, const std::vector<Sight>& all,
               Vec3& tip) {
  for (const Sight& mine : all) {
    if (bed.items[mine.item].part != part) continue;
    const Box3 box = bounds(bed, mine.item);
    for (const double u : shares)
      for (const double v : shares) {
        const Vec2 at{mine.low.x + u * (mine.high.x - mine.low.x),
                      mine.low.y + v * (mine.high.y - mine.low.y)};
        const bool covered = std::any_of(all.begin(), all.end(), [&](const Sight& other) {
          return other.item != mine.item && other.depth > mine.depth + same_place && at.x > other.low.x &&
                 at.x < other.high.x && at.y > other.low.y && at.y < other.high.y;
        });
        if (covered) continue;
        tip = view.toward_eye.z > 0 ? Vec3{at.x, at.y, box.high.z} : Vec3{at.x, box.low.y, at.y};
        return true;
      }
  }
  return false;
}

}  // namespace

std::vector<Balloon> balloons(const Bed& bed) {
  const std::vector<Sight> from_above = sights(bed, plan_direction), from_side = sights(bed, side_direction);
  std::vector<Balloon> all;
  for (std::size_t p = 0; p < bed.parts.size(); ++p) {
    const int part = static_cast<int>(p);
    const auto first = std::find_if(bed.items.begin(), bed.items.end(),
                                    [&](const Item& i) { return i.part == part && i.shown && i.bolt < 0; });
    if (first == bed.items.end()) continue;
    Balloon b{static_cast<int>(all.size()) + 1, part, {}, true};
    if (!uncovered(bed, part, plan_direction, from_above, b.tip)) {
      b.in_plan = false;
      if (!uncovered(bed, part, side_direction, from_side, b.tip)) {
        const Box3 box = bounds(bed, static_cast<int>(first - bed.items.begin()));
        b.tip = 0.5 * (box.low + box.high);
      }
    }
    all.push_back(b);
  }
  return all;
}

void balloon_row(List2d& list, std::vector<BalloonPlace> places, Mm y) {
  const Pens pens(list);
  std::sort(places.begin(), places.end(), [](const BalloonPlace& a, const BalloonPlace& b) {
    return std::pair(a.tip.x, a.tip.y) < std::pair(b.tip.x, b.tip.y);
  });
  std::vector<Mm> wanted;
  for (const BalloonPlace& p : places) wanted.push_back(p.tip.x);
  wanted = spread(wanted, 2 * balloon_radius + 1);
  for (std::size_t i = 0; i < places.size(); ++i) {
    const Vec2 middle{wanted[i], y}, way = places[i].tip - middle;
    list.add(Circle{pens.thin, middle, balloon_radius});
    list.add(Line{pens.thin, middle + (balloon_radius / norm(way)) * way, places[i].tip});
    list.add(Circle{pens.thin, places[i].tip, 0.4});
    list.add(Text{pens.text,
                  {middle.x, y - small_text / 2},
                  small_text,
                  fmt::format("{}", places[i].number),
                  Across::centre,
                  Up::baseline,
                  0});
  }
}

}  // namespace bedwright
