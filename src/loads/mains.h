// The mains at work: beams on their jacks under bed, log and rolling head.
#pragma once

#include <vector>

#include "loads/loads.h"

namespace bedwright {

// The head stands at every so many-th of its places while a log lands.
inline constexpr int stand_landing_step = 4;

// Where the order's jacks stand, front to rear, two at one place once.
std::vector<Mm> jack_lines(const Job& job);

// Fills in what mains and jacks do. `sunk`: by line of jacks, how far its feet have gone
// down; empty: none. `out` has the log's place across the bed already.
void bend_mains(const Job& job, const Bed& bed, const BedWeights& weights, const std::vector<Mm>& sunk,
                Stand& out);

}  // namespace bedwright
