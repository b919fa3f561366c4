// Collects the files of a packet: picture, STEP, cut, drill, sheets, lists, report.
#include "packet/packet_files.h"

#include <fmt/format.h>

#include <future>

#include "bed/names.h"
#include "formats/digest.h"
#include "formats/page_svg.h"
#include "formats/pdf.h"
#include "packet/lists.h"
#include "packet/moving_list.h"
#include "packet/report.h"
#include "packet/sheet_files.h"
#include "sheets/bed_picture.h"
#include "sheets/cut/cut.h"
#include "sheets/drill/drill.h"
#include "sheets/loads/loads_page.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

Issue issue_of(const PacketInput& input) {
  const Heading& h = input.examined.heading();
  return {h.number, h.revision, input.input_digest, input.state == PacketState::draft};
}

std::string picture(const Examined& e, const View& view, const Issue& issue) {
  const Heading& heading = e.heading();
  const Track& track = e.bed.track;
  PictureCaption caption;
  caption.order = heading.number;
  caption.revision = heading.revision;
  const Figures figures = e.figures();
  caption.notes = {fmt::format("{}, {} sections of {}, {} bunks", e.job.kit.name, track.sections,
                               rail_lengths(track, [&](Mm x) { return figures.say(x); }), track.bunk_count()),
                   fmt::format("Frame: {}", e.job.frame.name), heading.date};
  caption.draft = issue.trial;
  caption.digest = issue.digest;
  return page_svg(picture_page(view, caption));
}

void add_lists(const Examined& e, std::vector<PacketFile>& files) {
  const Heading& heading = e.heading();
  files.push_back({"lists/parts.csv", parts_csv(e.bed, heading)});
  files.push_back({"lists/cut_list.csv", cut_list_csv(e.bed, heading)});
  files.push_back({"lists/layout.csv", layout_csv(e.bed, heading)});
  files.push_back({"lists/drill_list.csv", drill_list_csv(e.bed, heading)});
  files.push_back({"lists/stacks.csv", stacks_csv(e.bed, heading)});
  files.push_back({"lists/welds.csv", welds_csv(e.bed, heading)});
  if (stands(e.job.frame)) {
    files.push_back({"lists/changes.csv", changes_csv(e.job, e.bed)});
    files.push_back({"lists/standing_parts.csv", standing_parts_csv(e.bed, heading)});
    files.push_back({"lists/standing_stacks.csv", standing_stacks_csv(e.bed, heading)});
    files.push_back({"lists/standing_welds.csv", standing_welds_csv(e.bed, heading)});
  }
  files.push_back({"lists/moving.csv", moving_csv(e.job, e.bed)});
  files.push_back({"lists/hardware.csv",
                   hardware_csv(e.bed, e.job.kit.box, heading, e.job.order.spares, shims(e.job, e.bed))});
  files.push_back({"lists/bolts.csv", bolts_csv(e.bed, kinds_of_bolts(e.scene))});
}

// Cut files for made plates, drill files for made members with holes.
void add_cut_and_drill(const Examined& e, const std::string& issue, std::vector<PacketFile>& files) {
  const Heading& heading = e.heading();
  DrillPaper paper;
  paper.issue = issue;
  for (std::size_t i = 0; i < e.bed.parts.size(); ++i) {
    const Part& part = e.bed.parts[i];
    if (part.origin != Origin::made) continue;
    if (std::holds_alternative<Plate>(part.form)) {
      files.push_back({"cut/" + file_word(name(part)) + ".dxf",
                       cut_file(part, heading, heading.printing, e.job.order.cut.kerf, issue)});
    } else if (const Member* member = std::get_if<Member>(&part.form); member && !member->holes.empty()) {
      const std::vector<std::string> pages =
          drill_files(drill_drawing(e.bed, static_cast<int>(i), heading, paper));
      for (std::size_t p = 0; p < pages.size(); ++p)
        files.push_back({fmt::format("drill/{}{}.dxf", file_word(name(part)),
                                     pages.size() > 1 ? fmt::format("_{}", p + 1) : ""),
                         pages[p]});
    }
  }
}

// The loads' pages as sheets without a title block.
std::vector<Sheet> loads_sheets(const Examined& e, const Issue& issue) {
  std::vector<Sheet> sheets;
  for (List2d& list : loads_pages(e.job, e.bed, e.loads, issue)) {
    Sheet sheet;
    sheet.title = sheets.empty() ? "Loads" : "Loads: sums and assumptions";
    sheet.file = sheets.empty() ? "loads" : fmt::format("loads_{}", sheets.size() + 1);
    sheet.list = std::move(list);
    sheets.push_back(std::move(sheet));
  }
  return sheets;
}

// Each page as a picture and both as one document; in a draft too, stamped.
std::vector<Page> add_loads(const Examined& e, std::vector<Sheet>& sheets, std::vector<PacketFile>& files) {
  const Heading& heading = e.heading();
  std::vector<Page> pages;
  for (Sheet& sheet : sheets) {
    write_note(sheet);
    pages.push_back({std::move(sheet.list), loads_page_width, loads_page_height, sheet.title});
    files.push_back({"sheets/" + sheet.file + ".svg", page_svg(pages.back())});
  }
  files.push_back({"sheets/loads.pdf", pages_pdf(pages, {"Loads of " + heading.number, heading.date})});
  return pages;
}

void add_beside_sheets(const PacketInput& input, std::vector<PacketFile>& files) {
  files.push_back({"bed.step", input.model()});
  add_lists(input.examined, files);
  if (input.state == PacketState::released)
    add_cut_and_drill(input.examined, issue_words(issue_of(input)), files);
}

// Sheets and loads of the release revised.
struct DrawnBefore {
  Before sheets, loads;
};
DrawnBefore drawn_before(const RevisedInput& revised) {
  DrawnBefore before;
  before.sheets = {revised.revision, revised.digest, revised.drawn != nullptr, {}, revised.changes};
  before.loads = before.sheets;
  if (!revised.drawn) return before;
  const PacketInput& drawn = *revised.drawn;
  const BedViews views = drawn.views();
  before.sheets.sheets = sheet_contents(sheet_input(drawn.examined, drawn.assembly, views, issue_of(drawn)));
  before.loads.sheets = loads_sheets(drawn.examined, issue_of(drawn));
  return before;
}

}  // namespace

std::vector<PacketFile> files_beside_sheets(const PacketInput& input) {
  std::vector<PacketFile> files;
  add_beside_sheets(input, files);
  files.push_back({"bed.svg", picture(input.examined, input.views().isometric, issue_of(input))});
  return files;
}

PacketFiles packet_files(const PacketInput& input) {
  const Examined& e = input.examined;
  const PacketState state = input.state;
  const Report report{input.program_version, state, e};
  PacketFiles made{{{"report.json", report_json(report)}, {"report.txt", report_text(report)}}, {}, {}};
  if (state == PacketState::stopped) return made;
  const Issue issue = issue_of(input);
  if (input.step) input.step("making the model and the picture");
  auto drawn = std::async(std::launch::async, [&] { return input.views(); });
  add_beside_sheets(input, made.files);
  const BedViews views = drawn.get();
  std::vector<Sheet> loads = loads_sheets(e, issue);
  SheetInput sheets = sheet_input(e, input.assembly, views, issue);
  std::optional<DrawnBefore> before;
  if (input.revised) {
    before = drawn_before(*input.revised);
    sheets.before = &before->sheets;
    sheets.further = mark_changes(loads, before->loads, issue.revision);
  }
  SheetSet set = issued_sheets(sheets);
  made.sheets = set.fates;
  made.sheets.insert(made.sheets.end(), sheets.further.begin(), sheets.further.end());
  add_sheets(e, set.sheets, state, add_loads(e, loads, made.files), made.files);
  made.drawn = std::move(set.sheets);
  made.files.push_back({"bed.svg", picture(e, views.isometric, issue)});
  return made;
}

std::string input_digest(const std::vector<InputFile>& inputs, const std::vector<std::string>& sets) {
  std::string all;
  for (const InputFile& file : inputs) all += sha256(file.content) + "\n";
  for (const std::string& set : sets) all += set + "\n";
  return sha256(all);
}

}  // namespace bedwright
