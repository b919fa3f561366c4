// How a map is cut into panels that fit on pages. Only picture.cpp needs it.
#pragma once

#include <string>
#include <vector>

#include "offer/map.h"

namespace bedwright {

// A table of cells: which combination stands where.
struct Panel {
  std::vector<std::string> titles;                // "extension count 1", one for each parameter held fixed
  std::string across, down;                       // what columns and rows vary; down empty for one row
  std::vector<std::string> columns, rows;         // their values
  std::vector<std::vector<std::uint64_t>> cells;  // combination, by row and column
};

// A key as a person says it: "rail length" for track.rail_length.
std::string in_words(const std::string& key);

// At most so many columns and rows in each.
std::vector<Panel> panels(const Grid& grid, std::size_t most_columns, std::size_t most_rows);

}  // namespace bedwright
