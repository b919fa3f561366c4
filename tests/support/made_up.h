// Things of no bed, for tests of what is done with findings.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "rules/finding.h"

namespace bedwright::testing {

// The same text is the same thing, another text another.
inline Subject made_up_thing(const std::string& text) {
  static std::map<std::string, int> seen;
  const int number = seen.try_emplace(text, static_cast<int>(seen.size()) + 1).first->second;
  return {Identity{Kind::none, Side::middle, number}, text};
}

inline std::vector<std::string> names_of(const Finding& f) {
  std::vector<std::string> names;
  for (const Subject& s : f.subjects) names.push_back(s.name);
  return names;
}

}  // namespace bedwright::testing
