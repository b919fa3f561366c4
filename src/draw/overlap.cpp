// Compares every text of a list with every other text and line.
#include "draw/overlap.h"

namespace bedwright {
namespace {

constexpr Mm chord = 0.05;  // arcs are taken as chords that stray this far at most

struct Piece {
  Vec2 from, to;
  int layer = 0;
};

class Pieces {
 public:
  void operator()(const Line& l) { all.push_back({l.from, l.to, l.layer}); }
  void operator()(const Path& p) {
    for (std::size_t i = 1; i < p.points.size(); ++i) all.push_back({p.points[i - 1], p.points[i], p.layer});
  }
  void operator()(const Closed& c) {
    const std::vector<Vec2> points = flattened(c.outline, chord);
    for (std::size_t i = 0; i < points.size(); ++i)
      all.push_back({points[i], points[(i + 1) % points.size()], c.layer});
  }
  void operator()(const Circle& c) {
    (*this)(Closed{c.layer, hole_outline(c.centre, 2 * c.radius, 2 * c.radius, 0)});
  }
  void operator()(const Arc& a) {
    const double steps = 64, sweep = a.end >= a.start ? a.end - a.start : a.end - a.start + 360 * degree;
    const auto at = [&](double k) {
      const Radians t = a.start + sweep * k / steps;
      return Vec2{a.centre.x + a.radius * std::cos(t), a.centre.y + a.radius * std::sin(t)};
    };
    for (double k = 0; k < steps; ++k) all.push_back({at(k), at(k + 1), a.layer});
  }
  void operator()(const Filled& f) {
    const Box2 box = bounds(Entity(f));
    if (!box.empty()) (*this)(Closed{f.layer, rectangle(box.low, box.high)});
  }
  void operator()(const Text&) {}

  std::vector<Piece> all;
};

}  // namespace

std::vector<std::string> overlaps(const List2d& list, const Box2& inside) {
  std::vector<std::string> found;
  std::vector<std::pair<const Text*, Box2>> texts;
  Pieces pieces;
  for (const Entity& e : list.entities) {
    std::visit(pieces, e);
    if (const Text* t = std::get_if<Text>(&e)) texts.emplace_back(t, text_box(*t).grown(-t->height / 1000));
  }
  for (std::size_t i = 0; i < texts.size(); ++i) {
    const auto& [text, box] = texts[i];
    if (box.low.x < inside.low.x || box.high.x > inside.high.x || box.low.y < inside.low.y ||
        box.high.y > inside.high.y)
      found.push_back("'" + text->text + "' leaves the frame");
    for (std::size_t j = 0; j < i; ++j)
      if (box.overlaps(texts[j].second))
        found.push_back("'" + text->text + "' on '" + texts[j].first->text + "'");
    for (const Piece& p : pieces.all)
      if (meets(p.from, p.to, box)) {
        found.push_back("'" + text->text + "' on a line of " +
                        list.layers.at(static_cast<std::size_t>(p.layer)).name);
        break;
      }
  }
  return found;
}

}  // namespace bedwright
