// Section lengths and joint gaps as contributions to a stack-up.
#include "bed/stack_up.h"

#include <fmt/format.h>

#include <cmath>

namespace bedwright {

std::vector<Contribution> along_track(const FromDatum& from) {
  std::vector<Contribution> all;
  const auto add = [&](std::string what, Mm plus, Mm minus) {
    if (plus > 0 || minus > 0) all.push_back({std::move(what), plus, minus, 0, 0, 0, 0, true});
  };
  const Mm each = from.length_tolerance;
  for (int i = 0; i < static_cast<int>(from.sections); ++i)
    add(fmt::format("length of rail section {} from the datum", i + 1), each, each);
  if (const double part = from.sections - std::floor(from.sections); part > 0)
    add("length of the pinned section, shared", part * each, part * each);
  for (double left = from.joints; left > 0; left -= 1) {
    const Mm open = std::min(left, 1.0) * from.gap_plus;
    add("joint gap", from.direction > 0 ? open : 0, from.direction > 0 ? 0 : open);
  }
  return all;
}

}  // namespace bedwright
