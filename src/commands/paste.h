// What is printed to be pasted, into a shell or a file.
#pragma once

#include <string>

namespace bedwright {

// As a shell takes it for one word.
std::string shell_word(const std::string& text);

// Year-month-day, on this machine's calendar.
std::string today();

}  // namespace bedwright
