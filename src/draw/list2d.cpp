// Bounds, scaling and text widths of a 2D list.
#include "draw/list2d.h"

#include <numbers>
#include <stdexcept>

namespace bedwright {
namespace {

constexpr double turn = 2 * std::numbers::pi;
// Letters such as g, comma and Q hang this far below the baseline, in text heights.
constexpr double descent = 0.2;

std::size_t letters(const std::string& text) {
  std::size_t count = 0;
  for (const char c : text) {
    if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) ++count;
  }
  return count;
}

void add_arc(Box2& box, Vec2 centre, Mm radius, Radians start, Radians sweep) {
  const auto at = [&](Radians a) {
    return Vec2{centre.x + radius * std::cos(a), centre.y + radius * std::sin(a)};
  };
  box.add(at(start));
  box.add(at(start + sweep));
  const Radians low = std::min(start, start + sweep), high = std::max(start, start + sweep);
  const double quarter = turn / 4;
  for (double k = std::ceil(low / quarter); k * quarter <= high; ++k) {
    const int side = static_cast<int>(std::fmod(std::fmod(k, 4) + 4, 4));
    constexpr int dx[] = {1, 0, -1, 0}, dy[] = {0, 1, 0, -1};
    box.add({centre.x + radius * dx[side], centre.y + radius * dy[side]});
  }
}

struct Bounds {
  Box2 operator()(const Line& l) const {
    Box2 b;
    b.add(l.from);
    b.add(l.to);
    return b;
  }
  Box2 operator()(const Arc& a) const {
    Box2 b;
    Radians sweep = a.end - a.start;
    while (sweep < 0) sweep += turn;
    add_arc(b, a.centre, a.radius, a.start, sweep);
    return b;
  }
  Box2 operator()(const Circle& c) const {
    Box2 b;
    b.add(c.centre);
    return b.grown(c.radius);
  }
  Box2 operator()(const Closed& c) const {
    Box2 b;
    for (std::size_t i = 0; i < c.outline.size(); ++i) {
      const Vertex& v = c.outline[i];
      const Vec2 next = c.outline[(i + 1) % c.outline.size()].at;
      b.add(v.at);
      if (v.bulge != 0) {
        const RunArc arc = run_arc(v.at, next, v.bulge);
        add_arc(b, arc.centre, arc.radius, arc.start, arc.sweep);
      }
    }
    return b;
  }
  Box2 operator()(const Path& p) const {
    Box2 b;
    for (const Vec2 q : p.points) b.add(q);
    return b;
  }
  Box2 operator()(const Filled& f) const {
    Box2 b;
    for (const Box2& box : f.boxes) b.join(box);
    return b;
  }
  Box2 operator()(const Text& t) const { return text_box(t); }
};

struct Move {
  Vec2 by;
  Entity operator()(Line l) const {
    l.from = l.from + by;
    l.to = l.to + by;
    return l;
  }
  Entity operator()(Arc a) const {
    a.centre = a.centre + by;
    return a;
  }
  Entity operator()(Circle c) const {
    c.centre = c.centre + by;
    return c;
  }
  Entity operator()(Closed c) const {
    for (Vertex& v : c.outline) v.at = v.at + by;
    return c;
  }
  Entity operator()(Path p) const {
    for (Vec2& q : p.points) q = q + by;
    return p;
  }
  Entity operator()(Filled f) const {
    for (Box2& b : f.boxes) b = {b.low + by, b.high + by};
    return f;
  }
  Entity operator()(Text t) const {
    t.at = t.at + by;
    return t;
  }
};

}  // namespace

int List2d::layer(const Layer& wanted) {
  for (std::size_t i = 0; i < layers.size(); ++i) {
    if (layers[i].name == wanted.name) return static_cast<int>(i);
  }
  layers.push_back(wanted);
  return static_cast<int>(layers.size()) - 1;
}

void List2d::append(const List2d& other, Vec2 shift) {
  std::vector<int> index;
  for (const Layer& l : other.layers) index.push_back(layer(l));
  for (const Entity& e : other.entities) {
    Entity copy = moved(e, shift);
    std::visit([&](auto& c) { c.layer = index.at(static_cast<std::size_t>(c.layer)); }, copy);
    entities.push_back(std::move(copy));
  }
  for (Passage passage : other.passages) {
    passage.box = {passage.box.low + shift, passage.box.high + shift};
    passages.push_back(std::move(passage));
  }
}

Mm text_width(const std::string& text, Mm height) {
  return static_cast<double>(letters(text)) * height * text_width_factor;
}

Box2 text_box(const Text& t) {
  const Mm width = text_width(t.text, t.height);
  const Mm left = t.across == Across::left ? 0 : t.across == Across::centre ? -width / 2 : -width;
  const Mm base = t.up == Up::baseline ? 0 : t.up == Up::middle ? -t.height / 2 : -t.height;
  const Mm low = base - descent * t.height, high = base + t.height;
  const double c = std::cos(t.rotation), s = std::sin(t.rotation);
  Box2 box;
  for (const Vec2 p :
       {Vec2{left, low}, Vec2{left + width, low}, Vec2{left, high}, Vec2{left + width, high}}) {
    box.add({t.at.x + c * p.x - s * p.y, t.at.y + s * p.x + c * p.y});
  }
  return box;
}

Box2 bounds(const Entity& entity) { return std::visit(Bounds{}, entity); }

Box2 bounds(const List2d& list) {
  Box2 box;
  for (const Entity& e : list.entities) box.join(bounds(e));
  return box;
}

Entity moved(const Entity& entity, Vec2 shift) { return std::visit(Move{shift}, entity); }

namespace {

struct Scale {
  double by;
  void operator()(Line& l) const {
    l.from = by * l.from;
    l.to = by * l.to;
  }
  void operator()(Arc& a) const {
    a.centre = by * a.centre;
    a.radius *= by;
  }
  void operator()(Circle& c) const {
    c.centre = by * c.centre;
    c.radius *= by;
  }
  void operator()(Closed& c) const {
    for (Vertex& v : c.outline) v.at = by * v.at;
  }
  void operator()(Path& p) const {
    for (Vec2& v : p.points) v = by * v;
  }
  void operator()(Filled& f) const {
    for (Box2& b : f.boxes) b = {by * b.low, by * b.high};
  }
  void operator()(Text& t) const {
    t.at = by * t.at;
    t.height *= by;
  }
};

}  // namespace

List2d scaled(List2d list, double factor) {
  for (Entity& e : list.entities) std::visit(Scale{factor}, e);
  for (Passage& p : list.passages) p.box = {factor * p.box.low, factor * p.box.high};
  return list;
}

// Clips the segment to the box, one side after another.
bool meets(Vec2 from, Vec2 to, const Box2& box) {
  double enter = 0, leave = 1;
  const Vec2 d = to - from;
  const auto side = [&](double delta, double room) {
    if (delta == 0) return room >= 0;
    const double t = room / delta;
    if (delta < 0) {
      enter = std::max(enter, t);
    } else {
      leave = std::min(leave, t);
    }
    return enter <= leave;
  };
  return side(-d.x, from.x - box.low.x) && side(d.x, box.high.x - from.x) && side(-d.y, from.y - box.low.y) &&
         side(d.y, box.high.y - from.y);
}

}  // namespace bedwright
