// One bolt measured against its holes: every pair of them, and all together.
#pragma once

#include "rules/fit/hole_fit.h"
#include "rules/scene.h"

namespace bedwright {

inline constexpr Mm fit_hair = 1e-9;  // rounding of sums of a few millimetres

// The hole a ply points at as small as it may come out.
HoleInWorld smallest_hole(const Bed& bed, const Ply& ply);

// All that may move hole `i` of the bolt from hole `j`, i before j; `stack_up` is what moves
// the first against all others.
Shifts between(const Bolt& bolt, const std::vector<Contribution>& stack_up, std::size_t i, std::size_t j,
               const BoltAxes& axes);

// Two plies of a bolt against each other.
struct HolePair {
  std::size_t i = 0, j = 0;
  Clearance clearance;
  std::array<Mm, 2> offset{};
  Reach reach;
  const Range2& range(FitBasis basis) const {
    return basis == FitBasis::worst_case ? reach.worst : reach.rss;
  }
  Mm room(FitBasis basis, int axis) const {
    return float_along(clearance, axis, range(basis).need(1 - axis));
  }
  Mm margin(FitBasis basis, int axis) const { return room(basis, axis) - range(basis).need(axis); }
};

// One bolt, measured. `pair` and `axis` are where it is tightest on the basis
// the order asks for.
struct BoltFit {
  std::size_t bolt = 0;
  BoltAxes axes;
  std::vector<Clearance> holes;  // as small as they may come out
  std::vector<Mm> widths;        // as stated
  std::vector<Vec2> centres;
  std::vector<HolePair> pairs;
  const HolePair* pair = nullptr;
  int axis = 0;
  bool fits_worst = true, fits_rss = true;
};

// Of a bolt with two plies and more. The pairs alone, and with whether the bolt goes in.
BoltFit measure_pairs(const Scene& scene, std::size_t bolt);
BoltFit measure_fit(const Scene& scene, std::size_t bolt);

// Pair and room worked out again, after a change of holes or centres.
HolePair pair_of(const BoltFit& fit, std::size_t i, std::size_t j, const Bolt& bolt);
bool fits(const BoltFit& fit, const Bolt& bolt, FitBasis basis);

// Whether a hole of the bolt may come out narrower than the bolt; says so of each.
bool has_narrow_hole(const Scene& scene, const Bolt& bolt);
void check_narrow_holes(const Scene& scene, std::vector<Finding>& findings);

}  // namespace bedwright
