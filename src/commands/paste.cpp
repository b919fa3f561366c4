// Quotes a word for a shell; the machine's date.
#include "commands/paste.h"

#include <fmt/chrono.h>
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cstring>
#include <ctime>

namespace bedwright {

std::string shell_word(const std::string& text) {
  const auto plain = [](unsigned char c) {
    return std::isalnum(c) || c >= 0x80 || std::strchr("/._-+,:@%=", c) != nullptr;
  };
  if (!text.empty() && std::all_of(text.begin(), text.end(),
                                   [&](char c) { return c != '\0' && plain(static_cast<unsigned char>(c)); }))
    return text;
  std::string word = "'";
  for (const char c : text) word += c == '\'' ? std::string("'\\''") : std::string(1, c);
  return word + "'";
}

std::string today() {
  const std::time_t now = std::time(nullptr);
  return fmt::format("{:%Y-%m-%d}", fmt::localtime(now));
}

}  // namespace bedwright
