// Border, title block, revisions and cautions.
#include "sheets/sheet.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>

#include "draw/table2d.h"

namespace bedwright {
namespace {

constexpr Mm border = 10, gap = 4;
constexpr Mm block_width = 176, row_height = 10.5;
constexpr int block_rows = 5;
constexpr Mm block_height = block_rows * row_height;
constexpr Mm stamp_band = 11;
// The latest ones; older are in the order file. With a note under them one less.
constexpr std::size_t most_revisions = 4;

struct Cell {
  Mm width;  // share of the row
  std::string label, value;
  Mm height = bench_text;
};

// A name longer than its cell ends in three points; the order file has it whole.
std::string fitted(std::string value, Mm height, Mm width) {
  if (text_width(value, height) <= width) return value;
  const auto part_of_letter = [&] {
    return !value.empty() && (static_cast<unsigned char>(value.back()) & 0xC0U) == 0x80U;
  };
  while (!value.empty() && text_width(value + "...", height) > width) {
    while (part_of_letter()) value.pop_back();
    if (!value.empty()) value.pop_back();
  }
  return value + "...";
}

class Surround {
 public:
  Surround(Sheet& sheet, const Job& job, const Paper& paper, const Issue& issue)
      : list_(sheet.list), pens_(list_), sheet_(sheet), job_(job), paper_(paper), issue_(issue) {}

  void draw(std::size_t number, std::size_t count) {
    box({border, border}, {paper_.width - border, paper_.height - border}, pens_.frame);
    title_block(number, count);
    left_band();
    if (issue_.trial) stamp();
  }

 private:
  void line(int layer, Vec2 a, Vec2 b) { list_.add(Line{layer, a, b}); }
  void box(Vec2 low, Vec2 high, int layer) { list_.add(Closed{layer, rectangle(low, high)}); }
  void text(Vec2 at, const std::string& s, Mm height, Across across = Across::left) {
    if (!s.empty()) list_.add(Text{pens_.text, at, height, s, across, Up::baseline, 0});
  }
  Mm block_left() const { return paper_.width - border - block_width; }

  void row(int index, const std::vector<Cell>& cells) {
    const Mm top = border + (block_rows - index) * row_height;
    Mm x = block_left();
    line(pens_.table, {x, top}, {x + block_width, top});
    for (const Cell& c : cells) {
      if (&c != &cells.front()) line(pens_.table, {x, top}, {x, top - row_height});
      text({x + 1.2, top - 3.1}, c.label, small_text);
      const Mm height = height_for(c.value, c.height, c.width - 2.4);
      text({x + 1.2, top - row_height + 1.2}, fitted(c.value, height, c.width - 2.4), height);
      x += c.width;
    }
  }

  void title_block(std::size_t number, std::size_t count) {
    const Heading& h = job_.order.order;
    const Tolerances& t = job_.order.tolerances;
    const Figures figures = h.figures();
    line(pens_.table, {block_left(), border}, {block_left(), border + block_height});
    row(0, {{74, "SHOP", h.shop}, {102, "TITLE", sheet_.title, large_text}});
    row(1, {{44, "ORDER", h.number, large_text},
            {20, "REVISION", h.revision, large_text},
            {40, "DATE OF ORDER", h.date},
            {72, "CUSTOMER", h.customer}});
    row(2, {{44, "SHEET", fmt::format("{} of {}", number, count)},
            {30, "SCALE", sheet_.scale},
            {30, "UNITS", figures.units_told()},
            {20, "SIZE", paper_.name},
            {52, figures.iso_practice() ? "FIRST ANGLE" : "THIRD ANGLE", ""}});
    projection({paper_.width - border - 13, border + 2.5 * row_height}, figures.iso_practice());
    row(3, {{50, "MATERIAL", sheet_.material},
            {126, "TOLERANCES UNLESS STATED",
             fmt::format("cut +/-{} mm, tab as welded +/-{}, tape {}", mm_figure(t.cut_position),
                         figures.size_length(t.weld_placement), figures.size_length(h.tape)),
             small_text}});
    row(4, {{60, "DRAWN BY", ""},
            {60, "CHECKED BY", ""},
            {56, "STATUS", issue_.trial ? "NOT FOR FABRICATION" : "RELEASED TO THE SHOP", small_text}});
  }

  // A cut cone in two views, ISO 128-30: third angle has the view from the left
  // end on the left, first angle on the right.
  void projection(Vec2 at, bool first_angle) {
    const double side = first_angle ? -1 : 1;
    const Vec2 end{at.x - side * 6, at.y}, cone{at.x + side * 5.5, at.y};
    list_.add(Circle{pens_.outline, end, 3});
    list_.add(Circle{pens_.outline, end, 1.5});
    const Mm small = cone.x - side * 5, large = cone.x + side * 5;
    list_.add(
        Closed{pens_.outline,
               polygon({{small, at.y - 1.5}, {large, at.y - 3}, {large, at.y + 3}, {small, at.y + 1.5}})});
    line(pens_.centre, {end.x - 4, at.y}, {end.x + 4, at.y});
    line(pens_.centre, {cone.x - 6, at.y}, {cone.x + 6, at.y});
    line(pens_.centre, {end.x, at.y - 4}, {end.x, at.y + 4});
  }

  void left_band() {
    const Mm left = border, right = block_left() - issue_width, top = border + block_height;
    line(pens_.table, {left, top}, {block_left(), top});
    draw_issue(list_, {right, top - issue_height}, issue_, pens_.text);
    Mm y = top - 4.6;
    text({left + 2, y}, "CAUTION", bench_text);
    const std::string words =
        "A frame or rail can crush, a trailer can roll away: chock, prop and keep clear. Weld to a qualified "
        "procedure by a qualified welder. "
        "Local road codes come first; where law or doubt asks for it a licensed engineer reviews loads and "
        "welds. "
        "Check one part against its sheet before making the rest. Do not scale this drawing.";
    for (const std::string& l : wrapped(words, small_text, right - left - 4)) {
      y -= 4;
      text({left + 2, y}, l, small_text);
    }
    revisions({left + 2, y - 2}, right - left - 4);
    y = border + 6;
    std::vector<std::string> note = wrapped(sheet_.note, small_text, right - left - 4);
    if (note.size() > 2) {
      note.resize(2);
      note.back() = fitted(note.back() + " ...", small_text, right - left - 4);
    }
    for (const std::string& l : note) {
      text({left + 2, y}, l, small_text);
      y -= 4;
    }
  }

  void revisions(Vec2 corner, Mm width) {
    Table2d table{{"REV", "DATE", "BY", "CHANGE"}, {}};
    const std::vector<Revision>& all = job_.order.revisions;
    const std::size_t most = most_revisions - (sheet_.note.empty() ? 0 : 1);
    const std::size_t first = all.size() > most ? all.size() - most : 0;
    for (std::size_t i = first; i < all.size(); ++i) {
      std::vector<std::string> row{all[i].revision, all[i].date, all[i].by, all[i].what};
      const Mm others = table_width({table.head, {{row[0], row[1], row[2], ""}}}, small_text);
      const std::vector<std::string> lines = wrapped(row[3], small_text, width - others);
      if (lines.size() > 1) row[3] = lines.front() + " ...";
      table.rows.push_back(row);
    }
    if (table.rows.empty())
      table.rows.push_back({job_.order.order.revision, job_.order.order.date, "", "First issue"});
    draw_table(list_, table, 0, table.rows.size(), corner, small_text, pens_.text, pens_.table);
  }

  void stamp() {
    const Vec2 at{paper_.width / 2, paper_.height - border - stamp_band + 3};
    list_.add(Text{pens_.stamp, at, 7, "NOT FOR FABRICATION", Across::centre, Up::baseline, 0});
  }

  List2d& list_;
  Pens pens_;
  Sheet& sheet_;
  const Job& job_;
  const Paper& paper_;
  const Issue& issue_;
};

}  // namespace

Paper paper_of(const Heading& heading) {
  static const std::array<Paper, 4> papers{
      {{"B", 17 * inch, 11 * inch}, {"D", 34 * inch, 22 * inch}, {"A3", 420, 297}, {"A1", 841, 594}}};
  switch (heading.sheet) {
    case SheetSize::by_units:
      return papers[heading.figures().iso_practice() ? 2 : 0];
    case SheetSize::ansi_b:
      return papers[0];
    case SheetSize::ansi_d:
      return papers[1];
    case SheetSize::iso_a3:
      return papers[2];
    case SheetSize::iso_a1:
      break;
  }
  return papers[3];
}

Pens::Pens(List2d& l)
    : outline(l.layer({"OUTLINE", 7, LineKind::continuous, 0.5})),
      thin(l.layer({"THIN", 7, LineKind::continuous, 0.25})),
      hidden(l.layer({"HIDDEN", 8, LineKind::hidden, 0.25})),
      centre(l.layer({"CENTRE", 4, LineKind::centre, 0.25})),
      dimension(l.layer({"DIMENSION", 3, LineKind::continuous, 0.25})),
      text(l.layer({"TEXT", 7, LineKind::continuous, 0.25})),
      table(l.layer({"TABLE", 8, LineKind::continuous, 0.25})),
      weld(l.layer({"WELD", 5, LineKind::continuous, 0.25})),
      frame(l.layer({"FRAME", 7, LineKind::continuous, 0.7})),
      stamp(l.layer({"STAMP", 1, LineKind::continuous, 0.5})) {}

Box2 drawing_space(const Paper& paper, bool draft) {
  Box2 space;
  space.add({border + mark_room, border + block_height + gap});
  space.add({paper.width - border - gap, paper.height - border - (draft ? stamp_band : gap)});
  return space;
}

void add_surround(Sheet& sheet, const Job& job, const Paper& paper, const Issue& issue, std::size_t number,
                  std::size_t count) {
  Surround(sheet, job, paper, issue).draw(number, count);
  const Heading& h = job.order.order;
  sheet.list.comments = {"UNITS: millimetres of paper",
                         fmt::format("Order {}, revision {}, sheet {} of {}: {}", h.number, h.revision,
                                     number, count, sheet.title),
                         issue_words(issue)};
  if (issue.trial) sheet.list.comments.push_back("NOT FOR FABRICATION");
}

Page page_of(const Sheet& sheet, const Paper& paper) {
  return {sheet.list, paper.width, paper.height, sheet.title};
}

Mm height_for(const std::string& text, Mm height, Mm width) {
  for (const Mm h : {height, bench_text, small_text})
    if (h <= height && text_width(text, h) <= width) return h;
  return small_text;
}

}  // namespace bedwright
