// Writes cut and drill files of a hand-made bed, with what each should contain,
// for the outside readers: write_samples FOLDER
#include <fmt/format.h>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>

#include "sheets/cut/cut.h"
#include "sheets/drill/drill.h"
#include "support/sample_part.h"

namespace {

using namespace bedwright;
namespace fs = std::filesystem;

void write(const fs::path& path, const std::string& content) {
  std::ofstream out(path, std::ios::binary);
  out << content;
  out.close();
  if (!out) throw std::runtime_error("cannot write " + path.string());
}

// What the table leaves: the plate less the holes it cuts. Holes for the drill
// are in the plate's volume but not in its cut file.
double cut_area(const Part& part) {
  const Plate& plate = std::get<Plate>(part.form);
  double area = volume(part) / plate.thickness;
  for (const Hole& h : plate.holes) {
    if (h.process == Process::drilled)
      area += area_properties(hole_outline(h.at, h.diameter, h.length, h.angle)).area;
  }
  return area;
}

nlohmann::json expected(const std::string& file, const Part& part, Printing units) {
  const Plate& plate = std::get<Plate>(part.form);
  const double unit = units == Printing::inches ? inch : 1;
  int cut_holes = 0, marks = 0;
  for (const Hole& h : plate.holes) ++(h.process == Process::cut ? cut_holes : marks);
  const Cut flat = cut(part, sample::heading(units), units);
  return {{"file", file},
          {"loops", cut_holes + 1},
          {"marks", marks},
          {"area", cut_area(part) / (unit * unit)},
          {"width", flat.size.x / unit},
          {"height", flat.size.y / unit},
          {"lettered", flat.letter_height > 0}};
}

int run(const fs::path& folder) {
  fs::create_directories(folder);
  nlohmann::json all = nlohmann::json::array(), drills = nlohmann::json::array(),
                 kerfs = nlohmann::json::array();
  for (const Printing units : {Printing::metric, Printing::inches}) {
    int number = 0;
    for (const Part& part : sample::plates()) {
      const std::string file =
          fmt::format("cut-{}-{}.dxf", units == Printing::inches ? "inch" : "mm", ++number);
      write(folder / file, cut_file(part, sample::heading(units), units));
      all.push_back(expected(file, part, units));
      if (units == Printing::inches) continue;
      constexpr Mm kerf = 1.5;
      const std::string with_kerf = fmt::format("kerf-{}.dxf", number);
      write(folder / with_kerf, cut_file(part, sample::heading(units), units, kerf));
      kerfs.push_back({{"file", with_kerf}, {"finished", file}, {"kerf", kerf}});
    }
    const Bed bed = sample::bed();
    for (int part = 0; part < static_cast<int>(bed.parts.size()); ++part) {
      const Member* m = std::get_if<Member>(&bed.parts[part].form);
      if (m == nullptr) continue;
      const DrillDrawing drawing = drill_drawing(bed, part, sample::heading(units));
      nlohmann::json files = nlohmann::json::array();
      for (const std::string& content : drill_files(drawing)) {
        const std::string file = fmt::format("drill-{}-{}-{}.dxf", units == Printing::inches ? "inch" : "mm",
                                             part, files.size() + 1);
        write(folder / file, content);
        files.push_back(file);
      }
      drills.push_back({{"files", files}, {"holes", m->holes.size()}});
    }
  }
  write(folder / "expected.json", nlohmann::json{{"cut", all}, {"drill", drills}, {"kerf", kerfs}}.dump(1));
  return 0;
}

}  // namespace

int main(int argc, char** argv) {
  if (argc != 2) {
    std::fputs("usage: write_samples FOLDER\n", stderr);
    return 2;
  }
  try {
    return run(argv[1]);
  } catch (const std::exception& e) {
    std::fprintf(stderr, "write_samples: %s\n", e.what());
    return 1;
  }
}
