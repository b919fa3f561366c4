// Pairs of a bolt's holes, and all of them at the corners of what may move them.
#include "rules/fit/bolt_fit.h"

namespace bedwright {
namespace {

bool lies_within(const Clearance& a, const Clearance& b) {
  return a.travel[0] <= b.travel[0] && a.travel[1] <= b.travel[1] && a.radius <= b.radius;
}

// Hole `k` asks nothing more than another of the same centre, neither moved by itself.
bool adds_nothing(const BoltFit& fit, const Bolt& bolt, std::size_t k) {
  if (!bolt.plies[k].own.empty()) return false;
  for (std::size_t i = 1; i < fit.holes.size(); ++i) {
    if (i == k || !bolt.plies[i].own.empty() || norm(fit.centres[i] - fit.centres[k]) > fit_hair ||
        !lies_within(fit.holes[i], fit.holes[k]))
      continue;
    if (i < k || !lies_within(fit.holes[k], fit.holes[i])) return true;
  }
  return false;
}

// A hole in the trial of all together: where it may lie.
struct Placed {
  Clearance hole;
  std::vector<Vec2> places;
};

std::vector<Vec2> corners(const Reach& reach, FitBasis basis, Vec2 from) {
  const Range2& r = basis == FitBasis::worst_case ? reach.worst : reach.rss;
  return {from + Vec2{r.low[0], r.low[1]}, from + Vec2{r.low[0], r.high[1]}, from + Vec2{r.high[0], r.low[1]},
          from + Vec2{r.high[0], r.high[1]}};
}

bool fit_at_all(const std::vector<Placed>& all, std::vector<Clearance>& holes, std::vector<Vec2>& centres) {
  if (centres.size() == all.size()) return joint_misfit(holes, centres) <= 1e-5;
  for (const Vec2& place : all[centres.size()].places) {
    centres.push_back(place);
    const bool fits = fit_at_all(all, holes, centres);
    centres.pop_back();
    if (!fits) return false;
  }
  return true;
}

bool fits_together(const BoltFit& fit, const Bolt& bolt, FitBasis basis) {
  std::vector<Placed> all;
  std::vector<Clearance> holes;
  for (std::size_t k = 0; k < fit.holes.size(); ++k) {
    if (k > 0 && adds_nothing(fit, bolt, k)) continue;
    Shifts moves;
    moves.add(bolt.plies[k].own, fit.axes);
    if (k == 0) moves.add(bolt.stack_up, fit.axes, bolt.finds_its_place);
    const bool stays = k > 0 && bolt.plies[k].own.empty();
    all.push_back({fit.holes[k], stays ? std::vector<Vec2>{fit.centres[k]}
                                       : corners(moves.about({0, 0}), basis, fit.centres[k])});
    holes.push_back(fit.holes[k]);
  }
  if (all.size() < 3) return true;  // the pairs have said it all
  std::vector<Vec2> centres;
  return fit_at_all(all, holes, centres);
}

}  // namespace

HoleInWorld smallest_hole(const Bed& bed, const Ply& ply) {
  HoleInWorld hole = hole_in_world(bed, ply);
  hole.hole.diameter -= ply.smaller;
  hole.hole.length -= ply.smaller;
  return hole;
}

Shifts between(const Bolt& bolt, const std::vector<Contribution>& stack_up, std::size_t i, std::size_t j,
               const BoltAxes& axes) {
  Shifts all;
  if (i == 0) all.add(stack_up, axes, bolt.finds_its_place);
  for (const std::size_t k : {i, j}) all.add(bolt.plies[k].own, axes);
  return all;
}

HolePair pair_of(const BoltFit& fit, std::size_t i, std::size_t j, const Bolt& bolt) {
  HolePair pair{i, j, fit.holes[i] + fit.holes[j], {}, {}};
  const Vec2 d = fit.centres[i] - fit.centres[j];
  pair.offset = {d.x, d.y};
  pair.reach = between(bolt, bolt.stack_up, i, j, fit.axes).about(pair.offset);
  return pair;
}

bool fits(const BoltFit& fit, const Bolt& bolt, FitBasis basis) {
  for (const HolePair& pair : fit.pairs)
    for (int axis = 0; axis < 2; ++axis)
      if (pair.margin(basis, axis) < -fit_hair) return false;
  return fits_together(fit, bolt, basis);
}

BoltFit measure_pairs(const Scene& scene, std::size_t index) {
  const Bolt& bolt = scene.bed.bolts[index];
  BoltFit fit;
  fit.bolt = index;
  fit.axes = axes_of(bolt.direction);
  for (const Ply& ply : bolt.plies) {
    const HoleInWorld hole = smallest_hole(scene.bed, ply);
    fit.holes.push_back(clearance_of(hole, bolt.size.diameter, fit.axes));
    fit.widths.push_back(hole.hole.diameter + ply.smaller);
    fit.centres.push_back({dot(hole.centre, fit.axes.u), dot(hole.centre, fit.axes.v)});
  }
  for (std::size_t i = 0; i < fit.holes.size(); ++i)
    for (std::size_t j = i + 1; j < fit.holes.size(); ++j) fit.pairs.push_back(pair_of(fit, i, j, bolt));
  return fit;
}

BoltFit measure_fit(const Scene& scene, std::size_t index) {
  const Bolt& bolt = scene.bed.bolts[index];
  BoltFit fit = measure_pairs(scene, index);
  fit.fits_worst = fits(fit, bolt, FitBasis::worst_case);
  fit.fits_rss = fits(fit, bolt, FitBasis::root_sum_square);
  return fit;
}

}  // namespace bedwright
