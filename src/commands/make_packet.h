// The packet of a loaded order, made in memory.
#pragma once

#include <optional>
#include <vector>

#include "commands/revised.h"
#include "commands/session.h"
#include "packet/packet.h"

namespace bedwright {

// A release, with what it was made from and, where it revises another, what that was made
// from; its sheets are marked where they changed against that one.
struct MadeRelease {
  Packet packet;
  std::optional<Revised> revised;
  std::optional<RevisedBed> bed;          // of the one revised; nothing where it cannot be read any more
  std::vector<Problem> unreadable;        // why
  std::vector<FateOfSheet> sheets;        // against it
  std::vector<Sheet> drawn;               // the numbered sheets, as issued
  std::vector<PacketFile> beside_sheets;  // of the one revised, drawn under the new heading
};

// Nothing, and problems, where an order's text cannot be kept with its release. The bed must
// not be stopped.
std::optional<MadeRelease> make_release(const Loaded& loaded, std::optional<Revised> revised,
                                        Progress& progress, std::vector<Problem>& problems);

// A trial: a draft of what goes together or is wanted as one, else the report alone.
Packet trial_packet(const Loaded& loaded, bool draft, Progress& progress);

}  // namespace bedwright
