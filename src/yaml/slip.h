// The slip of the hand behind text that cannot be read as YAML.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace bedwright {

struct Slip {
  int line = 0, column = 0;  // 1-based, in characters
  std::string what, would_do;
};

// What is probably wrong with a text whose reading broke off at `line` (1-based): a bracket left
// open, a tab or another blank that is no space before a key, no space behind a colon or a dash,
// no colon, a value that wants quotes, a line out of step with those around it. The parser
// stumbles over most of them a line late, so the last two lines that say anything are looked
// at, the first of them first. None where nothing of that is seen.
std::optional<Slip> find_slip(std::string_view text, int line);

// Where the quote that opens at this byte is not closed on its own line, what to say.
std::optional<Slip> quote_left_open(std::string_view text, std::size_t at);

}  // namespace bedwright
