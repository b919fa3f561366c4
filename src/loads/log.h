// The log on its bunks, and the head on its wheels.
#pragma once

#include <optional>
#include <vector>

#include "bed/bed.h"
#include "loads/beam.h"
#include "params/job.h"

namespace bedwright {

// A log is far stiffer than the bunks it lies on, so its weight falls on them as
// on a row of equal springs: evenly, plus a part in proportion to a bunk's
// distance from their middle that balances the moment; a bunk only pushes.
class LogOnBunks {
 public:
  LogOnBunks(const Job& job, const Bed& bed);

  Kg mass() const { return mass_; }
  // Whether there is a place, or the order's is one, where two bunks or more lie under
  // it with its middle between them. True without a log.
  bool lies() const { return mass_ <= 0 || !places(2).empty(); }
  Mm y() const { return y_; }  // centre from the centre line, lying against its stops

  // At most `count` places from end to end of the bunks (one, when the order says
  // where): for each, the load on every bunk under it. One empty place without a log.
  std::vector<std::vector<BeamLoad>> places(int count) const;

  Newton heaviest_bunk() const;  // over all places
  int most_bunks() const;

 private:
  std::optional<std::vector<BeamLoad>> at(Mm centre) const;
  const Job& job_;
  const Bed& bed_;
  Kg mass_ = 0;
  Mm y_ = 0;
};

// The head's wheels on the mains or rails, both sides together, its centre at `x`
// carrying `weight`.
std::vector<BeamLoad> head_wheels(const Job& job, Mm x, Newton weight);

}  // namespace bedwright
