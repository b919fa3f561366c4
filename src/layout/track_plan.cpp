#include "layout/track_plan.h"

#include <algorithm>
#include <cmath>

namespace bedwright {

std::vector<Mm> evenly(Mm from, Mm to, Mm most) {
  const int spaces = std::max(1, static_cast<int>(std::ceil((to - from) / most - 1e-9)));
  std::vector<Mm> places;
  for (int i = 0; i <= spaces; ++i) places.push_back(from + (to - from) * i / spaces);
  return places;
}

namespace {

// Each section carries a set near both ends, so that any section can be an end
// one, and a set at every whole pitch from its front end.
std::vector<Mm> bunk_sets(Mm length, Mm pitch, const KitBunk& bunk) {
  std::vector<Mm> sets = {bunk.outer_set, bunk.inner_set, length - bunk.inner_set, length - bunk.outer_set};
  for (Mm x = pitch; x <= length - pitch / 2 + same_place; x += pitch) sets.push_back(x);
  std::sort(sets.begin(), sets.end());
  const auto same = [](Mm a, Mm b) { return b - a < same_place; };
  sets.erase(std::unique(sets.begin(), sets.end(), same), sets.end());
  return sets;
}

// A section's bunks: one near its front end, then one a pitch; the last section
// has one more at its rear end. The track's own two ends take the set ordered.
void place_bunks(TrackPlan& plan, const KitBunk& bunk, EndBunks ends) {
  const Mm end_set = ends == EndBunks::outermost ? bunk.outer_set : bunk.inner_set;
  for (int s = 0; s < plan.sections; ++s) {
    const auto add = [&](Mm within) { plan.bunks.push_back({s, within, plan.starts[s] + within}); };
    add(s == 0 ? end_set : bunk.outer_set);
    for (Mm x = plan.pitch; x <= plan.rail_length - plan.pitch / 2 + same_place; x += plan.pitch) add(x);
    if (s + 1 == plan.sections) add(plan.rail_length - end_set);
  }
}

}  // namespace

TrackPlan plan_track(const Order& order, const Kit& kit) {
  TrackPlan plan;
  plan.rail_length = order.track.rail_length;
  plan.pitch = order.track.bunk_pitch;
  plan.sections = kit.rail.base_sections + order.track.extension_count;
  for (int s = 0; s < plan.sections; ++s) {
    plan.starts.push_back(s * (plan.rail_length + kit.rail.joint_gap));
    if (s > 0) plan.joints.push_back(plan.starts[s] - kit.rail.joint_gap / 2);
  }
  plan.total = plan.starts.back() + plan.rail_length;

  const double pitches = std::floor(plan.rail_length / plan.pitch + 1e-9);
  plan.remainder = std::max(0.0, plan.rail_length - pitches * plan.pitch);
  if (plan.remainder < same_place) plan.remainder = 0;

  const KitMounting& m = kit.mounting;
  plan.mounting = m.positions.empty() ? evenly(m.end_offset, plan.rail_length - m.end_offset, *m.max_pitch) : m.positions;
  plan.bunk_sets = bunk_sets(plan.rail_length, plan.pitch, kit.bunk);
  place_bunks(plan, kit.bunk, order.track.end_bunks);
  plan.stop_holes = {kit.track_stop.from_end, plan.rail_length - kit.track_stop.from_end};
  return plan;
}

}  // namespace bedwright
