// What is told about a command line whose words are none of the program's.
#pragma once

#include <string>
#include <vector>

namespace bedwright {

// What is wrong with the first word behind the program's name, in one line: it must be
// a command, or ask for help or the version. Empty when it is.
std::string first_word_fault(const std::string& word, const std::vector<std::string>& commands);

// What is told of words a command knows nothing to do with; `options` are its own, as
// "--draft".
std::string extra_word_fault(const std::vector<std::string>& extra, const std::vector<std::string>& options);

}  // namespace bedwright
