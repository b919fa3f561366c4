// Where things are welded: the list a welder walks down the main with.
#include <optional>

#include "bed/names.h"
#include "formats/csv.h"
#include "packet/lists.h"

namespace bedwright {
namespace {

bool is_listed(const Bed& bed, const Item& item) {
  const Kind kind = item.id.kind;
  const Origin origin = bed.parts[item.part].origin;
  return item.shown && item.bolt < 0 && origin != Origin::kit && origin != Origin::standing &&
         kind != Kind::main && kind != Kind::tongue && kind != Kind::wheel;
}

// The world x of the hole of a made part that has just one.
std::optional<Mm> only_hole(const Bed& bed, int item) {
  const Part& part = bed.part_of(item);
  if (!is_frame_steel(part) || hole_count(part) != 1) return std::nullopt;
  return hole_in_world(bed, ply_through(bed, item, 0)).centre.x;
}

}  // namespace

std::string layout_csv(const Bed& bed, const Heading& heading) {
  const Figures figures = heading.figures();
  const Mm datum = bed.items[bed.item({Kind::main, Side::left})].placement.origin.x;
  Csv csv;
  csv.row({"item", "part", "front edge", "front edge mm", "middle", "middle mm", "rear edge", "rear edge mm",
           "hole", "hole mm", "middle from centre line mm"});
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    const Item& item = bed.items[i];
    if (!is_listed(bed, item)) continue;
    const Box3 box = bounds(bed, static_cast<int>(i));
    const Mm front = box.low.x - datum, rear = box.high.x - datum, middle = (front + rear) / 2;
    const std::optional<Mm> hole = only_hole(bed, static_cast<int>(i));
    csv.row({name(item), name(bed.parts[item.part]), figures.tape_length(front), CsvCell(front, 2),
             figures.tape_length(middle), CsvCell(middle, 2), figures.tape_length(rear), CsvCell(rear, 2),
             hole ? CsvCell(figures.tape_length(*hole - datum)) : CsvCell(""),
             hole ? CsvCell(*hole - datum, 2) : CsvCell(""), CsvCell((box.low.y + box.high.y) / 2, 2)});
  }
  return csv.text();
}

}  // namespace bedwright
