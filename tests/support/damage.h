// Texts damaged as hands, editors and disks damage them, and worse.
#pragma once

#include <algorithm>
#include <random>
#include <string>
#include <vector>

namespace bedwright::testing {

class Damage {
 public:
  explicit Damage(unsigned seed) : random_(seed) {}

  std::string operator()(std::string text) {
    const auto times = 1 + pick(3);
    for (std::size_t i = 0; i < times; ++i) text = once(std::move(text));
    return text;
  }
  std::size_t pick(std::size_t below) { return below == 0 ? 0 : random_() % below; }

 private:
  std::string once(std::string text) {
    static const std::vector<std::string> pieces{"0",
                                                 "-1",
                                                 "1e99",
                                                 "nan",
                                                 "84",
                                                 "84 in",
                                                 "-5 mm",
                                                 "99999999 ft",
                                                 "[",
                                                 "]",
                                                 "{",
                                                 "}",
                                                 ": ",
                                                 "- ",
                                                 "\n",
                                                 "  ",
                                                 "\t",
                                                 "&a ",
                                                 "*a",
                                                 "<<: *a\n",
                                                 "!!int ",
                                                 "|\n",
                                                 "'",
                                                 "\"",
                                                 "#",
                                                 "~",
                                                 "true",
                                                 "null",
                                                 "[]",
                                                 "{}",
                                                 "\xff",
                                                 std::string(1, '\0'),
                                                 "é",
                                                 "1/0 in",
                                                 "kit.yaml",
                                                 "order.yaml",
                                                 ".",
                                                 "C4",
                                                 "1/2 in",
                                                 "---\n",
                                                 "...\n",
                                                 "? ",
                                                 std::string(70, '[')};
    const std::size_t at = pick(text.size() + 1);
    switch (pick(6)) {
      case 0:
        return text.insert(at, pieces[pick(pieces.size())]);
      case 1:
        return text.erase(at, 1 + pick(12));
      case 2: {
        if (!text.empty()) text[pick(text.size())] = static_cast<char>(random_());
        return text;
      }
      case 3:
        return replace_line(text, at, [&](const std::string&) { return std::string(); });
      case 4:
        return replace_line(text, at, [&](const std::string& line) { return line + line; });
      default:
        return replace_line(text, at, [&](const std::string& line) {
          return line.substr(0, line.find(':')) + ": " + pieces[pick(pieces.size())] + "\n";
        });
    }
  }

  template <class F>
  static std::string replace_line(const std::string& text, std::size_t at, F change) {
    const std::size_t before = at == 0 ? std::string::npos : text.rfind('\n', at - 1);
    const std::size_t from = before == std::string::npos ? 0 : before + 1;
    const std::size_t end = std::min(text.find('\n', at), text.size() - 1);
    const std::string line = text.substr(from, end + 1 - from);
    return text.substr(0, from) + change(line) + text.substr(from + line.size());
  }

  std::mt19937 random_;
};

}  // namespace bedwright::testing
