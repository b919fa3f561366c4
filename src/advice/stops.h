// What stops a bed, by identity: so that two checks of it can be compared.
#pragma once

#include <algorithm>
#include <set>
#include <string>
#include <utility>
#include <vector>

#include "rules/finding.h"

namespace bedwright {

using Stop = std::pair<std::string, std::vector<Identity>>;  // code, things

// What is clamped to a bunk is known without its place, which a change of that very
// place changes: the thing itself is what must no longer be stopped.
inline Identity thing(Identity id) {
  if (id.bunk == 0) return id;
  id.bunk = 0;
  return whole_thing(id);
}

// All that is named: the head on the left jack is one stop, on the right jack another.
inline Stop stop_of(const Finding& f) {
  Stop stop{f.code, {}};
  for (const Subject& s : f.subjects) stop.second.push_back(thing(s.id));
  return stop;
}

inline std::set<Stop> stops_of(const std::vector<Finding>& findings) {
  std::set<Stop> all;
  for (const Finding& f : findings)
    if (f.severity == Severity::stop) all.insert(stop_of(f));
  return all;
}

// Whether `stop`, one of `now`, is still there `after` a change: as it is, or as a
// stop that was not there before, by the same rule over the same first thing (the
// clamp now meets the next bunk, the bolt's worst hole is now another's).
inline bool remains(const Stop& stop, const std::set<Stop>& now, const std::set<Stop>& after) {
  const auto first = [](const Stop& s) { return s.second.empty() ? Identity{} : s.second.front(); };
  return std::any_of(after.begin(), after.end(), [&](const Stop& s) {
    return s == stop || (s.first == stop.first && first(s) == first(stop) && !now.contains(s));
  });
}

}  // namespace bedwright
