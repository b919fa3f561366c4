// Cuts, quotes and checks a user's text, by whole UTF-8 characters.
#include "yaml/text.h"

#include <fmt/format.h>

namespace bedwright {
namespace {

constexpr std::size_t longest_quoted = 60;

bool continues(std::string_view text, std::size_t at) {
  return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80;
}

// Bytes of the well-formed character at `at`, 0 when there is none there.
std::size_t character_size(std::string_view text, std::size_t at) {
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const unsigned char lead = byte(at);
  if (lead < 0x80) {
    const bool allowed = (lead >= 0x20 && lead != 0x7F) || lead == '\t' || lead == '\n' || lead == '\r';
    return allowed ? 1 : 0;
  }
  if (lead < 0xC2 || lead > 0xF4 || !continues(text, at + 1)) return 0;
  if (lead < 0xE0) return 2;
  const unsigned char second = byte(at + 1);
  if (!continues(text, at + 2)) return 0;
  // No overlong forms, no surrogates.
  if ((lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F)) return 0;
  if (lead < 0xF0) return 3;
  if (!continues(text, at + 3) || (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F))
    return 0;
  return 4;
}

}  // namespace

int characters(std::string_view text) {
  int count = 0;
  for (std::size_t i = 0; i < text.size(); ++i) count += continues(text, i) ? 0 : 1;
  return count;
}

std::string one_line(std::string_view text) {
  std::string line;
  for (const char c : text) {
    const auto byte = static_cast<unsigned char>(c);
    if (c == '\n') {
      line += "\\n";
    } else if (byte < 0x20 || byte == 0x7F) {
      line += fmt::format("\\x{:02x}", byte);
    } else {
      line += c;
    }
  }
  return line;
}

std::string quoted(std::string_view text) {
  if (text.size() <= longest_quoted) return '"' + one_line(text) + '"';
  std::size_t end = longest_quoted;
  while (end > 0 && continues(text, end)) --end;
  return '"' + one_line(text.substr(0, end)) + "...\"";
}

std::size_t control_character(std::string_view text) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    const auto byte = static_cast<unsigned char>(text[i]);
    if (byte < 0x20 || byte == 0x7F) return i;
    if (byte == 0xC2 && i + 1 < text.size() && static_cast<unsigned char>(text[i + 1]) < 0xA0) return i;
  }
  return std::string_view::npos;
}

std::string yaml_word(std::string_view text) {
  std::string word = "\"";
  for (const char c : text) word += c == '"' || c == '\\' ? std::string("\\") + c : std::string(1, c);
  return word + "\"";
}

std::size_t first_bad_byte(std::string_view text) {
  std::size_t at = 0;
  while (at < text.size()) {
    const std::size_t size = character_size(text, at);
    if (size == 0) return at;
    at += size;
  }
  return std::string_view::npos;
}

}  // namespace bedwright
