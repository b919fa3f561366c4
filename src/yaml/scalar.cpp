// Which plain words stand for true, false, nothing or a number.
#include "yaml/scalar.h"

#include <algorithm>
#include <array>

#include "units/decimal.h"

namespace bedwright {

bool is_truth_word(std::string_view text) {
  static constexpr std::array<std::string_view, 6> words{"true", "True", "TRUE", "false", "False", "FALSE"};
  return std::find(words.begin(), words.end(), text) != words.end();
}

std::optional<double> number_in(std::string_view text) {
  if (text.starts_with('+')) text.remove_prefix(1);
  const std::string_view digits = text.starts_with('-') ? text.substr(1) : text;
  if (digits.empty() || digits.find_first_not_of("0123456789.eE+-") != std::string_view::npos)
    return std::nullopt;
  if (digits[0] == '-' || digits[0] == '+') return std::nullopt;
  return decimal(text);
}

}  // namespace bedwright
