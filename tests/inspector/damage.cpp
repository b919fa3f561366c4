// Faults for the inspector to find.
#include "damage.h"

#include <fmt/format.h>

#include <BRepAlgoAPI_Cut.hxx>
#include <BRepAlgoAPI_Fuse.hxx>
#include <BRepPrimAPI_MakeBox.hxx>
#include <Message.hxx>
#include <Message_Messenger.hxx>
#include <Message_Printer.hxx>
#include <STEPCAFControl_Reader.hxx>
#include <STEPCAFControl_Writer.hxx>
#include <TDF_LabelSequence.hxx>
#include <TDocStd_Document.hxx>
#include <TopLoc_Location.hxx>
#include <XCAFDoc_DocumentTool.hxx>
#include <XCAFDoc_ShapeTool.hxx>
#include <fstream>
#include <functional>
#include <sstream>
#include <stdexcept>

#include "label_name.h"
#include "table.h"

namespace inspector {
namespace {

void write_file(const std::filesystem::path& file, const std::string& text) {
  std::ofstream out(file, std::ios::binary);
  out << text;
  out.close();
  if (!out) throw std::runtime_error(file.string() + ": cannot be written");
}

std::vector<std::string> lines_of(const std::string& text) {
  std::istringstream in(text);
  std::vector<std::string> lines;
  for (std::string line; std::getline(in, line);) lines.push_back(line);
  return lines;
}

std::vector<std::string> cells_of(const std::string& line) {
  std::vector<std::string> cells(1);
  bool quoted = false;
  for (const char c : line) {
    if (c == '"') quoted = !quoted;
    if (c == ',' && !quoted)
      cells.emplace_back();
    else if (c != '\r')
      cells.back() += c;
  }
  return cells;
}

// Calls with the cells of each such row; the row goes when it answers no.
void edit_rows(const std::filesystem::path& list, const std::vector<std::string>& begin,
               const std::function<bool(const std::vector<std::string>&, std::vector<std::string>&)>& edit) {
  std::string out;
  int met = 0;
  std::vector<std::string> heading;
  for (const std::string& line : lines_of(read_file(list))) {
    std::vector<std::string> cells = cells_of(line);
    bool keep = true;
    if (heading.empty())
      heading = cells;
    else if (cells.size() >= begin.size() &&
             std::equal(begin.begin(), begin.end(), cells.begin(),
                        [](const auto& want, const auto& is) { return want == "*" || want == is; })) {
      ++met;
      keep = edit(heading, cells);
    }
    if (!keep) continue;
    for (std::size_t i = 0; i < cells.size(); ++i) out += (i ? "," : "") + cells[i];
    out += "\r\n";
  }
  if (met == 0) throw std::runtime_error(list.string() + ": has no such row");
  write_file(list, out);
}

std::size_t column_of(const std::vector<std::string>& heading, const std::string& column) {
  for (std::size_t i = 0; i < heading.size(); ++i)
    if (heading[i] == column) return i;
  throw std::runtime_error("no column " + column);
}

class Step {
 public:
  explicit Step(const std::filesystem::path& file) : file_(file), document_(new TDocStd_Document("XmlXCAF")) {
    Message::DefaultMessenger()->RemovePrinters(STANDARD_TYPE(Message_Printer));
    STEPCAFControl_Reader reader;
    reader.SetNameMode(true);
    if (reader.ReadFile(file.c_str()) != IFSelect_RetDone || !reader.Transfer(document_))
      throw std::runtime_error(file.string() + ": cannot be read");
    shapes_ = XCAFDoc_DocumentTool::ShapeTool(document_->Main());
    TDF_LabelSequence roots;
    shapes_->GetFreeShapes(roots);
    root_ = roots.Value(1);
  }

  TDF_Label item(const std::string& name) const {
    TDF_LabelSequence all;
    XCAFDoc_ShapeTool::GetComponents(root_, all);
    for (const TDF_Label& label : all)
      if (name_of(label) == name) return label;
    throw std::runtime_error("the model has no " + name);
  }

  void remove(const std::string& name) { shapes_->RemoveComponent(item(name)); }

  void move(const std::string& name, Point by) {
    const TDF_Label old = item(name);
    TDF_Label part;
    XCAFDoc_ShapeTool::GetReferredShape(old, part);
    gp_Trsf shift;
    shift.SetTranslation(gp_Vec(by.x, by.y, by.z));
    const TopLoc_Location at = TopLoc_Location(shift) * XCAFDoc_ShapeTool::GetLocation(old);
    shapes_->RemoveComponent(old);
    TDataStd_Name::Set(shapes_->AddComponent(root_, part, at), name.c_str());
  }

  void change_part(const std::string& name, const std::function<TopoDS_Shape(const TopoDS_Shape&)>& change) {
    TDF_LabelSequence all;
    shapes_->GetShapes(all);
    for (const TDF_Label& label : all) {
      if (name_of(label) != name || !XCAFDoc_ShapeTool::IsSimpleShape(label)) continue;
      if (XCAFDoc_ShapeTool::IsComponent(label)) continue;
      shapes_->SetShape(label, change(XCAFDoc_ShapeTool::GetShape(label)));
      TDataStd_Name::Set(label, name.c_str());
      return;
    }
    throw std::runtime_error("the model has no part " + name);
  }

  void write() {
    shapes_->UpdateAssemblies();
    STEPCAFControl_Writer writer;
    writer.SetNameMode(true);
    if (!writer.Transfer(document_, STEPControl_AsIs) || writer.Write(file_.c_str()) != IFSelect_RetDone)
      throw std::runtime_error(file_.string() + ": cannot be written");
  }

 private:
  std::filesystem::path file_;
  Handle(TDocStd_Document) document_;
  Handle(XCAFDoc_ShapeTool) shapes_;
  TDF_Label root_;
};

TopoDS_Shape box(Point low, Point high) {
  return BRepPrimAPI_MakeBox(gp_Pnt(low.x, low.y, low.z), gp_Pnt(high.x, high.y, high.z)).Shape();
}

}  // namespace

void replace_text(const std::filesystem::path& file, const std::string& old, const std::string& with) {
  std::string text = read_file(file);
  const std::size_t at = text.find(old);
  if (at == std::string::npos) throw std::runtime_error(file.string() + ": does not hold " + old);
  write_file(file, text.replace(at, old.size(), with));
}

void remove_rows(const std::filesystem::path& list, const std::vector<std::string>& begin) {
  edit_rows(list, begin, [](const auto&, auto&) { return false; });
}

void set_cell(const std::filesystem::path& list, const std::vector<std::string>& begin,
              const std::string& column, const std::string& value) {
  edit_rows(list, begin, [&](const auto& heading, auto& cells) {
    cells.at(column_of(heading, column)) = value;
    return true;
  });
}

void add_to_cell(const std::filesystem::path& list, const std::vector<std::string>& begin,
                 const std::string& column, double by) {
  edit_rows(list, begin, [&](const auto& heading, auto& cells) {
    std::string& cell = cells.at(column_of(heading, column));
    cell = fmt::format("{:.3f}", std::stod(cell) + by);
    return true;
  });
}

void move_drawn(const std::filesystem::path& file, const std::string& layer, const std::string& kind,
                double by, int count) {
  std::vector<std::string> lines = lines_of(read_file(file));
  int moved = 0;
  for (std::size_t i = 0; i + 1 < lines.size() && moved < count; i += 2) {
    if (std::stoi(lines[i]) != 0 || !lines[i + 1].starts_with(kind)) continue;
    bool on_layer = false;
    for (std::size_t j = i + 2; j + 1 < lines.size() && std::stoi(lines[j]) != 0; j += 2) {
      if (std::stoi(lines[j]) == 8) on_layer = lines[j + 1].starts_with(layer);
      if (std::stoi(lines[j]) == 10 && on_layer) {
        lines[j + 1] = fmt::format("{}", std::stod(lines[j + 1]) + by);
        ++moved;
      }
    }
  }
  if (moved < count) throw std::runtime_error(file.string() + ": draws too little on " + layer);
  std::string out;
  for (const std::string& line : lines) out += line + "\n";
  write_file(file, out);
}

void move_item(const std::filesystem::path& file, const std::string& item, Point by) {
  Step step(file);
  step.move(item, by);
  step.write();
}

void remove_item(const std::filesystem::path& file, const std::string& item) {
  Step step(file);
  step.remove(item);
  step.write();
}

void cut_part(const std::filesystem::path& file, const std::string& part, Point low, Point high) {
  Step step(file);
  step.change_part(part, [&](const TopoDS_Shape& s) { return BRepAlgoAPI_Cut(s, box(low, high)).Shape(); });
  step.write();
}

void add_to_part(const std::filesystem::path& file, const std::string& part, Point low, Point high) {
  Step step(file);
  step.change_part(part, [&](const TopoDS_Shape& s) { return BRepAlgoAPI_Fuse(s, box(low, high)).Shape(); });
  step.write();
}

}  // namespace inspector
