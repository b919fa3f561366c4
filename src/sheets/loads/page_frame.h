// What the pages about loads share: pens, frame and heading, wrapped text.
#pragma once

#include <string>
#include <vector>

#include "draw/table2d.h"
#include "sheets/loads/loads_page.h"
#include "sheets/loads/loads_pictures.h"

namespace bedwright {

inline constexpr Mm loads_border = 10;

struct LoadsPens {
  int text, border;
  PicturePens picture;
};
LoadsPens pens_of(List2d& list);

// Frame, heading and stamp; returns the height the rest may reach up to.
Mm start_page(List2d& list, const LoadsPens& pens, const Job& job, const std::string& what, int page,
              const Issue& issue);

// The largest text no higher than `most` at which the table is no wider than `width`.
Mm fitting(const Table2d& table, Mm width, Mm most);

// Wrapped paragraphs from `corner` down; returns where the next may start.
Mm write(List2d& list, int layer, Vec2 corner, Mm width, Mm height,
         const std::vector<std::string>& paragraphs);

// What they take from top to bottom.
Mm written(const std::vector<std::string>& paragraphs, Mm width, Mm height);

}  // namespace bedwright
