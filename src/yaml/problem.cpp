// A problem as one line.
#include "yaml/problem.h"

#include <fmt/format.h>

#include "yaml/text.h"

namespace bedwright {

std::string to_line(const Problem& problem) {
  const Mark& at = problem.where;
  std::string line = at.file;
  if (at.line > 0) line += fmt::format(":{}", at.line);
  if (at.line > 0 && at.column > 0) line += fmt::format(":{}", at.column);
  if (!line.empty()) line += ": ";
  if (!at.key.empty()) line += at.key + ": ";
  line += problem.what;
  if (!problem.would_do.empty()) line += "; " + problem.would_do;
  return one_line(line);
}

}  // namespace bedwright
