// Floats, misfits and margins of holes, two by two and all together.
#include "rules/fit/hole_fit.h"

namespace bedwright {
namespace {

// Sine of the angle under which a slot counts as lying along an axis: over a
// 100 mm slot the error is a micrometre.
constexpr double along_axis = 1e-5;

struct Shift {
  Mm plus, minus;
};

// A contribution's range along the world's axes, seen along `axis`.
Shift along(const Contribution& c, Vec3 axis) {
  Shift s{0, 0};
  const auto add = [&](double k, Mm plus, Mm minus) {
    s.plus += k > 0 ? k * plus : -k * minus;
    s.minus += k > 0 ? k * minus : -k * plus;
  };
  add(axis.x, c.x_plus, c.x_minus);
  add(axis.y, c.y_plus, c.y_minus);
  add(axis.z, c.z_plus, c.z_minus);
  return s;
}

Mm misfit_at(const std::vector<Clearance>& holes, const std::vector<Vec2>& centres, Vec2 p) {
  Mm worst = -std::numeric_limits<Mm>::infinity();
  for (std::size_t i = 0; i < holes.size(); ++i) {
    const Vec2 d = p - centres[i];
    const Mm x = std::max(std::abs(d.x) - holes[i].travel[0], 0.0),
             y = std::max(std::abs(d.y) - holes[i].travel[1], 0.0);
    // Asked millions of times: a square root of millimetres needs no care for overflow.
    worst = std::max(worst, std::sqrt(x * x + y * y) - holes[i].radius);
  }
  return worst;
}

// Least of a convex function between `low` and `high`, by golden section to 1e-6
// of a millimetre; or the first that is none, for then the bolt goes in.
template <class F>
Mm least(F f, Mm low, Mm high) {
  constexpr double golden = 0.6180339887498949;
  Mm a = high - golden * (high - low), b = low + golden * (high - low);
  Mm fa = f(a), fb = f(b);
  while (high - low > 1e-6 && fa > 0 && fb > 0) {
    if (fa <= fb) {
      high = b, b = a, fb = fa;
      a = high - golden * (high - low);
      fa = f(a);
    } else {
      low = a, a = b, fa = fb;
      b = low + golden * (high - low);
      fb = f(b);
    }
  }
  return std::min(fa, fb);
}

}  // namespace

BoltAxes axes_of(Vec3 direction) {
  const Vec3 first = std::abs(direction.x) < 0.7 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 u = unit(first - dot(first, direction) * direction);
  Vec3 v = cross(direction, u);
  if (v.x + v.y + v.z < 0) v = -v;
  return {u, v};
}

Clearance clearance_of(const HoleInWorld& h, Mm bolt_diameter, const BoltAxes& axes) {
  Clearance c;
  c.radius = (h.hole.diameter - bolt_diameter) / 2;
  const Mm half = h.hole.slotted() ? (h.hole.length - h.hole.diameter) / 2 : 0;
  if (std::abs(dot(h.slot_axis, axes.v)) < along_axis)
    c.travel[0] = half;
  else if (std::abs(dot(h.slot_axis, axes.u)) < along_axis)
    c.travel[1] = half;
  return c;
}

Clearance operator+(const Clearance& a, const Clearance& b) {
  return {{a.travel[0] + b.travel[0], a.travel[1] + b.travel[1]}, a.radius + b.radius};
}

void Shifts::add(const std::vector<Contribution>& more, const BoltAxes& axes, bool but_along_bed) {
  const Vec3 axis[2] = {axes.u, axes.v};
  for (const Contribution& c : more)
    for (int k = 0; k < 2; ++k) {
      const Shift s = along(c, but_along_bed ? Vec3{0, axis[k].y, axis[k].z} : axis[k]);
      const Mm half = (s.plus + s.minus) / 2;
      plus[k] += s.plus;
      minus[k] += s.minus;
      squares[k] += half * half;
    }
}

Reach Shifts::about(const std::array<Mm, 2>& offset) const {
  Reach reach;
  for (int k = 0; k < 2; ++k) {
    const Mm middle = offset[k] + (plus[k] - minus[k]) / 2;
    reach.worst.low[k] = offset[k] - minus[k];
    reach.worst.high[k] = offset[k] + plus[k];
    reach.rss.low[k] = middle - std::sqrt(squares[k]);
    reach.rss.high[k] = middle + std::sqrt(squares[k]);
  }
  return reach;
}

Reach reach_of(const std::array<Mm, 2>& offset, const std::vector<Contribution>& stack_up,
               const BoltAxes& axes) {
  Shifts shifts;
  shifts.add(stack_up, axes);
  return shifts.about(offset);
}

Mm float_along(const Clearance& clearance, int axis, Mm other_need) {
  const Mm residual = std::max(other_need - clearance.travel[1 - axis], 0.0);
  const Mm r = clearance.radius;
  if (r < 0) return r;
  return clearance.travel[axis] + std::sqrt(std::max(r * r - residual * residual, 0.0));
}

Mm joint_misfit(const std::vector<Clearance>& holes, const std::vector<Vec2>& centres) {
  Vec2 low = centres.front(), high = centres.front();
  for (const Vec2& c : centres) {
    low = {std::min(low.x, c.x), std::min(low.y, c.y)};
    high = {std::max(high.x, c.x), std::max(high.y, c.y)};
  }
  // The quick answer: a bolt in line with some hole's centre, or midway, along each axis
  // goes through all.
  const Vec2 middle = 0.5 * (low + high);
  Mm best = misfit_at(holes, centres, middle);
  for (const Vec2& in_x : centres)
    for (const Vec2& in_y : centres)
      for (const Vec2& p : {Vec2{in_x.x, in_y.y}, Vec2{in_x.x, middle.y}, Vec2{middle.x, in_y.y}}) {
        best = std::min(best, misfit_at(holes, centres, p));
        if (best <= 0) return best;
      }
  // The largest of convex functions is convex, and so is its least over one axis.
  return least(
      [&](Mm x) {
        return least([&](Mm y) { return misfit_at(holes, centres, {x, y}); }, low.y, high.y);
      },
      low.x, high.x);
}

}  // namespace bedwright
