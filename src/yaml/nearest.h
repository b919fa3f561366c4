// The word somebody probably meant.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace bedwright {

// Edits that turn one word into the other: a character put in, left out or
// changed, or two neighbours swapped. Case counts as no edit.
std::size_t edit_distance(std::string_view a, std::string_view b);

// The candidate with the fewest edits, the first of equals; none when even that
// one is further than a third of the word's length (and more than one edit) away.
std::optional<std::string> nearest(std::string_view word, std::span<const std::string> candidates);

// "did you mean X?" when there is a near candidate, else "one of A, B, C".
std::string suggestion(std::string_view word, std::span<const std::string> candidates);

}  // namespace bedwright
