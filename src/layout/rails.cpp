// Rail sections: bought, with every hole the maker's sheet states.
#include <algorithm>
#include <numeric>

#include "layout/builder.h"

namespace bedwright {
namespace {

struct Drilled {
  std::vector<FaceHole> holes;
  RailHoles::OneSide places;
};

// Sorted along the section, and where each has come to lie in the list. `made`: in the
// order mounting, bunk sets, stops, then each gusset bolt at the front and the rear end.
Drilled in_order(std::vector<FaceHole> made, const Builder& b) {
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
  for (std::size_t i = 0; i < b.track().mounting.size(); ++i) out.places.mounting.push_back(*next++);
  for (std::size_t i = 0; i < b.track().bunk_sets.size(); ++i) out.places.bunk_sets.push_back(*next++);
  for (int& stop : out.places.stop) stop = *next++;
  for (std::size_t i = 0; i < b.kit.gusset.bolts.size(); ++i) {
    const int front = *next++, rear = *next++;
    out.places.gusset.push_back({front, rear});
  }
  return out;
}

// Holes of one section; `from_front` turns a distance from the front end into
// the member's own x.
template <class FromFront>
Drilled rail_holes(const Builder& b, FromFront from_front) {
  const Kit& kit = b.kit;
  std::vector<FaceHole> holes;
  const auto flat = [&](Mm x, Mm line, const BoltHole& hole, Radians angle, Kind purpose) {
    holes.push_back({Face::flat_leg, bought_hole({from_front(x), line}, hole, angle, purpose)});
  };
  const Radians across = kit.mounting.slot_along == SlotAlong::width ? 90 * degree : 0;
  for (Mm x : b.track().mounting)
    flat(x, kit.mounting.line, kit.mounting.hole, kit.mounting.hole.slot ? across : 0, Kind::track_bolt);
  for (Mm x : b.track().bunk_sets) flat(x, kit.bunk.line, kit.bunk.hole, 0, Kind::bunk_bolt);
  for (Mm x : b.track().stop_holes) flat(x, kit.track_stop.line, kit.track_stop.hole, 0, Kind::stop_bolt);
  const Mm half_gap = kit.rail.joint_gap / 2;
  for (Mm from_joint : kit.gusset.bolts)
    for (Mm x : {from_joint - half_gap, b.track().rail_length - from_joint + half_gap})
      holes.push_back(
          {Face::standing_leg, bought_hole({from_front(x), kit.gusset.bottom + kit.gusset.height / 2},
                                           kit.gusset.hole, 0, Kind::gusset_bolt)});
  return in_order(std::move(holes), b);
}

}  // namespace

// A kerb-side rail lies with its member axis running forward, a road-side one
// rearward, so that both flat legs point inward. A section whose holes are the
// same from either end is then one part for both sides; else there is a left and a
// right one.
void lay_rails(Builder& b) {
  const Mm length = b.track().rail_length;
  const auto section = [&](Side side) {
    const bool forward = side == Side::right;
    Drilled drilled = rail_holes(b, [&](Mm x) { return forward ? length - x : x; });
    (side == Side::left ? b.rail_holes.left : b.rail_holes.right) = drilled.places;
    return Member{kit_angle("rail", b.kit.rail), length, 0, 0, std::move(drilled.holes)};
  };
  const bool handed = !(section(Side::left) == section(Side::right));
  for (Side side : both_sides) {
    const bool forward = side == Side::right;
    const int part = b.add({Kind::rail, handed ? side : Side::middle}, "steel", Origin::kit, section(side));
    for (int s = 0; s < b.track().sections; ++s) {
      const Mm x = b.track().starts[s] + (forward ? length : 0);
      b.place(part, {Kind::rail, side, s + 1},
              {{x, b.heel(side), b.standoff()}, {forward ? -1.0 : 1.0, 0, 0}, {0, -outward(side), 0}});
    }
  }
}

}  // namespace bedwright
