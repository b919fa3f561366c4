// Text of a user's, made fit for a message.
#pragma once

#include <string>
#include <string_view>

namespace bedwright {

// How many characters a UTF-8 text has: bytes that begin one.
int characters(std::string_view text);

// Control characters written as escapes, so that a message stays on its line.
std::string one_line(std::string_view text);

// In double quotes, on one line, cut after about sixty characters.
std::string quoted(std::string_view text);

// In double quotes, whole, as YAML reads it back. The text has no control characters.
std::string yaml_word(std::string_view text);

// The offset of the first byte that is no part of well-formed UTF-8 (RFC 3629),
// or of a control character YAML 1.2 does not allow in a file; npos when all is well.
std::size_t first_bad_byte(std::string_view text);

// The offset of the first control character of ASCII (NUL, BEL, ESC, a tab, ...) or of those
// Unicode has beyond it (U+0080 to U+009F, which terminals obey as well); npos when there is none.
std::size_t control_character(std::string_view text);

}  // namespace bedwright
