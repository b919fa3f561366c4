// Replaces sign by sign, then looks at the shape of the whole.
#include "units/likely.h"

#include <fmt/format.h>

#include <array>
#include <regex>

namespace bedwright {
namespace {

constexpr std::size_t longest = 60;

struct Sign {
  std::string_view written, plain;
};

constexpr std::array signs{
    Sign{"\u201c", "\""},   Sign{"\u201d", "\""},   Sign{"\u201e", "\""},   Sign{"\u2033", "\""},
    Sign{"\u2018", "'"},    Sign{"\u2019", "'"},    Sign{"\u2032", "'"},    Sign{"\u00b4", "'"},
    Sign{"\u00a0", " "},    Sign{"\u2009", " "},    Sign{"\u202f", " "},    Sign{"\u2010", "-"},
    Sign{"\u2011", "-"},    Sign{"\u2012", "-"},    Sign{"\u2013", "-"},    Sign{"\u2014", "-"},
    Sign{"\u2212", "-"},    Sign{"\u2044", "/"},    Sign{"\u00bd", " 1/2"}, Sign{"\u00bc", " 1/4"},
    Sign{"\u00be", " 3/4"}, Sign{"\u215b", " 1/8"}, Sign{"\u215c", " 3/8"}, Sign{"\u215d", " 5/8"},
    Sign{"\u215e", " 7/8"},
};

void replace_all(std::string& text, std::string_view from, std::string_view to) {
  for (std::size_t at = 0; (at = text.find(from, at)) != std::string::npos; at += to.size())
    text.replace(at, from.size(), to);
}

}  // namespace

std::string in_plain_signs(std::string_view text) {
  // Nobody writes a quantity so long, and an expression's search goes as deep as its text is long.
  if (text.size() > longest) return std::string(text);
  static const std::regex blanks("^[ \\t]+|[ \\t]+$"), whole_and_fraction("([0-9])[ \\t]+([0-9]+/[0-9]+)"),
      decimal_comma("([0-9]),([0-9]{1,2}|[0-9]{4,})(?![0-9,])"), point_behind_unit("(ft|in|mm|cm|lb|kg)\\."),
      with_dashes("([0-9]+)-([0-9]+)-([0-9]+/[0-9]+)(?:[ \\t]*(?:in|\"))?"),
      no_inch_mark("([0-9]+)[ \\t]*(?:'|ft)[ \\t]*-?[ \\t]*([0-9]+(?:-[0-9]+/[0-9]+|\\.[0-9]+)?)");
  std::string plain(text);
  for (const Sign& sign : signs) replace_all(plain, sign.written, sign.plain);
  plain = std::regex_replace(plain, blanks, "");
  plain = std::regex_replace(plain, whole_and_fraction, "$1-$2");
  plain = std::regex_replace(plain, decimal_comma, "$1.$2");
  plain = std::regex_replace(plain, point_behind_unit, "$1");
  std::smatch part;
  if (std::regex_match(plain, part, with_dashes))
    return fmt::format("{} ft {}-{} in", part.str(1), part.str(2), part.str(3));
  if (std::regex_match(plain, part, no_inch_mark))
    return fmt::format("{} ft {} in", part.str(1), part.str(2));
  return plain;
}

}  // namespace bedwright
