// Drill sheets: the drill drawings, at a round reduction, on numbered sheets.
#include <fmt/format.h>

#include "bed/names.h"
#include "sheets/drill/drill.h"
#include "sheets/plan.h"
#include "sheets/sheets.h"

namespace bedwright {

std::vector<Sheet> drill_sheets(const SheetInput& in) {
  const Heading& h = in.job.order.order;
  const Box2 space = drawing_space(paper_of(h), in.draft);
  std::vector<Sheet> sheets;
  for (std::size_t i = 0; i < in.bed.parts.size(); ++i) {
    const Part& part = in.bed.parts[i];
    const Member* member = std::get_if<Member>(&part.form);
    if (!member || part.origin != Origin::made || member->holes.empty() ||
        in.bed.count(static_cast<int>(i)) == 0)
      continue;
    const DrillDrawing drawing =
        drill_drawing(in.bed, static_cast<int>(i), h, {space.width(), space.height(), false});
    for (std::size_t p = 0; p < drawing.pages.size(); ++p) {
      Sheet sheet;
      sheet.title = "DRILL: " + name(part);
      sheet.file = "drill_" + file_word(name(part)) + (p > 0 ? fmt::format("_{}", p + 1) : "");
      sheet.scale = fmt::format("1:{:g}", drawing.reduction);
      sheet.material = part.material;
      sheet.list.append(scaled(drawing.pages[p], 1 / drawing.reduction), space.low);
      sheets.push_back(std::move(sheet));
    }
  }
  return sheets;
}

}  // namespace bedwright
