// The table of hole sizes, and a row for each hole.
#include "sheets/drill/drill_tables.h"

#include <fmt/format.h>

#include "bed/names.h"

namespace bedwright {
namespace {

// Within a tenth of a degree of an axis is on it; the rest is said in degrees.
std::string slot_direction(const DrillSize& size) {
  const double turned = size.turned / degree;
  if (std::abs(turned) < 0.1) return "along";
  if (std::abs(turned) > 89.9) return "across";
  return fmt::format("{:.1f} deg {} as drawn", std::abs(turned), turned > 0 ? "left" : "right");
}

}  // namespace

Table2d size_table(const DrillRows& rows, const Heading& heading) {
  const Figures figures = heading.figures();
  Table2d t;
  t.head =
      table_row({{"Size", "Count"}, figures.size_heads("Dia."), figures.size_heads("Slot"), {"Make", "For"}});
  for (const DrillSize& s : rows.sizes) {
    const bool slot = s.hole.slotted();
    std::vector<std::string> length = figures.size_cells(s.hole.length);
    if (slot)
      length.front() += " " + slot_direction(s);
    else
      length.assign(length.size(), "-");
    std::vector<std::string> purposes;
    for (const Kind purpose : s.purposes) purposes.push_back(word(purpose));
    t.rows.push_back(table_row({{std::string(1, s.letter), fmt::format("{}", s.count)},
                                figures.size_cells(s.hole.diameter),
                                length,
                                {process_name(s.hole), fmt::format("{}", fmt::join(purposes, ", "))}}));
  }
  return t;
}

Table2d hole_table(const DrillRows& rows, const Section& section, bool upright, const Heading& heading) {
  const Figures figures = heading.figures();
  Table2d t;
  t.head = table_row({{"No", "Size", "Face"}, figures.heads("Along"), figures.heads("Across"), {"From"}});
  for (const DrillRow& r : rows.rows) {
    const FaceView view = face_view(section, r.hole.face, upright);
    t.rows.push_back(table_row({{fmt::format("{}", r.number), std::string(1, r.letter), view.name},
                                figures.cells(r.along),
                                figures.cells(r.across),
                                {view.edge}}));
  }
  return t;
}

}  // namespace bedwright
