// The drawing set as files of the packet.
#pragma once

#include <vector>

#include "packet/packet.h"
#include "sheets/sheets.h"

namespace bedwright {

// What the sheets are made from, with the packet's lists. What it is given must outlive it.
SheetInput sheet_input(const Examined& examined, const AssemblyText& assembly, const BedViews& views,
                       const Issue& issue);

// sheets/<name>.pdf and .svg of each, .dxf too when released, and sheets/all.pdf
// with a bookmark for each sheet and the pages `last` at its end.
void add_sheets(const Examined& e, const std::vector<Sheet>& sheets, PacketState state,
                std::vector<Page> last, std::vector<PacketFile>& files);

}  // namespace bedwright
