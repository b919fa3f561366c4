// Solids of bolts, nuts and washers.
#include <numbers>
#include <stdexcept>

#include "kernel/build.h"
#include "kernel/shell_edit.h"
#include "kernel/wires.h"

namespace bedwright {

namespace {

// Across the flats along Y, corners on X.
Outline hexagon(Mm flats) {
  const Mm radius = flats / std::numbers::sqrt3;
  Outline outline;
  for (int i = 0; i < 6; ++i) {
    const Radians angle = i * 60 * degree;
    outline.push_back({{radius * std::cos(angle), radius * std::sin(angle)}});
  }
  return outline;
}

gp_Ax2 level(Mm z) { return plane_frame({0, 0, z}, {1, 0, 0}, {0, 1, 0}); }

TopoDS_Solid build_bolt(const Hardware& bolt) {
  ShellEdit edit(build_bolt_head(bolt));
  const gp_Ax2 down = plane_frame({}, {1, 0, 0}, {0, -1, 0});
  edit.stud(circle_wire({}, bolt.size.diameter, down), down, bolt.length);
  return edit.solid();
}

TopoDS_Solid build_ring(const Washer& washer) {
  const gp_Ax2 base = level(-washer.thickness);
  return prism_solid(circle_wire({}, washer.outside, base), {circle_wire({}, washer.inside, base)}, base,
                     washer.thickness);
}

}  // namespace

TopoDS_Solid build_bolt_head(const Hardware& bolt) {
  return prism_solid(outline_wire(hexagon(bolt.size.head_flats), level(0)), {}, level(0),
                     bolt.size.head_height);
}

TopoDS_Solid build_hardware(const Hardware& hardware) {
  const BoltSize& size = hardware.size;
  const gp_Ax2 nut_base = level(-size.nut_height);
  switch (hardware.kind) {
    case HardwareKind::bolt:
      return build_bolt(hardware);
    case HardwareKind::nut:
      return prism_solid(outline_wire(hexagon(size.nut_flats), nut_base),
                         {circle_wire({}, size.diameter, nut_base)}, nut_base, size.nut_height);
    case HardwareKind::flat_washer:
      return build_ring(size.flat);
    case HardwareKind::lock_washer:
      return build_ring(size.lock);
  }
  throw std::logic_error("hardware of no known kind");
}

}  // namespace bedwright
