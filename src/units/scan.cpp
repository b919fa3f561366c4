// Goes through a quantity's text character by character.
#include "units/scan.h"

#include <fmt/format.h>

#include <optional>

#include "units/decimal.h"

namespace bedwright {
namespace {

constexpr std::size_t most_whole_digits = 9, most_decimals = 12, most_fraction_digits = 4;

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_space(char c) { return c == ' ' || c == '\t'; }
// Bytes of a character beyond ASCII count as letters, so that a degree sign is a unit word.
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c & 0x80) != 0; }

double value_of(std::string_view digits) {
  return decimal(digits).value();  // nine digits and twelve decimals are always a figure
}

class Scanner {
 public:
  explicit Scanner(std::string_view text) : text_(text) {}

  ScannedQuantity run() {
    skip_spaces();
    if (at_end()) return fail("is empty", "write a number with its unit");
    if (peek() == '-') {
      out_.negative = true;
      ++at_;
    }
    while (out_.what.empty() && !at_end()) term();
    if (out_.what.empty() && out_.terms.empty()) fail("has no number", "write a number with its unit");
    return out_;
  }

 private:
  bool at_end() const { return at_ >= text_.size(); }
  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  void skip_spaces() {
    while (!at_end() && is_space(peek())) ++at_;
  }
  ScannedQuantity& fail(std::string what, std::string would_do) {
    out_.what = std::move(what);
    out_.would_do = std::move(would_do);
    return out_;
  }
  std::string_view digits() {
    const std::size_t from = at_;
    while (is_digit(peek())) ++at_;
    return text_.substr(from, at_ - from);
  }

  void term() {
    QuantityTerm term;
    // 5'-3" as drawings write it: the dash belongs to the tick before it.
    if (peek() == '-' && !out_.terms.empty() && out_.terms.back().unit == "'") {
      ++at_;
      skip_spaces();
    }
    const std::size_t from = at_;
    if (!figure(term)) return;
    term.text = text_.substr(from, at_ - from);
    skip_spaces();
    term.unit = unit_word();
    skip_spaces();
    out_.terms.push_back(std::move(term));
  }

  // A decimal, a whole, a fraction, or a whole and a fraction.
  bool figure(QuantityTerm& term) {
    if (peek() == '.' && is_digit(peek(1))) return decimals(term, {});
    if (!is_digit(peek())) return unexpected();
    const std::string_view whole = digits();
    if (whole.size() > most_whole_digits) return too_long();
    if (peek() == '.') return decimals(term, whole);
    if (peek() == '/') return fraction(term, whole, {});
    term.figure = value_of(whole);
    term.whole = true;
    return optional_fraction(term);
  }

  bool decimals(QuantityTerm& term, std::string_view whole) {
    ++at_;  // the point
    const std::string_view part = digits();
    if (part.empty()) {
      fail("has a point with no digit behind it", "leave the point out or write a digit behind it");
      return false;
    }
    if (part.size() > most_decimals) return too_long();
    term.figure = value_of(fmt::format("{}.{}", whole.empty() ? "0" : whole, part));
    return true;
  }

  // "-1/2" or " 1/2" behind a whole; anything else there is left for the unit.
  bool optional_fraction(QuantityTerm& term) {
    std::size_t ahead = 0;
    if (peek() == '-') {
      ahead = 1;
    } else {
      while (is_space(peek(ahead))) ++ahead;
      if (ahead == 0) return true;
    }
    std::size_t end = ahead;
    while (is_digit(peek(end))) ++end;
    if (end == ahead || peek(end) != '/') return true;
    at_ += ahead;
    const std::string_view numerator = digits();
    return fraction(term, numerator, term.figure);
  }

  bool fraction(QuantityTerm& term, std::string_view numerator, std::optional<double> whole) {
    ++at_;  // the slash
    const std::string_view denominator = digits();
    if (denominator.empty()) {
      fail("has a fraction with nothing under its line", "write a fraction such as 1/2");
      return false;
    }
    if (numerator.size() > most_fraction_digits || denominator.size() > most_fraction_digits) {
      return too_long();
    }
    const double above = value_of(numerator), below = value_of(denominator);
    if (below == 0) {
      fail(fmt::format("divides by zero in {}/{}", numerator, denominator), "write a fraction such as 1/2");
      return false;
    }
    if (whole && above >= below) {
      fail(fmt::format("has a whole with {}/{}, which is not less than one", numerator, denominator),
           "write a whole and a fraction less than one, such as 77-1/2 in");
      return false;
    }
    term.figure = whole.value_or(0) + above / below;
    term.whole = false;
    term.fraction = true;
    return true;
  }

  std::string unit_word() {
    if (peek() == '\'' || peek() == '"') return std::string(1, text_[at_++]);
    const std::size_t from = at_;
    while (is_letter(peek())) ++at_;
    return std::string(text_.substr(from, at_ - from));
  }

  bool too_long() {
    fail("has a number with too many digits",
         fmt::format("use at most {} digits before the point, {} behind it and {} in a fraction's parts",
                     most_whole_digits, most_decimals, most_fraction_digits));
    return false;
  }

  bool unexpected() {
    if (peek() == ',') {
      fail("has a comma in it", "write decimals with a point and leave out thousands marks");
    } else if (is_letter(peek())) {
      fail(fmt::format("has \"{}\" where a number belongs", unit_word()), "write a number with its unit");
    } else {
      fail(fmt::format("has \"{}\" where a number belongs", at_end() ? "" : text_.substr(at_, 1)),
           "write a number with its unit");
    }
    return false;
  }

  std::string_view text_;
  std::size_t at_ = 0;
  ScannedQuantity out_;
};

}  // namespace

ScannedQuantity scan_quantity(std::string_view text) { return Scanner(text).run(); }

}  // namespace bedwright
