// The release that an order revises: what it was made from, as that is kept in the new
// release too, and its bed as this program lays it out.
#pragma once

#include <filesystem>
#include <optional>
#include <string>
#include <vector>

#include "commands/session.h"
#include "compare/compare.h"
#include "packet/record.h"

namespace bedwright {

struct Revised {
  std::string revision, digest;  // its letter, and of what it was made from
  std::filesystem::path order;   // its order file
  std::vector<PacketFile> kept;  // inputs/revises/<letter>/..., its own inputs/revises/ apart
};

// A release to be revised. Throws std::runtime_error, saying what to do, where its inputs are
// not as they were released.
Revised to_revise(const Recorded& release);

// What a release revised, by what it keeps; nothing when it revised none.
std::optional<Revised> revised_by(const Recorded& release);

// It, as this program reads it today. Nothing, and problems, where it does not.
struct RevisedBed {
  Loaded was;     // as it was released
  Loaded headed;  // with revision, date and revision table of the order drawn now
};
std::optional<RevisedBed> revised_bed(const Revised& revised, const Job& now, std::vector<Problem>& problems);

// The two, values that differ only by where a release keeps its files left out.
Comparison compared(const Loaded& was, const Loaded& now);

}  // namespace bedwright
