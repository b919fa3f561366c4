// Where every tab goes: a strip of both mains, the table to tape from, a section
// through a tab and how to check the row.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "bed/names.h"
#include "sheets/flow.h"
#include "sheets/marks.h"
#include "sheets/plan.h"
#include "sheets/sheets.h"
#include "sheets/tabs/tab_rows.h"
#include "sheets/tabs/tab_section.h"

namespace bedwright {
namespace {

constexpr Mm band_apart = 15;  // between the mains of the strip, which is not to scale across

bool stands_elsewhere(const TabFound& f) { return std::hypot(f.x, f.y) > same_place; }

class Strip {
 public:
  // Tabs numbered in letters `height` high, the first and every `step`th.
  Strip(const SheetInput& in, const std::vector<TabRow>& rows, Mm space, Mm height, int step)
      : in_(in), rows_(rows), pens_(list_), height_(height), step_(step) {
    const Box3 box = bounds(in.bed, in.bed.item({Kind::main, Side::right}));
    from_ = std::min(0.0, box.low.x);
    to_ = box.high.x;
    main_ = {box.low.x, box.high.x};
    scale_ = reduction(to_ - from_, space - 30);
  }

  int scale() const { return scale_; }

  List2d drawn() {
    band(Side::right, band_apart);
    band(Side::left, -band_apart);
    dimensions(Side::right, true, height_);
    if (!std::all_of(rows_.begin(), rows_.end(), [](const TabRow& r) { return r.on_both(); }))
      dimensions(Side::left, false, height_);
    ends();
    return std::move(list_);
  }

 private:
  Mm x(Mm bed_x) const { return (bed_x - from_) / scale_; }
  // Both half as wide again as to scale, so that a hole shows.
  Mm half_width() const { return 2.2; }

  void band(Side side, Mm y) {
    const int pen = stands(in_.job.frame) ? pens_.thin : pens_.outline;
    list_.add(Closed{pen, rectangle({x(main_.x), y - half_width()}, {x(main_.y), y + half_width()})});
    std::vector<Tag> numbers;
    for (const TabRow& r : rows_) {
      if (!r.on(side)) continue;
      const Mm half = std::max(0.8, (r.hole - r.edge) / scale_);
      list_.add(Closed{pen, rectangle({x(r.hole) - half, y - half_width() - 1.2},
                                      {x(r.hole) + half, y + half_width() + 1.2})});
      list_.add(Circle{pens_.thin, {x(r.hole), y}, 0.5});
      if ((r.number - 1) % step_ == 0) numbers.push_back({x(r.hole), mark({Kind::tab, side, r.number})});
    }
    tag_row(list_, numbers, y - outward(side) * (half_width() + 1.2), side == Side::right ? y - 11 : y + 7.5,
            height_, pens_.text);
  }

  void dimensions(Side side, bool up, Mm height) {
    std::vector<Running> places{{x(0), "0"}};
    for (const TabRow& r : rows_)
      if (r.on(side)) places.push_back({x(r.hole), in_.figures().tape_figure(r.hole)});
    running_along(list_, places, (up ? 1 : -1) * (band_apart + half_width() + 1.2), up, height);
  }

  void ends() {
    const Box2 box = bounds(list_);
    const auto word = [&](Mm at, Mm y, const char* s, Across across) {
      list_.add(Text{pens_.text, {at, y}, bench_text, s, across, Up::middle, 0});
    };
    word(box.low.x - 3, band_apart, "RIGHT (R)", Across::right);
    word(box.low.x - 3, 0, "FRONT", Across::right);
    word(box.low.x - 3, -band_apart, "LEFT (L)", Across::right);
  }

  const SheetInput& in_;
  const std::vector<TabRow>& rows_;
  List2d list_;
  Pens pens_;
  Mm height_;
  int step_;
  Mm from_ = 0, to_ = 0;
  Vec2 main_;
  int scale_ = 1;
};

struct DrawnStrip {
  List2d list;
  int scale = 1;
};

// A long bed's numbers stand closer, in smaller letters, and at last only every fifth.
DrawnStrip fitting_strip(const SheetInput& in, const std::vector<TabRow>& rows, Mm space) {
  DrawnStrip out;
  for (const auto& [height, step] :
       {std::pair(bench_text, 1), std::pair(small_text, 1), std::pair(small_text, 5)}) {
    Strip strip(in, rows, space, height, step);
    out = {strip.drawn(), strip.scale()};
    if (bounds(out.list).width() <= space) break;
  }
  return out;
}

Table2d table_of(const SheetInput& in, const std::vector<TabRow>& rows) {
  const Figures figures = in.figures();
  const FrameTabs& t = in.job.frame.tabs;
  const std::string style = t.style == TabStyle::plate ? "plate" : "clip";
  const auto weld = [&](const TabRow& r) {
    const int tab = in.bed.item({Kind::tab, r.left ? Side::left : Side::right, r.number});
    return in.bed.part_of(tab).origin == Origin::standing ? "stands" : figures.size_figure(t.weld_leg);
  };
  Table2d table;
  table.head = table_row({{"TAB", "SIDE"},
                          figures.heads("HOLE"),
                          figures.heads("FRONT EDGE"),
                          figures.heads("ACROSS"),
                          {"STYLE", "WELD", "+/- WORST", "+/- RSS"}});
  for (const TabRow& r : rows) {
    const bool found =
        std::any_of(in.job.order.tabs_found.begin(), in.job.order.tabs_found.end(), [&](const TabFound& f) {
          const Identity tab = tab_called(f.tab.text);
          return tab.number == r.number && r.on(tab.side) && stands_elsewhere(f);
        });
    const auto error = [&](Mm e) { return r.used ? figures.error_figure(e) : std::string("-"); };
    table.rows.push_back(table_row({{fmt::format("{}", r.number), sides_of(r) + (found ? " FOUND" : "")},
                                    figures.cells(r.hole),
                                    figures.cells(r.edge),
                                    figures.cells(r.across),
                                    {style, weld(r), error(r.worst), error(r.rss)}}));
  }
  return table;
}

// "TABS R7, L2 AND 3 MORE"; empty where all stand in their places.
std::string tabs_found(const Order& order) {
  constexpr int most_named = 4;
  std::string text;
  int count = 0;
  for (const TabFound& f : order.tabs_found)
    if (stands_elsewhere(f) && ++count <= most_named) text += (count == 1 ? "" : ", ") + f.tab.text;
  if (count == 0) return "";
  return fmt::format("{} {}{}", count == 1 ? "TAB" : "TABS", text,
                     count > most_named ? fmt::format(" AND {} MORE", count - most_named) : "");
}

std::vector<std::string> notes_of(const SheetInput& in, const std::vector<TabRow>& rows) {
  const Figures figures = in.figures();
  const FrameTabs& t = in.job.frame.tabs;
  const Mm main_front = bounds(in.bed, in.bed.item({Kind::main, Side::right})).low.x;
  const bool standing = stands(in.job.frame);
  std::vector<std::string> notes;
  notes.push_back(std::abs(main_front) < same_place
                      ? "Hook the tape on the front ends of the mains: they are the front datum, 0. Never "
                        "measure from tab to tab."
                      : fmt::format("The front datum, 0, is {} behind the mains' front ends. Scribe it on "
                                    "both mains and measure every tab from it, never from tab to tab.",
                                    figures.tape_length(-main_front)));
  notes.push_back(fmt::format(
      "Tape figures are to the nearest {}{}. ACROSS is from the centre line to the hole. L is "
      "the left, facing forward, R the right.",
      figures.size_length(figures.mark), figures.exact_beside() ? "; the figures beside are exact" : ""));
  notes.push_back(fmt::format(
      "+/- WORST and +/- RSS: how far, in {}, rail hole and tab hole may be apart along the bed when every "
      "error adds up, and as a root sum of squares. The slot takes it; do not use it up with the tape.",
      figures.unit()));
  if (!standing && t.style == TabStyle::clip)
    notes.push_back(
        fmt::format("Scribe the hole's line down the main's web at each figure and set the clip's slot on "
                    "it. The clip's top stands {} above the main's top: gauge it with a block of that height "
                    "under a straight bar. Clamp, tack, measure again, then weld.",
                    figures.size_note(t.clip->standoff)));
  else
    notes.push_back(!standing ? "Scribe the hole's line across the flange at each figure, set the "
                                "tab's slot on it, clamp, tack, measure again, then weld."
                              : "These tabs stand on the frame already, but those with a figure under WELD, "
                                "which are new (sheet CHANGES TO THE FRAME): check each hole against the "
                                "table before any rail goes on.");
  if (!standing && t.style == TabStyle::plate && t.plate->pad_thickness > same_place)
    notes.push_back(
        fmt::format("Tack each pad with a bolt drawn up through pad and plate, their ends flush. The two "
                    "holes may be {} out "
                    "of line as welded, no more.",
                    figures.size_length(in.job.order.tolerances.pad_placement)));
  notes.push_back(fmt::format(
      "String line: stretch a line from hole 1 to hole {} on each side. No hole's middle may be off it by "
      "more than {}.",
      rows.empty() ? 0 : rows.back().number,
      figures.size_length(standing ? in.job.order.tolerances.existing_tab
                                   : in.job.order.tolerances.weld_placement)));
  if (!standing)
    notes.push_back(
        "Jig: two tab blanks bolted to a straight bar at the pitch of two neighbouring holes; use it to "
        "check "
        "pitch, never to step along.");
  if (std::any_of(rows.begin(), rows.end(), [](const TabRow& r) { return !r.used; }))
    notes.push_back("A dash: no track bolt goes through this tab.");
  return notes;
}

}  // namespace

std::vector<Sheet> tab_layout_sheets(const SheetInput& in) {
  const std::vector<TabRow> rows = tab_rows(in.bed);
  Sheet form;
  form.title = stands(in.job.frame) ? "TABS THAT STAND" : "TAB LAYOUT";
  form.file = "tab_layout";
  form.material = in.job.frame.grade;
  const Box2 space = drawing_space(paper_of(in.job.order.order), in.draft);
  DrawnStrip strip = fitting_strip(in, rows, space.width());
  form.scale = "AS NOTED";
  Flow flow(form, space);
  flow.picture(strip.list);
  flow.below();
  flow.table(fmt::format("TABS, from the front datum (strip 1:{} along, not to scale across)", strip.scale),
             table_of(in, rows), bench_text);
  flow.below();
  flow.picture(tab_section(in));
  flow.notes("NOTES", notes_of(in, rows), bench_text, 125);
  if (const std::string found = tabs_found(in.job.order); !found.empty()) {
    flow.below();
    flow.notes("FOUND OUT OF PLACE",
               {fmt::format("{}: SHOWN WHERE FOUND ON THIS FRAME, not where laid out (report, TAB-FOUND). "
                            "Build no other frame from this sheet.",
                            found)},
               bench_text, 125);
  }
  return std::move(flow).sheets();
}

}  // namespace bedwright
