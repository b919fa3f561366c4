// Solids of bought items: the boxes of their envelopes.
#include <BRep_Builder.hxx>
#include <TopoDS_Compound.hxx>

#include "kernel/build.h"
#include "kernel/wires.h"

namespace bedwright {

namespace {

TopoDS_Solid build_block(const Block& block) {
  const gp_Ax2 plane =
      plane_frame(block.frame.point({0, 0, block.low.z}), block.frame.x_axis, block.frame.y_axis);
  const TopoDS_Wire wire =
      block.radius > 0 ? circle_wire({}, 2 * block.radius, plane)
      : !block.base.empty()
          ? outline_wire(straight(block.base), plane)
          : outline_wire(rectangle({block.low.x, block.low.y}, {block.high.x, block.high.y}), plane);
  return prism_solid(wire, {}, plane, block.high.z - block.low.z);
}

}  // namespace

TopoDS_Shape build_bought(const Bought& bought) {
  const BRep_Builder builder;
  TopoDS_Compound compound;
  builder.MakeCompound(compound);
  for (const Block& block : bought.envelope) builder.Add(compound, build_block(block));
  return compound;
}

}  // namespace bedwright
