// Reads STEP by the kernel's document framework and takes from it triangles and rims.
#include "model.h"

#include <BRepAdaptor_Curve.hxx>
#include <BRepAdaptor_Surface.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepMesh_IncrementalMesh.hxx>
#include <BRepTools.hxx>
#include <BRepTools_WireExplorer.hxx>
#include <BRep_Tool.hxx>
#include <IFSelect_ReturnStatus.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <Poly_Triangulation.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS.hxx>
#include <TopoDS_Face.hxx>
#include <TopoDS_Wire.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <cmath>
#include <stdexcept>

#include "drawing.h"
#include "label_name.h"

namespace inspector {
namespace {

Point point(const gp_XYZ& p) { return {p.X(), p.Y(), p.Z()}; }

// Triangles of every face, their corners brought together where faces meet.
Solid triangles_of(const TopoDS_Shape& shape, const std::string& part) {
  std::vector<Point> points;
  std::vector<Solid::Triangle> triangles;
  std::map<std::array<long, 3>, int> known;
  for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next()) {
    const TopoDS_Face& face = TopoDS::Face(it.Current());
    TopLoc_Location place;
    const Handle(Poly_Triangulation) mesh = BRep_Tool::Triangulation(face, place);
    if (mesh.IsNull()) throw std::runtime_error(part + ": a face of it cannot be cut into triangles");
    std::vector<int> index(mesh->NbNodes() + 1);
    for (int i = 1; i <= mesh->NbNodes(); ++i) {
      const Point p = point(mesh->Node(i).Transformed(place.Transformation()).XYZ());
      const std::array<long, 3> cell{std::lround(p.x * 1e4), std::lround(p.y * 1e4), std::lround(p.z * 1e4)};
      const auto [at, is_new] = known.try_emplace(cell, static_cast<int>(points.size()));
      if (is_new) points.push_back(p);
      index[i] = at->second;
    }
    for (int i = 1; i <= mesh->NbTriangles(); ++i) {
      int a = 0, b = 0, c = 0;
      mesh->Triangle(i).Get(a, b, c);
      if (face.Orientation() == TopAbs_REVERSED) std::swap(b, c);
      const Solid::Triangle t{index[a], index[b], index[c]};
      if (t[0] != t[1] && t[1] != t[2] && t[2] != t[0]) triangles.push_back(t);
    }
  }
  return {std::move(points), std::move(triangles)};
}

std::vector<Point> line_of(const TopoDS_Wire& wire, const TopoDS_Face& face) {
  std::vector<Point> line;
  for (BRepTools_WireExplorer it(wire, face); it.More(); it.Next()) {
    const BRepAdaptor_Curve curve(it.Current());
    const double from = curve.FirstParameter(), to = curve.LastParameter();
    const bool back = it.Current().Orientation() == TopAbs_REVERSED;
    const int steps = curve.GetType() == GeomAbs_Line ? 1 : 60;
    for (int i = 0; i < steps; ++i) {
      const double part = static_cast<double>(i) / steps;
      line.push_back(point(curve.Value(back ? to - part * (to - from) : from + part * (to - from)).XYZ()));
    }
  }
  return line;
}

Ring flat(const std::vector<Point>& line, Point origin, Point u, Point v) {
  Ring ring;
  for (const Point& p : line) ring.push_back({dot(p - origin, u), dot(p - origin, v)});
  return ring;
}

// A flat face's inner wires, each measured against the outer and the others.
void add_rims(const TopoDS_Face& face, std::vector<Rim>& rims) {
  const BRepAdaptor_Surface surface(face);
  if (surface.GetType() != GeomAbs_Plane) return;
  const TopoDS_Wire outer = BRepTools::OuterWire(face);
  std::vector<std::vector<Point>> inner;
  for (TopExp_Explorer it(face, TopAbs_WIRE); it.More(); it.Next())
    if (!it.Current().IsSame(outer)) inner.push_back(line_of(TopoDS::Wire(it.Current()), face));
  if (inner.empty()) return;
  Point normal = point(surface.Plane().Axis().Direction().XYZ());
  if (!surface.Plane().Direct()) normal = -1.0 * normal;
  if (face.Orientation() == TopAbs_REVERSED) normal = -1.0 * normal;
  const auto [u, v] = square_to(normal);
  const Point origin = point(surface.Plane().Location().XYZ());
  const Ring edge = flat(line_of(outer, face), origin, u, v);
  std::vector<Ring> flats;
  for (const auto& line : inner) flats.push_back(flat(line, origin, u, v));
  for (std::size_t i = 0; i < inner.size(); ++i) {
    Rim rim{{}, normal, inner[i], apart(flats[i], edge)};
    if (!holds(edge, flats[i][0])) rim.steel = -rim.steel;
    for (std::size_t j = 0; j < flats.size(); ++j) {
      if (i == j) continue;
      const bool over = holds(flats[j], flats[i][0]) || holds(flats[i], flats[j][0]);
      rim.steel = std::min(rim.steel, (over ? -1 : 1) * apart(flats[i], flats[j]));
    }
    Box box;
    for (const Point& p : inner[i]) box.add(p);
    rim.centre = 0.5 * (box.low + box.high);
    rims.push_back(std::move(rim));
  }
}

std::unique_ptr<Part> read_part(const TDF_Label& label) {
  auto part = std::make_unique<Part>();
  part->name = name_of(label);
  const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(label);
  part->sound = BRepCheck_Analyzer(shape).IsValid();
  BRepMesh_IncrementalMesh(shape, chord, false, 0.25);
  for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next())
    part->body.push_back(triangles_of(it.Current(), part->name));
  for (TopExp_Explorer it(shape, TopAbs_FACE); it.More(); it.Next())
    add_rims(TopoDS::Face(it.Current()), part->rims);
  if (part->body.empty()) throw std::runtime_error(part->name + ": no solid");
  return part;
}

Item place(const TDF_Label& label, const Part* part) {
  const gp_Trsf t = XCAFDoc_ShapeTool::GetLocation(label).Transformation();
  Item item;
  item.name = name_of(label);
  item.part = part;
  const gp_Mat turn = t.HVectorialPart();
  for (int k = 0; k < 3; ++k) item.axes[k] = point(turn.Column(k + 1));
  item.origin = point(t.TranslationPart());
  for (const Solid& s : part->body) {
    std::vector<Point> points = s.points();
    for (Point& p : points) p = item.world(p);
    item.body.emplace_back(std::move(points), s.triangles());
  }
  item.box = box_of(item.body);
  return item;
}

}  // namespace

Point Item::turned(Point p) const { return p.x * axes[0] + p.y * axes[1] + p.z * axes[2]; }
Point Item::world(Point p) const { return origin + turned(p); }

std::vector<Rim> Item::rims_along(Point axis) const {
  std::vector<Rim> found;
  for (const Rim& rim : part->rims) {
    if (std::abs(dot(turned(rim.outward), axis)) < 0.95) continue;
    Rim moved = rim;
    moved.centre = world(rim.centre);
    moved.outward = turned(rim.outward);
    for (Point& p : moved.line) p = world(p);
    found.push_back(std::move(moved));
  }
  return found;
}

const Item& Model::item(const std::string& name) const {
  const auto at = by_name.find(name);
  if (at == by_name.end()) throw std::runtime_error("bed.step has no " + name);
  return items[at->second];
}

Model read_model(const std::filesystem::path& file) {
  Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
  Handle(TDocStd_Document) document = new TDocStd_Document("XmlXCAF");
  STEPCAFControl_Reader reader;
  reader.SetNameMode(true);
  reader.SetColorMode(false);
  if (reader.ReadFile(file.c_str()) != IFSelect_RetDone || !reader.Transfer(document))
    throw std::runtime_error(file.string() + ": cannot be read");
  const auto shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  TDF_LabelSequence roots, components;
  shapes->GetFreeShapes(roots);
  if (roots.Length() != 1) throw std::runtime_error(file.string() + ": holds not one assembly");
  XCAFDoc_ShapeTool::GetComponents(roots.Value(1), components);
  Model model;
  std::map<std::string, const Part*> known;  // by the label's entry
  for (const TDF_Label& label : components) {
    TDF_Label referred;
    if (!XCAFDoc_ShapeTool::GetReferredShape(label, referred))
      throw std::runtime_error(file.string() + ": a component is no placed part");
    const std::string entry = std::to_string(referred.Tag());
    if (!known.count(entry)) {
      model.parts.push_back(read_part(referred));
      known[entry] = model.parts.back().get();
    }
    model.items.push_back(place(label, known[entry]));
    const std::string& name = model.items.back().name;
    if (!model.by_name.emplace(name, static_cast<int>(model.items.size()) - 1).second)
      throw std::runtime_error(file.string() + ": two items are called " + name);
  }
  return model;
}

}  // namespace inspector
