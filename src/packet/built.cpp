// Reads and writes what was built from a release.
#include "packet/built.h"

#include <fmt/format.h>

#include <cstdio>
#include <set>
#include <stdexcept>

#include "formats/digest.h"
#include "packet/whole_folder.h"
#include "params/cross_check.h"
#include "params/input.h"
#include "yaml/reader.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t mark_length = 16;

std::optional<Built> read_text(const Recorded& record, const std::string& file, const std::string& text,
                               std::vector<Problem>& problems) {
  const std::size_t before = problems.size();
  const Document document = parse_document(file, text);
  Built built;
  read_document(document, built, problems);
  if (problems.size() > before) return std::nullopt;
  const auto fault = [&](const std::string& key, std::string what, std::string would_do) {
    problems.push_back({mark_of(document, key), std::move(what), std::move(would_do)});
  };
  if (built.release != release_mark(record))
    fault("release",
          fmt::format("{} is not the release beside it, {}", bedwright::quoted(built.release),
                      record.folder.string()),
          fmt::format("if the beds were built from that one, write {}", release_mark(record)));
  std::set<std::string> serials;
  for (std::size_t i = 0; i < built.beds.size(); ++i) {
    const BuiltBed& bed = built.beds[i];
    const std::string at = path_to("beds", i + 1);
    if (!is_calendar_date(bed.built_on))
      fault(at + ".built_on", fmt::format("{} is no day of the calendar", bedwright::quoted(bed.built_on)),
            "write year-month-day, such as 2025-03-31");
    if (!serials.insert(bed.serial).second)
      fault(at + ".serial", fmt::format("{} is given to two beds", bedwright::quoted(bed.serial)),
            "give each bed a serial number of its own");
  }
  return problems.size() == before ? std::optional(std::move(built)) : std::nullopt;
}

std::string form(const Recorded& record) {
  return fmt::format(
      "# What was built from order {} revision {}. The release beside it never changes; what stands\n"
      "# otherwise on a bed is noted here. bedwright orders, verify and compare show it.\n"
      "release: {}\n"
      "beds:\n",
      record.order.number, record.order.revision, release_mark(record));
}

std::string entry(const BuiltBed& bed) {
  std::string text =
      fmt::format("  - serial: {}\n    built_on: {}\n", yaml_word(bed.serial), yaml_word(bed.built_on));
  if (!bed.by.empty()) text += fmt::format("    by: {}\n", yaml_word(bed.by));
  if (!bed.notes.empty()) text += "    notes:\n";
  for (const std::string& note : bed.notes) text += fmt::format("      - {}\n", yaml_word(note));
  return text;
}

std::string lines(const std::vector<Problem>& problems) {
  std::string all;
  for (const Problem& problem : problems) all += (all.empty() ? "" : "\n") + to_line(problem);
  return all;
}

}  // namespace

fs::path built_file(const fs::path& release) { return release.string() + ".built.yaml"; }

std::string release_mark(const Recorded& record) { return sha256(record.manifest).substr(0, mark_length); }

std::optional<Built> built_of(const Recorded& record, std::vector<Problem>& problems) {
  const fs::path file = built_file(record.folder);
  std::error_code error;
  if (fs::symlink_status(file, error).type() == fs::file_type::not_found) return std::nullopt;
  const auto text = read_bytes(file.string(), {file.string(), 0, 0, ""}, problems);
  return text ? read_text(record, file.string(), *text, problems) : std::nullopt;
}

void add_built(const Recorded& record, const BuiltBed& bed) {
  const Workplace place(record.folder.parent_path().parent_path());
  const fs::path file = built_file(record.folder);
  std::vector<Problem> problems;
  const auto before = built_of(record, problems);
  if (!problems.empty()) throw std::runtime_error(lines(problems));
  std::string text = form(record);
  if (before) text = read_bytes(file.string(), {file.string(), 0, 0, ""}, problems).value_or("");
  if (!text.ends_with('\n')) text += '\n';
  text += entry(bed);
  const auto after = read_text(record, file.string(), text, problems);
  if (!after || after->beds.size() != (before ? before->beds.size() : 0) + 1)
    throw std::runtime_error(before
                                 ? fmt::format("{} cannot be added to as it is written; add to its beds by "
                                               "hand:\n{}{}{}",
                                               file.string(), entry(bed),
                                               problems.empty() ? "" : "as it says:\n", lines(problems))
                                 : lines(problems));
  const fs::path fresh = place.path() / "built";
  write_file(fresh, text);
  if (const int error = renamed(fresh, file, before ? 0 : RENAME_NOREPLACE)) fail_to_rename(file, error);
  sync_folder(file.parent_path());
}

}  // namespace bedwright
