#include "commands/packet_files.h"

#include <fmt/format.h>

#include <future>

#include "commands/sheet_files.h"
#include "drawing/loads_page.h"
#include "drawing/views.h"
#include "export/cut.h"
#include "export/digest.h"
#include "export/drill.h"
#include "export/lists.h"
#include "export/page_svg.h"
#include "export/pdf.h"
#include "export/report.h"
#include "export/step.h"
#include "export/svg.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

std::string picture(const Loaded& loaded, const View& view, PacketState state) {
  const Heading& heading = loaded.job.order.order;
  const TrackAccount& track = loaded.bed.track;
  PictureCaption caption;
  caption.order = heading.number;
  caption.revision = heading.revision;
  const Figures figures{heading.printing, heading.tape};
  caption.notes = {fmt::format("{}, {} sections of {}, {} bunks", loaded.job.kit.name, track.sections, figures.say(track.rail_length), track.bunks),
                   fmt::format("Frame: {}", loaded.job.frame.name), heading.date};
  caption.draft = state == PacketState::draft;
  return picture_svg(view, caption);
}

std::string model(const Loaded& loaded) {
  const Heading& heading = loaded.job.order.order;
  return step_text(loaded.bed, {heading.number, heading.date, heading.shop, heading.shop, "bedwright " + version()});
}

void add_lists(const Loaded& loaded, std::vector<PacketFile>& files) {
  const Heading& heading = loaded.job.order.order;
  files.push_back({"lists/parts.csv", parts_csv(loaded.bed, heading)});
  files.push_back({"lists/cut_list.csv", cut_list_csv(loaded.bed, heading)});
  files.push_back({"lists/layout.csv", layout_csv(loaded.bed, heading)});
  files.push_back({"lists/drill_list.csv", drill_list_csv(loaded.bed, heading)});
  files.push_back({"lists/hardware.csv", hardware_csv(loaded.bed, loaded.job.kit.box, heading, loaded.job.order.spares)});
  const CheckInput input{loaded.bed, loaded.job.order.limits, &loaded.job, nullptr, {heading.printing, heading.tape}};
  files.push_back({"lists/bolts.csv", bolts_csv(loaded.bed, kinds_of_bolts(Scene(input)), heading)});
}

// Cut files for made plates, drill files for made members with holes.
void add_cut_and_drill(const Loaded& loaded, std::vector<PacketFile>& files) {
  const Heading& heading = loaded.job.order.order;
  for (std::size_t i = 0; i < loaded.bed.parts.size(); ++i) {
    const Part& part = loaded.bed.parts[i];
    if (part.origin != Origin::made) continue;
    if (std::holds_alternative<Plate>(part.form)) {
      files.push_back({"cut/" + file_word(part.name) + ".dxf", cut_file(part, heading, heading.printing, loaded.job.order.cut.kerf)});
    } else if (const Member* member = std::get_if<Member>(&part.form); member && !member->holes.empty()) {
      const std::vector<std::string> pages = drill_files(drill_drawing(loaded.bed, static_cast<int>(i), heading));
      for (std::size_t p = 0; p < pages.size(); ++p)
        files.push_back({fmt::format("drill/{}{}.dxf", file_word(part.name), pages.size() > 1 ? fmt::format("_{}", p + 1) : ""), pages[p]});
    }
  }
}

// The loads, each page as a picture and both as one document; in a draft too, stamped.
std::vector<Page> add_loads_pages(const Loaded& loaded, const LoadsResult& loads, PacketState state, std::vector<PacketFile>& files) {
  const Heading& heading = loaded.job.order.order;
  std::vector<Page> pages;
  for (List2d& list : loads_pages(loaded.job, loaded.bed, loads, state == PacketState::draft))
    pages.push_back({std::move(list), loads_page_width, loads_page_height, pages.empty() ? "Loads" : "Loads: sums and assumptions"});
  for (std::size_t i = 0; i < pages.size(); ++i)
    files.push_back({i == 0 ? "sheets/loads.svg" : fmt::format("sheets/loads_{}.svg", i + 1), page_svg(pages[i])});
  files.push_back({"sheets/loads.pdf", pages_pdf(pages, {"Loads of " + heading.number, heading.date})});
  return pages;
}

}  // namespace

std::vector<PacketFile> packet_files(const Loaded& loaded, const std::vector<Finding>& findings, PacketState state, Progress& progress) {
  const LoadsResult loads = run_loads(loaded.job, loaded.bed);
  const Report report{version(), loaded.job.order, state, loaded.bed, findings, &loaded.job, &loads};
  std::vector<PacketFile> files = {{"report.json", report_json(report)}, {"report.txt", report_text(report)}};
  if (state == PacketState::stopped) return files;
  progress.step("making the model and the picture");
  auto drawn = std::async(std::launch::async, [&] { return bed_views(loaded.bed); });
  files.push_back({"bed.step", model(loaded)});
  add_lists(loaded, files);
  if (state == PacketState::released) add_cut_and_drill(loaded, files);
  std::vector<Page> loads_last = add_loads_pages(loaded, loads, state, files);
  const BedViews views = drawn.get();
  add_sheets(loaded, drawn_sheets(loaded, loads, views, state == PacketState::draft), state, std::move(loads_last), files);
  files.push_back({"bed.svg", picture(loaded, views.isometric, state)});
  return files;
}

std::string input_digest(const Job& job) {
  std::string all;
  for (const InputFile& file : job.inputs) all += sha256(file.content) + "\n";
  for (const std::string& set : job.sets) all += set + "\n";
  return sha256(all);
}

}  // namespace bedwright
