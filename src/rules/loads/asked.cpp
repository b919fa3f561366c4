// Rules about what is asked of a bed by others: by the road's laws, and by an order whose own
// factors are milder than the usual ones.
#include <fmt/format.h>

#include <algorithm>

#include "rules/loads/judge.h"

namespace bedwright {
namespace {

// Brakes are asked for from here up in many places: from memory.
constexpr Kg often_braked = 3000 * pound;

void judge_laws(const LoadJudge& j) {
  Kg most = 0;
  for (const TowCondition& c : j.loads.tow.conditions)
    if (c.judged) most = std::max(most, c.mass);
  const bool brakes = j.job.frame.axle.brakes, heavy = most >= often_braked && !brakes;
  Finding& f = j.add("TOW-LAWS", heavy ? Severity::warn : Severity::note, Identity{Kind::law}, {0, 0, 0});
  j.fill(f, most, often_braked, "kg");
  f.message = heavy
                  ? fmt::format(
                        "the trailer weighs {} and no brakes are stated; many places ask for them on every "
                        "wheel from {}",
                        j.figures.mass(most), j.figures.mass(often_braked))
                  : fmt::format(
                        "the trailer weighs {}{}; brakes, lamps, reflectors, safety chains and registration "
                        "are asked for by rules that differ by place",
                        j.figures.mass(most), brakes ? ", with brakes on every wheel" : "");
  f.remedy = heavy ? "axles with brakes and a breakaway switch: say so with frame.axle.brakes: true"
                   : fmt::format(
                         "ask the road authority where it will run; many want brakes on every wheel "
                         "from {}",
                         j.figures.mass(often_braked));
  if (heavy) f.changes = {{"frame.axle.brakes", "true"}};
}

// One factor of the order against the usual one, which is the milder the smaller it is.
struct Factor {
  const char* key;
  double now, usual;
  bool more_is_safer = true;
};

void judge_factors(const LoadJudge& j) {
  const RoadOrder road = j.job.order.road, usual_road;
  const WorkOrder work = j.job.order.work, usual_work;
  const Factor factors[] = {
      {"work.safety_factor", work.safety_factor, usual_work.safety_factor},
      {"work.push", work.push, usual_work.push},
      {"work.landing", work.landing, usual_work.landing},
      {"road.share_low", road.share_low, usual_road.share_low},
      {"road.share_high", road.share_high, usual_road.share_high, false},
      {"road.braking", road.braking, usual_road.braking},
      {"road.cornering", road.cornering, usual_road.cornering},
      {"road.bump", road.bump, usual_road.bump},
      {"road.rebound", road.rebound, usual_road.rebound},
  };
  for (std::size_t i = 0; i < std::size(factors); ++i) {
    const Factor& factor = factors[i];
    const double short_by = factor.more_is_safer ? factor.usual - factor.now : factor.now - factor.usual;
    if (short_by <= 1e-9) continue;
    Subject subject(Identity{Kind::law, Side::middle, static_cast<int>(i) + 1});
    subject.name = factor.key;
    Finding& f = j.add("OWN-FACTOR", Severity::warn, subject, {0, 0, 0});
    f.measured = factor.now;
    f.limit = factor.usual;
    f.margin = -short_by;
    f.unit = "times";
    f.message = fmt::format(
        "the order sets {} to {:g}, which is milder than the usual {:g}: what it releases "
        "was judged by that",
        factor.key, factor.now, factor.usual);
    f.remedy =
        fmt::format("leave {} out, or have a licensed engineer answer for {:g}", factor.key, factor.now);
    f.changes = {{factor.key, fmt::format("{:g}", factor.usual)}};
  }
}

}  // namespace

void judge_asked(const LoadJudge& j) {
  judge_laws(j);
  judge_factors(j);
}

}  // namespace bedwright
