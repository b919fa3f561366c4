// From an order to a Bed.
#pragma once

#include <variant>
#include <vector>

#include "bed/bed.h"
#include "params/job.h"
#include "yaml/problem.h"

namespace bedwright {

// Lays the whole bed out. The order's own values are already read and in range;
// what only shows once parts meet (a cross member too deep for its main, a bunk
// number that does not exist) comes back as problems. A bed that does not go
// together is still laid out, for the checks to say so.
std::variant<Bed, std::vector<Problem>> lay_out(const Job& job);

}  // namespace bedwright
