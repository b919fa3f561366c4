// A bed whose moving things stand in many places between the ends of what they can
// do, put there from the kit and frame files without the layout's help.
#pragma once

#include <cmath>
#include <set>

#include "bed/bed.h"
#include "params/job.h"

namespace bedwright::testing {

class Posed {
 public:
  static constexpr int head_places = 60, clamp_places = 7, clamp_leans = 5, wheel_places = 5;

  Posed(const Job& job, const Bed& laid_out) : bed(laid_out), job_(job) {
    heads();
    clamps();
    wheels();
  }

  Bed bed;
  std::set<int> replaced;  // items whose place the posed ones have taken

 private:
  // Of the identity of the item it stands for, and joined to what that is joined to.
  void put(int like_index, const Bought& body, const Placement& placement) {
    Item item = bed.items[like_index];
    bed.parts.push_back({item.id, "", Origin::kit, body});
    item.part = static_cast<int>(bed.parts.size()) - 1;
    item.placement = placement;
    bed.items.push_back(item);
    const int index = static_cast<int>(bed.items.size()) - 1;
    for (std::size_t i = 0, count = bed.joined.size(); i < count; ++i) {
      const Joined j = bed.joined[i];
      if (j.a == like_index) bed.joined.push_back({index, j.b, j.why});
      if (j.b == like_index) bed.joined.push_back({j.a, index, j.why});
    }
  }

  // From touching the front stops to touching the rear ones.
  void heads() {
    const int running = bed.item({Kind::head, Side::middle, 0, 0, End::none, 0, Pose::running});
    replaced.insert(running);
    Mm front = 1e9, rear = -1e9;
    Bought body;
    for (const HeadBox& box : job_.kit.head.boxes) {
      if (box.when == HeadWhen::locked) continue;
      front = std::min(front, box.x_from);
      rear = std::max(rear, box.x_to);
      for (const double side : {1.0, -1.0}) {
        if (side < 0 && box.sides != Sides::pair) continue;
        Block block;
        block.low = {box.x_from, std::min(side * box.y_from, side * box.y_to), box.z_from};
        block.high = {box.x_to, std::max(side * box.y_from, side * box.y_to), box.z_to};
        body.envelope.push_back(block);
      }
    }
    const Mm from = bounds(bed, bed.item({Kind::track_stop, Side::left, 0, 0, End::front})).high.x - front;
    const Mm to = bounds(bed, bed.item({Kind::track_stop, Side::left, 0, 0, End::rear})).low.x - rear;
    const Mm z = bed.items[running].placement.origin.z;
    for (int i = 0; i <= head_places; ++i) put(running, body, {{from + (to - from) * i / head_places, 0, z}});
  }

  void clamps() {
    const KitClamp& k = job_.kit.clamp;
    std::set<Identity> done;
    for (const int index : bed.items_of(Kind::clamp)) {
      const Item like = bed.items[index];
      replaced.insert(index);
      if (!done.insert(whole_thing(like.id)).second) continue;
      for (int t = 0; t < clamp_places; ++t)
        for (int l = 0; l < clamp_leans; ++l) {
          const Mm y = k.travel_from + (k.travel_to - k.travel_from) * t / (clamp_places - 1);
          const Radians lean = -k.lean_out + (k.lean_in + k.lean_out) * l / (clamp_leans - 1);
          Block base, arm;
          base.low = {0, -k.base_width / 2, 0};
          base.high = {k.base_length, k.base_width / 2, k.base_height};
          // Toward the log is toward the centre line, -y on the kerb side.
          arm.frame = {{k.base_length / 2, 0, k.base_height}, {1, 0, 0}, {0, std::cos(lean), std::sin(lean)}};
          arm.low = {-k.arm_thickness / 2, -k.arm_width / 2, 0};
          arm.high = {k.arm_thickness / 2, k.arm_width / 2, k.arm_height};
          Bought body;
          body.envelope = {base, arm};
          put(index, body, {{like.placement.origin.x, y, like.placement.origin.z}});
        }
    }
  }

  void wheels() {
    const FrameAxle& a = job_.frame.axle;
    Block tyre;
    tyre.frame = {{}, {1, 0, 0}, {0, 0, -1}};
    tyre.low = {0, 0, -a.tyre_width / 2};
    tyre.high = {0, 0, a.tyre_width / 2};
    tyre.radius = a.tyre_diameter / 2;
    Bought body;
    body.envelope = {tyre};
    for (const int index : bed.items_of(Kind::wheel)) {
      const Item like = bed.items[index];
      if (!like.moving) continue;
      replaced.insert(index);
      for (int i = 0; i < wheel_places; ++i)
        put(index, body, {like.placement.origin + Vec3{0, 0, a.bump * i / (wheel_places - 1)}});
    }
  }

  const Job& job_;
};

}  // namespace bedwright::testing
