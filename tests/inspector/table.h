// A list of the packet: comma-separated values with a heading row (RFC 4180).
#pragma once

#include <filesystem>
#include <string>
#include <vector>

namespace inspector {

class Table {
 public:
  // Throws std::runtime_error when the file cannot be read or a row is not as wide as
  // the heading.
  explicit Table(const std::filesystem::path& file);
  // Its rows behind this table's. Throws std::runtime_error when its heading is another.
  void append(const Table& other);
  std::size_t rows() const { return rows_.size(); }
  // Throws std::runtime_error when there is no such column.
  const std::string& text(std::size_t row, const std::string& column) const;
  // Throws when the cell is no number.
  double number(std::size_t row, const std::string& column) const;
  // For a cell that may be empty.
  double number_or(std::size_t row, const std::string& column, double otherwise) const;

 private:
  std::string file_;
  std::vector<std::string> heading_;
  std::vector<std::vector<std::string>> rows_;
};

// Throws std::runtime_error when it cannot be read.
std::string read_file(const std::filesystem::path& file);

}  // namespace inspector
