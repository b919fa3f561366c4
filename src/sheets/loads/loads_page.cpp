// Lays out pictures, tables and sums on two of the pages.
#include "sheets/loads/loads_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "loads/travel_name.h"
#include "loads/worked.h"
#include "sheets/loads/page_frame.h"
#include "sheets/loads/summary_page.h"

namespace bedwright {
namespace {

// The least a sheet has, and what larger text gives way by.
constexpr Mm letters = 2.5, letters_step = 0.1;

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

constexpr Mm table_left = 278, table_width_most = loads_page_width - loads_border - 4 - table_left;

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
  const Mm left = loads_border + 6, right = table_left - 8;
  const Mm from = loads.tow.ball_x, to = main_end(job, bed) + 100;
  AlongBed along{left + 6, from, reduction_for(to - from, right - left - 12)};
  Mm y = top - 3;
  const auto space = [&](Mm height) {
    const Box2 box{{left, y - height}, {right, y}};
    y -= height + 2;
    return box;
  };
  const Mm all = y - loads_border - 12;  // less the gaps between
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
               {right - 12, loads_border + 3},
               letters,
               fmt::format("along the bed 1:{:g}", along.reduction),
               Across::right,
               Up::baseline,
               0},
              {{left, loads_border + 1}, {right, loads_border + 12}}, true);
  return list;
}

List2d sums_page(const Job& job, const Bed& bed, const LoadsResult& loads, const Issue& issue) {
  List2d list;
  const LoadsPens pens = pens_of(list);
  const Mm top = start_page(list, pens, job, "Loads: sums and assumptions", 2, issue);
  const Mm column = (loads_page_width - 2 * loads_border - 2 * mark_room - 4) / 2,
           left = loads_border + mark_room;
  const Mm middle = left + column + mark_room;
  // As large as both columns let it be: sums that the left one has no room for stand at the
  // head of the right one, which ends above the issue's code.
  const std::vector<std::string> sums = worked_lines(job, bed, loads);
  const Mm room_left = top - 12 - loads_border - 3, room_right = top - 20 - loads_border - issue_height;
  Mm height = 3 + letters_step;
  std::vector<std::string> here, there;
  do {
    height -= letters_step;
    here.clear(), there.clear();
    for (const std::string& sum : sums) {
      here.push_back(sum);
      if (!there.empty() || written(here, column, height) > room_left) there.push_back(sum), here.pop_back();
    }
  } while (height > letters + 1e-9 &&
           written(there, column, height) + written(loads.assumptions, column, height) > room_right);
  Mm y = write(list, pens.text, {left, top - 3}, column, 3.5, {"Sums to follow"});
  write(list, pens.text, {left, y}, column, height, here);
  y = top - 3;
  if (!there.empty()) y = write(list, pens.text, {middle, y}, column, height, there) - 2;
  y = write(list, pens.text, {middle, y}, column, 3.5, {"What is taken for granted"});
  write(list, pens.text, {middle, y}, column, height, loads.assumptions);
  return list;
}

}  // namespace

std::vector<List2d> loads_pages(const Job& job, const Bed& bed, const LoadsResult& loads,
                                const Issue& issue) {
  return {pictures_page(job, bed, loads, issue), sums_page(job, bed, loads, issue),
          summary_page(job, bed, loads, issue)};
}

void write_note(Sheet& page) {
  if (page.note.empty()) return;
  constexpr std::size_t most_lines = 6;
  const Mm room = loads_page_width - loads_border - issue_width - 2 - table_left;
  std::vector<std::string> lines = wrapped(page.note, letters, room - text_width(" ...", letters));
  if (lines.size() > most_lines) {
    lines.resize(most_lines);
    lines.back() += " ...";
  }
  const LoadsPens pens = pens_of(page.list);
  Mm y = loads_border + 3 + 4 * static_cast<double>(lines.size() - 1);
  for (const std::string& line : lines) {
    page.list.add(Text{pens.text, {table_left, y}, letters, line, Across::left, Up::baseline, 0});
    y -= 4;
  }
}

}  // namespace bedwright
