// DATUM: whether another place to pin the track leaves its worst hole more room.
#include "rules/fit/datum.h"

#include <fmt/format.h>

#include "bed/stack_up.h"
#include "params/datum.h"
#include "rules/fit/bolt_fit.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

// A gain under a hundredth of an inch is not worth pinning the track elsewhere.
constexpr Mm worth_it = 0.01 * inch;

constexpr std::array all_datums{Datum::front, Datum::middle, Datum::rear};

int section_of(const Bed& bed, Mm x) {
  return static_cast<int>(
      std::count_if(bed.track.joints.begin(), bed.track.joints.end(), [&](Mm j) { return j < x; }));
}

// The bolt's stack-up were the track pinned there.
std::vector<Contribution> pinned_at(const Scene& scene, const Job& job, const Bolt& bolt, Datum datum) {
  std::vector<Contribution> all;
  for (const Contribution& c : bolt.stack_up)
    if (!c.from_datum) all.push_back(c);
  const Track& track = scene.bed.track;
  const int section = section_of(scene.bed, bolt.seat.x);
  const auto at = static_cast<std::size_t>(section);
  const bool from_rear_end =
      held_from_rear_end(job.kit.mounting, job.kit.rail.turned && bolt.id.side == Side::right,
                         bolt.seat.x - track.starts[at], track.lengths[at]);
  const Accumulated a = accumulated(datum, track.sections, section, from_rear_end);
  for (Contribution& c : along_track(
           {a.sections, a.joints, a.direction, job.kit.rail.length_tolerance, job.kit.rail.joint_gap_plus}))
    all.push_back(std::move(c));
  return all;
}

// Tightest of the rail's hole against each other ply, either axis.
DatumMargin margin_of(const Scene& scene, const Bolt& bolt, const std::vector<Contribution>& stack_up) {
  const BoltAxes axes = axes_of(bolt.direction);
  const HoleInWorld rail = smallest_hole(scene.bed, bolt.plies.front());
  const Clearance first = clearance_of(rail, bolt.size.diameter, axes);
  DatumMargin least{std::numeric_limits<Mm>::infinity()};
  for (std::size_t j = 1; j < bolt.plies.size(); ++j) {
    const HoleInWorld hole = smallest_hole(scene.bed, bolt.plies[j]);
    const Clearance both = first + clearance_of(hole, bolt.size.diameter, axes);
    const Vec3 d = rail.centre - hole.centre;
    const Reach reach = between(bolt, stack_up, 0, j, axes).about({dot(d, axes.u), dot(d, axes.v)});
    for (int axis = 0; axis < 2; ++axis) {
      const Mm room = float_along(both, axis, reach.worst.need(1 - axis)),
               margin = room - reach.worst.need(axis);
      if (margin < least.margin) least = {margin, room};
    }
  }
  return least;
}

}  // namespace

DatumMargins datum_margins(const Scene& scene, const Job& job) {
  DatumMargins worst;
  for (DatumMargin& w : worst) w.margin = std::numeric_limits<Mm>::infinity();
  for (std::size_t b = 0; b < scene.bed.bolts.size(); ++b) {
    const Bolt& bolt = scene.bed.bolts[b];
    if (!bolt.in_place || bolt.id.kind != Kind::track_bolt || bolt.plies.size() < 2) continue;
    for (const Datum datum : all_datums) {
      DatumMargin& w = worst[static_cast<std::size_t>(datum)];
      const DatumMargin least = margin_of(scene, bolt, pinned_at(scene, job, bolt, datum));
      if (least.margin < w.margin) w = {least.margin, least.room, static_cast<int>(b)};
    }
  }
  return worst;
}

Datum recommended_datum(const DatumMargins& margins, Datum now) {
  const auto of = [&](Datum d) { return margins[static_cast<std::size_t>(d)].margin; };
  Datum best = now;
  for (const Datum d : all_datums)
    if (of(d) > of(best) + same_place) best = d;
  return of(best) < of(now) + worth_it - same_place ? now : best;
}

const char* datum_word(Datum datum) {
  return datum == Datum::front ? "front" : datum == Datum::middle ? "middle" : "rear";
}

void check_datum(const Scene& scene, std::vector<Finding>& findings) {
  const Job* job = scene.input.job;
  if (!job || scene.bed.track.sections < 2) return;
  const auto margins = datum_margins(scene, *job);
  const Datum now = job->order.track.datum;
  const auto of = [&](Datum d) { return margins[static_cast<std::size_t>(d)]; };
  if (of(now).bolt < 0) return;
  const Datum best = recommended_datum(margins, now);
  if (best == now) return;
  const Bolt& bolt = scene.bed.bolts[of(now).bolt];
  const Figures& say = scene.figures;
  Finding f = finding_of("DATUM", Severity::note, bolt, bolt.seat);
  f.measured = of(now).margin;
  f.limit = of(best).margin;
  f.margin = f.measured - f.limit;
  f.message = fmt::format(
      "pinned at its {} the track leaves its tightest hole, {}, {} (worst case); pinned at the front {}, the "
      "middle {}, the rear {}",
      datum_word(now), f.subjects[0].name, say.say(f.measured), say.say(of(Datum::front).margin),
      say.say(of(Datum::middle).margin), say.say(of(Datum::rear).margin));
  f.remedy = fmt::format("pin the track at its {}, which gains {}", datum_word(best), say.say(-f.margin));
  f.changes.push_back({"track.datum", datum_word(best)});
  findings.push_back(std::move(f));
}

}  // namespace bedwright
