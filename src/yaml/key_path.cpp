// Splits paths into steps, and joins them.
#include "yaml/key_path.h"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>

namespace bedwright {
namespace {

// "[12]" at the front of `rest`, taken off; nothing when it is not that.
std::optional<std::size_t> take_index(std::string_view& rest) {
  const std::size_t close = rest.find(']');
  if (close == std::string_view::npos) return std::nullopt;
  const char* first = rest.data() + 1;
  const char* last = rest.data() + close;
  std::size_t index = 0;
  const auto [end, error] = std::from_chars(first, last, index);
  if (error != std::errc{} || end != last || index == 0) return std::nullopt;
  rest.remove_prefix(close + 1);
  return index;
}

}  // namespace

std::optional<std::vector<KeyStep>> parse_key_path(std::string_view path) {
  std::vector<KeyStep> steps;
  std::string_view rest = path;
  while (true) {
    const std::size_t end = std::min(rest.find_first_of(".[]"), rest.size());
    if (end == 0) return std::nullopt;
    steps.push_back({std::string(rest.substr(0, end)), 0});
    rest.remove_prefix(end);
    while (rest.starts_with('[')) {
      const auto index = take_index(rest);
      if (!index) return std::nullopt;
      steps.push_back({{}, *index});
    }
    if (rest.empty()) return steps;
    if (!rest.starts_with('.')) return std::nullopt;
    rest.remove_prefix(1);
  }
}

std::string path_to(const std::string& parent, const std::string& key) {
  return parent.empty() ? key : parent + "." + key;
}

std::string path_to(const std::string& parent, std::size_t index) {
  return fmt::format("{}[{}]", parent, index);
}

bool is_within(std::string_view path, std::string_view ancestor) {
  if (ancestor.empty()) return true;
  return path.starts_with(ancestor) &&
         (path.size() == ancestor.size() || path[ancestor.size()] == '.' || path[ancestor.size()] == '[');
}

}  // namespace bedwright
