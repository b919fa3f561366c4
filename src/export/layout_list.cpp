// Where things are welded: the list a welder walks down the main with.
#include "export/csv.h"
#include "export/figures.h"
#include "export/lists.h"

namespace bedwright {
namespace {

bool is_listed(const Bed& bed, const Item& item) {
  const Part& part = bed.parts[item.part];
  if (!item.shown || item.bolt >= 0 || part.origin == Origin::kit) return false;
  if (part.name == "main" || part.name == "tongue" || part.name == "wheel") return false;
  return true;
}

std::string laid_out(Mm length, const Heading& heading) {
  return tape_figure(length, heading) + (heading.printing == Printing::metric ? " mm" : " in");
}

// The world x of the hole of a part that has just one.
std::vector<Mm> only_hole(const Bed& bed, int item) {
  const Part& part = bed.part_of(item);
  const Plate* plate = std::get_if<Plate>(&part.form);
  const Member* member = std::get_if<Member>(&part.form);
  const std::size_t holes = plate ? plate->holes.size() : member ? member->holes.size() : 0;
  if (holes != 1) return {};
  return {hole_in_world(bed, {item, 0, 0, 0}).centre.x};
}

}  // namespace

std::string layout_csv(const Bed& bed, const Heading& heading) {
  const int main = bed.find_item("main L");
  const Mm datum = main >= 0 ? bed.items[main].placement.origin.x : 0;
  Csv csv;
  csv.row({"item", "part", "front edge", "front edge mm", "middle", "middle mm", "rear edge", "rear edge mm", "hole", "hole mm",
           "middle from centre line mm"});
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    const Item& item = bed.items[i];
    if (!is_listed(bed, item)) continue;
    const Box3 box = bounds(bed, static_cast<int>(i));
    const Mm front = box.low.x - datum, rear = box.high.x - datum, middle = (front + rear) / 2;
    const std::vector<Mm> hole = only_hole(bed, static_cast<int>(i));
    csv.row({item.name, bed.parts[item.part].name, laid_out(front, heading), CsvCell(front, 2), laid_out(middle, heading),
             CsvCell(middle, 2), laid_out(rear, heading), CsvCell(rear, 2), hole.empty() ? CsvCell("") : CsvCell(laid_out(hole[0] - datum, heading)),
             hole.empty() ? CsvCell("") : CsvCell(hole[0] - datum, 2), CsvCell((box.low.y + box.high.y) / 2, 2)});
  }
  return csv.text();
}

}  // namespace bedwright
