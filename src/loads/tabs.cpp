// Tabs and track bolts under braking, cornering and bumps.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "bed/tab_weld.h"
#include "loads/loads.h"
#include "loads/rail.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

// Least bolts in place of one rail section's two sides; 0 when none has any.
int section_bolts(const Bed& bed) {
  std::vector<int> count(static_cast<std::size_t>(std::max(1, bed.track.sections)), 0);
  for (const Bolt& bolt : bed.bolts) {
    if (bolt.id.kind != Kind::track_bolt || !bolt.in_place) continue;
    std::size_t s = 0;
    while (s < bed.track.joints.size() && bolt.seat.x > bed.track.joints[s]) ++s;
    if (s < count.size()) ++count[s];
  }
  return *std::min_element(count.begin(), count.end());
}

// Bending of a tab at the web's back (a clip's at its heel) under `down` on its hole.
Mpa tab_bending(const Job& job, Newton down) {
  const FrameTabs& t = job.frame.tabs;
  const Mm arm = std::max(0.0, job.kit.gauge / 2 - job.kit.mounting.line - job.frame.main.spacing / 2);
  if (t.style == TabStyle::plate) {
    const Mm h = t.plate->plate_thickness;
    return down * arm / (t.length * h * h / 6);
  }
  const Mm h = job.catalog.section(t.clip->section.text)->web;
  return down * std::max(0.0, arm - h) / (t.length * h * h / 6);
}

// The tab weld that uses most of what it may carry under the road's loads at once.
void load_welds(const Bed& bed, Newton upright, Newton along, TabLoads& out) {
  for (const TabWeld& t : tab_welds(bed)) {
    const Weld& weld = bed.welds[t.weld];
    const double carried = line_load(t, upright, along),
                 allowed = weld_line_allowable(weld.leg, weld.thinner);
    if (out.weld_allowed > 0 && carried / allowed <= out.weld / out.weld_allowed) continue;
    out.weld = carried;
    out.weld_allowed = allowed;
  }
}

}  // namespace

TabLoads tab_loads(const Job& job, const Bed& bed, const BedWeights& weights, const Stand& stand) {
  const RoadOrder& road = job.order.road;
  const FrameFile& frame = job.frame;
  TabLoads out;
  out.section_bolts = section_bolts(bed);
  const Kg cargo = road.cargo ? road.cargo->mass : 0;
  out.carried = weights.head.mass + cargo + weights.track.mass / std::max(1, bed.track.sections);
  out.tab_allowed = frame_yield(frame) / job.order.work.safety_factor;
  out.bolt_shear_allowed = bolt_shear / bolt_safety;
  out.bolt_tension_allowed = bolt_tension / bolt_safety;
  if (out.section_bolts < 2) return out;
  const double bolts = out.section_bolts;
  const Newton weight = out.carried * gravity;
  out.shear = weight * std::max(road.braking, road.cornering) / bolts;

  // Overturning of the head as it stands at its lock: across the bed between the
  // two rows of bolts, along it between the section's first and last.
  const Newton head = weights.head.mass * gravity;
  out.above = weights.head.centre.z - bed.track.standoff;
  out.across = job.kit.gauge - 2 * job.kit.mounting.line;
  out.along = bed.track.shortest() / 2;
  const Newton sideways = head * road.cornering * out.above / out.across / (bolts / 2);
  const Newton forward = head * road.braking * out.above / out.along / 2;
  out.sideways = sideways >= forward;
  out.overturning = std::max(sideways, forward);
  out.lift = weight * road.rebound / bolts;
  out.tension = out.overturning + out.lift;

  const BoltSize& size = *job.catalog.bolt(job.kit.mounting.hole.bolt.text);
  const Mm2 area = std::numbers::pi / 4 * size.diameter * size.diameter;
  out.bolt_shear = out.shear / area;
  out.bolt_tension = out.tension / area;
  // AISC 360 J3.7, tension and shear together.
  out.bolt_tension_allowed =
      std::clamp(1.3 * bolt_tension - bolt_safety * bolt_tension / bolt_shear * out.bolt_shear, 0.0,
                 bolt_tension) /
      bolt_safety;

  // The rail under the head's wheels, and a bolt's part of the rest.
  out.vertical = road.bump * (tab_load_locked(job, bed) + (weight - head) / bolts);
  out.tab_stress = tab_bending(job, out.vertical);
  load_welds(bed, std::max(out.vertical, out.tension), out.shear, out);
  out.tab_stress_at_work = tab_bending(job, stand.tab_load);
  return out;
}

}  // namespace bedwright
