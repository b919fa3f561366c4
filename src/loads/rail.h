// Rails between their tabs, and bunks between their rails.
#pragma once

#include "loads/loads.h"

namespace bedwright {

struct RailBending {
  Mm sag = 0, sag_x = 0;
  double moment = 0;
  Mpa stress = 0, bunk_stress = 0;
  Newton tab_load = 0;  // most one tab pushes up with
};

// Each rail section by itself on its tabs (the gussets at its joints are not
// counted on), bolted down, under the head's wheels and the log's bunks.
RailBending bend_rails(const Job& job, const Bed& bed, const Stand& stand);

// Most one tab pushes up with on the road at rest: the rails under the head alone, its
// wheels at its lock.
Newton tab_load_locked(const Job& job, const Bed& bed);

}  // namespace bedwright
