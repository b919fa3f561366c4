// The files of a map of sizes, and their place on the disk.
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "offer/table.h"

namespace bedwright {

// Writes the map into `folder` and returns the names of its files, the list of digests last.
// A whole map is a folder of its own, replaced as a whole and only where nothing else lies in
// it; a part is one file more in a folder of parts. Throws std::runtime_error, and nothing was
// touched, when that cannot be.
std::vector<std::string> write_map(const MapFile& file, const std::filesystem::path& folder);

// Throws as that would for a whole map, before it is worked out.
void check_map_folder(const std::filesystem::path& folder);

}  // namespace bedwright
