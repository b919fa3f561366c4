// One thing wrong with the input, in the words the user reads.
#pragma once

#include <string>
#include <vector>

#include "yaml/mark.h"

namespace bedwright {

struct Problem {
  Mark where;
  std::string what;      // "rail_length has no unit"
  std::string would_do;  // "write it as 80 in, 6 ft 8 in or 2032 mm"

  friend bool operator==(const Problem&, const Problem&) = default;
};

// "FILE:LINE:COLUMN: KEY: WHAT; WOULD_DO" on one line; parts that are absent are left out.
std::string to_line(const Problem& problem);

}  // namespace bedwright
