// Reads decimal figures whatever the locale.
#include "units/decimal.h"

#include <fast_float/fast_float.h>

#include <cmath>

namespace bedwright {

std::optional<double> decimal(std::string_view text) {
  double value = 0;
  const char* end = text.data() + text.size();
  const auto read = fast_float::from_chars(text.data(), end, value);
  if (read.ec != std::errc{} || read.ptr != end || !std::isfinite(value)) return std::nullopt;
  // What is too small for a double comes back as a zero; only a figure of zeros is one.
  const std::string_view digits = text.substr(0, text.find_first_of("eE"));
  if (value == 0 && digits.find_first_of("123456789") != std::string_view::npos) return std::nullopt;
  return value;
}

}  // namespace bedwright
