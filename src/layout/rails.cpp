// Rail sections: bought, with every hole the maker's sheet states.
#include <fmt/format.h>

#include "layout/builder.h"

namespace bedwright {
namespace {

// Holes of one section; `from_front` turns a distance from the front end into
// the member's own x.
template <class FromFront>
std::vector<FaceHole> rail_holes(const Builder& b, FromFront from_front) {
  const Kit& kit = b.kit;
  std::vector<FaceHole> holes;
  const auto flat = [&](Mm x, Mm line, const BoltHole& hole, Radians angle, const char* purpose) {
    holes.push_back({Face::flat_leg, bought_hole({from_front(x), line}, hole, angle, purpose)});
  };
  const Radians across = kit.mounting.slot_along == SlotAlong::width ? 90 * degree : 0;
  for (Mm x : b.plan.mounting) flat(x, kit.mounting.line, kit.mounting.hole, kit.mounting.hole.slot ? across : 0, "track bolt");
  for (Mm x : b.plan.bunk_sets) flat(x, kit.bunk.line, kit.bunk.hole, 0, "bunk bolt");
  for (Mm x : b.plan.stop_holes) flat(x, kit.track_stop.line, kit.track_stop.hole, 0, "track stop bolt");
  const Mm half_gap = kit.rail.joint_gap / 2;
  for (Mm from_joint : kit.gusset.bolts)
    for (Mm x : {from_joint - half_gap, b.plan.rail_length - from_joint + half_gap})
      holes.push_back({Face::standing_leg, bought_hole({from_front(x), kit.gusset.bottom + kit.gusset.height / 2}, kit.gusset.hole, 0, "gusset bolt")});
  std::sort(holes.begin(), holes.end(), [](const FaceHole& p, const FaceHole& q) {
    return std::tuple(p.face, p.hole.at.x, p.hole.at.y) < std::tuple(q.face, q.hole.at.x, q.hole.at.y);
  });
  return holes;
}

}  // namespace

// A kerb-side rail lies with its member axis running forward, a road-side one
// rearward, so that both flat legs point inward. A section whose holes are the
// same from either end is then one part for both sides; else there is a left and a
// right one.
void lay_rails(Builder& b) {
  const Mm length = b.plan.rail_length;
  const auto section = [&](Side side) {
    const bool forward = side == Side::right;
    return Member{kit_angle("rail", b.kit.rail), length, 0, 0, rail_holes(b, [&](Mm x) { return forward ? length - x : x; })};
  };
  const bool handed = !(section(Side::left) == section(Side::right));
  for (Side side : both_sides) {
    const bool forward = side == Side::right;
    const int part = b.bed.add_part({handed ? fmt::format("rail section {}", letter(side)) : "rail section", "steel", Origin::kit, section(side)});
    for (int s = 0; s < b.plan.sections; ++s) {
      const Mm x = b.plan.starts[s] + (forward ? length : 0);
      b.place(part, fmt::format("rail {}{}", letter(side), s + 1),
              {{x, b.heel(side), b.standoff()}, {forward ? -1.0 : 1.0, 0, 0}, {0, -outward(side), 0}});
    }
  }
}

}  // namespace bedwright
