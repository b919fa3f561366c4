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
// one, and a set at every whole pitch from its front end; or those the maker lists.
std::vector<Mm> bunk_sets(Mm length, Mm pitch, const KitBunk& bunk) {
  if (!bunk.positions.empty()) return bunk.positions;
  std::vector<Mm> sets = {bunk.outer_set, bunk.inner_set, length - bunk.inner_set, length - bunk.outer_set};
  for (Mm x = pitch; x <= length - pitch / 2 + same_place; x += pitch) sets.push_back(x);
  std::sort(sets.begin(), sets.end());
  const auto same = [](Mm a, Mm b) { return b - a < same_place; };
  sets.erase(std::unique(sets.begin(), sets.end(), same), sets.end());
  return sets;
}

// Which of the sets drilled is the one at `within`.
int set_at(const SectionHoles& holes, Mm within) {
  for (std::size_t i = 0; i < holes.bunk_sets.size(); ++i)
    if (std::abs(holes.bunk_sets[i] - within) < 2 * same_place) return static_cast<int>(i);
  throw std::logic_error("a bunk is planned where the rail has no holes for it");
}

// Where one section's bunks stand, from its front end: at each listed hole; else one near
// its front end, then one at each pitch, and the last section has one more at its rear end.
// The track's own two ends take the set ordered.
std::vector<Mm> bunks_within(const Track& track, int section, const KitBunk& bunk, EndBunks ends) {
  if (!bunk.positions.empty()) return bunk.positions;
  const Mm end_set = ends == EndBunks::outermost ? bunk.outer_set : bunk.inner_set,
           length = track.lengths[static_cast<std::size_t>(section)];
  std::vector<Mm> within{section == 0 ? end_set : bunk.outer_set};
  for (Mm x = track.bunk_pitch; x <= length - track.bunk_pitch / 2 + same_place; x += track.bunk_pitch)
    within.push_back(x);
  if (section + 1 == track.sections) within.push_back(length - end_set);
  return within;
}

void place_bunks(Track& track, const KitBunk& bunk, EndBunks ends) {
  for (int s = 0; s < track.sections; ++s) {
    const auto at = static_cast<std::size_t>(s);
    for (const Mm within : bunks_within(track, s, bunk, ends))
      track.bunks.push_back({s, set_at(track.holes[at], within), within, track.starts[at] + within});
  }
}

SectionHoles holes_of(const Kit& kit, Mm length, Mm pitch) {
  SectionHoles holes;
  const KitMounting& m = kit.mounting;
  holes.mounting_left =
      m.positions.empty() ? evenly(m.end_offset, length - m.end_offset, *m.max_pitch) : m.positions;
  holes.mounting_right = holes.mounting_left;
  if (kit.rail.turned) {
    std::reverse(holes.mounting_right.begin(), holes.mounting_right.end());
    for (Mm& x : holes.mounting_right) x = length - x;
  }
  holes.bunk_sets = bunk_sets(length, pitch, kit.bunk);
  holes.stop_holes = {kit.track_stop.from_end, length - kit.track_stop.from_end};
  return holes;
}

// What the length has over whole pitches.
Mm remainder_of(Mm length, Mm pitch) {
  if (pitch <= 0) return 0;
  const double pitches = std::floor(length / pitch + 1e-9);
  const Mm left = std::max(0.0, length - pitches * pitch);
  return left < same_place ? 0 : left;
}

}  // namespace

Track plan_track(const Order& order, const Kit& kit) {
  Track track;
  track.sections = kit.rail.base_sections + order.track.extension_count;
  track.lengths = order.track.rail_lengths;
  if (track.lengths.empty())
    track.lengths.assign(static_cast<std::size_t>(track.sections), order.track.rail_length);
  track.rail_length = *std::max_element(track.lengths.begin(), track.lengths.end());
  track.bunk_pitch = order.track.bunk_pitch;
  track.gauge = kit.gauge;
  Mm start = 0;
  for (const Mm length : track.lengths) {
    if (start > 0) track.joints.push_back(start - kit.rail.joint_gap / 2);
    track.starts.push_back(start);
    start += length + kit.rail.joint_gap;
    track.remainder = std::max(track.remainder, remainder_of(length, track.bunk_pitch));
    track.holes.push_back(holes_of(kit, length, track.bunk_pitch));
  }
  track.total_length = track.starts.back() + track.lengths.back();
  place_bunks(track, kit.bunk, order.track.end_bunks);
  return track;
}

}  // namespace bedwright
