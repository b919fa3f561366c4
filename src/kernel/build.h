// One part of each kind as a kernel shape in its own frame.
#pragma once

#include <TopoDS_Shape.hxx>
#include <TopoDS_Solid.hxx>

#include "bed/bed.h"

namespace bedwright {

TopoDS_Solid build_plate(const Plate& plate);

// Throws std::invalid_argument with profile().
TopoDS_Solid build_member(const Member& member);

// A compound of solids, one for each block, not fused.
TopoDS_Shape build_bought(const Bought& bought);

TopoDS_Solid build_hardware(const Hardware& hardware);
// What stays outside the plies of a bolt: the head.
TopoDS_Solid build_bolt_head(const Hardware& bolt);

// `solid` less the holes that cannot be put in as face wires, by one Boolean
// operation. Each hole runs along its plane's direction from `above` over the
// plane to `depth` under it (the plane's direction points into the steel).
// Throws std::runtime_error when the operation fails or leaves nothing.
struct CutHole {
  Hole hole;
  gp_Ax2 plane;
  Mm above = 0, depth = 0;
};
TopoDS_Solid cut_holes(const TopoDS_Solid& solid, const std::vector<CutHole>& holes);

}  // namespace bedwright
