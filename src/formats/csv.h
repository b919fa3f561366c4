// Comma-separated values, RFC 4180: lines end in CR LF; a cell with a comma, a
// quote or a line break is quoted, quotes doubled.
#pragma once

#include <initializer_list>
#include <string>
#include <vector>

namespace bedwright {

// One cell. A text that a spreadsheet would take for a formula (it begins with
// = + - @, a tab or a carriage return) is written behind an apostrophe, so that a
// customer's name or a file's text can never run as one; a figure is written bare.
class CsvCell {
 public:
  CsvCell(const std::string& text);
  CsvCell(const char* text) : CsvCell(std::string(text)) {}
  CsvCell(int figure);
  // With that many decimals, no locale, never "-0". Must be finite.
  CsvCell(double figure, int decimals);
  const std::string& written() const { return written_; }

 private:
  std::string written_;
};

class Csv {
 public:
  void row(std::initializer_list<CsvCell> cells) { row(std::vector<CsvCell>(cells)); }
  void row(const std::vector<CsvCell>& cells);
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

}  // namespace bedwright
