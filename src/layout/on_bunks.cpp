// Log stops and clamps, each clamp in every pose it can take.
#include <fmt/format.h>

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
  const int count = static_cast<int>(b.plan.bunks.size());
  if (number > count) {
    b.problem(key, fmt::format("there is no bunk {}", number), fmt::format("bunks run from 1 to {}, counted from the front", count));
    return {};
  }
  return {b.bed.find_item(fmt::format("bunk {}", number)), b.plan.bunks[number - 1].x + b.kit.bunk.flat_leg / 2};
}

void lay_log_stops(Builder& b) {
  const KitLogStop& k = b.kit.log_stop;
  Bought post;
  post.envelope = {{{}, {-k.thickness, -k.width / 2, 0}, {0, k.width / 2, k.height - b.kit.bunk.thickness}, 0}};
  post.mass = k.mass;
  post.centre_of_mass = {-k.thickness / 2, 0, k.height / 2};
  int number = 0;
  for (int bunk : b.order.track.log_stops) {
    const BunkAt at = bunk_at(b, bunk, fmt::format("track.log_stops[{}]", ++number));
    if (at.item < 0) continue;
    const int part = b.add("log stop", "", Origin::kit, post);
    const int item = b.place(part, fmt::format("log stop {} on bunk {}", number, bunk),
                             {{at.heel - b.kit.bunk.thickness, -k.from_centre, b.rail_seat() + b.kit.bunk.thickness}});
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
  arm.frame = {{middle, 0, k.base_height}, {1, 0, 0}, {0, std::cos(lean_toward_log), std::sin(lean_toward_log)}};
  arm.low = {-k.arm_thickness / 2, -k.arm_width / 2, 0};
  arm.high = {k.arm_thickness / 2, k.arm_width / 2, k.arm_height};
  body.envelope = {base, arm};
  body.mass = k.mass;
  body.centre_of_mass = {middle, 0, k.base_height};
  return body;
}

void lay_clamps(Builder& b) {
  const KitClamp& k = b.kit.clamp;
  int number = 0;
  for (const ClampPlace& place : b.order.track.clamps) {
    const BunkAt at = bunk_at(b, place.bunk, fmt::format("track.clamps[{}].bunk", ++number));
    if (at.item < 0) continue;
    for (bool leaning_in : {true, false})
      for (bool outer : {true, false}) {
        const int part = b.add(leaning_in ? "clamp" : "clamp leaning out", "", Origin::kit,
                               clamp_body(k, leaning_in ? k.lean_in : -k.lean_out));
        const int item = b.place(part, fmt::format("clamp {} on bunk {}, leaning {}, {} end", number, place.bunk,
                                                   leaning_in ? "in" : "out", outer ? "outer" : "inner"),
                                 {{at.heel, outer ? k.travel_to : k.travel_from, b.rail_seat()}});
        Item& clamp = b.bed.items[item];
        clamp.moving = true;
        clamp.shown = leaning_in && outer;
        clamp.group = 1000 + number;  // all poses of one clamp
        b.join(item, at.item, "slides along the bunk");
      }
  }
}

}  // namespace

void lay_on_bunks(Builder& b) {
  lay_log_stops(b);
  lay_clamps(b);
}

}  // namespace bedwright
