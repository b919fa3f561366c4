// What an order's output folder holds from before, so that nothing is replaced unsaid.
#pragma once

#include <filesystem>
#include <optional>
#include <string>

#include "packet/state.h"
#include "params/order.h"

namespace bedwright {

struct EarlierPacket {
  std::string state;                             // as its manifest says
  std::string number, customer, date, revision;  // as its report says; empty when that cannot be read
};

// Nothing when the folder holds no packet of this program.
std::optional<EarlierPacket> earlier_packet(const std::filesystem::path& folder);

// Why the packet of `heading` may not go into `out`, which has one folder for
// each order: the place is another order's. Empty when it may.
std::string place_fault(const std::filesystem::path& out, const Heading& heading);

// One line that says what a packet of this state takes the place of.
std::string replaced_text(const EarlierPacket& earlier, const Heading& heading, PacketState state);

}  // namespace bedwright
