// lists/changes.csv: what is done to a frame that stands, step by step.
#include "formats/csv.h"
#include "packet/lists.h"
#include "sheets/frame/changes.h"

namespace bedwright {

std::string changes_csv(const Job& job, const Bed& bed) {
  const Figures figures = job.order.order.figures();
  Csv csv;
  csv.row({"number", "do", "what", "pieces", "side", "from front ends", "from front ends mm", "below tops",
           "below tops mm", "size", "size mm", "size before mm"});
  int number = 0;
  for (const FrameChange& c : frame_changes(job, bed)) {
    const bool one = c.items.size() == 1, sized = c.size > 0;
    csv.row({++number, verb_of(c.kind), items_of(c), static_cast<int>(c.items.empty() ? 2 : c.items.size()),
             !one                                 ? "both"
             : c.items.front().side == Side::left ? "left"
                                                  : "right",
             figures.tape_length(c.at), CsvCell(c.at, 3),
             c.down ? CsvCell(figures.tape_length(*c.down)) : CsvCell(""),
             c.down ? CsvCell(*c.down, 3) : CsvCell(""),
             sized ? CsvCell(figures.size_length(c.size)) : CsvCell(""),
             sized ? CsvCell(c.size, 3) : CsvCell(""), c.from ? CsvCell(*c.from, 3) : CsvCell("")});
  }
  return csv.text();
}

}  // namespace bedwright
