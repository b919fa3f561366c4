// Numbers combinations, and cuts the numbers into even parts.
#include "offer/grid.h"

#include <charconv>

namespace bedwright {

std::optional<std::uint64_t> Grid::size() const {
  std::uint64_t count = 1;
  for (const Varied& v : varied_) {
    count *= v.values.size();  // at most ten thousand each time: cannot wrap before it is refused
    if (count > most_combinations) return std::nullopt;
  }
  return count;
}

std::vector<std::size_t> Grid::values_of(std::uint64_t combination) const {
  std::vector<std::size_t> values(varied_.size());
  for (std::size_t i = varied_.size(); i-- > 0;) {
    values[i] = static_cast<std::size_t>(combination % varied_[i].values.size());
    combination /= varied_[i].values.size();
  }
  return values;
}

std::vector<std::string> Grid::sets_of(std::uint64_t combination) const {
  const std::vector<std::size_t> values = values_of(combination);
  std::vector<std::string> sets;
  for (std::size_t i = 0; i < varied_.size(); ++i)
    sets.push_back(varied_[i].key + "=" + varied_[i].values[values[i]]);
  return sets;
}

std::optional<PartOf> parse_part(const std::string& text) {
  constexpr std::uint64_t most_parts = 100'000;
  PartOf part;
  const char* const end = text.data() + text.size();
  const auto number = std::from_chars(text.data(), end, part.number);
  if (number.ec != std::errc() || number.ptr == end || *number.ptr != '/') return std::nullopt;
  const auto of = std::from_chars(number.ptr + 1, end, part.of);
  if (of.ec != std::errc() || of.ptr != end) return std::nullopt;
  if (part.number < 1 || part.number > part.of || part.of > most_parts) return std::nullopt;
  return part;
}

}  // namespace bedwright
