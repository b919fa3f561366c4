// The separating-axis test and its relatives. Two convex polyhedra are apart
// exactly when some face normal of either, or some cross product of an edge of
// one with an edge of the other, is an axis along which their shadows are apart.
#include "geometry/convex.h"
#include "geometry/slack.h"

namespace bedwright {
namespace {

struct Span {
  Mm low, high;
};

Span shadow(const Convex& piece, Vec3 axis) {
  Span span{dot(piece.corners.front(), axis), 0};
  span.high = span.low;
  for (const Vec3& corner : piece.corners) {
    const Mm at = dot(corner, axis);
    span.low = std::min(span.low, at);
    span.high = std::max(span.high, at);
  }
  return span;
}

// A cross product shorter than this comes from edges within a ten-thousandth of
// a degree of parallel; its direction would be noise, and the face normals
// already cover the parallel case.
constexpr double parallel_edges = 1e-6;

// Calls `use(axis)` (unit) for every axis that can separate the two, until it
// returns false.
template <class Use>
void for_each_axis(const Convex& a, const Convex& b, Use use) {
  for (const Vec3& normal : a.normals)
    if (!use(normal)) return;
  for (const Vec3& normal : b.normals)
    if (!use(normal)) return;
  for (const Vec3& e : a.edges) {
    for (const Vec3& f : b.edges) {
      const Vec3 axis = cross(e, f);
      const double length = norm(axis);
      if (length > parallel_edges && !use((1 / length) * axis)) return;
    }
  }
}

}  // namespace

Mm separation(const Convex& a, const Convex& b, Mm enough) {
  Mm best = -std::numeric_limits<Mm>::infinity();
  for_each_axis(a, b, [&](Vec3 axis) {
    const Span sa = shadow(a, axis), sb = shadow(b, axis);
    best = std::max({best, sb.low - sa.high, sa.low - sb.high});
    return best <= enough;
  });
  return best;
}

Mm separation_with_slack(const Convex& a, const Convex& b, Vec3 slack) {
  Mm best = -std::numeric_limits<Mm>::infinity();
  for_each_axis(a, b, [&](Vec3 axis) {
    const Span sa = shadow(a, axis), sb = shadow(b, axis);
    const Mm nearer = std::abs(axis.x) * slack.x + std::abs(axis.y) * slack.y + std::abs(axis.z) * slack.z;
    best = std::max({best, sb.low - sa.high - nearer, sa.low - sb.high - nearer});
    return true;
  });
  return best;
}

Mm exit_distance(const Convex& a, const Convex& b, Vec3 direction) {
  Mm least = std::numeric_limits<Mm>::infinity();
  for_each_axis(a, b, [&](Vec3 axis) {
    const Span sa = shadow(a, axis), sb = shadow(b, axis);
    const Mm above = sb.high - sa.low;  // to pass b on the axis's positive side
    const Mm below = sa.high - sb.low;
    if (above <= 0 || below <= 0) {
      least = 0;
      return false;
    }
    const double along = dot(axis, direction);
    if (along > parallel_edges) least = std::min(least, above / along);
    if (along < -parallel_edges) least = std::min(least, below / -along);
    return true;
  });
  return least;
}

Mm ray_hit(const Convex& piece, Vec3 from, Vec3 direction) {
  const Mm miss = std::numeric_limits<Mm>::infinity();
  Mm enter = 0, leave = miss;
  for (const Vec3& normal : piece.normals) {
    const Mm out = dot(normal, from) - shadow(piece, normal).high;  // > 0: outside this face
    const double rate = dot(normal, direction);
    if (std::abs(rate) < 1e-12) {
      if (out > 0) return miss;
    } else if (rate < 0) {
      enter = std::max(enter, -out / rate);
    } else {
      leave = std::min(leave, -out / rate);
    }
  }
  return enter <= leave ? enter : miss;
}

}  // namespace bedwright
