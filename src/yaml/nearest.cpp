// Edit distance between words.
#include "yaml/nearest.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>

namespace bedwright {
namespace {

// Longer words are not slips of the finger, and the table below grows with the square.
constexpr std::size_t longest_compared = 80;
constexpr std::size_t most_listed = 24;

char folded(char c) { return static_cast<char>(std::tolower(static_cast<unsigned char>(c))); }

}  // namespace

std::size_t edit_distance(std::string_view a, std::string_view b) {
  // Three rows of the table are enough: this one, the last, and the one before for a swap.
  std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
  for (std::size_t j = 0; j <= b.size(); ++j) last[j] = j;
  for (std::size_t i = 1; i <= a.size(); ++i) {
    row[0] = i;
    for (std::size_t j = 1; j <= b.size(); ++j) {
      const bool same = folded(a[i - 1]) == folded(b[j - 1]);
      row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0 : 1)});
      const bool swapped =
          i > 1 && j > 1 && folded(a[i - 1]) == folded(b[j - 2]) && folded(a[i - 2]) == folded(b[j - 1]);
      if (swapped) row[j] = std::min(row[j], before[j - 2] + 1);
    }
    std::swap(before, last);
    std::swap(last, row);
  }
  return last[b.size()];
}

std::optional<std::string> nearest(std::string_view word, std::span<const std::string> candidates) {
  if (word.size() > longest_compared) return std::nullopt;
  const std::string* best = nullptr;
  std::size_t fewest = std::max<std::size_t>(1, word.size() / 3) + 1;
  for (const std::string& candidate : candidates) {
    if (candidate.size() > longest_compared) continue;
    const std::size_t edits = edit_distance(word, candidate);
    if (edits < fewest) {
      fewest = edits;
      best = &candidate;
    }
  }
  return best ? std::optional(*best) : std::nullopt;
}

std::string suggestion(std::string_view word, std::span<const std::string> candidates) {
  if (const auto near = nearest(word, candidates)) return fmt::format("did you mean {}?", *near);
  if (candidates.empty()) return {};
  const auto listed = candidates.first(std::min(candidates.size(), most_listed));
  return fmt::format(
      "one of {}{}", fmt::join(listed, ", "),
      candidates.size() > most_listed ? fmt::format(" and {} more", candidates.size() - most_listed) : "");
}

}  // namespace bedwright
