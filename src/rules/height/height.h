// Heights: how far the tabs' tops may be out of one plane, and what shims answer it.
//
// Under one rail section tab tops differ by what each plate, weld and clip may be out,
// and by the bow of the main beneath. The rail comes to rest on the highest; under the
// others it wants shims, or it rocks.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "params/job.h"

namespace bedwright {

struct TabHeights {
  Mm over = 0, under = 0;  // one tab's top above and below its drawn height over the main
  Mm section_bow = 0;      // of a main, along one rail section
  Mm pitch_bow = 0;        // and from one tab to the next
  // Worst case: the highest and the lowest tab under one rail.
  Mm most_shim() const { return over + under + section_bow; }
  // Worst case: a rail on tabs that are all low, over a main bowed up between them.
  Mm standoff_loss() const { return under + pitch_bow; }
};

TabHeights tab_heights(const Job& job, const Bed& bed);

// Rise of a bar that bows evenly by `bow` over `length`, along a part of it: the part's
// chord to its arc, bow x (part / length)^2.
Mm bow_along(Mm bow, Mm length, Mm part);

struct Scene;
struct Finding;
// The rule's part where heights were measured.
void check_measured_shims(const Scene& scene, std::vector<Finding>& findings);

// What to pack so that every thickness up to the worst can be made at every tab, to the
// thinnest shim: each twice as thick as the one before, the fewest. None where nothing
// may be out. The rail rests on two tabs of each section, which need none.
struct Shim {
  std::string bolt;  // the size its hole is for
  Mm thickness = 0;
  int count = 0;
};
// Where the tabs' heights were measured, what their packs are made of, and the former for new
// tabs alone.
std::vector<Shim> shims(const Job& job, const Bed& bed);

// The fewest shims of those thicknesses that make a pack, thickest first.
std::vector<Mm> shims_of(Mm pack, Mm thinnest);

}  // namespace bedwright
