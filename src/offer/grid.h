// Every combination of the values of several parameters, by number.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "params/vary.h"

namespace bedwright {

// A number from 0 up for each combination; the last parameter changes fastest.
class Grid {
 public:
  explicit Grid(std::vector<Varied> varied) : varied_(std::move(varied)) {}

  const std::vector<Varied>& varied() const { return varied_; }
  // Nothing when there are more than `most_combinations`.
  std::optional<std::uint64_t> size() const;
  // Which value of each parameter.
  std::vector<std::size_t> values_of(std::uint64_t combination) const;
  // As --set takes them: "track.rail_length=84 in".
  std::vector<std::string> sets_of(std::uint64_t combination) const;

  static constexpr std::uint64_t most_combinations = 1'000'000'000;
  // Of one run: a few hundred bytes each in memory and in its files.
  static constexpr std::uint64_t most_at_once = 5'000'000;

 private:
  std::vector<Varied> varied_;
};

// The Kth of N parts of a count, as [from, to). Parts differ by one at most.
struct PartOf {
  std::uint64_t number = 1, of = 1;
  std::uint64_t from(std::uint64_t count) const {
    return count / of * (number - 1) + count % of * (number - 1) / of;
  }
  std::uint64_t to(std::uint64_t count) const { return PartOf{number + 1, of}.from(count); }
};

// "3/16"; nothing unless 1 <= K <= N <= 100000.
std::optional<PartOf> parse_part(const std::string& text);

}  // namespace bedwright
