// Points, frames and boxes. Right-handed; millimetres. World axes: x rearward
// from the front end of the track, y to the kerb side, z up from the top of the
// mains.
#pragma once

#include <algorithm>
#include <cmath>
#include <limits>

#include "units/units.h"

namespace bedwright {

struct Vec2 {
  Mm x = 0, y = 0;
  friend bool operator==(const Vec2&, const Vec2&) = default;
};
inline Vec2 operator+(Vec2 a, Vec2 b) { return {a.x + b.x, a.y + b.y}; }
inline Vec2 operator-(Vec2 a, Vec2 b) { return {a.x - b.x, a.y - b.y}; }
inline Vec2 operator*(double k, Vec2 a) { return {k * a.x, k * a.y}; }
inline double dot(Vec2 a, Vec2 b) { return a.x * b.x + a.y * b.y; }
inline double cross(Vec2 a, Vec2 b) { return a.x * b.y - a.y * b.x; }
inline double norm(Vec2 a) { return std::hypot(a.x, a.y); }

struct Vec3 {
  Mm x = 0, y = 0, z = 0;
  friend bool operator==(const Vec3&, const Vec3&) = default;
};
inline Vec3 operator+(Vec3 a, Vec3 b) { return {a.x + b.x, a.y + b.y, a.z + b.z}; }
inline Vec3 operator-(Vec3 a, Vec3 b) { return {a.x - b.x, a.y - b.y, a.z - b.z}; }
inline Vec3 operator-(Vec3 a) { return {-a.x, -a.y, -a.z}; }
inline Vec3 operator*(double k, Vec3 a) { return {k * a.x, k * a.y, k * a.z}; }
inline double dot(Vec3 a, Vec3 b) { return a.x * b.x + a.y * b.y + a.z * b.z; }
inline Vec3 cross(Vec3 a, Vec3 b) {
  return {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}
inline double norm(Vec3 a) { return std::sqrt(dot(a, a)); }
inline Vec3 unit(Vec3 a) { return (1 / norm(a)) * a; }

// Where a part sits: its local origin and local X and Y axes, in world
// coordinates. Local Z is X cross Y, so a placement is always a proper rotation
// and never a mirror: a left-hand part is a part of its own.
struct Placement {
  Vec3 origin;
  Vec3 x_axis{1, 0, 0};
  Vec3 y_axis{0, 1, 0};
  Vec3 z_axis() const { return cross(x_axis, y_axis); }
  Vec3 direction(Vec3 v) const { return v.x * x_axis + v.y * y_axis + v.z * z_axis(); }
  Vec3 point(Vec3 p) const { return origin + direction(p); }
  Vec3 local_direction(Vec3 v) const { return {dot(v, x_axis), dot(v, y_axis), dot(v, z_axis())}; }
  Vec3 local_point(Vec3 p) const { return local_direction(p - origin); }
  friend bool operator==(const Placement&, const Placement&) = default;
};

// Axis-aligned box. Empty until something is added.
struct Box3 {
  Vec3 low{std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity(),
           std::numeric_limits<double>::infinity()};
  Vec3 high{-std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity(),
            -std::numeric_limits<double>::infinity()};
  void add(Vec3 p) {
    low = {std::min(low.x, p.x), std::min(low.y, p.y), std::min(low.z, p.z)};
    high = {std::max(high.x, p.x), std::max(high.y, p.y), std::max(high.z, p.z)};
  }
  bool overlaps(const Box3& b, Mm grow = 0) const {
    return low.x <= b.high.x + grow && b.low.x <= high.x + grow && low.y <= b.high.y + grow &&
           b.low.y <= high.y + grow && low.z <= b.high.z + grow && b.low.z <= high.z + grow;
  }
};

}  // namespace bedwright
