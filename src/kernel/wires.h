// Outlines and holes as kernel wires, and straight prisms from them.
#pragma once

#include <TopoDS_Solid.hxx>
#include <TopoDS_Wire.hxx>
#include <gp_Ax2.hxx>
#include <vector>

#include "bed/bed.h"

namespace bedwright {

gp_Pnt point(Vec3 p);
gp_Vec vector(Vec3 v);

// The plane through `origin` whose first axis is `x` and second `y` (unit, square).
gp_Ax2 plane_frame(Vec3 origin, Vec3 x, Vec3 y);

// Wires run counter-clockwise seen against the plane's direction, in its own
// coordinates. Arcs become true circles.
TopoDS_Wire outline_wire(const Outline& outline, const gp_Ax2& plane);
// One edge, so that a bore is one cylindrical face.
TopoDS_Wire circle_wire(Vec2 centre, Mm diameter, const gp_Ax2& plane);
TopoDS_Wire hole_wire(const Hole& hole, const gp_Ax2& plane);

// The face inside `outer` and outside every one of `inner`.
TopoDS_Face planar_face(const TopoDS_Wire& outer, const std::vector<TopoDS_Wire>& inner, const gp_Ax2& plane);

// That face swept along the plane's direction by `height` (> 0).
TopoDS_Solid prism_solid(const TopoDS_Wire& outer, const std::vector<TopoDS_Wire>& inner, const gp_Ax2& plane,
                         Mm height);

}  // namespace bedwright
