// Each form as bodies with mass; hardware and bought items as they state it.
#include "loads/body.h"

#include <Eigen/Geometry>
#include <algorithm>
#include <numbers>
#include <stdexcept>
#include <tuple>

#include "bed/names.h"

namespace bedwright {
namespace {

using Eigen::Matrix3d;
using Eigen::Vector3d;

Vector3d vector(Vec3 v) { return {v.x, v.y, v.z}; }
Matrix3d square(Vec3 v) { return vector(v) * vector(v).transpose(); }

// Chords of arcs: the second moments need no more.
constexpr Mm chord = 0.01;

// Volume and second moments about the origin, by signed tetrahedra to the origin.
struct Solid {
  double volume = 0;
  Vector3d first = Vector3d::Zero();
  Matrix3d second = Matrix3d::Zero();
  void add(const Vector3d& a, const Vector3d& b, const Vector3d& c) {
    const double six = a.dot(b.cross(c));
    const Vector3d sum = a + b + c;
    volume += six / 6;
    first += six / 24 * sum;
    second += six / 120 * (a * a.transpose() + b * b.transpose() + c * c.transpose() + sum * sum.transpose());
  }
};

// Between two copies of one polygon, the second lying on the outer side.
Solid between(const std::vector<Vector3d>& start, const std::vector<Vector3d>& end) {
  Solid solid;
  const std::size_t n = start.size();
  for (std::size_t i = 0; i < n; ++i) {
    const std::size_t j = (i + 1) % n;
    solid.add(start[i], start[j], end[j]);
    solid.add(start[i], end[j], end[i]);
    if (i > 0 && i + 1 < n) {
      solid.add(start[0], start[j], start[i]);
      solid.add(end[0], end[i], end[j]);
    }
  }
  return solid;
}

Solid solid_of(const Plate& plate) {
  std::vector<Vector3d> low, high;
  for (Vec2 p : flattened(plate.outline, chord)) {
    low.emplace_back(p.x, p.y, 0);
    high.emplace_back(p.x, p.y, plate.thickness);
  }
  return between(low, high);
}

// What an outline of the profile fills along the member.
Solid filled(const Member& member, const Outline& outline) {
  std::vector<Vector3d> start, end;
  const double s = std::tan(member.start_mitre), e = std::tan(member.end_mitre);
  for (Vec2 p : flattened(outline, chord)) {
    start.emplace_back(p.x * s, p.x, p.y);
    end.emplace_back(member.length + p.x * e, p.x, p.y);
  }
  return between(start, end);
}

Solid solid_of(const Member& member) {
  Solid solid = filled(member, profile(member.section));
  if (const auto inside = hollow(member.section)) {
    const Solid out = filled(member, *inside);
    solid.volume -= out.volume;
    solid.first -= out.first;
    solid.second -= out.second;
  }
  return solid;
}

double hole_area(const Hole& h) {
  return std::numbers::pi / 4 * h.diameter * h.diameter + h.diameter * (h.length - h.diameter);
}

void take_out(Solid& solid, double volume, Vec3 at) {
  solid.volume -= volume;
  solid.first -= volume * vector(at);
  solid.second -= volume * square(at);
}

// About the solid's own centre, for a body of that mass.
Matrix3d second_about_centre(const Solid& solid, Kg mass) {
  if (solid.volume <= 0) return Matrix3d::Zero();
  const Vector3d centre = solid.first / solid.volume;
  return mass / solid.volume * (solid.second - solid.volume * centre * centre.transpose());
}

Matrix3d second_of(const Bought& bought, Kg mass) {
  Body all;
  for (const Block& k : bought.envelope) {
    Body block;
    const Vec3 size = k.high - k.low;
    Vector3d squares{size.x * size.x / 12, size.y * size.y / 12, size.z * size.z / 12};
    block.mass = size.x * size.y * size.z;
    block.centre = 0.5 * (k.low + k.high);
    if (k.radius > 0) {
      squares[0] = squares[1] = k.radius * k.radius / 4;
      block.mass = std::numbers::pi * k.radius * k.radius * size.z;
      block.centre = {0, 0, (k.low.z + k.high.z) / 2};
    }
    block.second = block.mass * squares.asDiagonal();
    all = together(all, placed(block, k.frame));
  }
  return all.mass > 0 ? Matrix3d(mass / all.mass * all.second) : Matrix3d::Zero();
}

// Hardware is of its bolt's kind. There is no kind taken for granted: one that is not
// listed does not compile, and one that no item is of throws.
Carried carried_of(Kind kind) {
  switch (kind) {
    case Kind::main:
    case Kind::cross_member:
    case Kind::front_member:
    case Kind::rear_member:
    case Kind::tongue:
    case Kind::tongue_plate:
    case Kind::corner_gusset:
    case Kind::tab:
    case Kind::tab_pad:
    case Kind::jack_plate:
    case Kind::jack:
    case Kind::coupler:
    case Kind::tongue_jack:
    case Kind::jack_bolt:
    case Kind::tongue_jack_bolt:
      return Carried::frame;
    case Kind::rail:
    case Kind::bunk:
    case Kind::joint_gusset:
    case Kind::track_stop:
    case Kind::log_stop:
    case Kind::clamp:
    case Kind::track_bolt:
    case Kind::bunk_bolt:
    case Kind::gusset_bolt:
    case Kind::stop_bolt:
      return Carried::track;
    case Kind::head:
      return Carried::head;
    case Kind::axle:
    case Kind::wheel:
      return Carried::gear;
    case Kind::none:
    case Kind::end_member:
    case Kind::jack_tube:
    case Kind::drain:
    case Kind::hardware:
    case Kind::joint:
    case Kind::joints:
    case Kind::track:
    case Kind::log:
    case Kind::jacks:
    case Kind::main_web:
    case Kind::tab_weld:
    case Kind::bed:
    case Kind::tongue_load:
    case Kind::overall_width:
    case Kind::overall_size:
    case Kind::law:
    case Kind::bolt_size:
      break;
  }
  throw std::logic_error("no item that weighs is of the kind '" + word(kind) + "'");
}

// Longer items are spread along the bed; shorter ones act at their centre.
constexpr Mm long_item = 400;

Weight weight_of(const Bed& bed, const Item& item, const Body& body, const Box3& local) {
  Weight w;
  w.carried = carried_of(item.id.kind);
  w.mass = body.mass;
  w.centre = item.placement.point(body.centre);
  w.from = w.to = w.centre.x;
  const Vec3 along = item.placement.x_axis;
  const Mm length = (local.high.x - local.low.x) * std::abs(along.x);
  const bool member = std::holds_alternative<Member>(bed.parts[item.part].form);
  if (member && std::abs(along.x) > 0.5 && length > long_item) {
    w.from -= length / 2;
    w.to += length / 2;
  }
  return w;
}

}  // namespace

Body body_of(const Part& part) {
  Body body;
  body.mass = mass(part);
  if (std::holds_alternative<Hardware>(part.form)) {
    body.centre = centroid(part);
  } else if (const Bought* bought = std::get_if<Bought>(&part.form)) {
    body.centre = bought->centre_of_mass;
    body.second = second_of(*bought, body.mass);
  } else if (const Plate* plate = std::get_if<Plate>(&part.form)) {
    body.centre = centroid(part);
    Solid solid = solid_of(*plate);
    for (const Hole& h : plate->holes)
      take_out(solid, hole_area(h) * plate->thickness, {h.at.x, h.at.y, plate->thickness / 2});
    body.second = second_about_centre(solid, body.mass);
  } else {
    const Member& member = std::get<Member>(part.form);
    body.centre = centroid(part);
    Solid solid = solid_of(member);
    for (const FaceHole& h : member.holes) {
      const HoleFrame f = hole_frame(member.section, h);
      take_out(solid, hole_area(h.hole) * f.thickness, f.centre - (f.thickness / 2) * f.outward);
    }
    body.second = second_about_centre(solid, body.mass);
  }
  return body;
}

Body placed(const Body& body, const Placement& placement) {
  Matrix3d turn;
  turn << vector(placement.x_axis), vector(placement.y_axis), vector(placement.z_axis());
  return {body.mass, placement.point(body.centre), turn * body.second * turn.transpose()};
}

Body together(const Body& a, const Body& b) {
  Body sum;
  sum.mass = a.mass + b.mass;
  if (sum.mass <= 0) return sum;
  sum.centre = (1 / sum.mass) * (a.mass * a.centre + b.mass * b.centre);
  sum.second =
      a.second + b.second + a.mass * square(a.centre - sum.centre) + b.mass * square(b.centre - sum.centre);
  return sum;
}

Vec3 inertia(const Body& body) {
  constexpr double to_m2 = 1e-6;
  const double all = body.second.trace();
  return {to_m2 * (all - body.second(0, 0)), to_m2 * (all - body.second(1, 1)),
          to_m2 * (all - body.second(2, 2))};
}

BedWeights weigh(const Bed& bed) {
  std::vector<Body> bodies(bed.parts.size());
  std::vector<Box3> boxes(bed.parts.size());
  for (std::size_t i = 0; i < bed.parts.size(); ++i) {
    bodies[i] = body_of(bed.parts[i]);
    if (std::holds_alternative<Member>(bed.parts[i].form)) boxes[i] = local_bounds(bed.parts[i]);
  }
  // Sums about the origin, shifted to the centre at the end.
  struct Sum {
    Kg mass = 0;
    Vec3 first;
    Matrix3d second = Matrix3d::Zero();
  } sums[4];
  BedWeights all;
  all.weights.reserve(bed.items.size());
  for (const Item& item : bed.items) {
    if (!item.shown) continue;
    const Body& local = bodies[item.part];
    const Weight w = weight_of(bed, item, local, boxes[item.part]);
    all.weights.push_back(w);
    Sum& sum = sums[static_cast<int>(w.carried)];
    sum.mass += w.mass;
    sum.first = sum.first + w.mass * w.centre;
    sum.second += (item.bolt < 0 ? placed(local, item.placement).second : Matrix3d::Zero().eval()) +
                  w.mass * square(w.centre);
  }
  Body* bodies_of[] = {&all.frame, &all.track, &all.head, &all.gear};
  for (int i = 0; i < 4; ++i) {
    Body& b = *bodies_of[i];
    b.mass = sums[i].mass;
    if (b.mass <= 0) continue;
    b.centre = (1 / b.mass) * sums[i].first;
    b.second = sums[i].second - b.mass * square(b.centre);
  }
  std::stable_sort(all.weights.begin(), all.weights.end(), [](const Weight& a, const Weight& b) {
    return std::tie(a.carried, a.from, a.to) < std::tie(b.carried, b.from, b.to);
  });
  // Weights at one place along the bed count as one: the beams ask no more.
  std::vector<Weight> merged;
  for (const Weight& w : all.weights) {
    if (!merged.empty() && merged.back().carried == w.carried &&
        std::abs(merged.back().from - w.from) < same_place &&
        std::abs(merged.back().to - w.to) < same_place) {
      Weight& m = merged.back();
      m.centre = (1 / (m.mass + w.mass)) * (m.mass * m.centre + w.mass * w.centre);
      m.mass += w.mass;
    } else if (w.mass > 0) {
      merged.push_back(w);
    }
  }
  all.weights = std::move(merged);
  return all;
}

}  // namespace bedwright
