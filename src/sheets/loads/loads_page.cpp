// Lays out pictures, tables and sums on the two pages.
#include "sheets/loads/loads_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "draw/table2d.h"
#include "loads/travel_name.h"
#include "loads/worked.h"
#include "sheets/loads/loads_pictures.h"

namespace bedwright {
namespace {

constexpr Mm border = 10, letters = 2.5;

struct LoadsPens {
  int text, border;
  PicturePens picture;
};

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
  const Mm right = loads_page_width - border, top = loads_page_height - border, line = top - 11;
  list.add(Closed{pens.border, rectangle({border, border}, {right, top})});
  list.add(Line{pens.border, {border, line}, {right, line}});
  list.add(Text{pens.text,
                {border + 4, line + 3.5},
                3.5,
                fmt::format("{}  {} revision {}, {}", what, h.number, h.revision, h.customer),
                Across::left,
                Up::baseline,
                0});
  draw_issue(list, {right - issue_width, border + 1.5}, issue, pens.text);
  list.add(Text{pens.text,
                {right - 4, line + 3.5},
                2.5,
                fmt::format("{}  page {} of 2", h.date, page),
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
  list.add(Line{pens.border, {border, line - 11}, {right, line - 11}});
  return line - 11;
}

// The largest text no higher than `most` at which the table is no wider than `width`.
Mm fitting(const Table2d& table, Mm width, Mm most) {
  return std::min(most, most * width / table_width(table, most));
}

Table2d conditions_table(const LoadsResult& loads, const Figures& say) {
  Table2d t{{"", "weight", "tongue", "share", "axle", "tyre"}, {}};
  for (const TowCondition& c : loads.tow.conditions)
    t.rows.push_back({(c.judged ? "* " : "") + name(c.travel, true), say.mass(c.mass), say.mass(c.tongue),
                      fmt::format("{:.1f} %", 100 * c.share), say.mass(c.axle), say.mass(c.tyre)});
  return t;
}

Table2d margins_table(const Job& job, const LoadsResult& loads) {
  Table2d t{{"limit", "used"}, {}};
  for (const LoadMargin& m : load_margins(job, loads)) {
    const std::string used = m.code == "TOW-SHARE" ? fmt::format("{:.0f} % off middle", 100 * m.used)
                                                   : fmt::format("{:.0f} %", 100 * m.used);
    t.rows.push_back({name(m, true), used + (m.used > 1 ? ", OVER" : "")});
  }
  return t;
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

constexpr Mm table_left = 278, table_width_most = loads_page_width - border - 4 - table_left;

Mm put_table(List2d& list, const LoadsPens& pens, const Table2d& table, Mm top) {
  const Mm height = fitting(table, table_width_most, letters);
  draw_table(list, table, 0, table.rows.size(), {table_left, top}, height, pens.text, pens.picture.thin);
  return top - static_cast<double>(table.rows.size() + 1) * table_row_height * height;
}

void tables(List2d& list, const LoadsPens& pens, const Job& job, const LoadsResult& loads, const Figures& say,
            Mm top) {
  const auto heading = [&](const std::string& text, Mm y) {
    return write(list, pens.text, {table_left, y}, table_width_most, 2.5, {text});
  };
  Mm y = heading("Ways of travelling; * as ordered, others to compare", top - 1);
  y = put_table(list, pens, conditions_table(loads, say), y);
  y = heading("How much of each limit is used", y - 4);
  y = put_table(list, pens, margins_table(job, loads), y);
  const Tow& t = loads.tow;
  std::string places;
  for (Mm x : t.axle_places) places += (places.empty() ? "" : ", ") + say.place(x);
  std::vector<std::string> notes = {
      fmt::format("Axle at {}. Recommended, clear of clamps, jacks and cross members: {}.",
                  say.place(t.axle_x), places.empty() ? "none" : places),
      t.tips_on_track()
          ? fmt::format("Uncoupled on wheels and tongue jack it tips back with the head more than {} "
                        "behind the front end: rear jacks down before the head is unlocked.",
                        say.place(t.tips_behind))
          : "Uncoupled on wheels and tongue jack it does not tip back, wherever the head is.",
      fmt::format("Standing on its tyres {} wide, {} long, {} high.", say.place(t.width), say.place(t.length),
                  say.place(t.height)),
      "Brakes, lamps, chains, width and ratings: rules differ by place.",
      "The program advises; it does not certify. Where law or doubt asks for it, a licensed engineer reviews "
      "these loads."};
  write(list, pens.text, {table_left, y - 3}, table_width_most, letters, notes);
}

// The smallest round reduction at which the bed is no longer than `space` on paper.
double reduction_for(Mm length, Mm space) {
  for (double n : {5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 60, 80, 100, 150, 200})
    if (length / n <= space) return n;
  return length / space;
}

List2d pictures_page(const Job& job, const Bed& bed, const LoadsResult& loads, const Issue& issue) {
  List2d list;
  const LoadsPens pens = pens_of(list);
  const Figures say = job.order.order.figures().in_one_unit();
  const Mm top = start_page(list, pens, job, "Loads", 1, issue);
  tables(list, pens, job, loads, say, top - 2);
  Labels labels(list, pens.text);
  const Mm left = border + 6, right = table_left - 8;
  const Mm from = loads.tow.ball_x, to = main_end(job, bed) + 100;
  AlongBed along{left + 6, from, reduction_for(to - from, right - left - 12)};
  Mm y = top - 3;
  const auto space = [&](Mm height) {
    const Box2 box{{left, y - height}, {right, y}};
    y -= height + 2;
    return box;
  };
  const Mm all = y - border - 12;  // less the gaps between
  const Picture common{job, bed, loads, labels, pens.picture, along, say, {}};
  const auto draw = [&](void (*picture)(const Picture&), Mm height) {
    Picture p = common;
    p.space = space(height);
    picture(p);
  };
  draw(draw_on_road, 0.35 * all);
  draw(draw_at_work, 0.25 * all);
  draw(draw_sag, 0.19 * all);
  draw(draw_moment, 0.21 * all);
  labels.near({0,
               {right - 12, border + 3},
               letters,
               fmt::format("along the bed 1:{:g}", along.reduction),
               Across::right,
               Up::baseline,
               0},
              {{left, border + 1}, {right, border + 12}}, true);
  return list;
}

List2d sums_page(const Job& job, const Bed& bed, const LoadsResult& loads, const Issue& issue) {
  List2d list;
  const LoadsPens pens = pens_of(list);
  const Mm top = start_page(list, pens, job, "Loads: sums and assumptions", 2, issue);
  const Mm column = (loads_page_width - 2 * border - 2 * mark_room - 4) / 2, left = border + mark_room;
  const Mm middle = left + column + mark_room;
  Mm y = write(list, pens.text, {left, top - 3}, column, 3.5, {"Sums to follow"});
  write(list, pens.text, {left, y}, column, 3, worked_lines(job, bed, loads));
  y = write(list, pens.text, {middle, top - 3}, column, 3.5, {"What is taken for granted"});
  y = write(list, pens.text, {middle, y}, column, 3, loads.assumptions);
  y = write(list, pens.text, {middle, y - 3}, column, 3.5, {"Before you build"});
  write(list, pens.text, {middle, y}, column, 3,
        {"The program advises; it does not certify. A heavy frame can crush, a trailer on level ground can "
         "roll away, a log that rolls on can tip the bed.",
         "Chock the wheels and set every jack on firm ground before a log is rolled on. Weld to a qualified "
         "procedure.",
         "Road rules, brakes, lamps, width and ratings differ by place; where law or doubt asks for it, have "
         "a licensed engineer review these loads."});
  return list;
}

}  // namespace

std::vector<List2d> loads_pages(const Job& job, const Bed& bed, const LoadsResult& loads,
                                const Issue& issue) {
  return {pictures_page(job, bed, loads, issue), sums_page(job, bed, loads, issue)};
}

void write_note(Sheet& page) {
  if (page.note.empty()) return;
  constexpr std::size_t most_lines = 6;
  const Mm room = loads_page_width - border - issue_width - 2 - table_left;
  std::vector<std::string> lines = wrapped(page.note, letters, room - text_width(" ...", letters));
  if (lines.size() > most_lines) {
    lines.resize(most_lines);
    lines.back() += " ...";
  }
  const LoadsPens pens = pens_of(page.list);
  Mm y = border + 3 + 4 * static_cast<double>(lines.size() - 1);
  for (const std::string& line : lines) {
    page.list.add(Text{pens.text, {table_left, y}, letters, line, Across::left, Up::baseline, 0});
    y -= 4;
  }
}

}  // namespace bedwright
