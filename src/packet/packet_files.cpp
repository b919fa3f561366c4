// Collects the files of a packet: picture, STEP, cut, drill, sheets, lists, report.
#include "packet/packet_files.h"

#include <fmt/format.h>

#include <future>

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

std::string picture(const Examined& e, const View& view, PacketState state) {
  const Heading& heading = e.heading();
  const Track& track = e.bed.track;
  PictureCaption caption;
  caption.order = heading.number;
  caption.revision = heading.revision;
  const Figures figures = e.figures();
  caption.notes = {fmt::format("{}, {} sections of {}, {} bunks", e.job.kit.name, track.sections,
                               figures.say(track.rail_length), track.bunk_count()),
                   fmt::format("Frame: {}", e.job.frame.name), heading.date};
  caption.draft = state == PacketState::draft;
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
  files.push_back({"lists/moving.csv", moving_csv(e.job, e.bed)});
  files.push_back({"lists/hardware.csv",
                   hardware_csv(e.bed, e.job.kit.box, heading, e.job.order.spares, shims(e.job, e.bed))});
  files.push_back({"lists/bolts.csv", bolts_csv(e.bed, kinds_of_bolts(e.scene))});
}

// Cut files for made plates, drill files for made members with holes.
void add_cut_and_drill(const Examined& e, std::vector<PacketFile>& files) {
  const Heading& heading = e.heading();
  for (std::size_t i = 0; i < e.bed.parts.size(); ++i) {
    const Part& part = e.bed.parts[i];
    if (part.origin != Origin::made) continue;
    if (std::holds_alternative<Plate>(part.form)) {
      files.push_back({"cut/" + file_word(name(part)) + ".dxf",
                       cut_file(part, heading, heading.printing, e.job.order.cut.kerf)});
    } else if (const Member* member = std::get_if<Member>(&part.form); member && !member->holes.empty()) {
      const std::vector<std::string> pages = drill_files(drill_drawing(e.bed, static_cast<int>(i), heading));
      for (std::size_t p = 0; p < pages.size(); ++p)
        files.push_back({fmt::format("drill/{}{}.dxf", file_word(name(part)),
                                     pages.size() > 1 ? fmt::format("_{}", p + 1) : ""),
                         pages[p]});
    }
  }
}

// The loads, each page as a picture and both as one document; in a draft too, stamped.
std::vector<Page> add_loads_pages(const Examined& e, PacketState state, std::vector<PacketFile>& files) {
  const Heading& heading = e.heading();
  std::vector<Page> pages;
  for (List2d& list : loads_pages(e.job, e.bed, e.loads, state == PacketState::draft))
    pages.push_back({std::move(list), loads_page_width, loads_page_height,
                     pages.empty() ? "Loads" : "Loads: sums and assumptions"});
  for (std::size_t i = 0; i < pages.size(); ++i)
    files.push_back(
        {i == 0 ? "sheets/loads.svg" : fmt::format("sheets/loads_{}.svg", i + 1), page_svg(pages[i])});
  files.push_back({"sheets/loads.pdf", pages_pdf(pages, {"Loads of " + heading.number, heading.date})});
  return pages;
}

}  // namespace

std::vector<PacketFile> packet_files(const PacketInput& input) {
  const Examined& e = input.examined;
  const PacketState state = input.state;
  const Report report{input.program_version, state, e};
  std::vector<PacketFile> files = {{"report.json", report_json(report)}, {"report.txt", report_text(report)}};
  if (state == PacketState::stopped) return files;
  if (input.step) input.step("making the model and the picture");
  auto drawn = std::async(std::launch::async, [&] { return input.views(); });
  files.push_back({"bed.step", input.model()});
  add_lists(e, files);
  if (state == PacketState::released) add_cut_and_drill(e, files);
  std::vector<Page> loads_last = add_loads_pages(e, state, files);
  const BedViews views = drawn.get();
  add_sheets(e, drawn_sheets(e, input.assembly, views, state == PacketState::draft), state,
             std::move(loads_last), files);
  files.push_back({"bed.svg", picture(e, views.isometric, state)});
  return files;
}

std::string input_digest(const std::vector<InputFile>& inputs, const std::vector<std::string>& sets) {
  std::string all;
  for (const InputFile& file : inputs) all += sha256(file.content) + "\n";
  for (const std::string& set : sets) all += set + "\n";
  return sha256(all);
}

}  // namespace bedwright
