#include "bench/floor.h"

#include <BRepMesh_IncrementalMesh.hxx>
#include <BRep_Builder.hxx>
#include <HLRAlgo_EdgeStatus.hxx>
#include <HLRAlgo_Projector.hxx>
#include <HLRBRep_PolyAlgo.hxx>
#include <STEPControl_Writer.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <sstream>

#include "kernel/shapes.h"

namespace bedwright::floor {

std::vector<TopoDS_Shape> ready_shapes(const Bed& bed, bool picture) {
  Shapes shapes(bed, picture ? Detail::picture : Detail::full);
  std::vector<TopoDS_Shape> out;
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    const bool hardware = std::holds_alternative<Hardware>(bed.part_of(static_cast<int>(i)).form);
    if (!bed.items[i].shown || (picture && hardware)) continue;
    if (picture) BRepMesh_IncrementalMesh(shapes.part(bed.items[i].part), 0.5, false, 0.5);
    out.push_back(shapes.item(static_cast<int>(i)));
  }
  return out;
}

TopoDS_Compound together(const std::vector<TopoDS_Shape>& shapes) {
  const BRep_Builder builder;
  TopoDS_Compound whole;
  builder.MakeCompound(whole);
  for (const TopoDS_Shape& shape : shapes) builder.Add(whole, shape);
  return whole;
}

std::size_t bare_step(const TopoDS_Compound& whole) {
  STEPControl_Writer writer;
  writer.Transfer(whole, STEPControl_AsIs, false);
  StepData_StepWriter lines(writer.Model());
  lines.SendModel(Handle(StepData_Protocol)::DownCast(writer.Model()->Protocol()));
  std::ostringstream out;
  lines.Print(out);
  return out.str().size();
}

int bare_view(const std::vector<TopoDS_Shape>& shapes, const gp_Ax2& eye) {
  const Handle(HLRBRep_PolyAlgo) algo = new HLRBRep_PolyAlgo;
  for (const TopoDS_Shape& shape : shapes) algo->Load(shape);
  algo->Projector(HLRAlgo_Projector(eye));
  algo->Update();
  int count = 0;
  for (algo->InitHide(); algo->MoreHide(); algo->NextHide()) {
    HLRAlgo_EdgeStatus status;
    TopoDS_Shape shape;
    bool a = false, b = false, c = false, d = false;
    algo->Hide(status, shape, a, b, c, d);
    if (!status.AllHidden()) count += status.NbVisiblePart();
  }
  return count;
}

}  // namespace bedwright::floor
