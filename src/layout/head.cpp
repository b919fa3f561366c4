// The machine head: locked for the road, and everywhere it can run.
#include <limits>

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

}  // namespace

void lay_head(Builder& b) {
  const KitHead& head = b.kit.head;
  Mm front = std::numeric_limits<Mm>::infinity(), rear = -front;
  for (const HeadBox& box : head.boxes)
    if (box.when != HeadWhen::locked) {
      front = std::min(front, box.x_from);
      rear = std::max(rear, box.x_to);
    }
  if (front > rear) {
    b.problem("kit.head.boxes", "no box is there while the head runs",
              "give at least one box when: running or both");
    return;
  }
  // The head's foremost box meets the stops' faces.
  const Mm face = b.kit.track_stop.from_end + b.kit.track_stop.foot_length / 2;
  const Mm from = face - front, to = b.track().total_length - face - rear;
  if (from > to) {
    b.problem("track.rail_length", "the head is longer than the track between its stops",
              "a longer rail or another section");
    return;
  }
  Track& t = b.bed.track;
  t.head_from = from;
  t.head_to = to;
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
