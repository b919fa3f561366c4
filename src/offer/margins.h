// How much room a bed that goes together has left. Rules report only what is
// short; a map of what can be offered wants to know how far from short it is.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "loads/worked.h"
#include "params/job.h"
#include "rules/scene.h"

namespace bedwright {

// `used` is what is needed over what there is: 1 is just at the limit. It makes
// rules of different units comparable; a person reads `margin`.
struct Spare {
  std::string code, subject;
  double margin = 0;
  std::string unit;  // "mm", or "%" of the limit
  double used = 0;
};

// That which is nearest to its limit. Of lengths: what the tightest track bolt has
// left of its float (HOLE-FIT; only where the order asks for the worst case) and the
// room at the bolts' tips beyond what is asked (TIP). Of loads, in percent of the
// limit: the tabs' welds at work (WELD-LOAD) and all of load_margins() that can stop a
// bed. What is only ever a warning is left out. Nothing when the
// bed has none of them.
std::optional<Spare> smallest_spare(const Scene& scene, const Job& job, const std::vector<LoadMargin>& loads);

// The margin of this load rule, where the loads are nearest to it or furthest past
// it; nothing when it is not among them.
std::optional<Spare> load_spare(const std::string& code, const std::vector<LoadMargin>& loads);

}  // namespace bedwright
