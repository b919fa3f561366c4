// Draws the sheets, and adds each as SVG and PDF, and as DXF when the bed is released.
#include "packet/sheet_files.h"

#include <fmt/format.h>

#include "formats/dxf.h"
#include "formats/page_svg.h"
#include "formats/pdf.h"
#include "packet/lists.h"
#include "sheets/sheets.h"

namespace bedwright {

namespace {

// Paper does without the columns nothing is said in.
std::vector<std::string> unsaid_of_bolts(const Bed& bed) {
  std::vector<std::string> unsaid{"grade", "coating"};
  for (const Part& part : bed.parts)
    if (const Hardware* h = std::get_if<Hardware>(&part.form)) {
      if (!h->grade.empty()) std::erase(unsaid, "grade");
      if (!h->coating.empty()) std::erase(unsaid, "coating");
    }
  return unsaid;
}

}  // namespace

SheetInput sheet_input(const Examined& e, const AssemblyText& assembly, const BedViews& views,
                       const Issue& issue) {
  const Heading& h = e.heading();
  SheetInput input{e, issue.trial, {}, &views};
  input.digest = issue.digest;
  input.lists = {
      {"PARTS", parts_csv(e.bed, h), {}},
      {"CUT LIST", cut_list_csv(e.bed, h), {}},
      {"DRILL LIST", drill_list_csv(e.bed, h), {}},
      {"HARDWARE PACK LIST", hardware_csv(e.bed, e.job.kit.box, h, e.job.order.spares, shims(e.job, e.bed)),
       unsaid_of_bolts(e.bed)}};
  input.assembly = assembly;
  return input;
}

void add_sheets(const Examined& e, const std::vector<Sheet>& sheets, PacketState state,
                std::vector<Page> last, std::vector<PacketFile>& files) {
  const Heading& h = e.heading();
  const Paper paper = paper_of(h);
  std::vector<Page> all;
  for (std::size_t i = 0; i < sheets.size(); ++i) {
    const Sheet& sheet = sheets[i];
    Page page = page_of(sheet, paper);
    const std::string name = "sheets/" + sheet.file;
    files.push_back({name + ".svg", page_svg(page)});
    // A drawing file can be sent to a table; a draft has none.
    if (state == PacketState::released) files.push_back({name + ".dxf", dxf(sheet.list)});
    files.push_back(
        {name + ".pdf", pages_pdf({page}, {fmt::format("{}, order {}", sheet.title, h.number), h.date})});
    page.title = fmt::format("{} {}", i + 1, sheet.title);
    all.push_back(std::move(page));
  }
  for (Page& page : last) all.push_back(std::move(page));
  files.push_back({"sheets/all.pdf", pages_pdf(all, {"Sheets of order " + h.number, h.date})});
}

}  // namespace bedwright
