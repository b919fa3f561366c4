// Distances, insides and common space of bodies made of triangles.
#include "solid.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <set>

namespace inspector {
namespace {

using Corners = std::array<Point, 3>;

Corners corners(const Solid& s, std::size_t t) { return {s.corner(t, 0), s.corner(t, 1), s.corner(t, 2)}; }

Point nearest_on_segment(Point p, Point a, Point b) {
  const Point way = b - a;
  const double full = dot(way, way);
  return full > 0 ? a + std::clamp(dot(p - a, way) / full, 0.0, 1.0) * way : a;
}

Point nearest_on_triangle(Point p, const Corners& c) {
  const Point normal = cross(c[1] - c[0], c[2] - c[0]);
  const double area = dot(normal, normal);
  if (area > 0) {
    const Point foot = p - (dot(p - c[0], normal) / area) * normal;
    bool within = true;
    for (int k = 0; k < 3 && within; ++k)
      within = dot(cross(c[(k + 1) % 3] - c[k], foot - c[k]), normal) >= 0;
    if (within) return foot;
  }
  Point best = c[0];
  double least = std::numeric_limits<double>::infinity();
  for (int k = 0; k < 3; ++k) {
    const Point q = nearest_on_segment(p, c[k], c[(k + 1) % 3]);
    if (const double d = dot(p - q, p - q); d < least) least = d, best = q;
  }
  return best;
}

// Where segment a-b is nearest to segment c-d.
std::array<Point, 2> nearest_of_segments(Point a, Point b, Point c, Point d) {
  const Point u = b - a, v = d - c, w = a - c;
  const double uu = dot(u, u), uv = dot(u, v), vv = dot(v, v), uw = dot(u, w), vw = dot(v, w);
  const double full = uu * vv - uv * uv;
  double s = full > 1e-12 * uu * vv ? std::clamp((uv * vw - vv * uw) / full, 0.0, 1.0) : 0;
  double t = vv > 0 ? std::clamp((uv * s + vw) / vv, 0.0, 1.0) : 0;
  s = uu > 0 ? std::clamp((uv * t - uw) / uu, 0.0, 1.0) : 0;
  return {a + s * u, c + t * v};
}

// How far along a-b the triangle's plane is crossed inside it; nothing: a negative figure.
double crossing(Point a, Point b, const Corners& c) {
  const Point normal = cross(c[1] - c[0], c[2] - c[0]);
  const double from = dot(a - c[0], normal), to = dot(b - c[0], normal);
  if ((from > 0) == (to > 0)) return -1;
  const double t = from / (from - to);
  const Point p = a + t * (b - a);
  for (int k = 0; k < 3; ++k)
    if (dot(cross(c[(k + 1) % 3] - c[k], p - c[k]), normal) < 0) return -1;
  return t;
}

std::vector<std::size_t> within(const Solid& s, const Box& box, double grow) {
  std::vector<std::size_t> found;
  for (std::size_t t = 0; t < s.triangles().size(); ++t)
    if (s.box_of(t).meets(box, grow)) found.push_back(t);
  return found;
}

void apart(const Solid& a, const Solid& b, Apart& best) {
  if (!a.box().meets(b.box(), best.distance)) return;
  const std::vector<std::size_t> of_a = within(a, b.box(), best.distance);
  const std::vector<std::size_t> of_b = within(b, a.box(), best.distance);
  const auto take = [&](Point p, Point q) {
    if (const double d = length(p - q); d < best.distance) best = {d, 0.5 * (p + q)};
  };
  for (const std::size_t i : of_a)
    for (const std::size_t j : of_b) {
      if (!a.box_of(i).meets(b.box_of(j), best.distance)) continue;
      const Corners p = corners(a, i), q = corners(b, j);
      for (int k = 0; k < 3; ++k) {
        take(p[k], nearest_on_triangle(p[k], q));
        take(q[k], nearest_on_triangle(q[k], p));
        if (crossing(p[k], p[(k + 1) % 3], q) >= 0 || crossing(q[k], q[(k + 1) % 3], p) >= 0) {
          best = {0, p[k]};
          return;
        }
        for (int m = 0; m < 3; ++m) {
          const auto near = nearest_of_segments(p[k], p[(k + 1) % 3], q[m], q[(m + 1) % 3]);
          take(near[0], near[1]);
        }
      }
    }
}

// Points of `a` that may lie inside `b`: the middles of its edges' stretches between the
// faces of `b`, and of its triangles.
std::vector<Point> candidates(const Solid& a, const Solid& b) {
  std::vector<Point> found;
  const std::vector<std::size_t> of_b = within(b, a.box(), 0);
  std::set<std::pair<int, int>> done;
  for (std::size_t t = 0; t < a.triangles().size(); ++t) {
    if (!a.box_of(t).meets(b.box())) continue;
    const Corners c = corners(a, t);
    found.push_back((1.0 / 3) * (c[0] + c[1] + c[2]));
    for (int k = 0; k < 3; ++k) {
      const int from = a.triangles()[t][k], to = a.triangles()[t][(k + 1) % 3];
      if (!done.insert({std::min(from, to), std::max(from, to)}).second) continue;
      const Point p = c[k], q = c[(k + 1) % 3];
      Box around;
      around.add(p), around.add(q);
      std::vector<double> cuts{0, 1};
      for (const std::size_t j : of_b)
        if (b.box_of(j).meets(around))
          if (const double at = crossing(p, q, corners(b, j)); at >= 0) cuts.push_back(at);
      std::sort(cuts.begin(), cuts.end());
      // Whole within or whole without, where nothing is crossed.
      if (cuts.size() == 2) {
        found.push_back(0.5 * (p + q));
        continue;
      }
      for (std::size_t i = 1; i < cuts.size(); ++i)
        for (const double part : {0.02, 0.5, 0.98})
          found.push_back(p + (cuts[i - 1] + part * (cuts[i] - cuts[i - 1])) * (q - p));
    }
  }
  return found;
}

// Do faces of the two come near each other at all?
bool faces_meet(const Solid& a, const Solid& b) {
  const std::vector<std::size_t> of_a = within(a, b.box(), 0), of_b = within(b, a.box(), 0);
  for (const std::size_t i : of_a)
    for (const std::size_t j : of_b)
      if (a.box_of(i).meets(b.box_of(j))) return true;
  return false;
}

void shared(const Solid& a, const Solid& b, double enough, Shared& best) {
  // No deeper than their boxes are: things that only touch are most of a bed.
  if (!a.box().meets(b.box(), -2 * chord)) return;
  if (!faces_meet(a, b)) {
    // Then one lies within the other as a whole, or they have nothing in common.
    for (const auto& [one, other] : {std::pair(&a, &b), std::pair(&b, &a)})
      if (const Point p = one->points().front(); other->holds(p))
        if (const double depth = other->to_face(p, enough); depth > best.depth) best = {depth, p};
    return;
  }
  const auto look = [&](const Solid& one, const Solid& other) {
    if (within(one, other.box(), 0).empty()) return;
    // Only these faces can be over a point of `one`, or near it.
    Box tall = one.box();
    tall.high.z = 1e300;
    const std::vector<std::size_t> over = within(other, tall, enough);
    const auto holds = [&](Point p) {
      bool in = false;
      for (const std::size_t t : over) in ^= other.is_under(t, p);
      return in;
    };
    for (const Point& p : candidates(one, other)) {
      if (best.depth >= enough) return;
      if (!other.box().holds(p) || !holds(p)) continue;
      // It lies on `one`, whose steel begins beside it: inside the other is inside both.
      double depth = enough;
      for (const std::size_t t : over)
        if (other.box_of(t).holds(p, depth))
          depth = std::min(depth, length(p - nearest_on_triangle(p, corners(other, t))));
      if (depth > best.depth) best = {depth, p};
    }
  };
  look(a, b);
  look(b, a);
}

}  // namespace

double length(Point a) { return std::sqrt(dot(a, a)); }
Point unit(Point a) { return (1 / length(a)) * a; }

std::array<Point, 2> square_to(Point axis) {
  const Point other = std::abs(axis.x) < 0.6 * length(axis) ? Point{1, 0, 0} : Point{0, 1, 0};
  const Point u = unit(cross(axis, other));
  return {u, unit(cross(axis, u))};
}

void Box::add(Point p) {
  low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
  high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
}

bool Box::meets(const Box& o, double grow) const {
  return low.x <= o.high.x + grow && o.low.x <= high.x + grow && low.y <= o.high.y + grow &&
         o.low.y <= high.y + grow && low.z <= o.high.z + grow && o.low.z <= high.z + grow;
}

bool Box::holds(Point p, double grow) const {
  return p.x >= low.x - grow && p.x <= high.x + grow && p.y >= low.y - grow && p.y <= high.y + grow &&
         p.z >= low.z - grow && p.z <= high.z + grow;
}

Solid::Solid(std::vector<Point> points, std::vector<Triangle> triangles)
    : points_(std::move(points)), triangles_(std::move(triangles)) {
  boxes_.reserve(triangles_.size());
  for (const Triangle& t : triangles_) {
    Box box;
    for (const int k : t) box.add(points_[k]);
    box_.add(box.low), box_.add(box.high);
    boxes_.push_back(box);
  }
}

// Counts the faces straight above. A hair aside, so that no ray runs along an upright face
// or through an edge.
bool Solid::holds(Point p) const {
  if (!box_.holds(p)) return false;
  bool in = false;
  for (std::size_t t = 0; t < triangles_.size(); ++t) in ^= is_under(t, p);
  return in;
}

bool Solid::is_under(std::size_t t, Point p) const {
  p = p + Point{1.37e-6, 2.41e-6, 0};
  const Box& box = boxes_[t];
  if (p.x < box.low.x || p.x > box.high.x || p.y < box.low.y || p.y > box.high.y || p.z > box.high.z)
    return false;
  const Point a = corner(t, 0), b = corner(t, 1), c = corner(t, 2);
  const auto side = [&](Point q, Point r) { return (r.x - q.x) * (p.y - q.y) - (r.y - q.y) * (p.x - q.x); };
  const double ab = side(a, b), bc = side(b, c), ca = side(c, a);
  if (!((ab > 0 && bc > 0 && ca > 0) || (ab < 0 && bc < 0 && ca < 0))) return false;
  return (bc * a.z + ca * b.z + ab * c.z) / (ab + bc + ca) > p.z;
}

double Solid::to_face(Point p, double reach) const {
  double best = reach;
  for (std::size_t t = 0; t < triangles_.size(); ++t)
    if (boxes_[t].holds(p, best))
      best = std::min(best, length(p - nearest_on_triangle(p, corners(*this, t))));
  return best;
}

Solid Solid::moved(Point by) const {
  std::vector<Point> all = points_;
  for (Point& p : all) p = p + by;
  return {std::move(all), triangles_};
}

Box box_of(const Body& body) {
  Box box;
  for (const Solid& s : body) box.add(s.box().low), box.add(s.box().high);
  return box;
}

bool holds(const Body& body, Point p) {
  return std::any_of(body.begin(), body.end(), [&](const Solid& s) { return s.holds(p); });
}

Solid box_solid(Point low, Point high) {
  return prism_along_x({{low.y, low.z}, {high.y, low.z}, {high.y, high.z}, {low.y, high.z}}, low.x, high.x);
}

Solid prism_along_x(const std::vector<std::array<double, 2>>& base, double x0, double x1) {
  const int n = static_cast<int>(base.size());
  std::vector<Point> points;
  for (const double x : {x0, x1})
    for (const auto& p : base) points.push_back({x, p[0], p[1]});
  std::vector<Solid::Triangle> t;
  for (int i = 1; i + 1 < n; ++i) {
    t.push_back({0, i + 1, i});
    t.push_back({n, n + i, n + i + 1});
  }
  for (int i = 0; i < n; ++i) {
    const int j = (i + 1) % n;
    t.push_back({i, j, n + j});
    t.push_back({i, n + j, n + i});
  }
  return {std::move(points), std::move(t)};
}

Solid cylinder(Point from, Point to, double radius) {
  constexpr int sides = 32;
  const Point axis = unit(to - from);
  const auto [u, v] = square_to(axis);
  const double r = radius / std::cos(std::numbers::pi / sides);
  std::vector<std::array<double, 2>> base;
  for (int i = 0; i < sides; ++i) {
    const double angle = 2 * std::numbers::pi * i / sides;
    base.push_back({r * std::cos(angle), r * std::sin(angle)});
  }
  const Solid made = prism_along_x(base, 0, length(to - from));
  std::vector<Point> points = made.points();
  for (Point& p : points) p = from + p.x * axis + p.y * u + p.z * v;
  return {std::move(points), made.triangles()};
}

Section::Section(const Body& body, Point at, Point u, Point v) {
  const Point n = cross(u, v);
  at = at + 3.7e-5 * n;  // off the corners that lie in the plane itself
  for (const Solid& s : body) {
    std::vector<double> height;
    height.reserve(s.points().size());
    for (const Point& p : s.points()) height.push_back(dot(p - at, n));
    std::vector<Stretch> all;
    for (const Solid::Triangle& t : s.triangles()) {
      const bool up[] = {height[t[0]] > 0, height[t[1]] > 0, height[t[2]] > 0};
      if (up[0] == up[1] && up[1] == up[2]) continue;
      std::array<double, 2> ends[2];
      int count = 0;
      for (int k = 0; k < 3; ++k) {
        const int i = t[k], j = t[(k + 1) % 3];
        if (up[k] == up[(k + 1) % 3]) continue;
        const Point p =
            s.points()[i] + (height[i] / (height[i] - height[j])) * (s.points()[j] - s.points()[i]) - at;
        ends[count++] = {dot(p, u), dot(p, v)};
      }
      all.push_back({ends[0], ends[1]});
    }
    if (!all.empty()) bodies_.push_back(std::move(all));
  }
}

bool Section::holds(double x, double y) const {
  for (const auto& body : bodies_) {
    bool in = false;
    for (const Stretch& s : body)
      if ((s.from[1] > y) != (s.to[1] > y) &&
          x < s.from[0] + (y - s.from[1]) / (s.to[1] - s.from[1]) * (s.to[0] - s.from[0]))
        in = !in;
    if (in) return true;
  }
  return false;
}

Apart apart(const Body& a, const Body& b, double reach) {
  Apart best{reach, {}};
  for (const Solid& p : a)
    for (const Solid& q : b) apart(p, q, best);
  return best;
}

Shared shared(const Body& a, const Body& b, double enough) {
  Shared best;
  for (const Solid& p : a)
    for (const Solid& q : b) shared(p, q, enough, best);
  return best;
}

}  // namespace inspector
