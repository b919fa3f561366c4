// lists/welds.csv: every weld to lay, line by line, with both of its ends; and
// lists/standing_welds.csv: those of a frame that stands, to be looked at and left.
#include "bed/names.h"
#include "formats/csv.h"
#include "packet/lists.h"

namespace bedwright {

namespace {

std::string welds_of(const Bed& bed, const Heading& heading, bool standing) {
  const Figures figures = heading.figures();
  const Mm datum = bed.items[bed.item({Kind::main, Side::left})].placement.origin.x;
  Csv csv;
  csv.row({"weld", "part", "to", "kind", "where", "leg", "leg mm", "starts", "ends", "length", "length mm",
           "from x mm", "from y mm", "from z mm", "to x mm", "to y mm", "to z mm"});
  int number = 0;
  for (const Weld& w : bed.welds) {
    if (stands(bed, w) != standing) continue;
    const std::string a = name(bed.items[w.a]), b = name(bed.items[w.b]);
    ++number;
    if (w.runs.empty()) {
      csv.row({number, a, b, w.leg > 0 ? "no room for a fillet" : "as its maker says", words_of(w.line), "",
               "", "", "", "", "", "", "", "", "", "", ""});
      continue;
    }
    for (const WeldRun& run : w.runs) {
      const Mm length = norm(run.to - run.from);
      csv.row({number, a, b, "fillet", words_of(w.line), figures.size_length(w.leg), CsvCell(w.leg, 3),
               figures.tape_length(run.from.x - datum), figures.tape_length(run.to.x - datum),
               figures.tape_length(length), CsvCell(length, 3), CsvCell(run.from.x, 3),
               CsvCell(run.from.y, 3), CsvCell(run.from.z, 3), CsvCell(run.to.x, 3), CsvCell(run.to.y, 3),
               CsvCell(run.to.z, 3)});
    }
  }
  return csv.text();
}

}  // namespace

std::string welds_csv(const Bed& bed, const Heading& heading) { return welds_of(bed, heading, false); }

std::string standing_welds_csv(const Bed& bed, const Heading& heading) {
  return welds_of(bed, heading, true);
}

}  // namespace bedwright
