// What sheets and lists say of a part: what it is made of, its size, where it is from.
#pragma once

#include <string>
#include <utility>

#include "bed/bed.h"
#include "params/order.h"

namespace bedwright {

// What a part is made of and its size: {"C6x8.2", "240 in"}.
std::pair<std::string, std::string> part_form(const Part& part, const Figures& figures);
const char* origin_name(Origin origin);
// Of the box around the plate's outline.
Vec2 plate_size(const Plate& plate);

// What the tape is laid on across the bed: "web back", of a tube "outer side".
const char* back_word(const Bed& bed, int member);

}  // namespace bedwright
