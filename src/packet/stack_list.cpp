// lists/stacks.csv: what each bolt goes through, in order from its head.
#include "bed/names.h"
#include "formats/csv.h"
#include "packet/lists.h"

namespace bedwright {

namespace {

std::string stacks_of(const Bed& bed, const Heading& heading, bool standing) {
  const Figures figures = heading.figures();
  Csv csv;
  csv.row({"bolt", "size", "length mm", "from the head", "item", "hole", "hole mm", "slot mm", "slot x",
           "slot y", "slot z", "thickness", "thickness mm", "x mm", "y mm", "z mm"});
  for (const Bolt& bolt : bed.bolts) {
    if (stands(bed, bolt) != standing) continue;
    int order = 0;
    for (const Ply& ply : bolt.plies) {
      const HoleInWorld hole = hole_in_world(bed, ply);
      const bool slotted = hole.hole.slotted();
      const auto slot = [&](double part) { return slotted ? CsvCell(part, 6) : CsvCell(""); };
      csv.row({name(bolt), bolt.size.name, CsvCell(bolt.length, 3), ++order, name(bed.items[ply.item]),
               figures.size_length(hole.hole.diameter), CsvCell(hole.hole.diameter, 3),
               slotted ? CsvCell(hole.hole.length, 3) : CsvCell(""), slot(hole.slot_axis.x),
               slot(hole.slot_axis.y), slot(hole.slot_axis.z), figures.size_length(ply.thickness),
               CsvCell(ply.thickness, 3), CsvCell(hole.centre.x, 3), CsvCell(hole.centre.y, 3),
               CsvCell(hole.centre.z, 3)});
    }
  }
  return csv.text();
}

}  // namespace

std::string stacks_csv(const Bed& bed, const Heading& heading) { return stacks_of(bed, heading, false); }

std::string standing_stacks_csv(const Bed& bed, const Heading& heading) {
  return stacks_of(bed, heading, true);
}

}  // namespace bedwright
