// A neutral 2D list: what a sheet, a cut file or a drill drawing carries before
// it becomes DXF, SVG or PDF. Coordinates are x right, y up, in the list's own
// unit (millimetres of the part unless the maker of the list says otherwise).
//
// Invariants
//  * Every entity names a layer by its index in `layers`.
//  * Entities keep the order in which they were added; writers keep it too, so
//    the same list makes the same bytes.
//  * A Closed outline is the same form a part carries: vertices with bulges.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "geometry/outline.h"

namespace bedwright {

enum class LineKind { continuous, hidden, centre };

struct Layer {
  std::string name;  // A-Z, 0-9, '_', '-' and '$', at most 31: what DXF release 12 allows
  int colour = 7;    // DXF colour index, 1 to 255; 7 is black on white
  LineKind kind = LineKind::continuous;
  Mm width = 0.25;  // of the line on paper
  friend bool operator==(const Layer&, const Layer&) = default;
};

struct Line {
  int layer = 0;
  Vec2 from, to;
};

// Counter-clockwise from `start` to `end`, both in [0, 2 pi) or beyond; an end
// below the start is taken a turn on.
struct Arc {
  int layer = 0;
  Vec2 centre;
  Mm radius = 0;
  Radians start = 0, end = 0;
};

struct Circle {
  int layer = 0;
  Vec2 centre;
  Mm radius = 0;
};

struct Closed {
  int layer = 0;
  Outline outline;
};

// An open run of straight pieces.
struct Path {
  int layer = 0;
  std::vector<Vec2> points;
};

// Axis-aligned. Empty (low > high) until something is added.
struct Box2 {
  Vec2 low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
  Vec2 high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
  bool empty() const { return low.x > high.x; }
  Mm width() const { return empty() ? 0 : high.x - low.x; }
  Mm height() const { return empty() ? 0 : high.y - low.y; }
  void add(Vec2 p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y)};
  }
  void join(const Box2& b) {
    low = {std::min(low.x, b.low.x), std::min(low.y, b.low.y)};
    high = {std::max(high.x, b.high.x), std::max(high.y, b.high.y)};
  }
  Box2 grown(Mm by) const {
    Box2 b = *this;
    b.low = {low.x - by, low.y - by};
    b.high = {high.x + by, high.y + by};
    return b;
  }
  // Share more than `touch` of both width and height.
  bool overlaps(const Box2& b, Mm touch = 0) const {
    return low.x + touch < b.high.x && b.low.x + touch < high.x && low.y + touch < b.high.y &&
           b.low.y + touch < high.y;
  }
};

// Rectangles filled with the layer's colour: the squares of a code that a phone reads.
struct Filled {
  int layer = 0;
  std::vector<Box2> boxes;
};

enum class Across { left, centre, right };
enum class Up { baseline, middle, top };

// One line of plain text. `height` is that of a capital letter; `rotation` is
// counter-clockwise about `at`.
struct Text {
  int layer = 0;
  Vec2 at;
  Mm height = 0;
  std::string text;  // UTF-8
  Across across = Across::left;
  Up up = Up::baseline;
  Radians rotation = 0;
};

using Entity = std::variant<Line, Arc, Circle, Closed, Path, Filled, Text>;

// What a reader takes in at once: a row of a table, a note or a picture. Two that say the
// same are alike on paper, so that what changed on a sheet can be told.
struct Passage {
  Box2 box;
  std::string says;
  std::string subject = {};  // of a picture: what it shows, where that has a name
  bool picture = false;
};

struct List2d {
  std::vector<std::string> comments;  // printable lines ahead of everything else
  std::vector<Layer> layers;
  std::vector<Entity> entities;
  std::vector<Passage> passages;

  // Index of the layer of that name, added when new.
  int layer(const Layer& layer);
  template <class E>
  void add(E entity) {
    entities.emplace_back(std::move(entity));
  }
  // Adds everything of `other`, moved by `shift`; layers are matched by name.
  void append(const List2d& other, Vec2 shift);
};

// Advance of one letter in text heights. Fixed, as in the plain stroke font that
// every DXF reader has (letter cell as wide as high), drawn at the width factor
// below; outline fonts run narrower, so a box of this width holds the text.
inline constexpr double text_width_factor = 0.8;

// Estimated width of a text of that height; counts characters, not bytes.
Mm text_width(const std::string& text, Mm height);
// Box around the text, from its baseline's descent to its capitals. For any rotation, the
// axis-aligned box of the turned one.
Box2 text_box(const Text& text);
// Exact for arcs and bulges; texts by text_box.
Box2 bounds(const Entity& entity);
Box2 bounds(const List2d& list);

Entity moved(const Entity& entity, Vec2 shift);

// All that is drawn, from the upper left corner of its bounds, to a hundredth of a millimetre:
// the same text for two lists that look alike.
std::string fingerprint(const List2d& list);

// Everything `factor` times as large about the origin, letters too; line widths stay.
List2d scaled(List2d list, double factor);

// Whether the segment has a point in the box (its edge included).
bool meets(Vec2 from, Vec2 to, const Box2& box);

}  // namespace bedwright
