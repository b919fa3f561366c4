#include "export/scribe.h"

#include <algorithm>
#include <array>

#include "drawing/strokes.h"

namespace bedwright {
namespace {

// Arcs are tried as chords no further than this from the arc; the clearance is
// grown by as much.
constexpr Mm chord_deviation = 0.05;
constexpr double line_spacing = 1.6;
constexpr int grid = 24;
constexpr std::array<Mm, 7> heights{scribe_most_height, 10, 8, 7, 6, 5, scribe_least_height};

struct Segment {
  Vec2 from, to;
};

struct Ground {
  std::vector<Vec2> outline;
  std::vector<Segment> edges;  // outline and holes
  Box2 box;
};

void add_edges(std::vector<Segment>& edges, const std::vector<Vec2>& loop) {
  for (std::size_t i = 0; i < loop.size(); ++i) edges.push_back({loop[i], loop[(i + 1) % loop.size()]});
}

Ground ground(const Plate& plate) {
  Ground g;
  g.outline = flattened(plate.outline, chord_deviation);
  add_edges(g.edges, g.outline);
  for (const Vec2 p : g.outline) g.box.add(p);
  for (const Hole& h : plate.holes) {
    add_edges(g.edges, flattened(hole_outline(h.at, h.diameter, h.length, h.angle), chord_deviation));
  }
  return g;
}

bool inside(const std::vector<Vec2>& loop, Vec2 p) {
  bool in = false;
  for (std::size_t i = 0, j = loop.size() - 1; i < loop.size(); j = i++) {
    const Vec2 a = loop[i], b = loop[j];
    if ((a.y > p.y) != (b.y > p.y) && p.x < (b.x - a.x) * (p.y - a.y) / (b.y - a.y) + a.x) in = !in;
  }
  return in;
}

bool clear(const Ground& g, const Box2& box) {
  if (!inside(g.outline, 0.5 * (box.low + box.high))) return false;
  const Box2 kept = box.grown(scribe_clearance + chord_deviation);
  return std::none_of(g.edges.begin(), g.edges.end(),
                      [&](const Segment& s) { return meets(s.from, s.to, kept); });
}

// Steps out from the middle: 0, 1, -1, 2, -2, ...
double step(int i) { return (i % 2 == 1 ? 1 : -1) * ((i + 1) / 2); }

std::optional<Box2> place(const Ground& g, Mm width, Mm height) {
  const Mm room_x = g.box.width() - 2 * scribe_clearance - width;
  const Mm room_y = g.box.height() - 2 * scribe_clearance - height;
  if (room_x < 0 || room_y < 0) return std::nullopt;
  const Vec2 middle = 0.5 * (g.box.low + g.box.high);
  std::optional<Box2> best;
  double nearest = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= grid; ++i) {
    for (int j = 0; j <= grid; ++j) {
      const Vec2 off{step(i) * room_x / grid, step(j) * room_y / grid};
      if (norm(off) >= nearest) continue;
      Box2 box;
      box.add(middle + off - Vec2{width / 2, height / 2});
      box.add(middle + off + Vec2{width / 2, height / 2});
      if (!clear(g, box)) continue;
      best = box;
      nearest = norm(off);
    }
  }
  return best;
}

std::vector<std::string> on_lines(const std::vector<std::string>& words, std::size_t lines) {
  std::vector<std::string> out(lines);
  for (std::size_t i = 0; i < words.size(); ++i) {
    std::string& line = out[std::min(i, lines - 1)];
    line += line.empty() ? words[i] : "  " + words[i];
  }
  return out;
}

Lettering drawn(const std::vector<std::string>& lines, Mm height, bool turned, const Box2& box) {
  Lettering out{height, box, {}};
  const Mm block = turned ? box.width() : box.height();
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Mm base = block - height - static_cast<double>(i) * line_spacing * height;
    for (std::vector<Vec2> run : strokes(lines[i], height)) {
      for (Vec2& p : run) {
        const Vec2 q{p.x, p.y + base};
        p = turned ? Vec2{box.high.x - q.y, box.low.y + q.x} : box.low + q;
      }
      out.strokes.push_back(std::move(run));
    }
  }
  return out;
}

}  // namespace

std::optional<Lettering> scribe(const Plate& plate, const std::vector<std::string>& words) {
  const Ground g = ground(plate);
  for (const Mm height : heights) {
    for (std::size_t count = 1; count <= words.size(); ++count) {
      const std::vector<std::string> lines = on_lines(words, count);
      Mm width = 0;
      for (const std::string& line : lines) width = std::max(width, stroke_width(line, height));
      const Mm block = height * (1 + line_spacing * static_cast<double>(count - 1));
      for (const bool turned : {false, true}) {
        const std::optional<Box2> box = place(g, turned ? block : width, turned ? width : block);
        if (box) return drawn(lines, height, turned, *box);
      }
    }
  }
  return std::nullopt;
}

}  // namespace bedwright
