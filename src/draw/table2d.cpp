// Column widths, rules and wrapped texts of a table.
#include "draw/table2d.h"

namespace bedwright {
namespace {

constexpr double side_room = 0.6;  // left and right of a cell's text, in text heights

std::vector<Mm> column_widths(const Table2d& table, Mm height) {
  std::vector<Mm> widths;
  for (const std::string& h : table.head) widths.push_back(text_width(h, height));
  for (const std::vector<std::string>& row : table.rows) {
    for (std::size_t i = 0; i < row.size(); ++i) {
      widths.at(i) = std::max(widths[i], text_width(row[i], height));
    }
  }
  for (Mm& w : widths) w += 2 * side_room * height;
  return widths;
}

// Bytes of the UTF-8 character at `i`.
std::size_t step(const std::string& s, std::size_t i) {
  std::size_t n = 1;
  while (i + n < s.size() && (static_cast<unsigned char>(s[i + n]) & 0xC0U) == 0x80U) ++n;
  return n;
}

}  // namespace

std::vector<std::string> table_row(const std::vector<std::vector<std::string>>& groups) {
  std::vector<std::string> row;
  for (const std::vector<std::string>& group : groups) row.insert(row.end(), group.begin(), group.end());
  return row;
}

Mm table_width(const Table2d& table, Mm text_height) {
  Mm total = 0;
  for (const Mm w : column_widths(table, text_height)) total += w;
  return total;
}

void draw_table(List2d& list, const Table2d& table, std::size_t first, std::size_t last, Vec2 corner,
                Mm text_height, int text_layer, int rule_layer) {
  const std::vector<Mm> widths = column_widths(table, text_height);
  const Mm row = table_row_height * text_height;
  const Mm right = corner.x + table_width(table, text_height);
  const double lines = static_cast<double>(last - first + 1);
  for (std::size_t r = first; r < last; ++r) {
    std::string says;
    for (std::size_t c = 0; c < table.head.size(); ++c)
      if (!table.rows[r][c].empty()) says += table.head[c] + "\t" + table.rows[r][c] + "\n";
    const Mm top = corner.y - static_cast<double>(r - first + 1) * row;
    list.passages.push_back({{{corner.x, top - row}, {right, top}}, std::move(says)});
  }
  for (double i = 0; i <= lines; ++i) {
    list.add(Line{rule_layer, {corner.x, corner.y - i * row}, {right, corner.y - i * row}});
  }
  Mm x = corner.x;
  for (std::size_t c = 0; c <= widths.size(); ++c) {
    list.add(Line{rule_layer, {x, corner.y}, {x, corner.y - lines * row}});
    if (c == widths.size()) break;
    Mm y = corner.y - (row + text_height) / 2;
    const auto put = [&](const std::string& text) {
      const Vec2 at{x + side_room * text_height, y};
      if (!text.empty()) list.add(Text{text_layer, at, text_height, text, Across::left, Up::baseline, 0});
      y -= row;
    };
    put(table.head[c]);
    for (std::size_t r = first; r < last; ++r) put(table.rows[r][c]);
    x += widths[c];
  }
}

std::vector<std::string> wrapped(const std::string& text, Mm text_height, Mm width) {
  std::vector<std::string> lines;
  std::string line, word;
  const auto end_word = [&] {
    if (word.empty()) return;
    const std::string both = line.empty() ? word : line + ' ' + word;
    if (text_width(both, text_height) <= width) {
      line = both;
    } else {
      if (!line.empty()) lines.push_back(line);
      line = word;
    }
    word.clear();
  };
  for (std::size_t i = 0; i < text.size();) {
    const std::size_t n = step(text, i);
    const std::string letter = text.substr(i, n);
    i += n;
    if (letter == " ") {
      end_word();
      continue;
    }
    if (!word.empty() && text_width(word + letter, text_height) > width) end_word();
    word += letter;
  }
  end_word();
  if (!line.empty()) lines.push_back(line);
  return lines;
}

}  // namespace bedwright
