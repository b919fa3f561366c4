// The packet of a loaded order, made in memory.
#pragma once

#include <optional>
#include <vector>

#include "commands/session.h"
#include "packet/packet.h"

namespace bedwright {

// A release, with what it was made from. Nothing, and problems, where an order's text
// cannot be kept with it. The bed must not be stopped.
std::optional<Packet> release_packet(const Loaded& loaded, Progress& progress,
                                     std::vector<Problem>& problems);

// A trial: a draft of what goes together or is wanted as one, else the report alone.
Packet trial_packet(const Loaded& loaded, bool draft, Progress& progress);

}  // namespace bedwright
