// Finds the word that was probably meant, and says so.
#include "commands/words.h"

#include <fmt/format.h>

#include <algorithm>

#include "yaml/nearest.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

bool is_among(const std::string& word, const std::vector<std::string>& words) {
  return std::find(words.begin(), words.end(), word) != words.end();
}

// "did you mean check? " where one is near.
std::string near(const std::string& word, const std::vector<std::string>& words) {
  const auto found = nearest(word, words);
  return found ? fmt::format("did you mean {}? ", *found) : std::string();
}

}  // namespace

std::string first_word_fault(const std::string& word, const std::vector<std::string>& commands) {
  const std::vector<std::string> options = {"--help", "--version"};
  const std::string all =
      fmt::format("the commands are {}; bedwright --help says what each does", fmt::join(commands, ", "));
  if (word.empty()) return "no command was given; " + all;
  if (is_among(word, commands) || is_among(word, options) || word == "-h") return {};
  if (word.starts_with('-'))
    return fmt::format("{} is no option here; {}{}", one_line(word), near(word, options), all);
  return fmt::format("{} is no command; {}{}", one_line(word), near(word, commands), all);
}

std::string extra_word_fault(const std::vector<std::string>& extra, const std::vector<std::string>& options) {
  const std::string word = extra.empty() ? std::string() : extra.front();
  if (!word.starts_with('-'))
    return fmt::format("{} is one word more than it takes; put a name with spaces in quotes", one_line(word));
  const std::string name = word.substr(0, word.find('='));
  return fmt::format("{} is no option of it; {}its options are {}", one_line(name), near(name, options),
                     fmt::join(options, ", "));
}

}  // namespace bedwright
