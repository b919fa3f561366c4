// Moves each run of an outline out by half the kerf, and joins the moved runs again.
#include "geometry/kerf.h"

#include <fmt/format.h>

#include <numbers>
#include <optional>
#include <stdexcept>

namespace bedwright {
namespace {

// Runs whose directions differ by less go on smoothly into each other (radians).
constexpr double smooth = 1e-7;
// Chords for the last look whether the path crosses itself.
constexpr Mm chord_deviation = 0.01;

// One run of the outline, moved out. A line has no radius.
struct Run {
  Vec2 from, to, centre;
  Mm radius = 0;
  double way = 0;        // +1 turns left, -1 right, 0 a line
  Radians sweep = 0;     // of the outline's own arc, over 0
  Vec2 leaves, arrives;  // directions at its ends
};

[[noreturn]] void refuse(Vec2 at) {
  throw std::invalid_argument(fmt::format("the kerf closes the notch at {:.2f}, {:.2f} mm", at.x, at.y));
}

Vec2 right_of(Vec2 v) { return {v.y, -v.x}; }
Vec2 unit2(Vec2 v) { return (1 / norm(v)) * v; }

Run moved_out(Vec2 a, Vec2 b, double bulge, Mm by) {
  Run run;
  if (bulge == 0) {
    run.leaves = run.arrives = unit2(b - a);
    run.from = a + by * right_of(run.leaves);
    run.to = b + by * right_of(run.leaves);
    return run;
  }
  const RunArc arc = run_arc(a, b, bulge);
  run.way = bulge > 0 ? 1 : -1;
  run.radius = arc.radius + run.way * by;
  if (run.radius < same_place) refuse(a);
  run.centre = arc.centre;
  run.sweep = std::abs(arc.sweep);
  run.from = arc.centre + (run.radius / arc.radius) * (a - arc.centre);
  run.to = arc.centre + (run.radius / arc.radius) * (b - arc.centre);
  run.leaves = -run.way * right_of(unit2(a - arc.centre));
  run.arrives = -run.way * right_of(unit2(b - arc.centre));
  return run;
}

// Where two lines, a line and a circle, or two circles meet.
std::vector<Vec2> meetings(const Run& a, const Run& b) {
  if (a.way == 0 && b.way == 0) {
    const double turn = cross(a.leaves, b.leaves);
    return {a.from + (cross(b.from - a.from, b.leaves) / turn) * a.leaves};
  }
  if (a.way == 0 || b.way == 0) {
    const Run &line = a.way == 0 ? a : b, &arc = a.way == 0 ? b : a;
    const Vec2 foot = line.from + dot(arc.centre - line.from, line.leaves) * line.leaves;
    const double half = arc.radius * arc.radius - dot(foot - arc.centre, foot - arc.centre);
    if (half < 0) return {};
    return {foot + std::sqrt(half) * line.leaves, foot - std::sqrt(half) * line.leaves};
  }
  const Vec2 between = b.centre - a.centre;
  const Mm apart = norm(between);
  if (apart < same_place) return {};
  const Mm along = (apart * apart + a.radius * a.radius - b.radius * b.radius) / (2 * apart);
  const double half = a.radius * a.radius - along * along;
  if (half < 0) return {};
  const Vec2 ahead = (1 / apart) * between;
  const Vec2 foot = a.centre + along * ahead;
  return {foot + std::sqrt(half) * right_of(ahead), foot - std::sqrt(half) * right_of(ahead)};
}

Radians swept(const Run& run) {
  const Vec2 a = run.from - run.centre, b = run.to - run.centre;
  const Radians turn = run.way * std::atan2(cross(a, b), dot(a, b));
  return turn < 0 ? turn + 2 * std::numbers::pi : turn;
}

// The run that is left after its ends were cut back, as a vertex of the path.
Vertex vertex_of(const Run& run) {
  if (run.way == 0) {
    if (dot(run.to - run.from, run.leaves) < same_place) refuse(run.from);
    return {run.from, 0};
  }
  const Radians left = swept(run);
  if (left < 1e-9 || left > run.sweep + 1e-9) refuse(run.from);
  return {run.from, run.way * std::tan(left / 4)};
}

bool cross_each_other(Vec2 a, Vec2 b, Vec2 c, Vec2 d) {
  const auto side = [](Vec2 p, Vec2 q, Vec2 r) { return cross(q - p, r - p); };
  return side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0;
}

void check_crossings(const Outline& path) {
  const std::vector<Vec2> p = flattened(path, chord_deviation);
  const auto next = [&](std::size_t i) { return p[(i + 1) % p.size()]; };
  for (std::size_t i = 0; i < p.size(); ++i)
    for (std::size_t j = i + 2; j < p.size(); ++j)
      if (cross_each_other(p[i], next(i), p[j], next(j))) refuse(p[i]);
}

}  // namespace

Outline outside(const Outline& outline, Mm by) {
  if (by < 0) throw std::invalid_argument("a kerf must not be under 0");
  if (by < same_place) return outline;
  const std::size_t count = outline.size();
  std::vector<Run> runs;
  for (std::size_t i = 0; i < count; ++i)
    runs.push_back(moved_out(outline[i].at, outline[(i + 1) % count].at, outline[i].bulge, by));
  // An arc about each convex corner, after the run that comes to it.
  std::vector<std::optional<double>> corner(count);
  for (std::size_t i = 0; i < count; ++i) {
    Run &in = runs[i], &out = runs[(i + 1) % count];
    const Vec2 at = outline[(i + 1) % count].at;
    const Radians turn = std::atan2(cross(in.arrives, out.leaves), dot(in.arrives, out.leaves));
    if (std::abs(turn) < smooth) {
      out.from = in.to;
    } else if (turn > 0) {
      corner[i] = std::tan(turn / 4);
    } else {
      std::optional<Vec2> nearest;
      for (const Vec2 p : meetings(in, out))
        if (!nearest || norm(p - at) < norm(*nearest - at)) nearest = p;
      if (!nearest) refuse(at);
      in.to = out.from = *nearest;
    }
  }
  Outline path;
  for (std::size_t i = 0; i < count; ++i) {
    path.push_back(vertex_of(runs[i]));
    if (corner[i]) path.push_back({runs[i].to, *corner[i]});
  }
  check_crossings(path);
  return path;
}

}  // namespace bedwright
