// Solids of plates: the outline with its holes, made thick.
#include "kernel/build.h"
#include "kernel/flats.h"
#include "kernel/wires.h"

namespace bedwright {

TopoDS_Solid build_plate(const Plate& plate) {
  const gp_Ax2 plane = plane_frame({}, {1, 0, 0}, {0, 1, 0});
  const std::vector<bool> clear = clear_holes(plate.outline, plate.holes);
  std::vector<TopoDS_Wire> wires;
  std::vector<CutHole> rest;
  for (std::size_t i = 0; i < plate.holes.size(); ++i) {
    if (clear[i]) {
      wires.push_back(hole_wire(plate.holes[i], plane));
    } else {
      rest.push_back({plate.holes[i], plane, 1, plate.thickness + 1});
    }
  }
  return cut_holes(prism_solid(outline_wire(plate.outline, plane), wires, plane, plate.thickness), rest);
}

}  // namespace bedwright
