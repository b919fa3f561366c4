// The kernel as the judge of pairs.
#pragma once

#include "rules/clash/pair_judge.h"
#include "rules/clash/pair_memory.h"

namespace bedwright {

// Nothing is built until the first pair comes that `memory`, where one is given, does
// not know. The memory outlives the judges. Of two things that stand still only the space
// they share is measured, which is half the work: no rule asks how far apart they are.
JudgeMaker kernel_judge(PairMemory* memory = nullptr);

}  // namespace bedwright
