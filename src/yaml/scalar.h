// What a plain scalar stands for, after the YAML 1.2 core schema.
#pragma once

#include <optional>
#include <string_view>

namespace bedwright {

// true, True, TRUE and the same of false.
bool is_truth_word(std::string_view text);

// A decimal number: sign, digits, point, exponent. Not octal, hexadecimal,
// infinite or nan, and none that a double cannot hold.
std::optional<double> number_in(std::string_view text);

}  // namespace bedwright
