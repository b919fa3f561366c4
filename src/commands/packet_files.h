// Which files a bed's packet holds.
#pragma once

#include <vector>

#include "commands/session.h"
#include "export/packet.h"

namespace bedwright {

// With `state` released: everything. draft: report, lists, model, picture and
// sheets. stopped: the report alone. Model, picture and sheets are made side by side.
std::vector<PacketFile> packet_files(const Loaded& loaded, PacketState state, Progress& progress);

// SHA-256 over the inputs' contents and the overrides; where the files stand
// does not matter.
std::string input_digest(const std::vector<InputFile>& inputs, const std::vector<std::string>& sets);

}  // namespace bedwright
