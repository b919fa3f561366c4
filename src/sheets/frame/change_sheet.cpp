// What is to be done to a frame that stands before the track goes on: what comes off, what
// is filed, drilled in place, added, each with its place from the mains' front ends and its
// size; and the shims that lay the rails straight, tab by tab.
#include <fmt/format.h>

#include <algorithm>

#include "bed/names.h"
#include "sheets/flow.h"
#include "sheets/frame/changes.h"
#include "sheets/sheets.h"

namespace bedwright {
namespace {

std::string size_of(const SheetInput& in, const FrameChange& c) {
  const Figures figures = in.figures();
  switch (c.kind) {
    case ChangeKind::cut_off:
      return "grind the flange flush, leave no notch";
    case ChangeKind::file:
      return fmt::format("the slot to {} over all: {} more at each end", figures.size_length(c.size),
                         figures.size_length((c.size - c.from.value_or(0)) / 2));
    case ChangeKind::unbolt_jack:
      return "with their plates; keep bolts and nuts";
    case ChangeKind::drill:
      return fmt::format("{} through, {} below the mains' tops", figures.size_length(c.size),
                         figures.tape_length(c.down.value_or(0)));
    case ChangeKind::bolt_jack:
      return "plate outside on the web; new lock washers";
    case ChangeKind::add_tab:
      return fmt::format("{} fillet, {}", figures.size_length(c.size),
                         words_of(in.job.frame.tabs.style == TabStyle::plate ? WeldLine::across_flange
                                                                             : WeldLine::clip_ends));
    case ChangeKind::shim:
      break;
  }
  throw std::logic_error("shims have a table of their own");
}

// "both tabs", or which side alone.
std::string where_of(const FrameChange& c) {
  if (c.items.size() != 1) return "both sides";
  return c.items.front().side == Side::left ? "LEFT ALONE" : "RIGHT ALONE";
}

Table2d step_table(const SheetInput& in, const std::vector<FrameChange>& steps) {
  const Figures figures = in.figures();
  Table2d table{
      table_row({{"NO.", "DO", "WHICH", "SIDE"}, figures.heads("FROM FRONT ENDS"), {"HOW", "DONE"}}), {}};
  int number = 0;
  for (const FrameChange& s : steps)
    if (s.kind != ChangeKind::shim)
      table.rows.push_back(
          table_row({{fmt::format("{}", ++number), verb_of(s.kind), items_of(s), where_of(s)},
                     figures.cells(s.at),
                     {size_of(in, s), ""}}));
  return table;
}

Table2d shim_table(const SheetInput& in, const std::vector<FrameChange>& steps) {
  const Figures figures = in.figures();
  Table2d table{table_row({{"UNDER THE RAIL ON"},
                           figures.heads("FROM FRONT ENDS"),
                           {"PACK", "MADE OF", "BOLT THERE", "DONE"}}),
                {}};
  for (const FrameChange& s : steps) {
    if (s.kind != ChangeKind::shim) continue;
    std::string made_of;
    for (const Mm shim : s.shims) made_of += (made_of.empty() ? "" : " + ") + figures.size_length(shim);
    table.rows.push_back(
        table_row({{items_of(s)},
                   figures.cells(s.at),
                   {figures.size_length(s.size), made_of, figures.size_length(s.bolt_length), ""}}));
  }
  return table;
}

std::string hours_of(const SheetInput& in, const std::vector<FrameChange>& steps) {
  const auto minutes = minutes_of(work_of(steps), in.job.order.times);
  if (!minutes) return "";
  return fmt::format("By the shop's own times this is {:.1f} hours for one person, shims included.",
                     *minutes / 60);
}

std::vector<std::string> notes_of(const SheetInput& in, const std::vector<FrameChange>& steps) {
  const Figures figures = in.figures();
  const FrameTabs& t = in.job.frame.tabs;
  const WorkCount work = work_of(steps);
  std::vector<std::string> notes{
      fmt::format(
          "Only what this sheet lists is done to the frame ({}). First the checks on sheet FRAME THAT "
          "STANDS: nothing is cut or drilled before they agree.",
          in.job.frame.name),
      "Hook the tape on the mains' front ends: every figure here is from there, to a tab's hole, to the "
      "middle of a jack's plate, or to a hole. Go down the table in its order. Tick each when it is done.",
  };
  if (std::any_of(steps.begin(), steps.end(),
                  [](const FrameChange& s) { return s.kind != ChangeKind::shim && s.items.size() == 1; }))
    notes.push_back(
        "LEFT and RIGHT are as you face forward. LEFT ALONE or RIGHT ALONE: the other side stays "
        "as it is.");
  if (work.add > 0)
    notes.push_back(fmt::format(
        "New tabs are cut from the files in cut/, both sides alike. Scribe each hole's line across the "
        "flange at its figure; the hole's middle is {} out from the back of the main's web. Clamp, tack, "
        "measure again, then weld to a qualified procedure; paint comes off first, and nothing that burns is "
        "near.",
        figures.size_length(t.existing_line.value_or(0))));
  if (work.file > 0)
    notes.push_back("File slots evenly at both ends, along the main, and no wider. Break the edges.");
  if (work.holes > 0)
    notes.push_back(
        "Drill in place with a magnetic drill, from the web's back, square to it. Bolt the jack's plate up "
        "as a template once its first hole is through, then drill the others through it. Burr both faces, "
        "paint the bare steel. Holes that are left stay open: weld nothing into them.");
  if (const std::string hours = hours_of(in, steps); !hours.empty()) notes.push_back(hours);
  if (work.to_the_frame() > 0)
    notes.push_back(
        "When all is done write it into the frame's file: a tab cut off leaves tabs.existing "
        "(tabs.left.existing "
        "or tabs.right.existing where the sides are no longer alike), a new one is listed there and measured "
        "into tabs.heights, a filed slot moves from to_file to filed, a jack's new place goes into "
        "jack.existing and the one it left into jack.old_holes. Then make the packet again: the table above "
        "is "
        "gone from it when nothing is left to do.");
  return notes;
}

std::vector<std::string> shim_notes(const SheetInput& in, const WorkCount& work) {
  std::vector<std::string> notes{
      fmt::format("Slotted shims go on from the side, under the rail, on the tab's top, when the rail is "
                  "laid and before its "
                  "bolts are drawn up. The packs come from the heights in the frame's file; both rails then "
                  "lie straight. "
                  "Check with a string along each rail. No pack may be over {}.",
                  in.figures().size_length(in.job.order.limits.most_shim))};
  if (work.add > 0)
    notes.push_back(
        "New tabs have no pack listed: measure under the rail once it lies on the others, and shim "
        "what is left open.");
  return notes;
}

}  // namespace

std::vector<Sheet> frame_change_sheets(const SheetInput& in) {
  const std::vector<FrameChange> steps = frame_changes(in.job, in.bed);
  if (steps.empty()) return {};
  Sheet form;
  form.title = "CHANGES TO THE FRAME";
  form.file = "frame_changes";
  form.material = in.job.frame.grade;
  Flow flow(form, drawing_space(paper_of(in.job.order.order), in.draft));
  const WorkCount work = work_of(steps);
  constexpr Mm note_width = 320;  // beside nothing, under a table as wide
  if (work.to_the_frame() > 0) {
    flow.table("WHAT IS DONE TO THE FRAME THAT STANDS, places from the mains' front ends",
               step_table(in, steps), bench_text);
    flow.below();
    flow.notes("NOTES", notes_of(in, steps), bench_text, note_width);
    flow.below();
  }
  if (work.shims > 0) {
    flow.table("SHIMS UNDER THE RAILS, places from the mains' front ends", shim_table(in, steps), bench_text);
    flow.below();
    flow.notes("NOTES ON SHIMS", shim_notes(in, work), bench_text, note_width);
  }
  return std::move(flow).sheets();
}

}  // namespace bedwright
