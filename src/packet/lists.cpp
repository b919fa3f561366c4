// parts.csv, cut_list.csv and drill_list.csv.
#include "packet/lists.h"

#include <fmt/format.h>

#include <algorithm>

#include "bed/names.h"
#include "draw/list2d.h"
#include "formats/csv.h"
#include "sheets/drill/drill_rows.h"
#include "sheets/part_words.h"

namespace bedwright {
namespace {

// End to end with the points of its mitres.
Mm overall_length(const Member& m) {
  const Mm front = m.section.flange * std::tan(m.start_mitre),
           rear = m.section.flange * std::tan(m.end_mitre);
  return m.length + std::max(0.0, rear) - std::min(0.0, front);
}

// Off square, whichever way; how the two ends stand to each other is a column of its own.
CsvCell mitre(Radians a) { return CsvCell(std::abs(a) / degree, 2); }

const char* ends(const Member& m) {
  if (m.start_mitre == 0 && m.end_mitre == 0) return "square";
  if (m.start_mitre == m.end_mitre) return "cuts parallel";
  return m.start_mitre == -m.end_mitre ? "cuts opposed" : "cuts differ";
}

void hole_row(Csv& csv, const Part& part, int quantity, const std::string& face, int number,
              const std::string& letter, Mm along, Mm across, const std::string& edge, const Hole& hole,
              const Figures& figures) {
  csv.row({name(part), quantity, face, number, letter, figures.tape_length(along), CsvCell(along / inch, 4),
           CsvCell(along, 2), figures.tape_length(across), CsvCell(across / inch, 4), CsvCell(across, 2),
           edge, figures.size_length(hole.diameter), CsvCell(hole.diameter, 2),
           hole.slotted() ? CsvCell(hole.length, 2) : CsvCell(""),
           hole.slotted() ? CsvCell(hole.angle / degree, 2) : CsvCell(""), process_name(hole),
           word(hole.purpose)});
}

void plate_rows(Csv& csv, const Part& part, const Plate& plate, int quantity, const Figures& figures) {
  const Box2 box = bounds(Entity(Closed{0, plate.outline}));
  int number = 0;
  for (const Hole& hole : plate.holes) {
    if (hole.process != Process::drilled && hole.process != Process::in_place) continue;
    hole_row(csv, part, quantity, "plate", ++number, "", hole.at.x - box.low.x, hole.at.y - box.low.y,
             "lower left corner of the cut file", hole, figures);
  }
}

}  // namespace

namespace {

// Items of a part that are shown and stand already, or are yet to be had.
int count_of(const Bed& bed, std::size_t part, bool standing) {
  int count = 0;
  for (const Item& item : bed.items) {
    if (!item.shown || item.part != static_cast<int>(part)) continue;
    const bool is_there = item.bolt >= 0 ? stands(bed, bed.bolts.at(static_cast<std::size_t>(item.bolt)))
                                         : bed.parts[part].origin == Origin::standing;
    if (is_there == standing) ++count;
  }
  return count;
}

std::string parts_of(const Bed& bed, const Heading& heading, bool standing) {
  Csv csv;
  csv.row(
      {"part", "quantity", "material", "form", "size", "origin", "kg each", "kg all", "lb each", "lb all"});
  for (std::size_t i = 0; i < bed.parts.size(); ++i) {
    const Part& part = bed.parts[i];
    const int quantity = count_of(bed, i, standing);
    if (quantity == 0) continue;
    const auto [form, size] = part_form(part, heading.figures());
    const Kg each = mass(part);
    csv.row({name(part), quantity, part.material, form, size, origin_name(part.origin), CsvCell(each, 3),
             CsvCell(each * quantity, 3), CsvCell(each / pound, 2), CsvCell(each * quantity / pound, 2)});
  }
  return csv.text();
}

}  // namespace

std::string parts_csv(const Bed& bed, const Heading& heading) { return parts_of(bed, heading, false); }

std::string standing_parts_csv(const Bed& bed, const Heading& heading) {
  return parts_of(bed, heading, true);
}

std::string cut_list_csv(const Bed& bed, const Heading& heading) {
  const Figures figures = heading.figures();
  Csv csv;
  csv.row({"part", "kind", "quantity", "material", "stock", "length", "length mm", "overall", "overall mm",
           "front end off square deg", "rear end off square deg", "ends", "width", "width mm"});
  for (std::size_t i = 0; i < bed.parts.size(); ++i) {
    const Part& part = bed.parts[i];
    const int quantity = bed.count(static_cast<int>(i));
    if (quantity == 0 || part.origin != Origin::made) continue;
    if (const Member* m = std::get_if<Member>(&part.form)) {
      const Mm overall = overall_length(*m);
      csv.row({name(part), "member", quantity, part.material, m->section.name, figures.tape_length(m->length),
               CsvCell(m->length, 2), figures.tape_length(overall), CsvCell(overall, 2),
               mitre(m->start_mitre), mitre(m->end_mitre), ends(*m), "", ""});
    } else if (const Plate* p = std::get_if<Plate>(&part.form)) {
      const Vec2 size = plate_size(*p);
      csv.row({name(part), "plate", quantity, part.material,
               fmt::format("plate {}", figures.size_length(p->thickness)), figures.size_length(size.x),
               CsvCell(size.x, 2), figures.size_length(size.x), CsvCell(size.x, 2), "", "", "",
               figures.size_length(size.y), CsvCell(size.y, 2)});
    }
  }
  return csv.text();
}

std::string drill_list_csv(const Bed& bed, const Heading& heading) {
  Csv csv;
  csv.row({"part", "quantity", "face", "number", "size letter", "along", "along in", "along mm", "across",
           "across in", "across mm", "across from", "diameter", "diameter mm", "slot length mm",
           "slot angle deg", "process", "purpose"});
  for (std::size_t i = 0; i < bed.parts.size(); ++i) {
    const Part& part = bed.parts[i];
    const int quantity = bed.count(static_cast<int>(i));
    if (quantity == 0 || part.origin != Origin::made) continue;
    if (const Member* m = std::get_if<Member>(&part.form)) {
      const bool upright = setting(bed, static_cast<int>(i)).upright;
      for (const DrillRow& r : drill_rows(*m).rows) {
        const FaceView view = face_view(m->section, r.hole.face, upright);
        hole_row(csv, part, quantity, view.name, r.number, std::string(1, r.letter), r.along, r.across,
                 view.edge, r.hole.hole, heading.figures());
      }
    } else if (const Plate* p = std::get_if<Plate>(&part.form)) {
      plate_rows(csv, part, *p, quantity, heading.figures());
    }
  }
  return csv.text();
}

}  // namespace bedwright
