// Holes and studs put into a solid's flat faces without Boolean operations: the
// faces get inner wires, and the swept sides of those wires close the shell.
// Every edge is shared, so the result is as tight as the prism it came from.
#pragma once

#include <TopoDS_Face.hxx>
#include <TopoDS_Solid.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Ax2.hxx>
#include <vector>

#include "units/units.h"

namespace bedwright {

class ShellEdit {
 public:
  // `solid` has one shell.
  explicit ShellEdit(const TopoDS_Solid& solid);

  // A hole along the plane's direction from the flat face that lies in the
  // plane, `depth` away to the one where it leaves. `wire` lies in the plane,
  // counter-clockwise about the direction, inside both faces and clear of every
  // other wire: nothing here checks that (see flats.h).
  // Throws std::logic_error when there are no such faces.
  void through_hole(const TopoDS_Wire& wire, const gp_Ax2& plane, Mm depth);

  // A stud that stands `height` out of the flat face that lies in the plane,
  // along the plane's direction. Same demands.
  void stud(const TopoDS_Wire& wire, const gp_Ax2& plane, Mm height);

  TopoDS_Solid solid() const;

 private:
  TopoDS_Face& face_in(const gp_Ax2& plane);

  std::vector<TopoDS_Face> faces_;
};

}  // namespace bedwright
