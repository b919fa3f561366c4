// Reads comma-separated values.
#include "table.h"

#include <algorithm>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace inspector {

std::string read_file(const std::filesystem::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::stringstream all;
  all << in.rdbuf();
  if (!in) throw std::runtime_error(file.string() + ": cannot be read");
  return all.str();
}

Table::Table(const std::filesystem::path& file) : file_(file.string()) {
  const std::string text = read_file(file);
  std::vector<std::string> row(1);
  bool quoted = false;
  const auto end_row = [&] {
    // A text that could run as a formula stands behind an apostrophe.
    for (std::string& cell : row)
      if (cell.starts_with('\'')) cell.erase(0, 1);
    if (heading_.empty())
      heading_ = row;
    else if (row.size() != heading_.size())
      throw std::runtime_error(file_ + ": a row is not as wide as the heading: " + row[0]);
    else
      rows_.push_back(row);
    row.assign(1, "");
  };
  for (std::size_t i = 0; i < text.size(); ++i) {
    const char c = text[i];
    if (quoted && c == '"' && i + 1 < text.size() && text[i + 1] == '"')
      row.back() += text[++i];
    else if (c == '"')
      quoted = !quoted;
    else if (quoted)
      row.back() += c;
    else if (c == ',')
      row.emplace_back();
    else if (c == '\n')
      end_row();
    else if (c != '\r')
      row.back() += c;
  }
  if (row.size() > 1 || !row[0].empty()) end_row();
  if (heading_.empty()) throw std::runtime_error(file_ + ": has no heading");
}

void Table::append(const Table& other) {
  if (other.heading_ != heading_) throw std::runtime_error(other.file_ + ": has other columns than " + file_);
  rows_.insert(rows_.end(), other.rows_.begin(), other.rows_.end());
}

const std::string& Table::text(std::size_t row, const std::string& column) const {
  const auto at = std::find(heading_.begin(), heading_.end(), column);
  if (at == heading_.end()) throw std::runtime_error(file_ + ": has no column " + column);
  return rows_.at(row)[static_cast<std::size_t>(at - heading_.begin())];
}

double Table::number(std::size_t row, const std::string& column) const {
  const std::string& cell = text(row, column);
  std::size_t used = 0;
  double value = 0;
  try {
    value = std::stod(cell, &used);
  } catch (const std::exception&) {
    used = 0;
  }
  if (used == 0 || used != cell.size())
    throw std::runtime_error(file_ + ": " + column + " of " + rows_[row][0] + " is no number: '" + cell +
                             "'");
  return value;
}

double Table::number_or(std::size_t row, const std::string& column, double otherwise) const {
  return text(row, column).empty() ? otherwise : number(row, column);
}

}  // namespace inspector
