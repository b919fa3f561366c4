// The shape of each letter, and texts put together from them.
#include "draw/strokes.h"

#include <cctype>
#include <string_view>

namespace bedwright {
namespace {

constexpr double grid_height = 6, grid_width = 4, advance = 6;

// Points as two digits, column then row; '|' lifts the pen.
std::string_view shape(char c) {
  switch (c) {
    case 'A':
      return "00 26 40|13 33";
    case 'B':
      return "00 06 36 45 44 33 03|33 42 41 30 00";
    case 'C':
      return "45 36 16 05 01 10 30 41";
    case 'D':
      return "00 06 26 44 42 20 00";
    case 'E':
      return "46 06 00 40|03 33";
    case 'F':
      return "46 06 00|03 33";
    case 'G':
      return "45 36 16 05 01 10 30 41 43 23";
    case 'H':
      return "00 06|40 46|03 43";
    case 'I':
      return "10 30|16 36|20 26";
    case 'J':
      return "46 41 30 10 01";
    case 'K':
      return "00 06|46 03 40";
    case 'L':
      return "06 00 40";
    case 'M':
      return "00 06 23 46 40";
    case 'N':
      return "00 06 40 46";
    case 'O':
      return "10 01 05 16 36 45 41 30 10";
    case 'P':
      return "00 06 36 45 44 33 03";
    case 'Q':
      return "10 01 05 16 36 45 41 30 10|22 40";
    case 'R':
      return "00 06 36 45 44 33 03|23 40";
    case 'S':
      return "45 36 16 05 04 13 33 42 41 30 10 01";
    case 'T':
      return "06 46|20 26";
    case 'U':
      return "06 01 10 30 41 46";
    case 'V':
      return "06 20 46";
    case 'W':
      return "06 10 23 30 46";
    case 'X':
      return "00 46|06 40";
    case 'Y':
      return "06 23 46|23 20";
    case 'Z':
      return "06 46 00 40";
    case '0':
      return "10 01 05 16 36 45 41 30 10|12 34";  // barred, so that it is no letter O
    case '1':
      return "15 26 20|10 30";
    case '2':
      return "05 16 36 45 44 00 40";
    case '3':
      return "05 16 36 45 44 33 42 41 30 10 01|13 33";
    case '4':
      return "30 36 02 42";
    case '5':
      return "46 06 03 33 42 41 30 10 01";
    case '6':
      return "45 36 16 05 01 10 30 41 42 33 13 02";
    case '7':
      return "06 46 10";
    case '8':
      return "13 04 05 16 36 45 44 33 42 41 30 10 01 02 13 33";
    case '9':
      return "01 10 30 41 45 36 16 05 04 13 33 44";
    case '-':
      return "13 33";
    case '.':
      return "10 20 21 11 10";
    case ',':
      return "21 10";
    case '/':
      return "00 46";
    case '+':
      return "03 43|21 25";
    case '(':
      return "36 24 22 30";
    case ')':
      return "16 24 22 10";
    case '#':
      return "11 15|31 35|02 42|04 44";
    case '_':
      return "00 40";
    case 'x':
      return "00 44|04 40";
    case ' ':
      return "";
    default:
      return "05 16 36 45 44 23 22|20 21";
  }
}

bool letter(const std::string& s, std::size_t i) {
  return i < s.size() && std::isalpha(static_cast<unsigned char>(s[i])) != 0;
}

// One drawn character for each character of UTF-8.
std::string drawn(const std::string& text) {
  std::string out;
  for (std::size_t i = 0; i < text.size(); ++i) {
    const unsigned char c = static_cast<unsigned char>(text[i]);
    if ((c & 0xC0U) == 0x80U) continue;
    const bool between = c == 'x' && !(i > 0 && letter(text, i - 1)) && !letter(text, i + 1);
    out += c >= 0x80 ? '?' : between ? 'x' : static_cast<char>(std::toupper(c));
  }
  return out;
}

}  // namespace

std::vector<std::vector<Vec2>> strokes(const std::string& text, Mm height) {
  std::vector<std::vector<Vec2>> out;
  const double unit = height / grid_height;
  double left = 0;
  for (const char c : drawn(text)) {
    const std::string_view s = shape(c);
    for (std::size_t i = 0; i + 1 < s.size(); i += 3) {
      if (i == 0 || s[i - 1] == '|') out.emplace_back();
      out.back().push_back({unit * (left + (s[i] - '0')), unit * (s[i + 1] - '0')});
    }
    left += advance;
  }
  return out;
}

Mm stroke_width(const std::string& text, Mm height) {
  const std::size_t count = drawn(text).size();
  if (count == 0) return 0;
  return height / grid_height * (static_cast<double>(count - 1) * advance + grid_width);
}

}  // namespace bedwright
