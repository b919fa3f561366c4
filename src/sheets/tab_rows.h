// Every tab as the welder lays it out: one row for both sides where they agree.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"

namespace bedwright {

struct TabRow {
  int number = 0;        // from the front
  std::string sides;     // "L + R", "L" or "R"
  Mm hole = 0;           // from the front datum, rearward
  Mm edge = 0;           // the tab's front edge
  Mm across = 0;         // hole from the centre line
  bool used = false;     // a track bolt goes through it
  Mm worst = 0, rss = 0; // along the bed, what the rail's hole and the tab's may be apart
};

// By number, then side. Throws std::logic_error for a tab without a hole.
std::vector<TabRow> tab_rows(const Bed& bed);

}  // namespace bedwright
