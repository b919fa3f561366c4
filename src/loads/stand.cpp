// At work, on its jacks: the mains as beams under bed, log and rolling head.
#include <algorithm>
#include <cmath>

#include "loads/loads.h"
#include "loads/log.h"
#include "loads/mains.h"
#include "loads/rail.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

// Sideways, about the feet of one row of jacks: the push of a log rolled against
// its stops, and a log's weight on the bunks' ends as it comes on.
void tip_sideways(const Job& job, const Bed& bed, const BedWeights& w, Stand& out) {
  const FrameJack& j = job.frame.jack;
  out.foot_y = job.frame.main.spacing / 2 + j.plate_thickness + j.flange_thickness + j.post_width / 2;
  const Body all = together(together(w.frame, w.track), together(w.head, w.gear));
  if (!job.order.work.log || out.log_mass <= 0) return;
  const Mm radius = job.order.work.log->diameter / 2;
  const Mm bunk_top = rail_seat(job, bed) + job.kit.bunk.standing_leg;
  const Mm ground = -job.catalog.section(job.frame.main.section.text)->depth - job.frame.axle.below -
                    job.frame.axle.tyre_diameter / 2;
  out.push = job.order.work.push * out.log_mass * gravity;
  out.push_height = bunk_top + std::min(radius, job.kit.log_stop.height) - ground;
  // Stops stand on the road side: the push is toward -y, about the feet at -foot_y.
  const double holding =
      all.mass * gravity * (all.centre.y + out.foot_y) + out.log_mass * gravity * (out.log_y + out.foot_y);
  if (out.push > 0) out.push_factor = holding / (out.push * out.push_height);
  // Coming on from the kerb side its weight bears on the bunks' ends.
  const Mm over = job.kit.gauge / 2 - out.foot_y;
  if (over > 0) out.roll_on_factor = all.mass * (out.foot_y - all.centre.y) / (out.log_mass * over);
}

// Between members that hold the mains' flanges sideways.
Mm longest_unbraced(const Job& job, const Bed& bed) {
  std::vector<Mm> held{main_start(job), main_end(job, bed)};
  for (const int item : bed.items_of(Kind::cross_member)) {
    const Box3 box = bounds(bed, item);
    held.push_back((box.low.x + box.high.x) / 2);
  }
  std::sort(held.begin(), held.end());
  Mm longest = 0;
  for (std::size_t i = 1; i < held.size(); ++i) longest = std::max(longest, held[i] - held[i - 1]);
  return longest;
}

// A bunk as a simple beam between its bolts, the log's load at one point.
Mpa bunk_stress(const Job& job, const Bed& bed, const Stand& stand) {
  if (stand.bunk_load <= 0) return 0;
  const Member& bunk = std::get<Member>(bed.part_of(bed.item({Kind::bunk, Side::middle, 1})).form);
  const Mm half = job.kit.gauge / 2 - job.kit.bunk.line, y = std::clamp(stand.log_y, -half, half);
  return stand.bunk_load * (half - y) * (half + y) / (2 * half) / bending_of(bunk.section).modulus;
}

}  // namespace

Stand stand_loads(const Job& job, const Bed& bed, const BedWeights& weights) {
  Stand out;
  const LogOnBunks log(job, bed);
  out.log_lies = log.lies();
  out.log_mass = log.mass();
  out.log_y = log.y();
  out.log_bunks = log.most_bunks();
  out.log_bunks_least = log.least_bunks();
  out.bunk_load = log.heaviest_bunk(job.order.work.landing);
  out.sag_limit = job.order.work.sag_limit;
  const Section& main = *job.catalog.section(job.frame.main.section.text);
  out.main_unbraced = longest_unbraced(job, bed);
  out.main_allowed =
      channel_strength(main, out.main_unbraced, frame_yield(job.frame)) / job.order.work.safety_factor;
  out.web_allowed = web_shear * frame_yield(job.frame) / job.order.work.safety_factor;
  out.kit_allowed = kit_yield / job.order.work.safety_factor;
  const RailBending rails = bend_rails(job, bed, log);
  out.rail_sag = rails.sag;
  out.rail_sag_x = rails.sag_x;
  out.rail_moment = rails.moment;
  out.rail_stress = rails.stress;
  out.bunk_stress = bunk_stress(job, bed, out);
  out.tab_load = rails.tab_load;
  out.tab_push = rails.tab;
  tip_sideways(job, bed, weights, out);
  out.jacks_enough = jack_lines(job).size() >= 2;
  if (out.jacks_enough) bend_mains(job, bed, weights, {}, out);
  out.sag = out.main_sag + out.rail_sag;
  return out;
}

std::vector<SunkFoot> sunk_feet(const Job& job, const Bed& bed, const BedWeights& weights) {
  const std::vector<Mm> lines = jack_lines(job);
  const LogOnBunks log(job, bed);
  std::vector<SunkFoot> all;
  if (lines.size() < 2 || !log.lies()) return all;
  const Mm rail_sag = bend_rails(job, bed, log).sag;
  const auto with = [&](std::size_t line, Mm sinks) {
    Stand s;
    s.log_y = log.y();
    std::vector<Mm> sunk(lines.size(), 0);
    sunk[line] = sinks;
    bend_mains(job, bed, weights, sunk, s);
    return s;
  };
  const auto good = [&](const Stand& s) {
    return !s.tips && s.main_sag + rail_sag <= job.order.work.sag_limit &&
           std::all_of(s.jacks.begin(), s.jacks.end(),
                       [&](const JackLoad& k) { return k.most <= job.frame.jack.rating * gravity; });
  };
  for (std::size_t line = 0; line < lines.size(); ++line) {
    SunkFoot f{lines[line], inch / 8, 0, 0, 0, false, 0};
    const Stand s = with(line, f.sinks);
    f.tips = s.tips;
    f.out = s.main_sag + rail_sag;
    for (const JackLoad& k : s.jacks)
      if (k.most > f.most) f.most = k.most, f.most_x = k.x;
    // To a hundredth of an inch, which is as fine as a level shows over a bed.
    for (Mm step : {0.16, 0.08, 0.04, 0.02, 0.01})
      if (good(with(line, f.enough + step * inch))) f.enough += step * inch;
    all.push_back(f);
  }
  return all;
}

}  // namespace bedwright
