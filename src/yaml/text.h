// Text of a user's, made fit for a message.
#pragma once

#include <string>
#include <string_view>

namespace bedwright {

// Control characters written as escapes, so that a message stays on its line.
std::string one_line(std::string_view text);

// In double quotes, on one line, cut after about sixty characters.
std::string quoted(std::string_view text);

// The offset of the first byte that is no part of well-formed UTF-8 (RFC 3629),
// or of a control character YAML 1.2 does not allow in a file; npos when all is well.
std::size_t first_bad_byte(std::string_view text);

}  // namespace bedwright
