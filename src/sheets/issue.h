// What every sheet of one issue says of it, so that paper on the bench can be told from the
// paper of another: the first digits of the inputs' digest to read by eye, and a code for a
// phone.
#pragma once

#include <string>

#include "draw/list2d.h"

namespace bedwright {

struct Issue {
  std::string number, revision;  // of the order
  std::string digest;            // SHA-256 of what the sheets are made from, 64 hexadecimal digits
  bool trial = false;            // no release
};

// How many digits of a digest paper carries. Eight are read at one glance in two groups of
// four, and are enough: two papers that differ share them once in four thousand million, and
// that any two of ten thousand releases share them is one chance in eighty-six.
inline constexpr std::size_t digits_on_paper = 8;

bool is_digest(const std::string& text);  // 64 small hexadecimal digits

// "3f2a-81bc". Throws std::logic_error for what is no SHA-256.
std::string paper_digits(const std::string& digest);

// What the code says, a line each: order, revision, digest; of a trial first that it is one.
std::string code_text(const Issue& issue);

// "release 3f2a-81bc" or "trial 3f2a-81bc".
std::string issue_words(const Issue& issue);

// The code with its quiet zone and, under it, what is read by eye. From the corner rightward
// and upward it takes issue_width by issue_height.
inline constexpr Mm issue_width = 30, issue_height = 38;
void draw_issue(List2d& list, Vec2 corner, const Issue& issue, int layer);

}  // namespace bedwright
