// Tries letter heights and places inside a plate until the words stand clear.
#include "draw/scribe.h"

#include <algorithm>
#include <array>

#include "bed/names.h"
#include "draw/strokes.h"
#include "units/steps.h"

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

// `any`: the first clear place will do, not the one nearest the middle.
std::optional<Box2> place(const Ground& g, Mm width, Mm height, bool any = false) {
  const Mm room_x = g.box.width() - 2 * scribe_clearance - width;
  const Mm room_y = g.box.height() - 2 * scribe_clearance - height;
  if (room_x < 0 || room_y < 0) return std::nullopt;
  const Vec2 middle = 0.5 * (g.box.low + g.box.high);
  std::optional<Box2> best;
  double nearest = std::numeric_limits<double>::infinity();
  for (int i = 0; i <= grid; ++i) {
    for (int j = 0; j <= grid; ++j) {
      const Vec2 off{steps_out(i) * room_x / grid, steps_out(j) * room_y / grid};
      if (norm(off) >= nearest) continue;
      Box2 box;
      box.add(middle + off - Vec2{width / 2, height / 2});
      box.add(middle + off + Vec2{width / 2, height / 2});
      if (!clear(g, box)) continue;
      if (any) return box;
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

// Room for the arrow ahead of the first line, in letter heights.
constexpr double arrow_room = 1.6;

// In a square cell from (0, 0), pointing up, as high as the letters.
std::vector<std::vector<Vec2>> arrow(Mm height) {
  const Mm middle = height / 2, wing = height / 4;
  return {{{middle, 0}, {middle, height}},
          {{middle - wing, height - 1.6 * wing}, {middle, height}, {middle + wing, height - 1.6 * wing}}};
}

Lettering drawn(const std::vector<std::string>& lines, Mm height, bool turned, const Box2& box) {
  Lettering out{height, box, {}};
  const Mm block = turned ? box.width() : box.height();
  const Vec2 cell = turned ? box.low : Vec2{box.low.x, box.high.y - height};
  for (std::vector<Vec2> run : arrow(height)) {
    for (Vec2& p : run) p = cell + p;
    out.strokes.push_back(std::move(run));
  }
  for (std::size_t i = 0; i < lines.size(); ++i) {
    const Mm base = block - height - static_cast<double>(i) * line_spacing * height;
    const Mm indent = i == 0 ? arrow_room * height : 0;
    for (std::vector<Vec2> run : strokes(lines[i], height)) {
      for (Vec2& p : run) {
        const Vec2 q{p.x + indent, p.y + base};
        p = turned ? Vec2{box.high.x - q.y, box.low.y + q.x} : box.low + q;
      }
      out.strokes.push_back(std::move(run));
    }
  }
  return out;
}

// A block of lines at one height.
struct Block2d {
  std::vector<std::string> lines;
  Mm width = 0, height = 0;
};

Block2d block_of(const std::vector<std::string>& words, std::size_t count, Mm height) {
  Block2d block{on_lines(words, count), 0, height * (1 + line_spacing * static_cast<double>(count - 1))};
  for (const std::string& line : block.lines)
    block.width = std::max(
        block.width, stroke_width(line, height) + (&line == &block.lines.front() ? arrow_room * height : 0));
  return block;
}

// Where the words go at one height, on as few lines as have a place.
struct Spot {
  std::vector<std::string> lines;
  bool turned = false;
  Box2 box;
};

std::optional<Spot> spot(const Ground& g, const std::vector<std::string>& words, Mm height) {
  for (std::size_t count = 1; count <= words.size(); ++count) {
    Block2d block = block_of(words, count, height);
    for (const bool turned : {false, true}) {
      const std::optional<Box2> box =
          place(g, turned ? block.height : block.width, turned ? block.width : block.height);
      if (box) return Spot{std::move(block.lines), turned, *box};
    }
  }
  return std::nullopt;
}

}  // namespace

std::optional<Lettering> scribe(const Plate& plate, const std::vector<std::string>& words) {
  const Ground g = ground(plate);
  for (const Mm height : heights)
    if (const auto at = spot(g, words, height)) return drawn(at->lines, height, at->turned, at->box);
  return std::nullopt;
}

bool letters_fit(const Plate& plate, const std::vector<std::string>& words, Mm height) {
  const Ground g = ground(plate);
  // Most lines first: the narrowest block finds a place soonest.
  for (std::size_t count = words.size(); count >= 1; --count) {
    const Block2d block = block_of(words, count, height);
    if (place(g, block.width, block.height, true) || place(g, block.height, block.width, true)) return true;
  }
  return false;
}

std::vector<std::string> scribe_words(const Part& part, const Heading& heading) {
  return {name(part), heading.number, "REV " + heading.revision};
}

}  // namespace bedwright
