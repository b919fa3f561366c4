// An inspection of a bed that is laid out: closed-form arithmetic over its parts, items,
// bolts and welds, and no line of the rules. What it rejects cannot be built or does not
// work; what it passes may still break a limit of loads, tools or taste that a rule asks.
#pragma once

#include "sweep/inspect_bolts.h"
#include "sweep/inspect_frame.h"
#include "sweep/inspect_solids.h"

namespace bedwright::sweep {

struct Inspection {
  std::vector<Reject> rejects;
  std::vector<Undecided> undecided;  // pairs that only a kernel can say of
};

inline Inspection inspect(const Job& job, const Bed& bed) {
  Inspected in{job, bed, {}, {}};
  for (std::size_t i = 0; i < bed.items.size(); ++i) in.bodies.push_back(body_of(bed, i));
  Inspection result;
  inspect_bolts(in);
  PairWalk(in, result.undecided).walk();
  inspect_welds(in);
  inspect_held(in);
  inspect_travel(in);
  inspect_ground(in);
  inspect_places(in);
  result.rejects = std::move(in.rejects);
  return result;
}

}  // namespace bedwright::sweep
