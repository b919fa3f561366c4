// The track's bolts by kind: what goes into which hole, by letter.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "sheets/sheets.h"

namespace bedwright {

// One size and length with its washers.
struct BoltKind {
  char letter = 'A';
  BoltSize size;
  Mm length = 0;
  std::string under_head, under_nut;  // "flat", "flat + lock", "none"
  std::vector<Kind> uses;             // track bolts, bunk bolts, ...
  std::vector<int> bolts;             // into the Bed's
  // Longer ones of the size, on the track or packed by the maker, whose tip would
  // come too near to what is beyond it in one of these holes.
  std::vector<Mm> too_long;
};

// Of the bolts in place on the track (track, bunk, gusset, stop), lettered in
// that order.
std::vector<BoltKind> track_bolt_kinds(const SheetInput& input);

}  // namespace bedwright
