// Log stops and clamps, each clamp in every pose it can take.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "layout/builder.h"

namespace bedwright {
namespace {

// The x of a bunk's standing leg's rear face and the bunk's item; reports a
// number that does not exist.
struct BunkAt {
  int item = -1;
  Mm heel = 0;
};

BunkAt bunk_at(Builder& b, int number, const std::string& key) {
  const int count = b.track().bunk_count();
  if (number > count) {
    b.problem(key, fmt::format("there is no bunk {}", number),
              fmt::format("bunks run from 1 to {}, counted from the front", count));
    return {};
  }
  return {b.bed.item({Kind::bunk, Side::middle, number}),
          b.track().bunks[number - 1].x + b.kit.bunk.flat_leg / 2};
}

// On the bunk's flat leg, as near the standing leg as the fillet between them lets it.
void lay_log_stops(Builder& b) {
  const KitLogStop& k = b.kit.log_stop;
  Bought post;
  post.envelope = {
      {{}, {-k.thickness, -k.width / 2, 0}, {0, k.width / 2, k.height - b.kit.bunk.thickness}, 0}};
  post.mass = k.mass;
  post.centre_of_mass = {-k.thickness / 2, 0, k.height / 2};
  int number = 0;
  for (int bunk : b.order.track.log_stops) {
    const BunkAt at = bunk_at(b, bunk, fmt::format("track.log_stops[{}]", ++number));
    if (at.item < 0) continue;
    const int part = b.add({Kind::log_stop}, "", Origin::kit, post);
    const int item = b.place(part, {Kind::log_stop, Side::middle, number, 0, End::none, bunk},
                             {{at.heel - b.kit.bunk.thickness - b.kit.bunk.root_radius, -k.from_centre,
                               b.rail_seat() + b.kit.bunk.thickness}});
    b.join(item, at.item, "clamped to the bunk");
  }
}

Bought clamp_body(const KitClamp& k, Radians lean_toward_log) {
  const Mm middle = k.base_length / 2;
  Bought body;
  Block base;
  base.low = {0, -k.base_width / 2, 0};
  base.high = {k.base_length, k.base_width / 2, k.base_height};
  // Leaning toward the log is leaning toward -y: a clamp sits on the kerb side.
  Block arm;
  arm.frame = {
      {middle, 0, k.base_height}, {1, 0, 0}, {0, std::cos(lean_toward_log), std::sin(lean_toward_log)}};
  arm.low = {-k.arm_thickness / 2, -k.arm_width / 2, 0};
  arm.high = {k.arm_thickness / 2, k.arm_width / 2, k.arm_height};
  body.envelope = {base, arm};
  body.mass = k.mass;
  body.centre_of_mass = {middle, 0, k.base_height};
  return body;
}

// Where the arm's corners come as it turns about its foot from all the way out to
// all the way in, in (y, z) from the foot: at steps, with the tangents of their arcs
// met half way, so that the points' hull holds every lean.
std::vector<Vec2> arm_at_every_lean(const KitClamp& k) {
  constexpr Radians step = 2 * degree;  // the hull is at most 1 / cos(1 degree), 0.015 %, over the arc
  const int steps = std::max(1, static_cast<int>(std::ceil((k.lean_in + k.lean_out) / step - 1e-9)));
  const Radians each = (k.lean_in + k.lean_out) / steps;
  std::vector<Vec2> points;
  const auto turned = [&](Radians lean, double stretch) {
    for (const Mm along : {-k.arm_width / 2, k.arm_width / 2})
      for (const Mm up : {0.0, k.arm_height})
        points.push_back(stretch * Vec2{along * std::cos(lean) - up * std::sin(lean),
                                        along * std::sin(lean) + up * std::cos(lean)});
  };
  for (int i = 0; i <= steps; ++i) turned(i * each - k.lean_out, 1);
  for (int i = 0; i < steps; ++i) turned((i + 0.5) * each - k.lean_out, 1 / std::cos(each / 2));
  return points;
}

// The clamp at every lean and everywhere along its slide. The arm's hull is what it
// sweeps but for a sliver at its foot, which the base takes up.
Bought clamp_everywhere(const KitClamp& k) {
  Block base;
  base.low = {0, k.travel_from - k.base_width / 2, 0};
  base.high = {k.base_length, k.travel_to + k.base_width / 2, k.base_height};
  std::vector<Vec2> swept;
  for (const Vec2& p : arm_at_every_lean(k))
    for (const Mm y : {k.travel_from, k.travel_to}) swept.push_back(p + Vec2{y, k.base_height});
  const Placement across{{}, {0, 1, 0}, {0, 0, 1}};  // x of the hull along y, y along z
  const Mm middle = k.base_length / 2;
  return {{base,
           prism_block(across, std::move(swept), middle - k.arm_thickness / 2, middle + k.arm_thickness / 2)},
          {},
          0,
          {}};
}

void lay_clamps(Builder& b) {
  const KitClamp& k = b.kit.clamp;
  int number = 0;
  for (const ClampPlace& place : b.order.track.clamps) {
    const BunkAt at = bunk_at(b, place.bunk, fmt::format("track.clamps[{}].bunk", ++number));
    if (at.item < 0) continue;
    for (bool leaning_in : {true, false})
      for (bool outer : {true, false}) {
        const Pose pose = leaning_in ? (outer ? Pose::in_outer : Pose::in_inner)
                          : outer    ? Pose::out_outer
                                     : Pose::out_inner;
        // One part at both ends of its slide.
        const int part =
            b.add({Kind::clamp, Side::middle, 0, 0, End::none, 0, leaning_in ? Pose::none : Pose::out_outer},
                  "", Origin::kit, clamp_body(k, leaning_in ? k.lean_in : -k.lean_out));
        const int item = b.place(part, {Kind::clamp, Side::middle, number, 0, End::none, place.bunk, pose},
                                 {{at.heel, outer ? k.travel_to : k.travel_from, b.rail_seat()}});
        Item& clamp = b.bed.items[item];
        clamp.moving = true;
        clamp.shown = leaning_in && outer;
        b.join(item, at.item, "slides along the bunk");
      }
    const int part = b.add({Kind::clamp, Side::middle, 0, 0, End::none, 0, Pose::between}, "", Origin::kit,
                           clamp_everywhere(k));
    const int item =
        b.place(part, {Kind::clamp, Side::middle, number, 0, End::none, place.bunk, Pose::between},
                {{at.heel, 0, b.rail_seat()}});
    Item& clamp = b.bed.items[item];
    clamp.moving = true;
    clamp.shown = false;
    b.join(item, at.item, "slides along the bunk");
  }
}

}  // namespace

void lay_on_bunks(Builder& b) {
  lay_log_stops(b);
  lay_clamps(b);
}

}  // namespace bedwright
