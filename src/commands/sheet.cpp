// bedwright sheet: single sheets of a release, drawn again on request.
#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "commands/make_packet.h"
#include "commands/session.h"
#include "commands/tell.h"
#include "formats/digest.h"
#include "formats/font.h"
#include "formats/page_svg.h"
#include "formats/pdf.h"
#include "kernel/kernel_judge.h"
#include "kernel/viewer.h"
#include "packet/inputs.h"
#include "packet/record.h"
#include "packet/sheet_files.h"
#include "packet/whole_folder.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

// What the user has to mend; ends the command.
struct Refusal {
  std::string text;
};

// Paper is printed of what stands, and stands as it was released.
Recorded release_at(const std::string& text) {
  std::string folder = text;
  while (folder.size() > 1 && folder.ends_with('/')) folder.pop_back();
  const auto record = recorded(fs::path(folder).lexically_normal());
  if (!record)
    throw Refusal{fmt::format("{} is no release; name one, as out/QB-1041/A", bedwright::quoted(text))};
  switch (record->standing) {
    case Standing::released:
      break;
    case Standing::withdrawn:
      throw Refusal{fmt::format("{} is withdrawn ({}): nothing is printed to build from it", folder,
                                record->why.empty() ? "the note beside it is lost" : record->why)};
    case Standing::trial:
      throw Refusal{fmt::format("{} is a trial; its sheets are in {}/sheets/", folder, folder)};
    case Standing::damaged:
      throw Refusal{fmt::format("{}: {}", folder, damage(*record))};
  }
  if (!differences_on_disk(*record).none())
    throw Refusal{fmt::format("{} is not as it was released; bedwright verify {} tells what was changed",
                              folder, folder)};
  return *record;
}

Loaded read_again(const Recorded& record) {
  std::vector<Problem> problems;
  auto loaded = load({(record.folder / inputs_order).string(), {}}, {kernel_judge()}, problems);
  if (!loaded) {
    std::string text = fmt::format("{} cannot be drawn by this program:", record.folder.string());
    for (const Problem& problem : problems) text += "\n" + to_line(problem);
    throw Refusal{text};
  }
  return std::move(*loaded);
}

std::string known_names(const std::vector<Sheet>& sheets) {
  std::string names;
  for (const Sheet& sheet : sheets) names += (names.empty() ? "" : ", ") + sheet.file;
  return names;
}

// Whether `file` is the sheet of that name or a further page of it.
bool is_page_of(const std::string& file, const std::string& name) {
  if (file == name) return true;
  return file.size() > name.size() + 1 && file.starts_with(name + "_") &&
         file.find_first_not_of("0123456789", name.size() + 1) == std::string::npos;
}

// In the order asked for, each with its further pages: half a sheet misleads.
std::vector<Sheet> named(const std::vector<std::string>& names, const std::vector<Sheet>& sheets) {
  std::vector<Sheet> chosen;
  for (const std::string& name : names) {
    const std::size_t before = chosen.size();
    for (const Sheet& sheet : sheets) {
      if (!is_page_of(sheet.file, name)) continue;
      const auto same = [&](const Sheet& other) { return other.file == sheet.file; };
      if (std::any_of(chosen.begin(), chosen.end(), same))
        throw Refusal{fmt::format("{} is named twice", sheet.file)};
      chosen.push_back(sheet);
    }
    if (chosen.size() == before)
      throw Refusal{
          fmt::format("there is no sheet {}; there are {}", bedwright::quoted(name), known_names(sheets))};
  }
  return chosen;
}

// A sheet that is drawn otherwise today is not the release's.
void check_as_released(const Recorded& record, const Sheet& sheet, const std::string& svg) {
  const std::string path = fmt::format("sheets/{}.svg", sheet.file);
  const auto listed = std::find_if(record.files.begin(), record.files.end(),
                                   [&](const ListedFile& file) { return file.path == path; });
  if (listed != record.files.end() && listed->sha256 == sha256(svg)) return;
  throw Refusal{fmt::format(
      "{} comes out otherwise than it was released (by bedwright {}; this is {}); nothing was written: print "
      "sheets/{}.pdf of the release itself",
      sheet.file, record.version, version(), sheet.file)};
}

ExitCode run(const SheetArguments& arguments, Progress& progress) {
  if (const std::string fault = font_fault(); !fault.empty()) throw Refusal{fault};
  const Recorded record = release_at(arguments.folder);
  progress.step("drawing");
  const Loaded loaded = read_again(record);
  const Examined& e = *loaded.examined;
  if (e.is_stopped())
    throw Refusal{fmt::format("{} is stopped by this program: see bedwright check {}", record.folder.string(),
                              (record.folder / inputs_order).string())};
  std::vector<Problem> problems;
  const auto made = make_release(loaded, revised_by(record), progress, problems);
  if (!made) throw Refusal{to_line(problems.front())};
  const std::vector<Sheet>& sheets = made->drawn;
  if (arguments.sheets.empty()) {
    progress.step("");
    fmt::print("Sheets of {}: {}\n", record.folder.generic_string(), known_names(sheets));
    return released;
  }
  std::vector<Page> pages;
  std::vector<PacketFile> files;
  for (const Sheet& sheet : named(arguments.sheets, sheets)) {
    Page page = page_of(sheet, paper_of(e.heading()));
    files.push_back({sheet.file + ".svg", page_svg(page)});
    check_as_released(record, sheet, files.back().content);
    page.title = sheet.title;
    pages.push_back(std::move(page));
  }
  const Heading& heading = e.heading();
  files.push_back(
      {"extra.pdf", pages_pdf(pages, {fmt::format("Sheets of order {}", heading.number), heading.date})});
  const fs::path to = extra_folder(record.folder);
  try {
    write_listed_folder(to, files, "extra.sha256", record.folder.parent_path().parent_path());
  } catch (const std::runtime_error& refused) {  // a place that is the user's to mend
    throw Refusal{refused.what()};
  }
  progress.step("");
  fmt::print("Wrote {} sheet{} in {}/extra.pdf\n", pages.size(), pages.size() == 1 ? "" : "s",
             to.generic_string());
  return released;
}

}  // namespace

ExitCode sheet_command(const SheetArguments& arguments) {
  Progress progress;
  try {
    return run(arguments, progress);
  } catch (const Refusal& refusal) {
    progress.step("");
    tell("bedwright: {}\n", refusal.text);
  } catch (const fs::filesystem_error& unreadable) {
    progress.step("");
    tell("bedwright: {}\n", unreadable.what());
  }
  return bad_input;
}

}  // namespace bedwright
