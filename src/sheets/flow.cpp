// Keeps track of the free space on the page, and starts another when it is used up.
#include "sheets/flow.h"

#include <fmt/format.h>

#include <stdexcept>

namespace bedwright {
namespace {

constexpr Mm apart = 7;
constexpr double caption_height = 2.2;  // caption and the room under it, in text heights
constexpr std::size_t least_rows = 3;   // fewer rows are not begun at the foot of a page

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

void Flow::picture(const List2d& drawn) {
  const Box2 box = bounds(drawn);
  make_space(box.width(), box.height());
  pages_.back().list.append(drawn, {pen_.x - box.low.x, pen_.y - box.high.y});
  took(box.width(), box.height());
}

void Flow::table(const std::string& caption, const Table2d& table, Mm height) {
  const Mm h = table_width(table, height) <= width() ? height : small_text;
  const Mm wide = std::max(table_width(table, h), text_width(caption, h));
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
                  h,
                  next == 0 ? caption : caption + " (continued)",
                  Across::left,
                  Up::baseline,
                  0});
    draw_table(list, table, next, next + count, {pen_.x, pen_.y - caption_height * h}, h, pens.text,
               pens.table);
    next += count;
    took(std::max(wide, text_width(caption + " (continued)", h)),
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
    bool first = true;
    for (const std::string& l : wrapped(note, h, wide - 3 * h)) {
      y -= 1.6 * h;
      if (first) put(0, fmt::format("{}.", ++number));
      put(3 * h, l);
      first = false;
    }
  }
  picture(drawn);
}

std::vector<Sheet> Flow::sheets() && { return std::move(pages_); }

}  // namespace bedwright
