// bedwright built: writes down what was built from a release, and shows it.
#include "commands/built.h"

#include <fmt/format.h>

#include <stdexcept>

#include "commands/commands.h"
#include "commands/paste.h"
#include "commands/tell.h"
#include "packet/built.h"
#include "params/cross_check.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

// What the user has to mend; ends the command.
struct Refusal {
  std::string text;
};

void check_words(const char* option, const std::string& text) {
  if (text.find_first_not_of(' ') == std::string::npos)
    throw Refusal{fmt::format("{} wants words on one line", option)};
  if (control_character(text) != std::string::npos || first_bad_byte(text) != std::string::npos)
    throw Refusal{
        fmt::format("{} has a control character in it; write it in plain words on one line", option)};
}

BuiltBed bed_of(const BuiltArguments& arguments) {
  check_words("--serial", arguments.serial);
  if (!arguments.by.empty()) check_words("--by", arguments.by);
  for (const std::string& note : arguments.notes) check_words("--note", note);
  const std::string day = arguments.on.empty() ? today() : arguments.on;
  if (!is_calendar_date(day))
    throw Refusal{fmt::format("--on {} is no day of the calendar; write year-month-day, such as 2025-03-31",
                              bedwright::quoted(day))};
  return {arguments.serial, day, arguments.by, arguments.notes};
}

Recorded release_at(const std::string& text) {
  std::string folder = text;
  while (folder.size() > 1 && folder.ends_with('/')) folder.pop_back();
  const auto record = recorded(fs::path(folder).lexically_normal());
  if (!record)
    throw Refusal{fmt::format("{} is no release; name one, as out/QB-1041/A", bedwright::quoted(text))};
  if (record->standing == Standing::damaged)
    throw Refusal{fmt::format("{} is damaged: its manifest.json cannot be read", folder)};
  if (record->standing == Standing::trial)
    throw Refusal{fmt::format("{} is a trial; beds are built from a release", folder)};
  return *record;
}

// A serial number is one bed's, in all of out/.
void refuse_second_use(const Recorded& record, const std::string& serial) {
  for (const Recorded& other : all_recorded(fs::absolute(record.folder).parent_path().parent_path())) {
    std::vector<Problem> unread;  // told where that release is looked at
    const auto built = built_of(other, unread);
    for (const BuiltBed& bed : built ? built->beds : std::vector<BuiltBed>{})
      if (bed.serial == serial)
        throw Refusal{
            fmt::format("serial number {} is on a bed of order {} revision {} already ({}); give each "
                        "bed one of its own",
                        serial, other.order.number, other.order.revision, bed.built_on)};
  }
}

ExitCode run(const BuiltArguments& arguments) {
  const Recorded record = release_at(arguments.folder);
  const std::string file = built_file(record.folder).generic_string();
  if (!arguments.serial.empty()) {
    const BuiltBed bed = bed_of(arguments);
    refuse_second_use(record, bed.serial);
    try {
      add_built(record, bed);
    } catch (const std::runtime_error& refused) {  // a file or a place that is the user's to mend
      throw Refusal{refused.what()};
    }
    fmt::print("Written into {}\n", file);
  } else if (!arguments.on.empty() || !arguments.by.empty() || !arguments.notes.empty()) {
    throw Refusal{"--serial is missing; give the bed's serial number"};
  }
  const std::string lines = built_lines(record);
  fmt::print(
      "Order {} revision {}, {}\n{}", record.order.number, record.order.revision, record.order.customer,
      lines.empty() ? fmt::format("  nothing is written down as built from it; add --serial NUMBER, as\n"
                                  "  bedwright built {} --serial NUMBER --note \"WHAT STANDS OTHERWISE\"\n",
                                  shell_word(arguments.folder))
                    : lines);
  std::vector<Problem> problems;
  built_of(record, problems);
  return problems.empty() ? released : bad_input;
}

}  // namespace

std::string built_cell(const Recorded& record) {
  std::vector<Problem> problems;
  const auto built = built_of(record, problems);
  std::string cell = problems.empty() ? "" : "?";
  for (const BuiltBed& bed : built ? built->beds : std::vector<BuiltBed>{})
    cell += fmt::format("{}{} {}", cell.empty() ? "" : ", ", bed.serial, bed.built_on);
  return cell;
}

std::string built_lines(const Recorded& record) {
  std::vector<Problem> problems;
  const auto built = built_of(record, problems);
  std::string text;
  for (const Problem& problem : problems) text += "  " + to_line(problem) + "\n";
  for (const BuiltBed& bed : built ? built->beds : std::vector<BuiltBed>{}) {
    text += fmt::format("  built: serial number {}, {}{}\n", bed.serial, bed.built_on,
                        bed.by.empty() ? "" : ", by " + bed.by);
    for (const std::string& note : bed.notes) text += fmt::format("    as built: {}\n", note);
  }
  return text;
}

std::string built_notes(const Recorded& record) {
  std::vector<Problem> problems;
  const auto built = built_of(record, problems);
  std::string text;
  for (const Problem& problem : problems) text += "  " + to_line(problem) + "\n";
  for (const BuiltBed& bed : built ? built->beds : std::vector<BuiltBed>{})
    for (const std::string& note : bed.notes) text += fmt::format("  {} as built: {}\n", bed.serial, note);
  return text;
}

void add_built_json(const Recorded& record, Json& json) {
  std::vector<Problem> problems;
  if (const auto built = built_of(record, problems)) {
    json["built"] = Json::array();
    for (const BuiltBed& bed : built->beds)
      json["built"].push_back(
          {{"serial", bed.serial}, {"built_on", bed.built_on}, {"by", bed.by}, {"notes", bed.notes}});
  }
  for (const Problem& problem : problems) json["built_problems"].push_back(to_line(problem));
}

ExitCode built_command(const BuiltArguments& arguments) {
  try {
    return run(arguments);
  } catch (const Refusal& refusal) {
    tell("bedwright: {}\n", refusal.text);
  } catch (const fs::filesystem_error& unreadable) {
    tell("bedwright: {}\n", unreadable.what());
  }
  return bad_input;
}

}  // namespace bedwright
