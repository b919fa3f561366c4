// Areas, lengths, bounds and chords of outlines with arcs.
#include "geometry/outline.h"

#include <algorithm>
#include <numbers>
#include <stdexcept>
#include <string>

namespace bedwright {
namespace {

// Moments of the region between a run's chord and its arc, in the chord's own
// frame: u along the chord from its middle, w toward the arc. Odd moments of u
// vanish.
struct Segment {
  double area = 0;
  double w = 0;   // integral of w
  double uu = 0;  // integral of u^2
  double ww = 0;  // integral of w^2
};

// Below this bulge (rise under 1/40 of the chord) the radius is so large that
// the circle's closed form cancels its digits away. There the height over the
// chord is summed by Gauss-Legendre quadrature instead; six points are exact to
// the last digits for so flat an arc.
constexpr double flat_bulge = 0.05;

Segment flat_segment(double chord, double half) {
  constexpr double places[] = {0.2386191860831969, 0.6612093864662645, 0.9324695142031521};
  constexpr double weights[] = {0.4679139345726910, 0.3607615730481386, 0.1713244923791704};
  const double reach = chord / 2, radius = reach / std::sin(half), centre_to_chord = radius * std::cos(half);
  Segment sum;
  for (int k = 0; k < 3; ++k) {
    const double u = reach * places[k], share = 2 * reach * weights[k];  // u and -u at once
    const double height =
        (reach - u) * (reach + u) / (std::sqrt((radius - u) * (radius + u)) + centre_to_chord);
    sum.area += share * height;
    sum.w += share * height * height / 2;
    sum.uu += share * u * u * height;
    sum.ww += share * height * height * height / 3;
  }
  return sum;
}

// Sector less the triangle under the chord, taken about the circle's centre and
// moved to the chord. `half` is half the included angle, over 0 and under pi.
Segment circle_segment(double chord, double half) {
  const double s = std::sin(half), c = std::cos(half);
  const double radius = chord / (2 * s), r2 = radius * radius;
  const double centre_to_chord = radius * c;  // negative when more than a half circle
  const double area = r2 * (half - s * c);
  const double first = 2.0 / 3.0 * r2 * radius * s * s * s;
  const double along = r2 * r2 * ((half + s * c) / 4 - s * c * c * c / 2);
  const double across = r2 * r2 * ((half - s * c) / 4 - s * s * s * c / 6);
  return {area, first - centre_to_chord * area, across,
          along - 2 * centre_to_chord * first + centre_to_chord * centre_to_chord * area};
}

Segment segment(double chord, double bulge) {
  const double half = 2 * std::atan(bulge);
  return bulge < flat_bulge ? flat_segment(chord, half) : circle_segment(chord, half);
}

// Integrals over the region, about a fixed point.
struct Sums {
  double area = 0, x = 0, y = 0, xx = 0, yy = 0;
};

// The triangle from the fixed point (the origin here) to the run's chord.
void add_chord(Sums& sums, Vec2 a, Vec2 b) {
  const double twice = cross(a, b);
  sums.area += twice / 2;
  sums.x += twice * (a.x + b.x) / 6;
  sums.y += twice * (a.y + b.y) / 6;
  sums.xx += twice * (a.x * a.x + a.x * b.x + b.x * b.x) / 12;
  sums.yy += twice * (a.y * a.y + a.y * b.y + b.y * b.y) / 12;
}

// What the arc adds outside its chord (a left turn) or takes away (a right turn).
void add_arc(Sums& sums, Vec2 a, Vec2 b, double bulge) {
  const double chord = norm(b - a);
  const double sign = bulge > 0 ? 1 : -1;
  const Segment part = segment(chord, std::abs(bulge));
  const Vec2 along = (1 / chord) * (b - a);
  const Vec2 toward = sign * Vec2{along.y, -along.x};
  const Vec2 middle = 0.5 * (a + b);
  sums.area += sign * part.area;
  sums.x += sign * (middle.x * part.area + toward.x * part.w);
  sums.y += sign * (middle.y * part.area + toward.y * part.w);
  sums.xx += sign * (middle.x * middle.x * part.area + 2 * middle.x * toward.x * part.w +
                     along.x * along.x * part.uu + toward.x * toward.x * part.ww);
  sums.yy += sign * (middle.y * middle.y * part.area + 2 * middle.y * toward.y * part.w +
                     along.y * along.y * part.uu + toward.y * toward.y * part.ww);
}

const Vertex& after(const Outline& outline, std::size_t i) { return outline[(i + 1) % outline.size()]; }

}  // namespace

AreaProperties area_properties(const Outline& outline) {
  if (outline.size() < 2) return {};
  const Vec2 fixed = outline.front().at;  // keeps far-off outlines from losing digits
  Sums sums;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i].at - fixed, b = after(outline, i).at - fixed;
    add_chord(sums, a, b);
    if (outline[i].bulge != 0) add_arc(sums, a, b, outline[i].bulge);
  }
  if (sums.area == 0) return {0, fixed, 0, 0};
  const Vec2 centre{sums.x / sums.area, sums.y / sums.area};
  return {sums.area, centre + fixed, sums.yy - sums.area * centre.y * centre.y,
          sums.xx - sums.area * centre.x * centre.x};
}

Mm perimeter(const Outline& outline) {
  Mm total = 0;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Mm chord = norm(after(outline, i).at - outline[i].at);
    const double half = 2 * std::atan(std::abs(outline[i].bulge));
    total += half == 0 ? chord : chord * half / std::sin(half);
  }
  return total;
}

Outline mirrored(const Outline& outline) {
  // Walking the mirror image backwards keeps it counter-clockwise. A run's bulge
  // changes sign twice, so it keeps it, but now leaves from its other end.
  Outline result;
  const std::size_t count = outline.size();
  for (std::size_t i = 0; i < count; ++i) {
    const Vec2 at = outline[(count - i) % count].at;
    result.push_back({{-at.x, at.y}, outline[count - 1 - i].bulge});
  }
  return result;
}

Outline rectangle(Vec2 low, Vec2 high) { return {{low}, {{high.x, low.y}}, {high}, {{low.x, high.y}}}; }

Outline polygon(std::initializer_list<Vec2> points) { return straight(std::vector<Vec2>(points)); }

Outline straight(const std::vector<Vec2>& points) {
  Outline result;
  for (const Vec2& point : points) result.push_back({point});
  return result;
}

Outline hole_outline(Vec2 centre, Mm diameter, Mm length, Radians angle) {
  const Vec2 along{std::cos(angle), std::sin(angle)};
  const Vec2 left{-along.y, along.x};
  const Mm radius = diameter / 2;
  if (length <= diameter + same_place) return {{centre + radius * along, 1}, {centre - radius * along, 1}};
  const Vec2 front = centre + (length / 2 - radius) * along, back = centre - (length / 2 - radius) * along;
  return {
      {front - radius * left, 1}, {front + radius * left}, {back + radius * left, 1}, {back - radius * left}};
}

void round_corner(Outline& outline, std::size_t index, Mm radius) {
  const std::size_t count = outline.size();
  if (count < 3 || index >= count) throw std::invalid_argument("no corner to round");
  if (!(radius > 0)) throw std::invalid_argument("a corner radius must be over 0");
  const std::size_t previous = (index + count - 1) % count, next = (index + 1) % count;
  if (outline[previous].bulge != 0 || outline[index].bulge != 0)
    throw std::invalid_argument("a corner to round must lie between straight runs");
  const Vec2 corner = outline[index].at;
  const Vec2 in = corner - outline[previous].at, out = outline[next].at - corner;
  const Radians turn = std::atan2(cross(in, out), dot(in, out));
  const Mm cut = radius * std::tan(std::abs(turn) / 2);
  if (cut < same_place) throw std::invalid_argument("no corner to round");
  if (cut > norm(in) + same_place || cut > norm(out) + same_place)
    throw std::invalid_argument("a run beside the corner is too short for its radius");
  const bool from_previous = cut > norm(in) - same_place, to_next = cut > norm(out) - same_place;
  const double bulge = std::tan(turn / 4);
  // The arc's ends take the corner's place; an end that falls on a neighbour is that neighbour.
  Outline ends;
  if (!from_previous) ends.push_back({corner - (cut / norm(in)) * in, bulge});
  if (!to_next) ends.push_back({corner + (cut / norm(out)) * out, 0});
  if (from_previous) outline[previous].bulge = bulge;
  const auto place = outline.erase(outline.begin() + static_cast<std::ptrdiff_t>(index));
  outline.insert(place, ends.begin(), ends.end());
}

std::vector<Vec2> flattened(const Outline& outline, Mm deviation) {
  if (!(deviation > 0)) throw std::invalid_argument("a deviation must be over 0");
  std::vector<Vec2> points;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Vec2 a = outline[i].at, b = after(outline, i).at;
    points.push_back(a);
    const double bulge = outline[i].bulge;
    if (bulge == 0) continue;
    const Radians swept = 4 * std::atan(bulge);
    const Mm radius = norm(b - a) / (2 * std::sin(std::abs(swept) / 2));
    const Radians step = 2 * std::acos(std::max(1 - deviation / radius, 0.0));
    const int chords = static_cast<int>(std::ceil(std::abs(swept) / step));
    // Centre: from the chord's middle, to the left of travel for a left turn.
    const Vec2 left{-(b - a).y, (b - a).x};
    const Vec2 centre = 0.5 * (a + b) + ((1 - bulge * bulge) / (4 * bulge)) * left;
    const Vec2 arm = a - centre;
    for (int k = 1; k < chords; ++k) {
      const Radians t = swept * k / chords;
      points.push_back(centre + Vec2{arm.x * std::cos(t) - arm.y * std::sin(t),
                                     arm.x * std::sin(t) + arm.y * std::cos(t)});
    }
  }
  return points;
}

std::vector<Vec2> convex_hull(std::vector<Vec2> p) {
  std::sort(p.begin(), p.end(), [](Vec2 a, Vec2 b) { return a.x < b.x || (a.x == b.x && a.y < b.y); });
  std::vector<Vec2> h(2 * p.size());
  std::size_t k = 0;
  const auto add = [&](Vec2 q, std::size_t floor) {
    while (k >= floor && cross(h[k - 1] - h[k - 2], q - h[k - 2]) <= 1e-9) --k;
    h[k++] = q;
  };
  for (const Vec2& q : p) add(q, 2);
  const std::size_t upper = k + 1;
  for (std::size_t i = p.size() - 1; i-- > 0;) add(p[i], upper);
  h.resize(k - 1);
  return h;
}

// With chord c and bulge b = tan(sweep / 4): the arc's rise is b c / 2, so its
// radius is c (1 + b^2) / (4 |b|) and the centre lies c (1 - b^2) / (4 b) left
// of the chord's middle.
RunArc run_arc(Vec2 from, Vec2 to, double bulge) {
  if (bulge == 0) throw std::invalid_argument("run_arc: a straight run has no arc");
  const Vec2 chord = to - from;
  const Mm length = norm(chord);
  const Vec2 left = (1 / length) * Vec2{-chord.y, chord.x};
  RunArc arc;
  arc.radius = length * (1 + bulge * bulge) / (4 * std::abs(bulge));
  arc.centre = 0.5 * (from + to) + (length * (1 - bulge * bulge) / (4 * bulge)) * left;
  arc.start = std::atan2(from.y - arc.centre.y, from.x - arc.centre.x);
  arc.sweep = 4 * std::atan(bulge);
  return arc;
}

}  // namespace bedwright
