// Writes an issue's digits and its code.
#include "sheets/issue.h"

#include <fmt/format.h>

#include <stdexcept>

#include "formats/qr.h"
#include "sheets/sheet.h"

namespace bedwright {
namespace {

// With 41 modules, those of an order's common number, each is 0.59 mm wide. A module should
// be no smaller than 4 dots of a 300 dpi printer, 0.34 mm (common practice, no published
// source): this side holds it up to 70 modules.
constexpr Mm code_side = 24;
// A code of these texts has 37 modules or more, so this is four of them and over.
constexpr Mm quiet = (issue_width - code_side) / 2;

}  // namespace

bool is_digest(const std::string& text) {
  return text.size() == 64 && text.find_first_not_of("0123456789abcdef") == std::string::npos;
}

std::string paper_digits(const std::string& digest) {
  if (!is_digest(digest)) throw std::logic_error("a sheet needs the digest of what it is made from");
  return digest.substr(0, digits_on_paper / 2) + "-" +
         digest.substr(digits_on_paper / 2, digits_on_paper / 2);
}

std::string code_text(const Issue& issue) {
  return fmt::format("{}order {}\nrevision {}\ndigest {}", issue.trial ? "TRIAL, NOT FOR FABRICATION\n" : "",
                     issue.number, issue.revision, issue.digest);
}

std::string issue_words(const Issue& issue) {
  return (issue.trial ? "trial " : "release ") + paper_digits(issue.digest);
}

void draw_issue(List2d& list, Vec2 corner, const Issue& issue, int layer) {
  const QrCode code = qr_code(code_text(issue), code_side);
  Filled dark = code.dark;
  dark.layer = layer;
  const Mm middle = corner.x + issue_width / 2, top = corner.y + issue_height;
  if (quiet < qr_quiet_zone * code.module) throw std::logic_error("a code without its quiet zone");
  list.add(std::get<Filled>(moved(dark, {middle - code_side / 2, top - quiet - code_side})));
  const auto text = [&](Mm y, Mm height, const std::string& words) {
    list.add(Text{layer, {middle, y}, height, words, Across::centre, Up::baseline, 0});
  };
  text(corner.y + 5.4, small_text, issue.trial ? "TRIAL" : "RELEASE");
  text(corner.y + 0.8, bench_text, paper_digits(issue.digest));
}

}  // namespace bedwright
