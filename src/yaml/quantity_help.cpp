// Picks examples within the limits, in units people use.
#include "yaml/quantity_help.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>
#include <span>

#include "units/print.h"

namespace bedwright {
namespace {

// Imperial then metric, from the middle of what beds are made of outward.
std::span<const std::string_view> everyday(Dimension dimension) {
  static constexpr std::string_view lengths[] = {"80 in",  "2000 mm", "24 in",   "600 mm", "6 in", "150 mm",
                                                 "1/2 in", "12 mm",   "1/16 in", "2 mm",   "0 in", "0 mm",
                                                 "33 ft",  "10 m",    "-24 in",  "-600 mm"};
  static constexpr std::string_view masses[] = {"150 lb", "70 kg", "15 lb", "7 kg", "850 lb", "386 kg",
                                                "8 oz",   "250 g", "0 lb",  "0 kg", "6000 lb"};
  static constexpr std::string_view stresses[] = {"36 ksi", "250 MPa", "5 ksi", "35 MPa", "100 ksi"};
  static constexpr std::string_view angles[] = {"25 deg", "10 deg", "0 deg", "60 deg", "120 deg"};
  switch (dimension) {
    case Dimension::length:
      return lengths;
    case Dimension::mass:
      return masses;
    case Dimension::stress:
      return stresses;
    case Dimension::angle:
      break;
  }
  return angles;
}

const char* noun(Dimension dimension) {
  switch (dimension) {
    case Dimension::length:
      return "a length";
    case Dimension::mass:
      return "a mass";
    case Dimension::stress:
      return "a stress";
    case Dimension::angle:
      break;
  }
  return "an angle";
}

}  // namespace

Range own_range(Dimension dimension, Range described) {
  const double unit = dimension == Dimension::angle ? degree : 1;
  return {described.low * unit, described.high * unit};
}

std::vector<std::string> example_quantities(Dimension dimension, Range own) {
  std::vector<std::string> examples;
  for (const std::string_view text : everyday(dimension)) {
    const auto parsed = parse_quantity(dimension, text);
    if (parsed.value && within(*parsed.value, own)) examples.emplace_back(text);
    if (examples.size() == 2) return examples;
  }
  if (examples.empty()) examples.push_back(as_written(dimension, std::midpoint(own.low, own.high)));
  return examples;
}

std::string such_as(Dimension dimension, Range own) {
  return fmt::format("{} such as {}", noun(dimension), fmt::join(example_quantities(dimension, own), " or "));
}

std::string limits_text(Dimension dimension, Range own) {
  return fmt::format("{} to {}", both_units(dimension, own.low), both_units(dimension, own.high));
}

bool within(double value, Range range) {
  const double slack = 1e-9 * std::max({1.0, std::abs(range.low), std::abs(range.high)});
  return value >= range.low - slack && value <= range.high + slack;
}

}  // namespace bedwright
