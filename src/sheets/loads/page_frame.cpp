// Draws a page's frame and heading, and breaks text into lines.
#include "sheets/loads/page_frame.h"

#include <fmt/format.h>

#include <algorithm>

namespace bedwright {

LoadsPens pens_of(List2d& list) {
  return {
      list.layer({"TEXT", 7, LineKind::continuous, 0.18}),
      list.layer({"BORDER", 7, LineKind::continuous, 0.5}),
      {list.layer({"THIN", 7, LineKind::continuous, 0.18}),
       list.layer({"THICK", 7, LineKind::continuous, 0.4}), list.layer({"LIMIT", 7, LineKind::centre, 0.25}),
       list.layer({"ENVELOPE", 7, LineKind::hidden, 0.18})}};
}

// Frame, heading and stamp; returns the height the rest may reach up to.
Mm start_page(List2d& list, const LoadsPens& pens, const Job& job, const std::string& what, int page,
              const Issue& issue) {
  const Heading& h = job.order.order;
  const Mm right = loads_page_width - loads_border, top = loads_page_height - loads_border, line = top - 11;
  list.add(Closed{pens.border, rectangle({loads_border, loads_border}, {right, top})});
  list.add(Line{pens.border, {loads_border, line}, {right, line}});
  list.add(Text{pens.text,
                {loads_border + 4, line + 3.5},
                3.5,
                fmt::format("{}  {} revision {}, {}", what, h.number, h.revision, h.customer),
                Across::left,
                Up::baseline,
                0});
  draw_issue(list, {right - issue_width, loads_border + 1.5}, issue, pens.text);
  list.add(Text{pens.text,
                {right - 4, line + 3.5},
                2.5,
                fmt::format("{}  page {} of 3", h.date, page),
                Across::right,
                Up::baseline,
                0});
  if (!issue.trial) return line;
  list.add(Text{pens.text,
                {loads_page_width / 2, line - 8},
                6,
                "NOT FOR FABRICATION",
                Across::centre,
                Up::baseline,
                0});
  list.add(Line{pens.border, {loads_border, line - 11}, {right, line - 11}});
  return line - 11;
}

// The largest text no higher than `most` at which the table is no wider than `width`.
Mm fitting(const Table2d& table, Mm width, Mm most) {
  return std::min(most, most * width / table_width(table, most));
}

// Wrapped paragraphs from `corner` down; returns where the next may start.
Mm write(List2d& list, int layer, Vec2 corner, Mm width, Mm height,
         const std::vector<std::string>& paragraphs) {
  Mm y = corner.y;
  for (const std::string& paragraph : paragraphs) {
    const Mm top = y;
    for (const std::string& line : wrapped(paragraph, height, width)) {
      y -= 1.6 * height;
      list.add(Text{layer, {corner.x, y}, height, line, Across::left, Up::baseline, 0});
    }
    list.passages.push_back({{{corner.x, y - 0.2 * height}, {corner.x + width, top}}, paragraph});
    y -= 0.7 * height;
  }
  return y;
}

Mm written(const std::vector<std::string>& paragraphs, Mm width, Mm height) {
  Mm all = 0;
  for (const std::string& paragraph : paragraphs)
    all += (1.6 * static_cast<double>(wrapped(paragraph, height, width).size()) + 0.7) * height;
  return all;
}

}  // namespace bedwright
