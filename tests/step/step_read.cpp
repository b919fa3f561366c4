// Reads a STEP file through the kernel's document framework, which knows nothing
// of how the file was written, and prints what it found as JSON: the parts with
// their names, colours and volumes, the components with theirs, and the whole
// assembly's volume, extent and centre of mass.
#include <BRepBndLib.hxx>
#include <BRepCheck_Analyzer.hxx>
#include <BRepGProp.hxx>
#include <Bnd_Box.hxx>
#include <GProp_GProps.hxx>
#include <IFSelect_ReturnStatus.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <Quantity_Color.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <Standard_Failure.hxx>
#include <TCollection_AsciiString.hxx>
#include <TDF_Label.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDocStd_Document.hxx>
#include <TopExp_Explorer.hxx>
#include <XCAFDoc_ColorTool.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <XSControl_TransferReader.hxx>
#include <cstdio>
#include <iostream>
#include <nlohmann/json.hpp>

#include "../inspector/label_name.h"

namespace {

// Lowest and highest corner, as tight as the kernel makes it.
nlohmann::json bounds_of(const TopoDS_Shape& shape) {
  Bnd_Box box;
  BRepBndLib::AddOptimal(shape, box, false, false);
  const gp_Pnt low = box.CornerMin(), high = box.CornerMax();
  return {{low.X(), low.Y(), low.Z()}, {high.X(), high.Y(), high.Z()}};
}

GProp_GProps properties(const TopoDS_Shape& shape) {
  GProp_GProps found;
  BRepGProp::VolumeProperties(shape, found, 1e-9);
  return found;
}

int solids(const TopoDS_Shape& shape) {
  int count = 0;
  for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next()) ++count;
  return count;
}

nlohmann::json part_json(const TDF_Label& label, const Handle(XCAFDoc_ColorTool) & colours) {
  const TopoDS_Shape shape = XCAFDoc_ShapeTool::GetShape(label);
  bool coloured = solids(shape) > 0;
  for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next()) {
    Quantity_Color colour;
    coloured = coloured && (colours->GetColor(it.Current(), XCAFDoc_ColorSurf, colour) ||
                            colours->GetColor(shape, XCAFDoc_ColorSurf, colour));
  }
  return {{"name", name_of(label)},
          {"volume", properties(shape).Mass()},
          {"solids", solids(shape)},
          {"valid", BRepCheck_Analyzer(shape).IsValid()},
          {"coloured", coloured}};
}

nlohmann::json read(const char* path) {
  Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
  Handle(TDocStd_Document) document = new TDocStd_Document("XmlXCAF");
  STEPCAFControl_Reader reader;
  reader.SetColorMode(true);
  reader.SetNameMode(true);
  if (reader.ReadFile(path) != IFSelect_RetDone || !reader.Transfer(document)) {
    throw std::runtime_error("cannot be read");
  }
  const auto shapes = XCAFDoc_DocumentTool::ShapeTool(document->Main());
  const auto colours = XCAFDoc_DocumentTool::ColorTool(document->Main());
  TDF_LabelSequence roots, all, components;
  shapes->GetFreeShapes(roots);
  shapes->GetShapes(all);
  if (roots.Length() != 1) throw std::runtime_error("not one root");
  XCAFDoc_ShapeTool::GetComponents(roots.Value(1), components);
  nlohmann::json out;
  out["root"] = name_of(roots.Value(1));
  for (const TDF_Label& label : all) {
    if (XCAFDoc_ShapeTool::IsSimpleShape(label) && shapes->IsTopLevel(label)) {
      out["parts"].push_back(part_json(label, colours));
    }
  }
  for (const TDF_Label& label : components) {
    TDF_Label referred;
    XCAFDoc_ShapeTool::GetReferredShape(label, referred);
    const gp_Pnt centre = properties(XCAFDoc_ShapeTool::GetShape(label)).CentreOfMass();
    out["components"].push_back({{"name", name_of(label)},
                                 {"part", name_of(referred)},
                                 {"bounds", bounds_of(XCAFDoc_ShapeTool::GetShape(label))},
                                 {"centre", {centre.X(), centre.Y(), centre.Z()}}});
  }
  const GProp_GProps whole = properties(XCAFDoc_ShapeTool::GetShape(roots.Value(1)));
  const gp_Pnt centre = whole.CentreOfMass();
  out["bounds"] = bounds_of(XCAFDoc_ShapeTool::GetShape(roots.Value(1)));
  out["volume"] = whole.Mass();
  out["centre"] = {centre.X(), centre.Y(), centre.Z()};
  return out;
}

}  // namespace

int main(int count, char** arguments) {
  try {
    if (count != 2) throw std::runtime_error("one file, please");
    std::cout << read(arguments[1]).dump() << "\n";
    return 0;
  } catch (const Standard_Failure& failure) {
    std::cerr << failure.GetMessageString() << "\n";
  } catch (const std::exception& failure) {
    std::cerr << failure.what() << "\n";
  }
  return 1;
}
