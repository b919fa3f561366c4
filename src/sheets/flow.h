// Puts pictures, tables and notes on sheets from the upper left corner on, side
// by side, then below, then on a further sheet.
#pragma once

#include <string>
#include <vector>

#include "draw/table2d.h"
#include "sheets/sheet.h"

namespace bedwright {

class Flow {
 public:
  // `form` is what every page starts from: title, file, scale, material.
  Flow(Sheet form, const Box2& space);

  // A picture in its own coordinates; a new page when it does not fit below. One larger
  // than a page is reduced to it, and says so. `subject` is what it shows, where other
  // pictures of the sheet show other things. One that has passages of its own is none as a
  // whole.
  void picture(const List2d& given, const std::string& subject = {});
  // Rows that do not fit go on beside, below or on further pages. The letters are
  // `height` high, or small ones when the table would be too wide; where that is not
  // enough, long cells go on in rows below.
  void table(const std::string& caption, const Table2d& given, Mm height);
  // Lines of prose under a caption, numbered, no wider than `width`.
  void notes(const std::string& caption, const std::vector<std::string>& notes, Mm height, Mm width);
  // What follows starts at the left, below everything so far.
  void below();

  Mm width() const { return space_.width(); }
  Mm height_left() const { return shelf_bottom_ - space_.low.y; }
  std::vector<Sheet> sheets() &&;

 private:
  void page();
  bool fits(Mm width, Mm height) const;
  void make_space(Mm width, Mm height);
  void took(Mm width, Mm height);

  Sheet form_;
  Box2 space_;
  std::vector<Sheet> pages_;
  Vec2 pen_;
  Mm shelf_bottom_ = 0;
};

}  // namespace bedwright
