// Writes a list as text that is the same for lists that look alike.
#include <fmt/format.h>

#include <iterator>

#include "draw/list2d.h"

namespace bedwright {
namespace {

class Writer {
 public:
  explicit Writer(const List2d& list) : corner_{bounds(list).low.x, bounds(list).high.y} {
    for (const Entity& e : list.entities) {
      std::visit([&](const auto& c) { out_ += list.layers.at(static_cast<std::size_t>(c.layer)).name; }, e);
      std::visit(*this, e);
      out_ += '\n';
    }
  }
  void operator()(const Line& l) { put("line", {l.from, l.to}); }
  void operator()(const Arc& a) { put("arc", {a.centre}, {a.radius, a.start, a.end}); }
  void operator()(const Circle& c) { put("circle", {c.centre}, {c.radius}); }
  void operator()(const Closed& c) {
    for (const Vertex& v : c.outline) put("vertex", {v.at}, {v.bulge});
  }
  void operator()(const Path& p) { put("path", p.points); }
  void operator()(const Filled& f) {
    for (const Box2& b : f.boxes) put("box", {b.low, b.high});
  }
  void operator()(const Text& t) {
    put("text", {t.at}, {t.height, t.rotation, static_cast<double>(t.across), static_cast<double>(t.up)});
    out_ += t.text;
  }
  std::string take() { return std::move(out_); }

 private:
  void put(const char* kind, const std::vector<Vec2>& points, const std::vector<double>& figures = {}) {
    out_ += kind;
    for (const Vec2 p : points) {
      number(p.x - corner_.x);
      number(p.y - corner_.y);
    }
    for (const double f : figures) number(f);
  }
  // No "-0.00" beside "0.00".
  void number(double value) {
    fmt::format_to(std::back_inserter(out_), " {:.2f}", std::abs(value) < 0.005 ? 0.0 : value);
  }

  Vec2 corner_;
  std::string out_;
};

}  // namespace

std::string fingerprint(const List2d& list) { return list.entities.empty() ? "" : Writer(list).take(); }

}  // namespace bedwright
