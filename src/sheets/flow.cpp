// Keeps track of the free space on the page, and starts another when it is used up.
#include "sheets/flow.h"

#include <fmt/format.h>

#include <stdexcept>

namespace bedwright {
namespace {

constexpr Mm apart = mark_room;
constexpr double caption_height = 2.2;  // caption and the room under it, in text heights
constexpr std::size_t least_rows = 3;   // fewer rows are not begun at the foot of a page
constexpr Mm least_column = 12;         // text heights a column keeps when its table is narrowed

// The picture, or all of it smaller where a page would not hold it; its own scale then
// holds no longer, and it says so.
List2d held_by(const List2d& drawn, Mm width, Mm height) {
  Box2 box = bounds(drawn);
  if (box.width() <= width + same_place && box.height() <= height + same_place) return drawn;
  List2d told = drawn;
  const Pens pens(told);
  told.add(Text{pens.text,
                {box.low.x, box.low.y - 1.6 * bench_text},
                bench_text,
                "REDUCED TO THE PAGE, NOT TO THE SCALE STATED",
                Across::left,
                Up::baseline,
                0});
  box = bounds(told);
  return scaled(told, std::min(width / box.width(), height / box.height()) * (1 - 1e-9));
}

// The table with its longest cells broken into rows below one another, until it is no
// wider than `width`.
Table2d narrowed(Table2d table, Mm height, Mm width) {
  if (table.rows.empty() || table_width(table, height) <= width) return table;
  const std::size_t columns = table.head.size();
  std::vector<Mm> widths(columns);
  for (std::size_t c = 0; c < columns; ++c) {
    widths[c] = text_width(table.head[c], height);
    for (const auto& row : table.rows) widths[c] = std::max(widths[c], text_width(row[c], height));
  }
  const Mm over = table_width(table, height) - width;
  // The widest give way first, all to one width; a heading is never broken.
  std::vector<Mm> most = widths;
  for (Mm saved = 0; saved < over;) {
    const auto widest = std::max_element(most.begin(), most.end());
    const Mm head = text_width(table.head[static_cast<std::size_t>(widest - most.begin())], height);
    const Mm less = std::max({*widest - height, head, least_column * height});
    if (less >= *widest) break;
    saved += *widest - less;
    *widest = less;
  }
  Table2d out{table.head, {}};
  for (const auto& row : table.rows) {
    std::vector<std::vector<std::string>> cells;
    std::size_t lines = 1;
    for (std::size_t c = 0; c < columns; ++c) {
      cells.push_back(text_width(row[c], height) > most[c] ? wrapped(row[c], height, most[c])
                                                           : std::vector<std::string>{row[c]});
      lines = std::max(lines, cells.back().size());
    }
    for (std::size_t l = 0; l < lines; ++l) {
      std::vector<std::string> line;
      for (const auto& cell : cells) line.push_back(l < cell.size() ? cell[l] : "");
      out.rows.push_back(std::move(line));
    }
  }
  return out;
}

}  // namespace

Flow::Flow(Sheet form, const Box2& space) : form_(std::move(form)), space_(space) { page(); }

void Flow::page() {
  Sheet next = form_;
  if (!pages_.empty()) next.file += fmt::format("_{}", pages_.size() + 1);
  pages_.push_back(std::move(next));
  pen_ = {space_.low.x, space_.high.y};
  shelf_bottom_ = space_.high.y;
}

bool Flow::fits(Mm width, Mm height) const {
  return pen_.x + width <= space_.high.x + same_place && pen_.y - height >= space_.low.y - same_place;
}

void Flow::below() {
  if (pen_.x == space_.low.x && shelf_bottom_ == pen_.y) return;
  pen_ = {space_.low.x, shelf_bottom_ - apart};
  shelf_bottom_ = pen_.y;
}

void Flow::make_space(Mm width, Mm height) {
  if (fits(width, height)) return;
  below();
  if (fits(width, height)) return;
  page();
  if (!fits(width, height))
    throw std::invalid_argument(
        fmt::format("sheet {}: {:.0f} x {:.0f} mm do not fit the page", form_.title, width, height));
}

void Flow::took(Mm width, Mm height) {
  shelf_bottom_ = std::min(shelf_bottom_, pen_.y - height);
  pen_.x += width + apart;
}

void Flow::picture(const List2d& given, const std::string& subject) {
  const List2d drawn = held_by(given, space_.width(), space_.height());
  const Box2 box = bounds(drawn);
  make_space(box.width(), box.height());
  List2d& list = pages_.back().list;
  list.append(drawn, {pen_.x - box.low.x, pen_.y - box.high.y});
  if (drawn.passages.empty())
    list.passages.push_back({{{pen_.x, pen_.y - box.height()}, {pen_.x + box.width(), pen_.y}},
                             fingerprint(drawn),
                             subject,
                             true});
  took(box.width(), box.height());
}

void Flow::table(const std::string& caption, const Table2d& given, Mm height) {
  Mm h = table_width(given, height) <= width() ? height : small_text;
  const Table2d table = narrowed(given, h, width());
  // What no breaking makes narrow enough, smaller letters do; a caption goes on as far as it likes.
  h *= std::min(1.0, width() / table_width(table, h));
  const std::string widest = caption + " (continued)";
  const Mm caption_letters = h * std::min(1.0, width() / std::max(1.0, text_width(widest, h)));
  const Mm wide = std::max(table_width(table, h), text_width(caption, caption_letters));
  const Mm row = table_row_height * h;
  for (std::size_t next = 0; next < table.rows.size();) {
    const std::size_t left = table.rows.size() - next;
    make_space(wide, caption_height * h + row * static_cast<double>(1 + std::min(left, least_rows)));
    const Mm space = pen_.y - space_.low.y - caption_height * h;
    const std::size_t count = std::min(left, static_cast<std::size_t>(space / row + 1e-9) - 1);
    List2d& list = pages_.back().list;
    const Pens pens(list);
    list.add(Text{pens.text,
                  {pen_.x, pen_.y - h},
                  caption_letters,
                  next == 0 ? caption : widest,
                  Across::left,
                  Up::baseline,
                  0});
    draw_table(list, table, next, next + count, {pen_.x, pen_.y - caption_height * h}, h, pens.text,
               pens.table);
    next += count;
    took(std::max(wide, text_width(widest, caption_letters)),
         caption_height * h + row * static_cast<double>(count + 1));
  }
}

void Flow::notes(const std::string& caption, const std::vector<std::string>& notes, Mm h, Mm wide) {
  List2d drawn;
  const Pens pens(drawn);
  Mm y = -h;
  const auto put = [&](Mm x, const std::string& s) {
    drawn.add(Text{pens.text, {x, y}, h, s, Across::left, Up::baseline, 0});
  };
  put(0, caption);
  int number = 0;
  for (const std::string& note : notes) {
    y -= 0.5 * h;
    const Mm top = y;
    bool first = true;
    for (const std::string& l : wrapped(note, h, wide - 3 * h)) {
      y -= 1.6 * h;
      if (first) put(0, fmt::format("{}.", ++number));
      put(3 * h, l);
      first = false;
    }
    // Its number does not count.
    drawn.passages.push_back({{{0, y - 0.2 * h}, {wide, top}}, note});
  }
  picture(drawn);
}

std::vector<Sheet> Flow::sheets() && { return std::move(pages_); }

}  // namespace bedwright
