// Splits the text into values, and steps through ranges without rounding away the end.
#include "params/vary.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "units/parse.h"
#include "units/print.h"
#include "units/tape.h"
#include "yaml/key_path.h"
#include "yaml/scalar.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

const char* const forms = "write 72..96in/1in (from, to, step), 0..3, or values one after another: 20in,24in";

std::string_view trimmed(std::string_view text) {
  const auto from = text.find_first_not_of(" \t");
  if (from == std::string_view::npos) return {};
  return text.substr(from, text.find_last_not_of(" \t") - from + 1);
}

// At commas outside brackets and quotes.
std::vector<std::string_view> split(std::string_view text) {
  std::vector<std::string_view> parts;
  int depth = 0;
  std::size_t from = 0;
  for (std::size_t i = 0; i <= text.size(); ++i) {
    if (i == text.size() || (text[i] == ',' && depth == 0)) {
      parts.push_back(trimmed(text.substr(from, i - from)));
      from = i + 1;
    } else if (text[i] == '[' || text[i] == '{') {
      ++depth;
    } else if (text[i] == ']' || text[i] == '}') {
      --depth;
    }
  }
  return parts;
}

bool is_unit_letter(char c) {
  return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '"' || c == '\'';
}

bool has_unit(std::string_view text) { return std::any_of(text.begin(), text.end(), is_unit_letter); }

// "96in/1in" in two. The stroke that starts the step follows a unit; in plain
// numbers there is but one. (A stroke between figures is a fraction's.)
std::pair<std::string_view, std::string_view> split_step(std::string_view text) {
  const bool unit = has_unit(text);
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] != '/') continue;
    const std::string_view before = trimmed(text.substr(0, i));
    if (!unit || (!before.empty() && is_unit_letter(before.back())))
      return {before, trimmed(text.substr(i + 1))};
  }
  return {text, {}};
}

struct Run {
  std::string_view from, to, step;
};

// The last unit word of a text.
std::string_view unit_of(std::string_view text) {
  std::size_t at = text.size();
  while (at > 0 && is_unit_letter(text[at - 1])) --at;
  return text.substr(at);
}

VaryFault fault(std::string what, std::string would_do = forms) {
  return {std::move(what), std::move(would_do)};
}

std::string whole_or_decimal(double value) { return plain_figure(std::round(value * 1e9) / 1e9); }

// `print` makes the text of a value.
template <class Print>
std::optional<VaryFault> step_through(std::string_view text, double from, double to, double step, Print print,
                                      std::vector<std::string>& values) {
  if (step <= 0 || to < from)
    return fault(fmt::format("{} runs backward or stands still", quoted(text)),
                 "write the lower end first and a step above zero");
  // A hair more, so that an end that is a whole number of steps away is reached.
  const double steps = std::floor((to - from) / step + 1e-6);
  if (steps + 1 > static_cast<double>(most_values))
    return fault(fmt::format("{} comes to more than {} values", quoted(text), most_values),
                 "take a larger step");
  for (int i = 0; i <= static_cast<int>(steps); ++i) values.push_back(print(from + i * step));
  return std::nullopt;
}

std::optional<VaryFault> add_numbers(std::string_view text, const Run& run,
                                     std::vector<std::string>& values) {
  const auto from = number_in(run.from), to = number_in(run.to);
  const auto step = run.step.empty() ? std::optional(1.0) : number_in(run.step);
  if (!from || !to || !step) return fault(fmt::format("{} is no run of values", quoted(text)));
  return step_through(text, *from, *to, *step, whole_or_decimal, values);
}

std::string inches_text(Mm length) {
  const bool plain = std::abs(length - on_tape(length, inch / 64)) < same_place;
  return plain ? tape(length, 64) : fmt::format("{} in", whole_or_decimal(length / inch));
}

std::optional<VaryFault> add_quantities(std::string_view text, const Run& run,
                                        std::vector<std::string>& values) {
  if (run.step.empty()) return fault(fmt::format("{} has no step", quoted(text)));
  const std::string_view unit = unit_of(run.to);
  const auto with_unit = [&](std::string_view part) {
    return has_unit(part) ? std::string(part) : fmt::format("{} {}", part, unit);
  };
  for (const Dimension dimension :
       {Dimension::length, Dimension::mass, Dimension::stress, Dimension::angle}) {
    const auto from = parse_quantity(dimension, with_unit(run.from));
    const auto to = parse_quantity(dimension, with_unit(run.to));
    const auto step = parse_quantity(dimension, with_unit(run.step));
    if (!from.value || !to.value || !step.value) continue;
    const bool metric = unit.size() == 2 && unit.back() == 'm';  // mm, cm
    return step_through(
        text, *from.value, *to.value, *step.value,
        [&](double value) {
          return dimension == Dimension::length && !metric ? inches_text(value)
                                                           : as_written(dimension, value);
        },
        values);
  }
  return fault(fmt::format("{} is no run of one kind of quantity", quoted(text)));
}

}  // namespace

std::variant<std::vector<std::string>, VaryFault> parse_values(std::string_view text) {
  std::vector<std::string> values;
  for (const std::string_view part : split(text)) {
    if (part.empty()) return fault(fmt::format("{} has an empty value", quoted(text)));
    const std::size_t dots =
        part.front() == '[' || part.front() == '{' ? std::string_view::npos : part.find("..");
    // Two points followed by a stroke are a path to another file ("../kits/a.yaml").
    if (dots == std::string_view::npos || part.substr(dots).starts_with("../")) {
      values.emplace_back(part);
    } else {
      const auto [to, step] = split_step(trimmed(part.substr(dots + 2)));
      const Run run{trimmed(part.substr(0, dots)), to, step};
      const auto bad = has_unit(to) ? add_quantities(part, run, values) : add_numbers(part, run, values);
      if (bad) return *bad;
    }
    if (values.size() > most_values)
      return fault(fmt::format("{} comes to more than {} values", quoted(text), most_values), "take fewer");
  }
  std::vector<std::string> sorted = values;
  std::sort(sorted.begin(), sorted.end());
  const auto twice = std::adjacent_find(sorted.begin(), sorted.end());
  if (twice != sorted.end())
    return fault(fmt::format("{} has {} twice", quoted(text), *twice), "name each value once");
  return values;
}

std::variant<Varied, VaryFault> parse_varied(std::string_view text) {
  const auto equals = text.find('=');
  if (equals == std::string_view::npos)
    return fault(fmt::format("{} has no =", quoted(text)), "write it as key=values");
  Varied varied{std::string(trimmed(text.substr(0, equals))), {}};
  if (!parse_key_path(varied.key))
    return fault(fmt::format("{} is no path to a key", quoted(varied.key)),
                 "write it as key.key or list[2].key, entries counted from 1");
  auto values = parse_values(text.substr(equals + 1));
  if (const VaryFault* bad = std::get_if<VaryFault>(&values)) return *bad;
  varied.values = std::move(std::get<std::vector<std::string>>(values));
  return varied;
}

}  // namespace bedwright
