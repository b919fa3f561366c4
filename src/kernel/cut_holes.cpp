// Holes cut by Boolean operations, for faces where they cannot be put in as wires.
#include <BRepAlgoAPI_Cut.hxx>
#include <TopExp_Explorer.hxx>
#include <TopTools_ListOfShape.hxx>
#include <TopoDS.hxx>
#include <stdexcept>

#include "kernel/build.h"
#include "kernel/wires.h"

namespace bedwright {

TopoDS_Solid cut_holes(const TopoDS_Solid& solid, const std::vector<CutHole>& holes) {
  if (holes.empty()) return solid;
  TopTools_ListOfShape whole, tools;
  whole.Append(solid);
  for (const CutHole& cut : holes) {
    const gp_Ax2 start = cut.plane.Translated(-cut.above * gp_Vec(cut.plane.Direction()));
    tools.Append(prism_solid(hole_wire(cut.hole, start), {}, start, cut.above + cut.depth));
  }
  BRepAlgoAPI_Cut cut;
  cut.SetArguments(whole);
  cut.SetTools(tools);
  cut.Build();
  if (cut.HasErrors()) throw std::runtime_error("the kernel could not cut the holes");
  TopExp_Explorer it(cut.Shape(), TopAbs_SOLID);
  if (!it.More()) throw std::runtime_error("the holes leave nothing of the part");
  TopoDS_Solid result = TopoDS::Solid(it.Current());
  it.Next();
  if (it.More()) throw std::runtime_error("the holes cut the part in pieces");
  return result;
}

}  // namespace bedwright
