// Vertices, edges and wires from outlines and holes.
#include "kernel/wires.h"

#include <BRepBuilderAPI_MakeEdge.hxx>
#include <BRepBuilderAPI_MakeFace.hxx>
#include <BRepPrimAPI_MakePrism.hxx>
#include <BRep_Builder.hxx>
#include <Geom_Circle.hxx>
#include <Geom_Line.hxx>
#include <Precision.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Edge.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Vertex.hxx>
#include <gp_Pln.hxx>

namespace bedwright {

namespace {

gp_Pnt in_plane(Vec2 p, const gp_Ax2& plane) {
  return plane.Location().Translated(p.x * gp_Vec(plane.XDirection()) + p.y * gp_Vec(plane.YDirection()));
}

TopoDS_Vertex vertex(const gp_Pnt& at) {
  TopoDS_Vertex made;
  BRep_Builder().MakeVertex(made, at, Precision::Confusion());
  return made;
}

// Circle about `centre` whose parameter is 0 at `start`, turning left (about the
// plane's direction) or right.
Handle(Geom_Circle) circle(const gp_Pnt& centre, const gp_Pnt& start, bool left, const gp_Ax2& plane) {
  const gp_Dir axis = left ? plane.Direction() : plane.Direction().Reversed();
  return new Geom_Circle(gp_Ax2(centre, axis, gp_Dir(gp_Vec(centre, start))), centre.Distance(start));
}

TopoDS_Edge straight_edge(const TopoDS_Vertex& from, const gp_Pnt& a, const TopoDS_Vertex& to,
                          const gp_Pnt& b) {
  const Handle(Geom_Line) line = new Geom_Line(a, gp_Dir(gp_Vec(a, b)));
  return BRepBuilderAPI_MakeEdge(line, from, to, 0, a.Distance(b));
}

// Centre from the bulge b over chord c: (1 - b^2) / (4 b) of c to the left of
// the chord's middle; included angle 4 atan |b|.
TopoDS_Edge arc_edge(const TopoDS_Vertex& from, Vec2 a, const TopoDS_Vertex& to, Vec2 b, double bulge,
                     const gp_Ax2& plane) {
  const Vec2 chord = b - a;
  const double offset = (1 - bulge * bulge) / (4 * bulge);
  const Vec2 centre{(a.x + b.x) / 2 - chord.y * offset, (a.y + b.y) / 2 + chord.x * offset};
  const auto curve = circle(in_plane(centre, plane), in_plane(a, plane), bulge > 0, plane);
  return BRepBuilderAPI_MakeEdge(curve, from, to, 0, 4 * std::atan(std::abs(bulge)));
}

}  // namespace

gp_Pnt point(Vec3 p) { return {p.x, p.y, p.z}; }

gp_Vec vector(Vec3 v) { return {v.x, v.y, v.z}; }

gp_Ax2 plane_frame(Vec3 origin, Vec3 x, Vec3 y) {
  return {point(origin), gp_Dir(vector(cross(x, y))), gp_Dir(vector(x))};
}

TopoDS_Wire outline_wire(const Outline& outline, const gp_Ax2& plane) {
  std::vector<gp_Pnt> points;
  std::vector<TopoDS_Vertex> corners;
  for (const Vertex& v : outline) {
    points.push_back(in_plane(v.at, plane));
    corners.push_back(vertex(points.back()));
  }
  const BRep_Builder builder;
  TopoDS_Wire wire;
  builder.MakeWire(wire);
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const std::size_t next = (i + 1) % outline.size();
    builder.Add(wire, outline[i].bulge == 0
                          ? straight_edge(corners[i], points[i], corners[next], points[next])
                          : arc_edge(corners[i], outline[i].at, corners[next], outline[next].at,
                                     outline[i].bulge, plane));
  }
  wire.Closed(true);
  return wire;
}

TopoDS_Wire circle_wire(Vec2 centre, Mm diameter, const gp_Ax2& plane) {
  const auto curve =
      circle(in_plane(centre, plane), in_plane(centre + Vec2{diameter / 2, 0}, plane), true, plane);
  const BRep_Builder builder;
  TopoDS_Wire wire;
  builder.MakeWire(wire);
  builder.Add(wire, BRepBuilderAPI_MakeEdge(curve));
  wire.Closed(true);
  return wire;
}

TopoDS_Wire hole_wire(const Hole& hole, const gp_Ax2& plane) {
  return hole.slotted() ? outline_wire(hole_outline(hole.at, hole.diameter, hole.length, hole.angle), plane)
                        : circle_wire(hole.at, hole.diameter, plane);
}

TopoDS_Face planar_face(const TopoDS_Wire& outer, const std::vector<TopoDS_Wire>& inner,
                        const gp_Ax2& plane) {
  BRepBuilderAPI_MakeFace face(gp_Pln(gp_Ax3(plane)), outer, false);
  for (const TopoDS_Wire& wire : inner) face.Add(TopoDS::Wire(wire.Reversed()));
  return face.Face();
}

TopoDS_Solid prism_solid(const TopoDS_Wire& outer, const std::vector<TopoDS_Wire>& inner, const gp_Ax2& plane,
                         Mm height) {
  BRepPrimAPI_MakePrism prism(planar_face(outer, inner, plane), height * gp_Vec(plane.Direction()));
  return TopoDS::Solid(prism.Shape());
}

}  // namespace bedwright
