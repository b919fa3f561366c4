// What is to be done to a frame that stands before the track goes on: what comes off, what
// is filed, what is added, each with its place from the datum and its size.
#include <fmt/format.h>

#include <algorithm>

#include "bed/names.h"
#include "sheets/flow.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

struct Step {
  Mm at = 0;  // the hole, behind the mains' front end
  std::string what, size;
};

std::string tabs_at(const FrameTabs& t, Mm at) {
  std::vector<Mm> places = t.existing;
  std::sort(places.begin(), places.end());
  for (std::size_t i = 0; i < places.size(); ++i)
    if (std::abs(places[i] - at) < same_place) {
      const int number = static_cast<int>(i) + 1;
      return mark({Kind::tab, Side::left, number}) + ", " + mark({Kind::tab, Side::right, number});
    }
  throw std::logic_error("a change of a tab that does not stand");
}

// In the order a shop goes about it: off, file, on; each front to rear.
std::vector<Step> steps_of(const SheetInput& in) {
  const Figures figures = in.figures();
  const FrameTabs& t = in.job.frame.tabs;
  std::vector<Step> off, file, add;
  std::vector<Mm> cut = t.to_cut_off, fresh = t.to_add;
  for (const TabReplaced& r : t.to_replace) {
    cut.push_back(r.at);
    fresh.push_back(r.with);
  }
  for (const Mm at : cut)
    off.push_back({at, "CUT OFF tabs " + tabs_at(t, at), "grind the flange flush, leave no notch"});
  for (const TabFiled& f : t.to_file)
    file.push_back({f.at, "FILE the slots of tabs " + tabs_at(t, f.at),
                    fmt::format("to {} over all, {} more at each end", figures.size_length(f.slot_length),
                                figures.size_length((f.slot_length - t.slot_length) / 2))});
  int number = static_cast<int>(t.existing.size());
  for (const Mm at : fresh) {
    ++number;
    add.push_back(
        {at,
         fmt::format("ADD tabs {}, {}", mark({Kind::tab, Side::left, number}),
                     mark({Kind::tab, Side::right, number})),
         fmt::format("{} fillet, {}", figures.size_length(t.weld_leg),
                     words_of(t.style == TabStyle::plate ? WeldLine::across_flange : WeldLine::clip_ends))});
  }
  std::vector<Step> all;
  for (std::vector<Step>* some : {&off, &file, &add}) {
    std::sort(some->begin(), some->end(), [](const Step& a, const Step& b) { return a.at < b.at; });
    all.insert(all.end(), some->begin(), some->end());
  }
  return all;
}

Table2d step_table(const SheetInput& in, const std::vector<Step>& steps) {
  const Figures figures = in.figures();
  Table2d table{table_row({{"NO.", "DO"}, figures.heads("HOLE"), {"SIZE", "DONE"}}), {}};
  int number = 0;
  for (const Step& s : steps)
    table.rows.push_back(table_row({{fmt::format("{}", ++number), s.what},
                                    figures.cells(s.at - in.job.frame.main.front_overhang),
                                    {s.size, ""}}));
  return table;
}

std::vector<std::string> notes_of(const SheetInput& in) {
  const Figures figures = in.figures();
  const FrameTabs& t = in.job.frame.tabs;
  std::vector<std::string> notes{
      fmt::format(
          "Only what this table lists is done to the frame ({}). First the checks on sheet FRAME THAT "
          "STANDS: nothing is cut off before they agree.",
          in.job.frame.name),
      "Go down the table: first what comes off, then what is filed, then what is welded on. Tick each when "
      "it is done.",
  };
  if (!t.to_add.empty() || !t.to_replace.empty())
    notes.push_back(fmt::format(
        "New tabs are cut from the files in cut/, both sides alike. Scribe each hole's line across the "
        "flange at "
        "its figure; the hole's middle is {} out from the back of the main's web. Clamp, tack, measure "
        "again, "
        "then weld to a qualified procedure; paint comes off first, and nothing that burns is near.",
        figures.size_length(t.existing_line.value_or(0))));
  if (!t.to_file.empty())
    notes.push_back("File slots evenly at both ends, along the main, and no wider. Break the edges.");
  notes.push_back(
      "When all is done write it into the frame's file: a tab cut off leaves tabs.existing, a new one is "
      "listed "
      "there, a filed slot moves from tabs.to_file to tabs.filed. Then make the packet again; this sheet is "
      "gone from it when nothing is left to do.");
  return notes;
}

}  // namespace

std::vector<Sheet> frame_change_sheets(const SheetInput& in) {
  if (!stands(in.job.frame) || !is_to_be_changed(in.job.frame.tabs)) return {};
  Sheet form;
  form.title = "CHANGES TO THE FRAME";
  form.file = "frame_changes";
  form.material = in.job.frame.grade;
  Flow flow(form, drawing_space(paper_of(in.job.order.order), in.draft));
  flow.table("WHAT IS DONE TO THE FRAME THAT STANDS, both sides alike; holes from the front datum",
             step_table(in, steps_of(in)), bench_text);
  flow.below();
  flow.notes("NOTES", notes_of(in), bench_text, 150);
  return std::move(flow).sheets();
}

}  // namespace bedwright
