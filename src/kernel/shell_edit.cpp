// Opens faces, adds inner wires and sweeps them, and closes the shell again.
#include "kernel/shell_edit.h"

#include <BRepAdaptor_Surface.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Builder.hxx>
#include <BRep_Tool.hxx>
#include <Geom_Plane.hxx>
#include <Precision.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Iterator.hxx>
#include <TopoDS_Shell.hxx>
#include <stdexcept>

#include "kernel/wires.h"

namespace bedwright {

namespace {

bool lies_in(const TopoDS_Face& face, const gp_Ax2& plane) {
  const auto surface = Handle(Geom_Plane)::DownCast(BRep_Tool::Surface(face));
  if (surface.IsNull()) return false;
  const gp_Pln found = surface->Pln();
  return found.Axis().Direction().IsParallel(plane.Direction(), Precision::Angular()) &&
         found.Distance(plane.Location()) < Precision::Confusion();
}

// Same surface and wires, open for more wires. Wires seen through the face carry
// its orientation, and Add takes it off again.
TopoDS_Face open_copy(const TopoDS_Face& face) {
  TopoDS_Face copy = TopoDS::Face(face.EmptyCopied());
  for (TopoDS_Iterator wire(face); wire.More(); wire.Next()) BRep_Builder().Add(copy, wire.Value());
  return copy;
}

TopoDS_Wire only_wire(const TopoDS_Shape& cap) {
  return TopoDS::Wire(TopExp_Explorer(cap, TopAbs_WIRE).Current());
}

// A prism taken apart. The kernel returns the caps as faces of the finished
// solid only up to orientation, so they are found by identity.
struct Sweep {
  TopoDS_Face first, last;
  std::vector<TopoDS_Face> sides;
};

Sweep sweep(const TopoDS_Wire& wire, const gp_Ax2& plane, Mm height) {
  BRepPrimAPI_MakePrism prism(planar_face(wire, {}, plane), height * gp_Vec(plane.Direction()));
  Sweep parts;
  for (TopExp_Explorer it(prism.Shape(), TopAbs_FACE); it.More(); it.Next()) {
    const TopoDS_Face& face = TopoDS::Face(it.Current());
    if (face.IsSame(prism.FirstShape())) {
      parts.first = face;
    } else if (face.IsSame(prism.LastShape())) {
      parts.last = face;
    } else {
      parts.sides.push_back(face);
    }
  }
  return parts;
}

}  // namespace

ShellEdit::ShellEdit(const TopoDS_Solid& solid) {
  for (TopExp_Explorer it(solid, TopAbs_FACE); it.More(); it.Next()) {
    faces_.push_back(open_copy(TopoDS::Face(it.Current())));
  }
}

TopoDS_Face& ShellEdit::face_in(const gp_Ax2& plane) {
  for (TopoDS_Face& face : faces_) {
    if (lies_in(face, plane)) return face;
  }
  throw std::logic_error("no flat face lies in the plane of the hole");
}

void ShellEdit::through_hole(const TopoDS_Wire& wire, const gp_Ax2& plane, Mm depth) {
  const Sweep plug = sweep(wire, plane, depth);
  // Both caps face out of the steel, as the faces they lie in do: their wires
  // bound the plug, and reversed they bound the hole.
  const BRep_Builder builder;
  builder.Add(face_in(plane), only_wire(plug.first).Reversed());
  builder.Add(face_in(plane.Translated(depth * gp_Vec(plane.Direction()))), only_wire(plug.last).Reversed());
  for (const TopoDS_Face& side : plug.sides) faces_.push_back(TopoDS::Face(side.Reversed()));
}

void ShellEdit::stud(const TopoDS_Wire& wire, const gp_Ax2& plane, Mm height) {
  const Sweep peg = sweep(wire, plane, height);
  // The buried cap faces into the steel, against the face it lies in; its wire
  // so turned already bounds a hole in that face.
  BRep_Builder().Add(face_in(plane), only_wire(peg.first));
  for (const TopoDS_Face& side : peg.sides) faces_.push_back(side);
  faces_.push_back(peg.last);
}

TopoDS_Solid ShellEdit::solid() const {
  const BRep_Builder builder;
  TopoDS_Shell shell;
  builder.MakeShell(shell);
  for (const TopoDS_Face& face : faces_) builder.Add(shell, face);
  shell.Closed(true);
  TopoDS_Solid solid;
  builder.MakeSolid(solid);
  builder.Add(solid, shell);
  return solid;
}

}  // namespace bedwright
