// The drawing set as files of the packet.
#pragma once

#include <vector>

#include "packet/packet.h"
#include "sheets/sheets.h"

namespace bedwright {

// The sheets themselves; safe to call beside other readers of the bed.
std::vector<Sheet> drawn_sheets(const Examined& examined, const AssemblyText& assembly, const BedViews& views,
                                bool draft);

// sheets/<name>.pdf and .svg of each, .dxf too when released, and sheets/all.pdf
// with a bookmark for each sheet and the pages `last` at its end.
void add_sheets(const Examined& e, const std::vector<Sheet>& sheets, PacketState state,
                std::vector<Page> last, std::vector<PacketFile>& files);

}  // namespace bedwright
