// Puts the bed into the kernel's document, with names and colours, and writes it.
#include "kernel/step.h"

#include <fmt/format.h>

#include <APIHeaderSection_MakeHeader.hxx>
#include <BRep_Builder.hxx>
#include <IFSelect_ReturnStatus.hxx>
#include <Interface_HArray1OfHAsciiString.hxx>
#include <Interface_Static.hxx>
#include <Quantity_Color.hxx>
#include <STEPConstruct.hxx>
#include <STEPConstruct_Styles.hxx>
#include <STEPControl_ActorWrite.hxx>
#include <STEPControl_Controller.hxx>
#include <STEPControl_Writer.hxx>
#include <StepBasic_Product.hxx>
#include <StepBasic_ProductDefinition.hxx>
#include <StepBasic_ProductDefinitionFormation.hxx>
#include <StepData_Protocol.hxx>
#include <StepData_StepModel.hxx>
#include <StepData_StepWriter.hxx>
#include <StepRepr_NextAssemblyUsageOccurrence.hxx>
#include <StepRepr_RepresentationItem.hxx>
#include <StepShape_ShapeDefinitionRepresentation.hxx>
#include <StepShape_ShapeRepresentation.hxx>
#include <StepVisual_Colour.hxx>
#include <StepVisual_MechanicalDesignGeometricPresentationRepresentation.hxx>
#include <StepVisual_PresentationStyleAssignment.hxx>
#include <StepVisual_StyledItem.hxx>
#include <TCollection_HAsciiString.hxx>
#include <TopExp_Explorer.hxx>
#include <TopoDS_Compound.hxx>
#include <TransferBRep.hxx>
#include <TransferBRep_ShapeMapper.hxx>
#include <Transfer_FinderProcess.hxx>
#include <XSControl_TransferWriter.hxx>
#include <XSControl_WorkSession.hxx>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <stdexcept>

#include "bed/names.h"
#include "kernel/guard.h"
#include "kernel/ready.h"
#include "kernel/shapes.h"

namespace bedwright {

namespace {

// The kernel keeps its settings for writing in one process-wide table, which
// environment variables may have touched: put right before every file.
void settle_kernel() {
  ready_kernel();
  STEPControl_Controller::Init();
  Interface_Static::SetCVal("write.step.schema", "AP214IS");
  Interface_Static::SetCVal("write.step.unit", "MM");
  Interface_Static::SetIVal("write.step.assembly", 1);
  Interface_Static::SetIVal("write.step.nonmanifold", 0);
  Interface_Static::SetIVal("write.precision.mode", 0);
  // Curves on surfaces follow from the curves in space here; leaving them out
  // makes the file a third smaller and no poorer.
  Interface_Static::SetIVal("write.surfacecurve.mode", 0);
}

Handle(TCollection_HAsciiString) text(const std::string& value) {
  return new TCollection_HAsciiString(value.c_str());
}

Handle(Interface_HArray1OfHAsciiString) texts(const std::string& value) {
  return new Interface_HArray1OfHAsciiString(1, 1, text(value));
}

// The kernel takes every compound for an assembly. Here only the whole bed is
// one: a bought item is a single product though its blocks are loose.
class OneLevelActor : public STEPControl_ActorWrite {
 public:
  explicit OneLevelActor(const TopoDS_Shape& whole) : whole_(whole) {}
  Standard_Boolean IsAssembly(TopoDS_Shape& shape) const override { return shape.IsSame(whole_); }

 private:
  TopoDS_Shape whole_;
};

class OneLevelController : public STEPControl_Controller {
 public:
  explicit OneLevelController(const TopoDS_Shape& whole) { myAdaptorWrite = new OneLevelActor(whole); }
};

// What the shop makes, buys and finds in the maker's box, told apart at a
// glance; hardware stands out of all three.
Quantity_Color colour(const Part& part) {
  const auto rgb = [](double r, double g, double b) { return Quantity_Color(r, g, b, Quantity_TOC_sRGB); };
  if (std::holds_alternative<Hardware>(part.form)) return rgb(0.80, 0.65, 0.20);
  switch (part.origin) {
    case Origin::made:
      return std::holds_alternative<Plate>(part.form) ? rgb(0.70, 0.30, 0.20) : rgb(0.35, 0.40, 0.45);
    case Origin::bought:
      return rgb(0.20, 0.22, 0.24);
    case Origin::standing:  // pale: there already
      return rgb(0.82, 0.82, 0.80);
    case Origin::kit:
      return rgb(0.25, 0.45, 0.65);
  }
  throw std::logic_error("an origin of no known kind");
}

struct Assembly {
  TopoDS_Compound shape;
  std::vector<int> items;             // shown, in the order they were added
  std::map<int, TopoDS_Shape> parts;  // by index, those in use
  std::set<int> without_holes;        // of a draft
};

Assembly assemble(const Bed& bed, bool draft) {
  Shapes shapes(bed);
  Assembly assembly;
  const BRep_Builder builder;
  builder.MakeCompound(assembly.shape);
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    const Item& item = bed.items[i];
    if (!item.shown) continue;
    TopoDS_Shape& part = assembly.parts[item.part];
    if (part.IsNull()) {
      try {
        part = shapes.part(item.part);
      } catch (const std::runtime_error&) {  // a rule stops such a bed; its draft is for talking about it
        if (!draft) throw;
        part = build_part(bed.parts[item.part], Detail::picture);
        assembly.without_holes.insert(item.part);
      }
    }
    builder.Add(assembly.shape, part.Located(location(item.placement)));
    assembly.items.push_back(static_cast<int>(i));
  }
  if (assembly.items.empty()) throw std::runtime_error("there is nothing to show");
  return assembly;
}

void name_product(const Handle(StepBasic_ProductDefinition) & definition, const std::string& name) {
  const Handle(StepBasic_Product) product = definition->Formation()->OfProduct();
  product->SetId(text(name));
  product->SetName(text(name));
}

// The kernel writes one usage for each component, in the order of the compound,
// and names them by counters that run on in a process; both ends of each usage
// get the bed's names here.
void name_all(const Handle(StepData_StepModel) & model, const Bed& bed, const Assembly& assembly,
              const std::string& bed_name) {
  std::size_t found = 0;
  std::map<int, Handle(StepBasic_ProductDefinition)> definitions;
  for (int i = 1; i <= model->NbEntities(); ++i) {
    const auto usage = Handle(StepRepr_NextAssemblyUsageOccurrence)::DownCast(model->Entity(i));
    if (usage.IsNull()) continue;
    if (found == assembly.items.size()) throw std::logic_error("more components than items");
    const Item& item = bed.items[assembly.items[found++]];
    usage->SetId(text(std::to_string(found)));
    usage->SetName(text(name(item)));
    usage->SetDescription(text(""));
    if (found == 1) name_product(usage->RelatingProductDefinition(), bed_name);
    auto& definition = definitions[item.part];
    if (definition.IsNull()) {
      definition = usage->RelatedProductDefinition();
      name_product(definition,
                   name(bed.parts[item.part]) +
                       (assembly.without_holes.contains(item.part) ? ", its holes not drawn" : ""));
    }
    if (definition != usage->RelatedProductDefinition()) throw std::logic_error("one part, two products");
  }
  if (found != assembly.items.size()) throw std::logic_error("fewer components than items");
}

// The representation of a part, for its context and its solids' entities.
Handle(StepShape_ShapeRepresentation)
    representation(const Handle(Transfer_FinderProcess) & made, const TopoDS_Shape& part) {
  Handle(StepShape_ShapeDefinitionRepresentation) definition;
  if (!made->FindTypedTransient(TransferBRep::ShapeMapper(made, part),
                                STANDARD_TYPE(StepShape_ShapeDefinitionRepresentation), definition)) {
    throw std::logic_error("a part has no representation");
  }
  return Handle(StepShape_ShapeRepresentation)::DownCast(definition->UsedRepresentation());
}

// Each solid of a part styled in the part's colour, one group of styles for each part.
void colour_all(const Handle(XSControl_WorkSession) & session, const Bed& bed, const Assembly& assembly) {
  const Handle(Transfer_FinderProcess) made = session->TransferWriter()->FinderProcess();
  // Not tied to the session: it would index the whole model, once for each part.
  STEPConstruct_Styles styles;
  for (const auto& [index, shape] : assembly.parts) {
    styles.ClearStyles();
    const Handle(StepVisual_Colour) paint = STEPConstruct_Styles::EncodeColor(colour(bed.parts[index]));
    for (TopExp_Explorer it(shape, TopAbs_SOLID); it.More(); it.Next()) {
      const auto solid = STEPConstruct::FindEntity(made, it.Current());
      if (solid.IsNull()) throw std::logic_error("a solid has no entity to colour");
      styles.AddStyle(solid, styles.MakeColorPSA(solid, paint, paint, paint, 0), nullptr);
    }
    Handle(StepVisual_MechanicalDesignGeometricPresentationRepresentation) group;
    if (!styles.CreateMDGPR(representation(made, shape)->ContextOfItems(), group)) {
      throw std::logic_error("colours were refused");
    }
    session->Model()->AddWithRefs(group);
  }
}

void write_header(const Handle(StepData_StepModel) & model, const StepHeader& header) {
  APIHeaderSection_MakeHeader out(model);
  const bool has_time = header.date.find('T') != std::string::npos;
  out.SetName(text(header.name));
  out.SetTimeStamp(text(has_time ? header.date : header.date + "T00:00:00"));
  out.SetAuthor(texts(header.author));
  out.SetOrganization(texts(header.organisation));
  out.SetPreprocessorVersion(text("Open CASCADE Technology 7.6"));
  out.SetOriginatingSystem(text(header.program));
  out.SetAuthorisation(text(""));
  out.SetDescription(texts("Trailer bed " + header.name));
  out.Apply(model);
}

// The file's alphabet is ASCII; other characters stand in it as their code
// points in hexadecimal, \X2\ four digits each, \X4\ eight (ISO 10303-21, control
// directives). The kernel lets UTF-8 through as it is, and may break a line
// within a character.
std::string in_basic_alphabet(const std::string& utf8) {
  std::string out;
  out.reserve(utf8.size());
  for (std::size_t i = 0; i < utf8.size(); ++i) {
    const auto lead = static_cast<unsigned char>(utf8[i]);
    if (lead < 0x80) {
      out += utf8[i];
      continue;
    }
    int more = lead >= 0xF0 ? 3 : lead >= 0xE0 ? 2 : 1;
    unsigned code = lead & (0x3Fu >> more);
    while (more > 0 && ++i < utf8.size()) {
      if (utf8[i] == '\n') continue;
      code = code << 6 | (static_cast<unsigned char>(utf8[i]) & 0x3Fu);
      --more;
    }
    out += code > 0xFFFF ? fmt::format("\\X4\\{:08X}\\X0\\", code) : fmt::format("\\X2\\{:04X}\\X0\\", code);
  }
  return out;
}

}  // namespace

std::string step_text(const Bed& bed, const StepHeader& header) {
  return guarded("STEP", [&] {
    settle_kernel();
    const Assembly assembly = assemble(bed, header.draft);
    STEPControl_Writer writer;
    writer.WS()->SetController(new OneLevelController(assembly.shape));
    if (writer.Transfer(assembly.shape, STEPControl_AsIs, false) != IFSelect_RetDone) {
      throw std::runtime_error("STEP: the kernel could not translate the assembly");
    }
    const Handle(StepData_StepModel) model = writer.Model();
    name_all(model, bed, assembly, header.name);
    colour_all(writer.WS(), bed, assembly);
    write_header(model, header);
    StepData_StepWriter lines(model);
    lines.SendModel(Handle(StepData_Protocol)::DownCast(model->Protocol()));
    std::ostringstream out;
    if (!lines.Print(out)) throw std::runtime_error("STEP: the kernel could not write the model");
    return in_basic_alphabet(out.str());
  });
}

void write_step(const Bed& bed, const StepHeader& header, const std::filesystem::path& path) {
  const std::string content = step_text(bed, header);
  std::ofstream file(path, std::ios::binary);
  file.write(content.data(), static_cast<std::streamsize>(content.size()));
  file.close();
  if (!file) throw std::runtime_error(fmt::format("{}: cannot be written", path.string()));
}

}  // namespace bedwright
