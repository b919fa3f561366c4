// Which releases, and which standing frames, a revised kit file touches.
#pragma once

#include <vector>

#include "commands/commands.h"
#include "packet/record.h"

namespace bedwright {

// Of `records` those released or withdrawn (a bed may have been built from either) whose kit
// has the name of the one in arguments.touched_by: each is examined again with that file in
// place of the one it was released with. Prints for each what differs, whether it still goes
// together, and whether its tabs stay, so that a frame built to it still takes the track.
ExitCode touched_orders(const OrdersArguments& arguments, const std::vector<Recorded>& records);

}  // namespace bedwright
