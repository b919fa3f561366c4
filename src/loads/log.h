// The log on its bunks, and the head on its wheels.
#pragma once

#include <optional>
#include <vector>

#include "bed/bed.h"
#include "loads/beam.h"
#include "params/job.h"

namespace bedwright {

// A log is far stiffer than the bunks it lies on, and it is not straight. It is taken as a
// stiff body whose middle stands off the line of its ends by its crook, as a parabola; each
// bunk is a spring, a simple beam between its bolts, that only pushes. Turned with its
// belly down it bears on few bunks near its weight, turned with its belly up on few near its
// ends; every other way it can be turned lies between. Its weight lies nearer its butt: a
// straight cone lies on bunks as a cylinder does, but its centre of mass is off its middle.
class LogOnBunks {
 public:
  LogOnBunks(const Job& job, const Bed& bed);

  Kg mass() const { return mass_; }  // the heaviest of its kind
  // Whether there is a place, or the order's is one, where two bunks or more lie under
  // it with its weight between them. True without a log.
  bool lies() const { return mass_ <= 0 || !places(2).empty(); }
  Mm y() const { return y_; }  // centre from the centre line, lying against its stops
  // N per mm down at the log, of one bunk.
  double stiffness() const { return stiffness_; }
  // Its centre of mass from its middle, toward the butt.
  Mm off_middle() const { return off_middle_; }

  // At most `count` places from end to end of the bunks (one, when the order says where)
  // turned belly down and belly up: for each, the load on every bunk under it, bearing with
  // `times` its weight. Belly down its weight stands over a bunk, unless the order says
  // where it lies. Its butt is at the nearer end of the bed; in the middle both ways are
  // taken. One empty place without a log.
  std::vector<std::vector<BeamLoad>> places(int count, double times = 1) const;

  Newton heaviest_bunk(double times) const;  // over all places
  // Least and most bunks that carry it at rest.
  int least_bunks() const;
  int most_bunks() const;

 private:
  enum class Turned { belly_down, belly_up };
  std::vector<Mm> middles(int count) const;
  std::optional<std::vector<BeamLoad>> at(Mm middle, double butt, Turned turned, double times) const;
  const Job& job_;
  const Bed& bed_;
  Kg mass_ = 0;
  Mm y_ = 0, off_middle_ = 0;
  double stiffness_ = 0;
};

// The head's wheels on the mains or rails, both sides together, its centre at `x`
// carrying `weight`.
std::vector<BeamLoad> head_wheels(const Job& job, Mm x, Newton weight);

}  // namespace bedwright
