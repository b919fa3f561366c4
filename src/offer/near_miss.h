// What would have to change about a combination that is stopped.
#pragma once

#include "offer/map.h"

namespace bedwright {

// One change, or two, to parameters that are not varied, tried like check --suggest
// does (advice/suggest.h) but with fewer tries. `combination` is left to the caller.
NearMiss near_miss(FileStore& store, const std::string& order_path, const std::vector<std::string>& sets,
                   const std::vector<Varied>& varied, const JudgeMaker& judge);

}  // namespace bedwright
