// What a way of travelling is called.
#pragma once

#include <string>

#include "params/load_order.h"

namespace bedwright {

// How it travels: "bare frame", "head locked front, cargo"; where a column has little room, "head
// front, cargo".
std::string name(const TravelCase& travel, bool brief = false);

}  // namespace bedwright
