// Steel as triangles: what the inspector asks of two bodies of the model, and of points.
//
// A body is closed; its triangles face out. Flat faces are exact; round ones are
// chords, at most `chord` inside the true face.
#pragma once

#include <array>
#include <limits>
#include <vector>

namespace inspector {

struct Point {
  double x = 0, y = 0, z = 0;
};
inline Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Point operator*(double k, Point a) { return {k * a.x, k * a.y, k * a.z}; }
inline double dot(Point a, Point b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Point cross(Point a, Point b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
double length(Point a);
Point unit(Point a);
// Two directions square to `axis` and to each other.
std::array<Point, 2> square_to(Point axis);

struct Box {
  Point low{1e300, 1e300, 1e300}, high{-1e300, -1e300, -1e300};
  void add(Point p);
  bool meets(const Box& other, double grow = 0) const;
  bool holds(Point p, double grow = 0) const;
};

inline constexpr double chord = 0.03;  // mm

class Solid {
 public:
  using Triangle = std::array<int, 3>;
  Solid() = default;
  Solid(std::vector<Point> points, std::vector<Triangle> triangles);
  const std::vector<Point>& points() const { return points_; }
  const std::vector<Triangle>& triangles() const { return triangles_; }
  const Box& box() const { return box_; }
  const Box& box_of(std::size_t triangle) const { return boxes_[triangle]; }
  // Corner `k` of a triangle.
  Point corner(std::size_t triangle, int k) const { return points_[triangles_[triangle][k]]; }
  bool holds(Point p) const;
  // Is the triangle straight above the point?
  bool is_under(std::size_t triangle, Point p) const;
  // To its faces, from inside or outside; `reach` and more is answered with `reach`.
  double to_face(Point p, double reach = std::numeric_limits<double>::infinity()) const;
  Solid moved(Point by) const;

 private:
  std::vector<Point> points_;
  std::vector<Triangle> triangles_;
  std::vector<Box> boxes_;
  Box box_;
};

// Several bodies that are one thing.
using Body = std::vector<Solid>;
Box box_of(const Body& body);
bool holds(const Body& body, Point p);

Solid box_solid(Point low, Point high);
// Convex base in the y-z plane (counter-clockwise seen from +x), from x0 to x1.
Solid prism_along_x(const std::vector<std::array<double, 2>>& base, double x0, double x1);
// Circumscribed, so that it holds the true cylinder.
Solid cylinder(Point from, Point to, double radius);

// A body cut by a plane: in the plane's own coordinates, along u and v from `at`.
class Section {
 public:
  Section(const Body& body, Point at, Point u, Point v);
  bool holds(double along_u, double along_v) const;
  bool empty() const { return bodies_.empty(); }

 private:
  struct Stretch {
    std::array<double, 2> from, to;
  };
  std::vector<std::vector<Stretch>> bodies_;
};

struct Apart {
  double distance = std::numeric_limits<double>::infinity();
  Point at;
};
// Between the faces of two bodies; `reach` and more is answered with `reach`.
Apart apart(const Body& a, const Body& b, double reach);

struct Shared {
  double depth = 0;  // how far a point lies inside both
  Point at;
};
// The deepest place found that lies inside both, looked for along every edge of one
// within the other and in the middle of every triangle; no deeper than `enough` is asked.
Shared shared(const Body& a, const Body& b, double enough);

}  // namespace inspector
