// What stops a bed, by name: so that two checks of it can be compared.
#pragma once

#include <set>
#include <string>
#include <utility>
#include <vector>

#include "checks/finding.h"

namespace bedwright {

using Stop = std::pair<std::string, std::string>;  // code, first subject

// Subjects name a place ("clamp 1 on bunk 3"), which a change of that very place
// renames: the thing itself is what must no longer be stopped.
inline std::string thing(const std::string& subject) {
  const auto on = subject.find(" on bunk ");
  return on == std::string::npos ? subject : subject.substr(0, on);
}

inline Stop stop_of(const Finding& f) { return {f.code, f.subjects.empty() ? "" : thing(f.subjects.front())}; }

inline std::set<Stop> stops_of(const std::vector<Finding>& findings) {
  std::set<Stop> all;
  for (const Finding& f : findings)
    if (f.severity == Severity::stop) all.insert(stop_of(f));
  return all;
}

}  // namespace bedwright
