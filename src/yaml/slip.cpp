// Looks at lines as text. YAML's own rules are the parser's matter: here its words are put so
// that somebody who has never heard of it finds the place.
#include "yaml/slip.h"

#include <fmt/format.h>

#include <algorithm>
#include <regex>
#include <vector>

#include "yaml/text.h"

namespace bedwright {
namespace {

// Longer lines are not looked at word by word: an expression's search goes as deep as its text is long.
constexpr std::size_t longest_line = 400;
constexpr std::string_view no_break_space = "\u00a0";

struct Line {
  int number = 0;
  std::string text;        // without its comment and the blanks behind it
  std::size_t indent = 0;  // bytes before the first that is not a space, tab or no-break space
  std::string_view rest() const { return std::string_view(text).substr(indent); }
};

// Whether a quote opens at `at`: at the start of a value, not within a word as in O'Neil.
bool opens_quote(std::string_view text, std::size_t at) {
  if (text[at] != '"' && text[at] != '\'') return false;
  const std::size_t before = at == 0 ? std::string_view::npos : text.find_last_not_of(" \t", at - 1);
  if (before == std::string_view::npos) return true;
  const bool apart = before + 1 < at;
  return std::string_view("[{,").find(text[before]) != std::string_view::npos ||
         (apart && std::string_view(":-").find(text[before]) != std::string_view::npos);
}

// The byte behind the quote that opens at `at`; npos where it is not closed on its line.
std::size_t behind_quote(std::string_view text, std::size_t at) {
  const char quote = text[at];
  for (std::size_t i = at + 1; i < text.size() && text[i] != '\n'; ++i) {
    if (quote == '"' && text[i] == '\\') {
      ++i;
    } else if (text[i] == quote) {
      if (quote == '\'' && i + 1 < text.size() && text[i + 1] == quote) {
        ++i;
      } else {
        return i + 1;
      }
    }
  }
  return std::string_view::npos;
}

// Calls `see(byte, character)` for each character of a line outside quotes, up to its comment,
// and says where that begins.
template <class See>
std::size_t outside_quotes(std::string_view text, const See& see) {
  for (std::size_t i = 0; i < text.size();) {
    if (opens_quote(text, i)) {
      i = std::min(text.size(), behind_quote(text, i));
      continue;
    }
    if (text[i] == '#' && (i == 0 || text[i - 1] == ' ' || text[i - 1] == '\t')) return i;
    see(i, text[i]);
    ++i;
  }
  return text.size();
}

std::string without_comment(std::string_view text) {
  const std::size_t end = outside_quotes(text, [](std::size_t, char) {});
  const std::size_t last = text.substr(0, end).find_last_not_of(" \t\r");
  return std::string(text.substr(0, last == std::string_view::npos ? 0 : last + 1));
}

// The lines up to `last` that say anything.
std::vector<Line> lines_to(std::string_view text, int last) {
  std::vector<Line> lines;
  int number = 0;
  for (std::size_t from = 0; from < text.size() && number < last;) {
    const std::size_t end = std::min(text.find('\n', from), text.size());
    Line line{++number, without_comment(text.substr(from, end - from)), 0};
    while (line.indent < line.text.size()) {
      const char c = line.text[line.indent];
      if (c == ' ' || c == '\t') {
        ++line.indent;
      } else if (line.rest().starts_with(no_break_space)) {
        line.indent += no_break_space.size();
      } else {
        break;
      }
    }
    if (!line.rest().empty() && !line.rest().starts_with("---")) lines.push_back(std::move(line));
    from = end + 1;
  }
  return lines;
}

Slip at(const Line& line, std::size_t byte, std::string what, std::string would_do) {
  return {line.number, characters(std::string_view(line.text).substr(0, byte)) + 1, std::move(what),
          std::move(would_do)};
}

std::optional<Slip> bracket_left_open(const std::vector<Line>& lines) {
  struct Open {
    const Line* line;
    std::size_t byte;
    char bracket;
  };
  std::vector<Open> open;
  std::optional<Slip> wrong;
  for (const Line& line : lines) {
    // A bracket within a value that began with something else is a letter like any other.
    outside_quotes(line.text, [&](std::size_t i, char c) {
      if (wrong) return;
      const std::size_t before = i == 0 ? std::string::npos : line.text.find_last_not_of(" \t", i - 1);
      const bool starts = before == std::string::npos ||
                          std::string_view("[{,:-").find(line.text[before]) != std::string_view::npos;
      if ((c == '[' || c == '{') && (starts || !open.empty())) open.push_back({&line, i, c});
      if ((c == ']' || c == '}') && !open.empty()) {
        const char wanted = open.back().bracket == '[' ? ']' : '}';
        if (c != wanted) {
          wrong = at(line, i,
                     fmt::format("{} closes what {} opened on line {}", c, open.back().bracket,
                                 open.back().line->number),
                     fmt::format("close it with {}", wanted));
        }
        open.pop_back();
      }
    });
    if (wrong) return wrong;
  }
  if (open.empty()) return std::nullopt;
  const Open& first = open.front();
  return at(*first.line, first.byte, fmt::format("the {} that opens here is not closed", first.bracket),
            fmt::format("write {} where the list ends", first.bracket == '[' ? "]" : "}"));
}

std::optional<Slip> wrong_blank(const Line& line) {
  const std::string_view blanks = std::string_view(line.text).substr(0, line.indent);
  if (const std::size_t tab = blanks.find('\t'); tab != std::string_view::npos)
    return at(line, tab, "a tab stands before the first word of this line",
              "use spaces; tabs cannot be read here");
  if (const std::size_t hard = blanks.find(no_break_space); hard != std::string_view::npos)
    return at(line, hard, "a no-break space stands before the first word of this line",
              "take it out and type ordinary spaces");
  return std::nullopt;
}

std::optional<Slip> wrong_mark(const Line& line) {
  if (line.text.size() > longest_line) return std::nullopt;
  const std::string rest(line.rest());
  std::smatch part;
  static const std::regex dash("-([^-\\s].*)"), glued("((?:- +)?[A-Za-z_][A-Za-z0-9_]*):([^\\s:/\\\\].*)"),
      other_mark("((?:- +)?[A-Za-z_][A-Za-z0-9_]*) *[=;] *(\\S.*)"),
      none("((?:- +)?[A-Za-z_][A-Za-z0-9_]*) +([^:]*)"), value("(?:- +)?[A-Za-z_][A-Za-z0-9_]*: +(\\S.*)");
  if (std::regex_match(rest, part, dash))
    return at(line, line.indent, "no space behind the dash", fmt::format("write - {}", part.str(1)));
  if (std::regex_match(rest, part, glued))
    return at(line, line.indent, "no space behind the colon",
              fmt::format("write {}: {}", part.str(1), part.str(2)));
  if (std::regex_match(rest, part, other_mark) || std::regex_match(rest, part, none))
    return at(line, line.indent, "no colon behind the first word",
              fmt::format("write {}: {}", part.str(1), part.str(2)));
  if (!std::regex_match(rest, part, value)) return std::nullopt;
  const std::string given = part.str(1);
  const std::size_t from = line.indent + static_cast<std::size_t>(part.position(1));
  if (std::string_view("@`%*&!|>").find(given[0]) != std::string_view::npos)
    return at(line, from,
              fmt::format("the value begins with {}, which has a meaning of its own here", given[0]),
              fmt::format("put the value in quotes: {}", yaml_word(given)));
  const bool plain = std::string_view("\"'[{").find(given[0]) == std::string_view::npos;
  if (plain && (given.find(": ") != std::string::npos || given.ends_with(':')))
    return at(line, from, "the value has a colon in it",
              fmt::format("put the value in quotes: {}", yaml_word(given)));
  return std::nullopt;
}

const char* spaces(std::size_t count) { return count == 1 ? "space" : "spaces"; }

// The last line against those it stands under.
std::optional<Slip> out_of_step(const std::vector<Line>& lines) {
  if (lines.size() < 2) return std::nullopt;
  const Line &last = lines.back(), &above = lines[lines.size() - 2];
  std::vector<std::size_t> steps;
  for (const Line& line : lines) {
    if (&line == &last) break;
    while (!steps.empty() && steps.back() >= line.indent) steps.pop_back();
    steps.push_back(line.indent);
  }
  const bool deeper_unasked = last.indent > above.indent && !above.text.ends_with(':');
  const bool between = last.indent < above.indent && std::ranges::find(steps, last.indent) == steps.end();
  if (!deeper_unasked && !between) return std::nullopt;
  return at(last, last.indent,
            fmt::format("this line begins behind {} {}, line {} behind {}", last.indent, spaces(last.indent),
                        above.number, above.indent),
            "let lines that belong together begin one under the other");
}

}  // namespace

std::optional<Slip> find_slip(std::string_view text, int line) {
  const std::vector<Line> lines = lines_to(text, line);
  if (lines.empty()) return std::nullopt;
  const std::size_t first = lines.size() < 2 ? 0 : lines.size() - 2;
  for (std::size_t i = first; i < lines.size(); ++i)
    if (const auto slip = wrong_blank(lines[i])) return slip;
  if (const auto slip = bracket_left_open(lines)) return slip;
  for (std::size_t i = first; i < lines.size(); ++i)
    if (const auto slip = wrong_mark(lines[i])) return slip;
  return out_of_step(lines);
}

std::optional<Slip> quote_left_open(std::string_view text, std::size_t at) {
  if (at >= text.size() || (text[at] != '"' && text[at] != '\'')) return std::nullopt;
  if (behind_quote(text, at) != std::string_view::npos) return std::nullopt;
  return Slip{0, 0, "the quote that opens here is not closed on its line",
              fmt::format("write {} behind the value", text[at])};
}

}  // namespace bedwright
