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
    switch (pick(12)) {
      case 6:  // as a full disk leaves it
        return text.substr(0, at);
      case 7:
        return swapped_lines(text);
      case 8:
        return swapped_keys(text);
      case 9:  // a list where a figure stood, a map where a list did
        return replace_line(text, at, [&](const std::string& line) {
          static const std::vector<std::string> kinds{"[]",        "{}",     "[1 in, 2 in]", "{a: b}",
                                                      ".nan",      ".inf",   "1e308 mm",     "-1e308 in",
                                                      "1e-320 mm", "NaN mm", "12 parsecs",   "''"};
          return line.substr(0, line.find(':')) + ": " + kinds[pick(kinds.size())] + "\n";
        });
      case 10:
      case 11:  // a figure mistyped
        for (std::size_t i = at; i < text.size(); ++i)
          if (text[i] >= '0' && text[i] <= '9') {
            text[i] = static_cast<char>('0' + pick(10));
            break;
          }
        return text;
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

  static std::vector<std::string> lines_of(const std::string& text) {
    std::vector<std::string> lines;
    for (std::size_t from = 0; from < text.size();) {
      const std::size_t end = std::min(text.find('\n', from), text.size() - 1) + 1;
      lines.push_back(text.substr(from, end - from));
      from = end;
    }
    return lines;
  }
  static std::string together(const std::vector<std::string>& lines) {
    std::string text;
    for (const std::string& line : lines) text += line;
    return text;
  }
  std::string swapped_lines(const std::string& text) {
    std::vector<std::string> lines = lines_of(text);
    if (!lines.empty()) std::swap(lines[pick(lines.size())], lines[pick(lines.size())]);
    return together(lines);
  }
  // Each of two lines under the other's key.
  std::string swapped_keys(const std::string& text) {
    std::vector<std::string> lines = lines_of(text);
    if (lines.empty()) return text;
    std::string &a = lines[pick(lines.size())], &b = lines[pick(lines.size())];
    const std::size_t to_a = a.find(':'), to_b = b.find(':');
    if (&a == &b || to_a == std::string::npos || to_b == std::string::npos) return text;
    const std::string was = a;
    a = b.substr(0, to_b) + a.substr(to_a);
    b = was.substr(0, to_a) + b.substr(to_b);
    return together(lines);
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
