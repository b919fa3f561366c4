// The machine head: locked for the road, and everywhere it can run.
#include <algorithm>
#include <limits>

#include "bed/head_meets.h"
#include "layout/builder.h"

namespace bedwright {
namespace {

// Boxes present in one state, stretched along x by the travel from..to of the
// head's centre: the exact sweep of a box that only rolls along x.
std::vector<Block> blocks(const KitHead& head, HeadWhen state, Mm from, Mm to) {
  std::vector<Block> all;
  for (const HeadBox& box : head.boxes) {
    if (box.when != state && box.when != HeadWhen::both) continue;
    Block block;
    block.low = {from + box.x_from, box.y_from, box.z_from};
    block.high = {to + box.x_to, box.y_to, box.z_to};
    all.push_back(block);
    if (box.sides == Sides::pair) {
      block.low.y = -box.y_to;
      block.high.y = -box.y_from;
      all.push_back(block);
    }
  }
  return all;
}

// How far the head's running boxes reach either way from its centre.
struct Ends {
  Mm front = std::numeric_limits<Mm>::infinity(), rear = -front;
  bool any() const { return front <= rear; }
  void take(const HeadBox& box) {
    front = std::min(front, box.x_from);
    rear = std::max(rear, box.x_to);
  }
};

// Whether the box runs into a stop of the right-hand rail, seen along the bed; on the
// left, where it has a mirror image or is over the middle, all is alike.
bool meets_stop(const Builder& b, const HeadBox& box) {
  const Box3 stop = bounds(b.bed, b.bed.item({Kind::track_stop, Side::right, 0, 0, End::front}));
  Box3 right;
  right.add({0, box.y_from, b.rail_top() + box.z_from});
  right.add({0, box.y_to, b.rail_top() + box.z_to});
  Box3 mirrored = right;
  mirrored.low.y = -right.high.y;
  mirrored.high.y = -right.low.y;
  return meet_along(right, stop).touch() || meet_along(mirrored, stop).touch();
}

}  // namespace

void lay_head(Builder& b) {
  const KitHead& head = b.kit.head;
  Ends all, stopped;
  for (const HeadBox& box : head.boxes) {
    if (box.when == HeadWhen::locked) continue;
    all.take(box);
    if (meets_stop(b, box)) stopped.take(box);
  }
  if (!all.any()) {
    b.problem("kit.head.boxes", "no box is there while the head runs",
              "give at least one box when: running or both");
    return;
  }
  if (std::none_of(head.boxes.begin(), head.boxes.end(),
                   [](const HeadBox& box) { return box.when != HeadWhen::running; })) {
    b.problem("kit.head.boxes", "no box is there while the head is locked for the road",
              "give at least one box when: locked or both");
    return;
  }
  // The head runs until a box of it meets the stops' faces. Where none does nothing
  // stops it, and a rule says so; it is then shown as far as its foremost box.
  const Ends& ends = stopped.any() ? stopped : all;
  const Mm face = b.kit.track_stop.from_end + b.kit.track_stop.foot_length / 2;
  const Mm from = face - ends.front, to = b.track().total_length - face - ends.rear;
  if (from > to) {
    b.problem("track.rail_length", "the head is longer than the track between its stops",
              "a longer rail or another section");
    return;
  }
  Track& t = b.bed.track;
  t.head_from = from;
  t.head_to = to;
  t.wheel_base = head.wheel_base;
  t.head_lock = b.order.track.head_lock == HeadLock::front ? head.lock_offset
                                                           : b.track().total_length - head.lock_offset;

  Bought locked;
  locked.envelope = blocks(head, HeadWhen::locked, 0, 0);
  locked.mass = head.mass;
  locked.centre_of_mass = {head.mass_x, head.mass_y, head.mass_z};
  Bought running;
  running.envelope = blocks(head, HeadWhen::running, from, to);
  const auto id = [](Pose pose) { return Identity{Kind::head, Side::middle, 0, 0, End::none, 0, pose}; };
  const int at_lock = b.place(b.add({Kind::head}, "", Origin::kit, locked), id(Pose::locked),
                              {{t.head_lock, 0, b.rail_top()}});
  const int swept =
      b.place(b.add(id(Pose::running), "", Origin::kit, running), id(Pose::running), {{0, 0, b.rail_top()}});
  b.bed.items[swept].shown = false;
  for (int item : {at_lock, swept}) {
    b.bed.items[item].moving = true;
    for (Side side : both_sides) {
      for (int s = 0; s < b.track().sections; ++s)
        b.join(item, b.bed.item({Kind::rail, side, s + 1}), "runs on it");
      for (End end : {End::front, End::rear})
        b.join(item, b.bed.item({Kind::track_stop, side, 0, 0, end}), "ends its travel there");
    }
  }
}

}  // namespace bedwright
