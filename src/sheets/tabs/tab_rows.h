// Every tab as the welder lays it out: one row for both sides where they agree.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bed/bed.h"

namespace bedwright {

struct TabRow {
  int number = 0;                    // from the front
  bool left = false, right = false;  // the sides it is on, one or both
  Mm hole = 0;                       // from the front datum, rearward
  Mm edge = 0;                       // the tab's front edge
  Mm across = 0;                     // hole from the centre line
  bool used = false;                 // a track bolt goes through it
  Mm worst = 0, rss = 0;             // along the bed, what the rail's hole and the tab's may be apart

  bool on(Side side) const { return side == Side::left ? left : right; }
  bool on_both() const { return left && right; }
};

// "L + R", "L" or "R".
std::string sides_of(const TabRow& row);

// By number, then side. Throws std::out_of_range for a tab without a hole.
std::vector<TabRow> tab_rows(const Bed& bed);

// Index of the track bolt through the tab; none where the track has no hole for it.
std::optional<int> track_bolt_through(const Bed& bed, int tab);

}  // namespace bedwright
