// Tabs and track bolts under braking, cornering and bumps.
#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

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

// The tab weld that uses most of what it may carry under these loads at once.
struct WorstWeld {
  double carried = 0, allowed = 0;
};
WorstWeld worst_weld(const Bed& bed, Newton upright, Newton along, double turning) {
  WorstWeld worst;
  for (const TabWeld& t : tab_welds(bed)) {
    const Weld& weld = bed.welds[t.weld];
    const double carried = line_load(t, upright, along, turning),
                 allowed = weld_line_allowable(weld.leg, weld.thinner);
    if (worst.allowed <= 0 || carried / allowed > worst.carried / worst.allowed) worst = {carried, allowed};
  }
  return worst;
}

// Of a rail that a bolt holds; there are two bolts at least.
Section rail_section(const Bed& bed) {
  for (const Bolt& bolt : bed.bolts)
    if (bolt.id.kind == Kind::track_bolt && bolt.in_place && !bolt.plies.empty())
      return std::get<Member>(bed.part_of(bolt.plies.front().item).form).section;
  throw std::logic_error("no track bolt holds a rail");
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
  out.bolt_tension_allowed = tension_beside(out.bolt_shear);

  // The rail under the head's wheels, and a bolt's part of the rest.
  const TabArm arm = tab_arm(job);
  const TabPush locked = tab_push_locked(job, bed);
  out.vertical = road.bump * (locked.load + (weight - head) / bolts);
  out.turning = road.bump * locked.turning;
  out.turning_at_work = stand.tab_push.turning;
  out.wheel_off = arm.wheel_off;
  const double asked = locked.wheels * arm.wheel_off;
  out.held = asked > 0 ? 1 - locked.turning / asked : 0;
  out.tab_stress = (out.vertical * arm.arm + out.turning) / arm.modulus;
  out.tab_stress_at_work = (stand.tab_push.load * arm.arm + stand.tab_push.turning) / arm.modulus;
  // A bunk stays on the rail's flat leg by its bolt and the leg's free edge beyond it.
  const double held = std::max(road.bump * locked.held, stand.tab_push.held);
  out.bunk_bolt = held / std::max(1.0, job.kit.rail.flat_leg - job.kit.bunk.line);
  const Section rail = rail_section(bed);
  out.rail_torsion = held * rail.web / torsion_of(rail);
  out.rail_torsion_allowed = web_shear * kit_yield / job.order.work.safety_factor;
  const WorstWeld on_road = worst_weld(bed, std::max(out.vertical, out.tension), out.shear, out.turning),
                  at_work = worst_weld(bed, stand.tab_push.load, 0, stand.tab_push.turning);
  out.weld = on_road.carried, out.weld_allowed = on_road.allowed;
  out.weld_at_work = at_work.carried, out.weld_at_work_allowed = at_work.allowed;
  return out;
}

}  // namespace bedwright
