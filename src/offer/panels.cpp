// Shares the varied parameters out to columns, rows and panels.
#include "offer/panels.h"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

namespace bedwright {
namespace {

// Indices of the parameters, those with most values first.
std::vector<std::size_t> by_count(const Grid& grid) {
  std::vector<std::size_t> order(grid.varied().size());
  std::iota(order.begin(), order.end(), 0);
  std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
    return grid.varied()[a].values.size() > grid.varied()[b].values.size();
  });
  return order;
}

std::uint64_t number_of(const Grid& grid, const std::vector<std::size_t>& values) {
  std::uint64_t n = 0;
  for (std::size_t i = 0; i < values.size(); ++i) n = n * grid.varied()[i].values.size() + values[i];
  return n;
}

// Spreads a count over as few even runs of at most `most` as there can be.
std::vector<std::pair<std::size_t, std::size_t>> runs(std::size_t count, std::size_t most) {
  const std::size_t parts = (count + most - 1) / most;
  std::vector<std::pair<std::size_t, std::size_t>> all;
  for (std::size_t i = 0; i < parts; ++i) all.push_back({count * i / parts, count * (i + 1) / parts});
  return all;
}

// The next combination of the parameters held fixed, the last changing fastest;
// false after the last.
bool advance(const Grid& grid, const std::vector<std::size_t>& fixed, std::vector<std::size_t>& values) {
  for (std::size_t k = fixed.size(); k-- > 0;) {
    std::size_t& v = values[fixed[k]];
    if (++v < grid.varied()[fixed[k]].values.size()) return true;
    v = 0;
  }
  return false;
}

}  // namespace

std::string in_words(const std::string& key) {
  std::string words = key.starts_with("track.") ? key.substr(6) : key;
  std::replace_if(
      words.begin(), words.end(), [](char c) { return c == '_' || c == '.'; }, ' ');
  return words;
}

std::vector<Panel> panels(const Grid& grid, std::size_t most_columns, std::size_t most_rows) {
  const std::vector<std::size_t> order = by_count(grid);
  const std::size_t across = order[0];
  const bool has_rows = order.size() > 1;
  std::vector<std::size_t> fixed(order.begin() + (has_rows ? 2 : 1), order.end());
  std::sort(fixed.begin(), fixed.end());
  const std::size_t row_count = has_rows ? grid.varied()[order[1]].values.size() : 1;
  std::vector<Panel> all;
  std::vector<std::size_t> values(order.size(), 0);
  do {
    for (const auto& [row_from, row_to] : runs(row_count, most_rows))
      for (const auto& [from, to] : runs(grid.varied()[across].values.size(), most_columns)) {
        Panel panel;
        for (const std::size_t f : fixed)
          panel.titles.push_back(
              fmt::format("{} {}", in_words(grid.varied()[f].key), grid.varied()[f].values[values[f]]));
        panel.across = in_words(grid.varied()[across].key);
        if (has_rows) panel.down = in_words(grid.varied()[order[1]].key);
        for (std::size_t c = from; c < to; ++c) panel.columns.push_back(grid.varied()[across].values[c]);
        for (std::size_t r = row_from; r < row_to; ++r) {
          if (has_rows) panel.rows.push_back(grid.varied()[order[1]].values[r]);
          std::vector<std::uint64_t>& cells = panel.cells.emplace_back();
          std::vector<std::size_t> at = values;
          if (has_rows) at[order[1]] = r;
          for (std::size_t c = from; c < to; ++c) {
            at[across] = c;
            cells.push_back(number_of(grid, at));
          }
        }
        all.push_back(std::move(panel));
      }
  } while (advance(grid, fixed, values));
  return all;
}

}  // namespace bedwright
