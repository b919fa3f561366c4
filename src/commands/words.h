// What to say about a command line with a word the program does not know.
#pragma once

#include <string>
#include <vector>

namespace bedwright {

// What is wrong with the first word behind the program's name, in one line: it must be
// a command, or ask for help or the version. Empty when it is.
std::string first_word_fault(const std::string& word, const std::vector<std::string>& commands);

// What to say about words a command does not know; `options` are its own, as
// "--draft".
std::string extra_word_fault(const std::vector<std::string>& extra, const std::vector<std::string>& options);

}  // namespace bedwright
