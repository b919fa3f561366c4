// What the kernel says of a shape, for tests.
#pragma once

#include <BRepCheck_Analyzer.hxx>
#include <BRepClass3d_SolidClassifier.hxx>
#include <BRepGProp.hxx>
#include <GProp_GProps.hxx>
#include <TopExp.hxx>
#include <TopTools_IndexedDataMapOfShapeListOfShape.hxx>

#include "bed/bed.h"

namespace bedwright::sample {

struct Measured {
  bool valid = false;   // the kernel's own check of topology, tolerances and orientation
  bool closed = false;  // every edge borders two faces, or is a seam
  Mm3 volume = 0;
  Vec3 centre;
  int faces = 0;
};

inline Measured measure(const TopoDS_Shape& shape) {
  Measured m;
  m.valid = BRepCheck_Analyzer(shape).IsValid();
  TopTools_IndexedDataMapOfShapeListOfShape edges;
  TopExp::MapShapesAndAncestors(shape, TopAbs_EDGE, TopAbs_FACE, edges);
  m.closed = edges.Extent() > 0;
  for (int i = 1; i <= edges.Extent(); ++i) m.closed = m.closed && (edges(i).Extent() == 2);
  GProp_GProps properties;
  BRepGProp::VolumeProperties(shape, properties, 1e-11);
  m.volume = properties.Mass();
  m.centre = {properties.CentreOfMass().X(), properties.CentreOfMass().Y(), properties.CentreOfMass().Z()};
  TopTools_IndexedMapOfShape faces;
  TopExp::MapShapes(shape, TopAbs_FACE, faces);
  m.faces = faces.Extent();
  return m;
}

// Whether a point is in the steel.
inline bool inside(const TopoDS_Shape& solid, Vec3 p) {
  BRepClass3d_SolidClassifier classifier(solid, gp_Pnt(p.x, p.y, p.z), 1e-7);
  return classifier.State() == TopAbs_IN;
}

}  // namespace bedwright::sample
