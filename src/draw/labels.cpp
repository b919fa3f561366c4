// Looks around a label's wanted place for one that meets no line and no letters.
#include "draw/labels.h"

#include <algorithm>
#include <cmath>

namespace bedwright {
namespace {

// White left around a text, in its heights.
constexpr double air = 0.25;

}  // namespace

void Labels::line(int layer, Vec2 from, Vec2 to) {
  list_.add(Line{layer, from, to});
  lines_.push_back({from, to});
}

void Labels::path(int layer, const std::vector<Vec2>& points) {
  list_.add(Path{layer, points});
  for (std::size_t i = 1; i < points.size(); ++i) lines_.push_back({points[i - 1], points[i]});
}

void Labels::box(int layer, Vec2 low, Vec2 high) {
  list_.add(Closed{layer, rectangle(low, high)});
  const Vec2 right{high.x, low.y}, left{low.x, high.y};
  for (const auto& side : {std::pair{low, right}, {right, high}, {high, left}, {left, low}})
    lines_.push_back(side);
}

void Labels::circle(int layer, Vec2 centre, Mm radius) {
  list_.add(Circle{layer, centre, radius});
  constexpr int pieces = 24;
  for (int i = 0; i < pieces; ++i) {
    const auto at = [&](int k) {
      const double turn = 2 * std::numbers::pi * k / pieces;
      return centre + radius * Vec2{std::cos(turn), std::sin(turn)};
    };
    lines_.push_back({at(i), at(i + 1)});
  }
}

void Labels::arrow(int layer, Vec2 from, Vec2 to) {
  constexpr Mm head = 2.2, half = 0.7;
  const Vec2 d = to - from, along = (1 / norm(d)) * d, across{-along.y, along.x};
  line(layer, from, to);
  const Vec2 back = to - head * along;
  list_.add(Closed{layer, {{to, 0}, {back + half * across, 0}, {back - half * across, 0}}});
}

void Labels::fixed(Text text) {
  text.layer = text_layer_;
  texts_.push_back(text_box(text));
  list_.add(std::move(text));
}

bool Labels::meets_text(const Box2& box) const {
  return std::any_of(texts_.begin(), texts_.end(), [&](const Box2& other) { return box.overlaps(other); });
}

bool Labels::meets_line(const Box2& box) const {
  return std::any_of(lines_.begin(), lines_.end(),
                     [&](const auto& l) { return meets(l.first, l.second, box); });
}

void Labels::near(Text text, const Box2& space, bool up) {
  text.layer = text_layer_;
  const Vec2 wanted = text.at;
  const Mm step = text.height / 2;
  Text second = text;
  bool found_second = false;
  for (int away = 0; away <= 60; ++away)
    for (int side = -away; side <= away; ++side)
      for (int way : {up ? 1 : -1, up ? -1 : 1}) {
        const int rise = away - std::abs(side);
        text.at = wanted + Vec2{2 * side * step, way * rise * step};
        const Box2 box = text_box(text).grown(air * text.height);
        if (box.low.x < space.low.x || box.high.x > space.high.x || box.low.y < space.low.y ||
            box.high.y > space.high.y)
          continue;
        if (meets_text(box)) continue;
        if (!meets_line(box)) return fixed(text);
        if (!found_second) second = text;
        found_second = true;
      }
  if (!found_second) second.at = wanted;
  fixed(second);
}

}  // namespace bedwright
