// The index of sheets: what there is, what changed, and which paper is of this issue.
#include <fmt/format.h>

#include <algorithm>

#include "sheets/flow.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

constexpr const char *title = "SHEET INDEX", *file = "sheet_index";
constexpr Mm notes_width = 112, changes_width = 96;

Table2d table_of(const SheetInput& in, const std::vector<Sheet>& others,
                 const std::vector<FateOfSheet>& fates, std::size_t pages) {
  const bool revised = in.before && in.before->known;
  Table2d table{{"NO", "SHEET", "FILE"}, {}};
  if (revised) table.head.push_back("SINCE " + in.before->revision);
  const auto row = [&](const std::string& number, const std::string& what, const std::string& name,
                       const std::string& fate) {
    table.rows.push_back({number, what, "sheets/" + name});
    if (revised) table.rows.back().push_back(fate);
  };
  for (std::size_t i = 0; i < pages; ++i)
    row(fmt::format("{}", i + 1), title, i == 0 ? file : fmt::format("{}_{}", file, i + 1), "this list");
  for (std::size_t i = 0; i < others.size(); ++i)
    row(fmt::format("{}", i + pages + 1), others[i].title, others[i].file,
        revised ? word(fates.at(i).fate) : "");
  for (const FateOfSheet& f : in.further) row("-", f.title, f.file, revised ? word(f.fate) : "");
  for (std::size_t i = others.size(); i < fates.size(); ++i)
    row("-", fates[i].title, fates[i].file, word(fates[i].fate));
  return table;
}

// In rows, so that many go on to a further page.
Table2d changes_of(const SheetInput& in) {
  Table2d table{{"CHANGED AT " + in.job.order.order.revision}, {}};
  for (const std::string& change : in.before->changes)
    for (const std::string& line : wrapped(change, small_text, changes_width))
      table.rows.push_back(
          {(line == wrapped(change, small_text, changes_width).front() ? "" : "   ") + line});
  return table;
}

std::vector<std::string> notes_of(const SheetInput& in) {
  const Issue issue = in.issue();
  std::vector<std::string> notes;
  notes.push_back(fmt::format(
      "Every sheet of this {} says {} under its code. A sheet that says anything else is of another "
      "release or trial{}",
      issue.trial ? "trial" : "release", paper_digits(issue.digest),
      in.before && in.before->known
          ? fmt::format(": only those listed AS BEFORE may still be used with {}, the digits of revision {}.",
                        paper_digits(in.before->digest), in.before->revision)
          : ": do not build from it."));
  notes.push_back(
      "A phone reads order, revision and the whole digest from the code; verify, given the release's folder, "
      "tells the digits its paper should show.");
  if (issue.trial) notes.push_back("A trial is no release: build nothing from it.");
  if (!in.before) return notes;
  const std::string& letter = in.job.order.order.revision;
  if (!in.before->known) {
    notes.push_back(fmt::format(
        "What revision {} was made from cannot be read, so nothing is marked: use no sheet of {} with these.",
        in.before->revision, in.before->revision));
    return notes;
  }
  notes.push_back(
      fmt::format("On a changed sheet a triangle with {} and a bar stand left of each row or picture that is "
                  "not as at {}, "
                  "and a frame around the words of a picture. Take every changed sheet of {} off the bench.",
                  letter, in.before->revision, in.before->revision));
  return notes;
}

}  // namespace

std::vector<Sheet> index_sheets(const SheetInput& in, const std::vector<Sheet>& others,
                                const std::vector<FateOfSheet>& fates) {
  Sheet form;
  form.title = title;
  form.file = file;
  const auto made = [&](std::size_t pages) {
    Flow flow(form, drawing_space(paper_of(in.job.order.order), in.draft));
    flow.table(title, table_of(in, others, fates, pages), small_text);
    flow.notes("NOTES", notes_of(in), small_text, notes_width);
    if (in.before && !in.before->changes.empty()) flow.table("WHAT CHANGED", changes_of(in), small_text);
    return std::move(flow).sheets();
  };
  // Its own pages are in it.
  std::vector<Sheet> sheets = made(1);
  for (std::size_t pages = 1; sheets.size() != pages;) sheets = made(pages = sheets.size());
  return sheets;
}

}  // namespace bedwright
