// Rail sections: bought, with every hole the maker's sheet states.
#include <algorithm>
#include <numeric>

#include "layout/builder.h"

namespace bedwright {
namespace {

struct Drilled {
  std::vector<FaceHole> holes;
  RailHoles::OneRail places;
};

// Sorted along the section, and where each has come to lie in the list. `made`: in the
// order mounting, bunk sets, stops, then each gusset bolt at the front and the rear end.
Drilled in_order(std::vector<FaceHole> made, const SectionHoles& along, std::size_t gusset_bolts) {
  std::vector<int> order(made.size());
  std::iota(order.begin(), order.end(), 0);
  const auto key = [&](int i) { return std::tuple(made[i].face, made[i].hole.at.x, made[i].hole.at.y); };
  std::stable_sort(order.begin(), order.end(), [&](int p, int q) { return key(p) < key(q); });
  std::vector<int> place(made.size());
  Drilled out;
  for (std::size_t i = 0; i < order.size(); ++i) {
    place[order[i]] = static_cast<int>(i);
    out.holes.push_back(made[order[i]]);
  }
  auto next = place.begin();
  for (std::size_t i = 0; i < along.mounting_left.size(); ++i) out.places.mounting.push_back(*next++);
  for (std::size_t i = 0; i < along.bunk_sets.size(); ++i) out.places.bunk_sets.push_back(*next++);
  for (int& stop : out.places.stop) stop = *next++;
  for (std::size_t i = 0; i < gusset_bolts; ++i) {
    const int front = *next++, rear = *next++;
    out.places.gusset.push_back({front, rear});
  }
  return out;
}

// Holes of one section's rail; `from_front` turns a distance from the front end into
// the member's own x.
template <class FromFront>
Drilled rail_holes(const Builder& b, Side side, std::size_t section, FromFront from_front) {
  const Kit& kit = b.kit;
  const SectionHoles& along = b.track().holes[section];
  const Mm length = b.track().lengths[section];
  std::vector<FaceHole> holes;
  const auto flat = [&](Mm x, Mm line, const BoltHole& hole, Radians angle, Kind purpose) {
    holes.push_back({Face::flat_leg, bought_hole({from_front(x), line}, hole, angle, purpose)});
  };
  const Radians across = kit.mounting.slot_along == SlotAlong::width ? 90 * degree : 0;
  for (Mm x : along.mounting(side))
    flat(x, kit.mounting.line, kit.mounting.hole, kit.mounting.hole.slot ? across : 0, Kind::track_bolt);
  for (Mm x : along.bunk_sets) flat(x, kit.bunk.line, kit.bunk.hole, 0, Kind::bunk_bolt);
  for (Mm x : along.stop_holes) flat(x, kit.track_stop.line, kit.track_stop.hole, 0, Kind::stop_bolt);
  const Mm half_gap = kit.rail.joint_gap / 2;
  for (Mm from_joint : kit.gusset.bolts)
    for (Mm x : {from_joint - half_gap, length - from_joint + half_gap})
      holes.push_back(
          {Face::standing_leg, bought_hole({from_front(x), kit.gusset.bottom + kit.gusset.height / 2},
                                           kit.gusset.hole, 0, Kind::gusset_bolt)});
  return in_order(std::move(holes), along, kit.gusset.bolts.size());
}

// The first section as long as this one: sections of one length are one part.
std::size_t first_as_long(const Track& track, std::size_t section) {
  std::size_t first = 0;
  while (std::abs(track.lengths[first] - track.lengths[section]) > same_place) ++first;
  return first;
}

// Numbers the lengths there are from 1, in the order they come; 0 where all are alike.
int length_number(const Track& track, std::size_t section) {
  if (track.sections_alike()) return 0;
  int number = 1;
  for (std::size_t s = 0; s < first_as_long(track, section); ++s) number += first_as_long(track, s) == s;
  return number;
}

}  // namespace

// A kerb-side rail lies with its member axis running forward, a road-side one
// rearward, so that both flat legs point inward. A section whose holes are the
// same from either end is then one part for both sides; else there is a left and a
// right one.
void lay_rails(Builder& b) {
  const Track& track = b.track();
  for (std::size_t s = 0; s < track.lengths.size(); ++s) {
    const Mm length = track.lengths[s];
    const auto rail = [&](Side side) {
      const bool forward = side == Side::right;
      Drilled drilled = rail_holes(b, side, s, [&](Mm x) { return forward ? length - x : x; });
      (forward ? b.rail_holes.right : b.rail_holes.left).push_back(drilled.places);
      return Member{kit_angle("rail", b.kit.rail), length, 0, 0, std::move(drilled.holes)};
    };
    const Member left = rail(Side::left), right = rail(Side::right);
    const bool handed = !(left == right);
    for (Side side : both_sides) {
      const bool forward = side == Side::right;
      const int part = b.add({Kind::rail, handed ? side : Side::middle, length_number(track, s)}, "steel",
                             Origin::kit, forward ? right : left);
      const Mm x = track.starts[s] + (forward ? length : 0);
      b.place(part, {Kind::rail, side, static_cast<int>(s) + 1},
              {{x, b.heel(side), b.standoff()}, {forward ? -1.0 : 1.0, 0, 0}, {0, -outward(side), 0}});
    }
  }
}

}  // namespace bedwright
