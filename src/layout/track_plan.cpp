// Places of sections, joints, mounting holes and bunks from the order and the kit.
#include "layout/track_plan.h"

#include <algorithm>
#include <cmath>
#include <stdexcept>

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

// Which of the sets drilled is the one at `within`.
int set_at(const Track& track, Mm within) {
  for (std::size_t i = 0; i < track.bunk_sets.size(); ++i)
    if (std::abs(track.bunk_sets[i] - within) < 2 * same_place) return static_cast<int>(i);
  throw std::logic_error("a bunk is planned where the rail has no holes for it");
}

// A section's bunks: one near its front end, then one at each pitch; the last section
// has one more at its rear end. The track's own two ends take the set ordered.
void place_bunks(Track& track, const KitBunk& bunk, EndBunks ends) {
  const Mm end_set = ends == EndBunks::outermost ? bunk.outer_set : bunk.inner_set;
  for (int s = 0; s < track.sections; ++s) {
    const auto add = [&](Mm within) {
      track.bunks.push_back({s, set_at(track, within), within, track.starts[s] + within});
    };
    add(s == 0 ? end_set : bunk.outer_set);
    for (Mm x = track.bunk_pitch; x <= track.rail_length - track.bunk_pitch / 2 + same_place;
         x += track.bunk_pitch)
      add(x);
    if (s + 1 == track.sections) add(track.rail_length - end_set);
  }
}

}  // namespace

Track plan_track(const Order& order, const Kit& kit) {
  Track track;
  track.rail_length = order.track.rail_length;
  track.bunk_pitch = order.track.bunk_pitch;
  track.sections = kit.rail.base_sections + order.track.extension_count;
  track.gauge = kit.gauge;
  for (int s = 0; s < track.sections; ++s) {
    track.starts.push_back(s * (track.rail_length + kit.rail.joint_gap));
    if (s > 0) track.joints.push_back(track.starts[s] - kit.rail.joint_gap / 2);
  }
  track.total_length = track.starts.back() + track.rail_length;

  const double pitches = std::floor(track.rail_length / track.bunk_pitch + 1e-9);
  track.remainder = std::max(0.0, track.rail_length - pitches * track.bunk_pitch);
  if (track.remainder < same_place) track.remainder = 0;

  const KitMounting& m = kit.mounting;
  track.mounting = m.positions.empty() ? evenly(m.end_offset, track.rail_length - m.end_offset, *m.max_pitch)
                                       : m.positions;
  track.bunk_sets = bunk_sets(track.rail_length, track.bunk_pitch, kit.bunk);
  place_bunks(track, kit.bunk, order.track.end_bunks);
  track.stop_holes = {kit.track_stop.from_end, track.rail_length - kit.track_stop.from_end};
  return track;
}

}  // namespace bedwright
