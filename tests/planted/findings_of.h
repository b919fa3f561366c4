// What the program finds on a demo order with values set, the kernel asked as it asks.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "commands/session.h"
#include "support/demo.h"

namespace bedwright::testing {

inline std::vector<Finding> findings_of(const std::string& order, const std::vector<std::string>& sets) {
  Progress progress;
  const auto loaded = load_and_advise({order_path(order), sets}, progress);
  if (!loaded) throw std::runtime_error("the order does not read");
  return loaded->examined->findings;
}

// Whether the finding is first of all about such a thing: what `like` leaves open, its
// side, its number, which of several, may be any.
inline bool is_about(const Finding& finding, const Identity& like) {
  if (finding.subjects.empty()) throw std::logic_error(finding.code + " is about nothing");
  const Identity& id = finding.subjects.front().id;
  return id.kind == like.kind && (like.side == Side::middle || id.side == like.side) &&
         (like.number == 0 || id.number == like.number) && (like.of == 0 || id.of == like.of);
}

}  // namespace bedwright::testing
