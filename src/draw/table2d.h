// A ruled table on a 2D list.
#pragma once

#include <string>
#include <vector>

#include "draw/list2d.h"

namespace bedwright {

struct Table2d {
  std::vector<std::string> head;
  std::vector<std::vector<std::string>> rows;  // each as long as the head
};

// A row, or a head, out of groups of neighbouring cells.
std::vector<std::string> table_row(const std::vector<std::vector<std::string>>& groups);

// Height of one row, in text heights.
inline constexpr double table_row_height = 1.7;

Mm table_width(const Table2d& table, Mm text_height);

// Draws the head and rows [first, last), each row a passage, with the upper left corner at `corner`.
void draw_table(List2d& list, const Table2d& table, std::size_t first, std::size_t last, Vec2 corner,
                Mm text_height, int text_layer, int rule_layer);

// The text broken at spaces (or within a word that is too long alone) into lines
// no wider than `width`.
std::vector<std::string> wrapped(const std::string& text, Mm text_height, Mm width);

}  // namespace bedwright
