// Volumes, centroids and bounds in closed form.
#include <numbers>
#include <stdexcept>

#include "bed/bed.h"

namespace bedwright {
namespace {

using std::numbers::pi;

// Steel, 7850 kg/m3: the density behind the handbook weights (490 lb/ft3).
constexpr double steel_kg_per_mm3 = 7850e-9;

Mm2 hole_area(const Hole& h) {
  return pi / 4 * h.diameter * h.diameter + h.diameter * (h.length - h.diameter);
}
Mm2 hexagon_area(Mm flats) { return std::sqrt(3.0) / 2 * flats * flats; }
Mm2 disc_area(Mm diameter) { return pi / 4 * diameter * diameter; }

// A volume and its first moment, so that pieces add up.
struct Moment {
  Mm3 volume = 0;
  Vec3 first;
  void add(Mm3 v, Vec3 centre) {
    volume += v;
    first = first + v * centre;
  }
};

Moment moment(const Plate& p) {
  const AreaProperties a = area_properties(p.outline);
  Moment m;
  m.add(a.area * p.thickness, {a.centroid.x, a.centroid.y, p.thickness / 2});
  for (const Hole& h : p.holes) m.add(-hole_area(h) * p.thickness, {h.at.x, h.at.y, p.thickness / 2});
  return m;
}

// With ends x = y tan(s) and x = L + y tan(e), the length at y is
// L + y (tan e - tan s); integrate over the profile (yc its centroid, J the
// second moment about y = 0).
Moment moment(const Member& member) {
  const AreaProperties a = steel_properties(member.section);
  const double ts = std::tan(member.start_mitre), te = std::tan(member.end_mitre);
  if ((ts != 0 || te != 0) && member.section.shape == Shape::angle)
    throw std::invalid_argument("a mitred angle: only what is symmetric about z has a closed form here");
  const Mm length = member.length, yc = a.centroid.x, zc = a.centroid.y;
  const Mm4 about_back = a.about_y + a.area * yc * yc;
  Moment m;
  m.volume = a.area * (length + yc * (te - ts));
  m.first.x =
      0.5 * (length * length * a.area + 2 * length * te * yc * a.area + (te * te - ts * ts) * about_back);
  m.first.y = length * yc * a.area + (te - ts) * about_back;
  m.first.z = zc * m.volume;
  for (const FaceHole& fh : member.holes) {
    const HoleFrame f = hole_frame(member.section, fh);
    m.add(-hole_area(fh.hole) * f.thickness, f.centre - (f.thickness / 2) * f.outward);
  }
  return m;
}

Moment moment(const Bought& b) {
  Moment m;
  for (const Block& k : b.envelope) {
    const Mm height = k.high.z - k.low.z;
    if (!k.base.empty()) {
      const AreaProperties a = area_properties(straight(k.base));
      m.add(a.area * height, k.frame.point({a.centroid.x, a.centroid.y, k.low.z + height / 2}));
    } else if (k.radius > 0)
      m.add(pi * k.radius * k.radius * height, k.frame.point({0, 0, k.low.z + height / 2}));
    else
      m.add((k.high.x - k.low.x) * (k.high.y - k.low.y) * height, k.frame.point(0.5 * (k.low + k.high)));
  }
  return m;
}

Moment moment(const Hardware& h) {
  Moment m;
  const BoltSize& s = h.size;
  const auto ring = [&](const Washer& w) {
    m.add((disc_area(w.outside) - disc_area(w.inside)) * w.thickness, {0, 0, -w.thickness / 2});
  };
  switch (h.kind) {
    case HardwareKind::bolt:
      m.add(hexagon_area(s.head_flats) * s.head_height, {0, 0, s.head_height / 2});
      m.add(disc_area(s.diameter) * h.length, {0, 0, -h.length / 2});
      break;
    case HardwareKind::nut:
      m.add((hexagon_area(s.nut_flats) - disc_area(s.diameter)) * s.nut_height, {0, 0, -s.nut_height / 2});
      break;
    case HardwareKind::flat_washer:
      ring(s.flat);
      break;
    case HardwareKind::lock_washer:
      ring(s.lock);
      break;
  }
  return m;
}

Moment moment_of(const Part& part) {
  return std::visit([](const auto& form) { return moment(form); }, part.form);
}

void add_arc_extremes(const Outline& outline, Box3& box) {
  // Chords of 0.01 mm sagitta: bounds are for culling and overall sizes.
  for (Vec2 p : flattened(outline, 0.01)) box.add({p.x, p.y, 0});
}

Box3 bounds_of(const Plate& p) {
  Box3 box;
  add_arc_extremes(p.outline, box);
  box.high.z = p.thickness;
  return box;
}

Box3 bounds_of(const Member& m) {
  Box3 box;
  const Section& s = m.section;
  const Mm low = s.shape == Shape::angle ? 0 : -s.depth / 2, high = low + s.depth;
  for (Mm y : {0.0, s.flange})
    for (Mm z : {low, high}) {
      box.add({y * std::tan(m.start_mitre), y, z});
      box.add({m.length + y * std::tan(m.end_mitre), y, z});
    }
  return box;
}

// Adds the block, of an item placed there.
void add_block(const Block& k, const Placement& placed, Box3& box) {
  const Vec3 low = k.radius > 0 ? Vec3{-k.radius, -k.radius, k.low.z} : k.low;
  const Vec3 high = k.radius > 0 ? Vec3{k.radius, k.radius, k.high.z} : k.high;
  for (Mm x : {low.x, high.x})
    for (Mm y : {low.y, high.y})
      for (Mm z : {low.z, high.z}) box.add(placed.point(k.frame.point({x, y, z})));
}

Box3 bounds_of(const Bought& b) {
  Box3 box;
  for (const Block& k : b.envelope) add_block(k, {}, box);
  return box;
}

Box3 bounds_of(const Hardware& h) {
  Box3 box;
  const BoltSize& s = h.size;
  const auto cylinder = [&](Mm radius, Mm from, Mm to) {
    box.add({-radius, -radius, from});
    box.add({radius, radius, to});
  };
  const double corners = 1 / std::sqrt(3.0);  // half across corners per across flats
  switch (h.kind) {
    case HardwareKind::bolt:
      cylinder(corners * s.head_flats, -h.length, s.head_height);
      break;
    case HardwareKind::nut:
      cylinder(corners * s.nut_flats, -s.nut_height, 0);
      break;
    case HardwareKind::flat_washer:
      cylinder(s.flat.outside / 2, -s.flat.thickness, 0);
      break;
    case HardwareKind::lock_washer:
      cylinder(s.lock.outside / 2, -s.lock.thickness, 0);
      break;
  }
  return box;
}

}  // namespace

Block prism_block(const Placement& frame, std::vector<Vec2> points, Mm from, Mm to) {
  Block block;
  block.frame = frame;
  block.base = convex_hull(std::move(points));
  Box3 around;
  for (const Vec2& p : block.base) around.add({p.x, p.y, from});
  around.add({block.base.front().x, block.base.front().y, to});
  block.low = around.low;
  block.high = around.high;
  return block;
}

Mm3 volume(const Part& part) { return moment_of(part).volume; }

Vec3 centroid(const Part& part) {
  const Moment m = moment_of(part);
  return (1 / m.volume) * m.first;
}

Kg mass(const Part& part) {
  if (const Bought* b = std::get_if<Bought>(&part.form)) return b->mass;
  return steel_kg_per_mm3 * volume(part);
}

Box3 local_bounds(const Part& part) {
  return std::visit([](const auto& form) { return bounds_of(form); }, part.form);
}

Box3 bounds(const Bed& bed, int item) {
  const Box3 local = local_bounds(bed.part_of(item));
  Box3 box;
  for (Mm x : {local.low.x, local.high.x})
    for (Mm y : {local.low.y, local.high.y})
      for (Mm z : {local.low.z, local.high.z}) box.add(bed.items[item].placement.point({x, y, z}));
  return box;
}

std::vector<Box3> block_bounds(const Bed& bed, int item) {
  std::vector<Box3> all;
  for (const Block& k : std::get<Bought>(bed.part_of(item).form).envelope)
    add_block(k, bed.items[item].placement, all.emplace_back());
  return all;
}

}  // namespace bedwright
