// Rounds figures, and writes them as fractions or decimals.
#include "units/print.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <limits>
#include <numeric>
#include <stdexcept>

namespace bedwright {
namespace {

void require_finite(double value) {
  if (!std::isfinite(value)) throw std::invalid_argument("a figure to print is not finite");
}

// Halves go away from zero by the figure a person reads: 107.95 lies a hair below
// itself as a double, and is 108.0 to one place all the same.
double halves_up(double value, int decimals) {
  const double power = std::pow(10.0, decimals), scaled = std::abs(value) * power;
  if (scaled > 1e12) return value;                                      // no place left for a half
  constexpr double hair = 16 * std::numeric_limits<double>::epsilon();  // of a few sums and products
  return std::copysign(std::floor(scaled + 0.5 + hair * scaled) / power, value);
}

// Fixed decimals, with the sign dropped when every digit is zero.
std::string fixed(double value, int decimals) {
  require_finite(value);
  if (decimals < 0) throw std::invalid_argument("decimals to print must not be negative");
  std::string text = fmt::format("{:.{}f}", halves_up(value, decimals), decimals);
  if (text.find_first_of("123456789") == std::string::npos && text[0] == '-') text.erase(0, 1);
  return text;
}

// A length as a whole number of inch fractions. A double holds every count below
// 2^53 exactly; parameters stop six orders short of that.
struct Fractions {
  bool negative;
  long long count;
};

Fractions fractions(Mm length, int denominator) {
  require_finite(length);
  if (denominator < 1) throw std::invalid_argument("a tape's fraction needs a denominator of 1 or more");
  const double count = std::round(length / inch * denominator);
  if (std::abs(count) > 9e15) throw std::invalid_argument("a length to print is too long for a tape");
  return {count < 0, std::llabs(static_cast<long long>(count))};
}

std::string inches_text(long long count, int denominator) {
  const long long whole = count / denominator, rest = count % denominator;
  if (rest == 0) return fmt::format("{} in", whole);
  const long long common = std::gcd(rest, static_cast<long long>(denominator));
  const std::string part = fmt::format("{}/{}", rest / common, denominator / common);
  return whole == 0 ? fmt::format("{} in", part) : fmt::format("{}-{} in", whole, part);
}

bool is_round(double value, double step) {
  return std::abs(value / step - std::round(value / step)) < 1e-9 * std::max(1.0, std::abs(value / step));
}

}  // namespace

std::string tape(Mm length, int denominator) {
  const Fractions f = fractions(length, denominator);
  return fmt::format("{}{}", f.negative ? "-" : "", inches_text(f.count, denominator));
}

std::string feet_tape(Mm length, int denominator) {
  const Fractions f = fractions(length, denominator);
  const long long a_foot = 12LL * denominator;
  const char* sign = f.negative ? "-" : "";
  if (f.count < a_foot) return fmt::format("{}{}", sign, inches_text(f.count, denominator));
  return fmt::format("{}{} ft {}", sign, f.count / a_foot, inches_text(f.count % a_foot, denominator));
}

std::string decimal_inch(Mm length) { return fixed(length / inch, 3) + " in"; }

std::string millimetres(Mm length, int decimals) { return fixed(length, decimals) + " mm"; }

std::string plain_figure(double value) {
  std::string text = fixed(value, 4);
  text.erase(text.find_last_not_of('0') + 1);
  if (text.back() == '.') text.pop_back();
  return text;
}

std::string both_units(Dimension dimension, double value) {
  switch (dimension) {
    case Dimension::length:
      return fmt::format("{} mm ({} in)", plain_figure(value), plain_figure(value / inch));
    case Dimension::mass:
      return fmt::format("{} kg ({} lb)", plain_figure(value), plain_figure(value / pound));
    case Dimension::stress:
      return fmt::format("{} MPa ({} ksi)", plain_figure(value), plain_figure(value / ksi));
    case Dimension::angle:
      break;
  }
  return plain_figure(value / degree) + " deg";
}

std::string as_written(Dimension dimension, double value) {
  require_finite(value);
  switch (dimension) {
    case Dimension::length:
      if (!is_round(value, 0.5) && is_round(value, inch / 64)) return tape(value, 64);
      return plain_figure(value) + " mm";
    case Dimension::mass:
      return plain_figure(value) + " kg";
    case Dimension::stress:
      return plain_figure(value) + " MPa";
    case Dimension::angle:
      break;
  }
  return plain_figure(value / degree) + " deg";
}

}  // namespace bedwright
