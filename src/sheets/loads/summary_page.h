// One page for an engineer: cases, factors and sources, what each foot that sinks costs, how
// near each limit is, what was not looked at, and where a licensed engineer signs.
#pragma once

#include "sheets/loads/loads_page.h"

namespace bedwright {

List2d summary_page(const Job& job, const Bed& bed, const LoadsResult& loads, const Issue& issue);

}  // namespace bedwright
