// Quotes cells and joins them into rows.
#include "formats/csv.h"

#include <fmt/format.h>

#include <cmath>
#include <stdexcept>

namespace bedwright {

CsvCell::CsvCell(const std::string& text) {
  const bool formula = !text.empty() && std::string("=+-@\t\r").find(text.front()) != std::string::npos;
  const bool quote = text.find_first_of(",\"\r\n") != std::string::npos ||
                     (!text.empty() && (text.front() == ' ' || text.back() == ' '));
  if (quote) written_ += '"';
  if (formula) written_ += '\'';
  for (const char c : text) {
    if (c == '"') written_ += '"';
    written_ += c;
  }
  if (quote) written_ += '"';
}

CsvCell::CsvCell(int figure) : written_(fmt::format("{}", figure)) {}

CsvCell::CsvCell(double figure, int decimals) {
  if (!std::isfinite(figure)) throw std::invalid_argument("csv: a figure is not finite");
  written_ = fmt::format("{:.{}f}", figure, decimals);
  if (written_[0] == '-' && written_.find_first_of("123456789") == std::string::npos) written_.erase(0, 1);
}

void Csv::row(const std::vector<CsvCell>& cells) {
  for (std::size_t i = 0; i < cells.size(); ++i) {
    if (i > 0) text_ += ',';
    text_ += cells[i].written();
  }
  text_ += "\r\n";
}

}  // namespace bedwright
