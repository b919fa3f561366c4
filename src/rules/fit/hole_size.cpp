// What a hole's own size does to the fit: one that may come out narrower than its bolt
// (HOLE-FIT), and how thick paint or zinc may lie on the walls of all (HOLE-PAINT).
#include <fmt/format.h>

#include <set>

#include "rules/fit/bolt_fit.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

// A coat thinner than this is none: no primer is. Common practice, no published source.
constexpr Mm thinnest_coat = 0.02;

// What says how wide the hole is: the tabs' own key, else that of the bolts' kind.
std::string width_key(const Bed& bed, const Bolt& bolt, const Ply& ply) {
  const Kind kind = bed.items[ply.item].id.kind;
  if (kind == Kind::tab || kind == Kind::tab_pad) return "frame.tabs.hole_diameter";
  return std::string(bolt_use(bolt.id.kind).hole_key) + ".diameter";
}

bool fits_in_all(const BoltFit& fit, const Bolt& bolt) {
  return std::all_of(fit.holes.begin(), fit.holes.end(), [](const Clearance& c) { return c.radius >= 0; }) &&
         fits(fit, bolt, FitBasis::worst_case);
}

// The thickest coat on every hole's wall that lets the bolt in, worst case. A coat takes
// its thickness off each hole's radius, so a pair's radius must keep what it needs beyond
// the travels: sqrt(residual_u^2 + residual_v^2).
// `enough`: no more than this is asked for.
Mm coat_allowed(const BoltFit& fit, const Bolt& bolt, Mm enough) {
  Mm coat = std::numeric_limits<Mm>::infinity();
  for (const Clearance& hole : fit.holes) coat = std::min(coat, hole.radius);
  for (const HolePair& pair : fit.pairs) {
    const auto beyond = [&](int axis) {
      return std::max(pair.reach.worst.need(axis) - pair.clearance.travel[axis], 0.0);
    };
    coat = std::min(coat, (pair.clearance.radius - std::hypot(beyond(0), beyond(1))) / 2);
  }
  const auto coated = [&](Mm thick) {
    BoltFit with = fit;
    for (Clearance& hole : with.holes) hole.radius -= thick;
    for (HolePair& pair : with.pairs) pair = pair_of(with, pair.i, pair.j, bolt);
    return fits_in_all(with, bolt);
  };
  // The pairs say it exactly; three holes and more together may allow less.
  if (coat <= 0 || coat >= enough || fit.holes.size() < 3 || coated(coat - fit_hair)) return coat;
  Mm holds = 0, breaks = coat;
  for (int i = 0; i < 12; ++i) (coated((holds + breaks) / 2) ? holds : breaks) = (holds + breaks) / 2;
  return holds;
}

}  // namespace

bool has_narrow_hole(const Scene& scene, const Bolt& bolt) {
  return std::any_of(bolt.plies.begin(), bolt.plies.end(), [&](const Ply& ply) {
    return smallest_hole(scene.bed, ply).hole.diameter < bolt.size.diameter - same_place;
  });
}

void check_narrow_holes(const Scene& scene, std::vector<Finding>& findings) {
  std::set<std::tuple<int, int, Mm>> said;  // once for each part's hole and size of bolt
  for (const Bolt& bolt : scene.bed.bolts) {
    if (!bolt.in_place) continue;
    for (const Ply& ply : bolt.plies) {
      const Mm width = smallest_hole(scene.bed, ply).hole.diameter;
      if (width >= bolt.size.diameter - same_place) continue;
      if (!said.insert({scene.bed.items[ply.item].part, ply.hole, bolt.size.diameter}).second) continue;
      const Figures& say = scene.figures;
      Finding f = finding_of("HOLE-FIT", Severity::stop, bolt, bolt.seat);
      f.subjects.push_back(scene.bed.items[ply.item]);
      f.measured = width;
      f.limit = bolt.size.diameter;
      f.margin = width - f.limit;
      f.message = fmt::format(
          "the hole in {}, {} as stated, may come out {}{}, and a {} bolt does not go in", f.subjects[1].name,
          say.size_to_make(width + ply.smaller), say.size_to_make(width),
          scene.input.job && scene.input.job->order.tolerances.finish > 0 ? ", paint counted" : "",
          bolt.size.name);
      f.remedy =
          fmt::format("make it {} wide, the standard hole for that bolt", say.say(bolt.size.standard_hole));
      f.changes.push_back({width_key(scene.bed, bolt, ply), say.set(bolt.size.standard_hole)});
      findings.push_back(std::move(f));
    }
  }
}

void check_hole_paint(const Scene& scene, std::vector<Finding>& findings) {
  Mm least = std::numeric_limits<Mm>::infinity();
  const Bolt* tightest = nullptr;
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i) {
    const Bolt& bolt = scene.bed.bolts[i];
    if (!bolt.in_place || bolt.plies.size() < 2) continue;
    const Mm coat = coat_allowed(measure_pairs(scene, i), bolt, least);
    if (coat >= least) continue;
    least = coat;
    tightest = &bolt;
  }
  if (!tightest || least < 0) return;  // what does not fit bare is HOLE-FIT's to say
  const Figures& say = scene.figures;
  Finding f = finding_of("HOLE-PAINT", Severity::note, *tightest, tightest->seat);
  f.measured = least;
  f.limit = thinnest_coat;
  f.margin = f.measured - f.limit;
  const std::string thick = say.small(least);
  if (least < thinnest_coat) {
    f.message = fmt::format("no paint or zinc may lie on the walls of the holes: {} has no room for it",
                            f.subjects[0].name);
    f.remedy = "mask the holes, or ream them after painting";
  } else {
    f.message = fmt::format(
        "paint or zinc on the walls of the holes may be {} thick: more, and {} may no longer go in, every "
        "error "
        "at its worst",
        thick, f.subjects[0].name);
    f.remedy = fmt::format("mask the holes where the coat comes out thicker than {}, or ream them", thick);
  }
  findings.push_back(std::move(f));
}

}  // namespace bedwright
