// How far any two things of a bed may be out of their places to each other.
//
// Each thing is held by others: through a bolt's hole, by a weld, or by the spacers the
// rails are set to. Along such a hold it may be out by what the hold's making allows:
//   a bolt in a hole   the hole's own place, and as much of the hole's play as the bolt's
//                      stack-up may ask it to take up
//   a washer           its play on the bolt
//   a weld             where the part was set down: weld placement and half a mark of the
//                      tape; on a frame that stands, how well its tabs were measured
//   rail to rail       the gauge, across the bed
// Between two things these add up over whatever holds them; the chain with the least is
// what counts, since each chain bounds the same error.
#pragma once

#include <map>
#include <vector>

#include "rules/scene.h"

namespace bedwright {

class Placing {
 public:
  explicit Placing(const Scene& scene);

  // Along x, y and z, either way: worst case, or root sum square where the order's limits
  // go by that. Infinite where nothing holds one of the two.
  Vec3 between(int a, int b) const;

  // Whether both are welded into the frame: the welder sets one to the other.
  bool both_welded(int a, int b) const { return welded_[a] && welded_[b]; }
  // The bolt both are held by, -1 for none; hardware is held by its own.
  int common_bolt(int a, int b) const;

 private:
  struct Hold {
    int other = -1;
    Vec3 out;
  };
  // Where what holds a thing leads on: what hangs on one bolt alone is out by its own hold and
  // what its bolt is out by.
  struct Root {
    int node = -1;
    Vec3 out;
  };
  Root root_of(int item) const;
  void hold(int a, int b, Vec3 out);
  void add_bolts(const Scene& scene);
  void add_welds(const Scene& scene);
  void add_rails(const Scene& scene);
  Mm least(int a, int b, Mm Vec3::*axis) const;

  bool root_sum_square_ = false;
  int items_ = 0;
  std::vector<std::vector<Hold>> holds_;  // by item, then by bolt
  std::vector<std::vector<int>> bolts_;   // by item: those it is held by
  std::vector<bool> welded_;
  mutable std::map<std::pair<int, int>, Vec3> known_;  // between two roots
};

}  // namespace bedwright
