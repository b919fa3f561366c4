// Convex solids made and placed.
#include "geometry/convex.h"

namespace bedwright {
namespace {

void add_direction(std::vector<Vec3>& edges, Vec3 v) {
  const double length = norm(v);
  if (length < 1e-9) return;
  v = (1 / length) * v;
  for (const Vec3& e : edges)
    if (std::abs(dot(e, v)) > 1 - 1e-12) return;
  edges.push_back(v);
}

}  // namespace

Convex frustum(const std::vector<Vec3>& base, const std::vector<Vec3>& top, Vec3 base_normal,
               Vec3 top_normal) {
  Convex piece;
  piece.corners = base;
  piece.corners.insert(piece.corners.end(), top.begin(), top.end());
  piece.normals = {base_normal, top_normal};
  const std::size_t n = base.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    const Vec3 run = base[j] - base[i], rise = top[i] - base[i];
    piece.normals.push_back(unit(cross(run, rise)));
    add_direction(piece.edges, run);
    add_direction(piece.edges, top[j] - top[i]);
    add_direction(piece.edges, rise);
  }
  for (const Vec3& c : piece.corners) piece.bounds.add(c);
  return piece;
}

Convex prism(const std::vector<Vec2>& polygon, Mm from, Mm to, const Placement& placement) {
  std::vector<Vec3> base, top;
  for (const Vec2& p : polygon) {
    base.push_back({p.x, p.y, from});
    top.push_back({p.x, p.y, to});
  }
  return placed(frustum(base, top, {0, 0, -1}, {0, 0, 1}), placement);
}

Convex placed(Convex piece, const Placement& placement) {
  const Vec3 x = placement.x_axis, y = placement.y_axis, z = placement.z_axis();
  const auto turn = [&](Vec3 v) { return v.x * x + v.y * y + v.z * z; };
  piece.bounds = {};
  for (Vec3& c : piece.corners) {
    c = placement.origin + turn(c);
    piece.bounds.add(c);
  }
  for (Vec3& n : piece.normals) n = turn(n);
  for (Vec3& e : piece.edges) e = turn(e);
  return piece;
}

}  // namespace bedwright
