// The exact answer about two items, for the few pairs the cheap test of convex
// pieces cannot decide. An interface, so that the rules need no geometry kernel.
#pragma once

#include <functional>
#include <memory>
#include <optional>

#include "units/units.h"

namespace bedwright {

struct Bed;

struct PairResult {
  Mm gap = 0;             // least distance; 0 when they touch or overlap
  Mm3 common_volume = 0;  // of the space both fill
};

class PairJudge {
 public:
  virtual ~PairJudge() = default;
  // Items by index. `without_shank_of_a`: item `a` is a bolt that passes through
  // `b`; its shank is left out, its head is not. Nothing when one of the two cannot be
  // made as a solid (a hole through its edge).
  virtual std::optional<PairResult> judge(int a, int b, bool without_shank_of_a) = 0;
};

// Makes the judge of one bed's pairs; the bed outlives it. Called by several threads at
// once where beds are examined so.
using JudgeMaker = std::function<std::unique_ptr<PairJudge>(const Bed& bed)>;

}  // namespace bedwright
