// Serial number, date and as-built notes of what was built from a release. They lie beside it,
// in out/<order>/<revision>.built.yaml (no revision has a point in it), because a release never
// changes and beds are built after it. The file names its release by a digest: it is never taken
// for what another release of the same letter built.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "packet/record.h"
#include "params/built.h"
#include "yaml/problem.h"

namespace bedwright {

std::filesystem::path built_file(const std::filesystem::path& release);

// The first 16 characters of the SHA-256 of its manifest.json, which names every other file.
std::string release_mark(const Recorded& record);

// What its built.yaml says. Nothing where there is none, and nothing, with problems, where one
// cannot be used: not read, another release's, a day or serial number that is none.
std::optional<Built> built_of(const Recorded& record, std::vector<Problem>& problems);

// Writes one bed more, by one rename; what is written there by hand stays, comments too. Throws
// std::runtime_error, and nothing was touched, when it cannot; the text says why.
void add_built(const Recorded& record, const BuiltBed& bed);

}  // namespace bedwright
