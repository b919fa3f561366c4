// The table of hole sizes, and a row for each hole.
#include "sheets/drill/drill_tables.h"

#include <fmt/format.h>

#include "bed/names.h"
#include "sheets/figures.h"

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
  const bool inches = heading.printing == Printing::inches;
  Table2d t;
  t.head = inches ? std::vector<std::string>{"Size", "Count", "Dia. in", "mm", "Slot in", "mm", "Make", "For"}
                  : std::vector<std::string>{"Size", "Count", "Dia. mm", "Slot mm", "Make", "For"};
  for (const DrillSize& s : rows.sizes) {
    const bool slot = s.hole.slotted();
    std::vector<std::string> row{std::string(1, s.letter), fmt::format("{}", s.count)};
    row.push_back(size_figure(s.hole.diameter, heading));
    if (inches) row.push_back(mm_figure(s.hole.diameter));
    row.push_back(slot ? fmt::format("{} {}", size_figure(s.hole.length, heading), slot_direction(s)) : "-");
    if (inches) row.push_back(slot ? mm_figure(s.hole.length) : "-");
    row.push_back(process_name(s.hole));
    std::vector<std::string> purposes;
    for (const Kind purpose : s.purposes) purposes.push_back(word(purpose));
    row.push_back(fmt::format("{}", fmt::join(purposes, ", ")));
    t.rows.push_back(row);
  }
  return t;
}

Table2d hole_table(const DrillRows& rows, const Section& section, bool upright, const Heading& heading) {
  const bool inches = heading.printing == Printing::inches;
  Table2d t;
  t.head = inches ? std::vector<std::string>{"No", "Size",   "Face", "Along", "in",
                                             "mm", "Across", "in",   "mm",    "From"}
                  : std::vector<std::string>{"No", "Size", "Face", "Along mm", "Across mm", "From"};
  for (const DrillRow& r : rows.rows) {
    const FaceView view = face_view(section, r.hole.face, upright);
    std::vector<std::string> row{fmt::format("{}", r.number), std::string(1, r.letter), view.name};
    for (const Mm distance : {r.along, r.across}) {
      row.push_back(tape_figure(distance, heading));
      if (inches) {
        row.push_back(inch_figure(distance));
        row.push_back(mm_figure(distance));
      }
    }
    row.push_back(view.edge);
    t.rows.push_back(row);
  }
  return t;
}

}  // namespace bedwright
