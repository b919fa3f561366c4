// A line on standard error, for a person who may not be there: what is closed or full
// stops no work that is done.
#pragma once

#include <fmt/format.h>

#include <cstdio>
#include <utility>

namespace bedwright {

template <class... T>
void tell(fmt::format_string<T...> text, T&&... values) {
  const std::string line = fmt::format(text, std::forward<T>(values)...);
  if (std::fwrite(line.data(), 1, line.size(), stderr) != line.size()) std::clearerr(stderr);
}

}  // namespace bedwright
