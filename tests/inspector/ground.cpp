// The ground under the bed, level on its tyres: wheels stand on it, jacks reach it and
// clear it on the road, the coupler hangs over it at a height a tow ball has.
#include <algorithm>
#include <cmath>

#include "packet.h"

namespace inspector {
namespace {

// Common practice, no published source: what clears the road under a towed bed; what a
// jack keeps of its travel when its foot stands on level ground; a ball's height.
constexpr double road_room = 100;
constexpr double travel_left = 15;
constexpr double lowest_ball = 300, highest_ball = 900;

}  // namespace

void check_ground(const Packet& packet, Faults& faults) {
  const Table& t = packet.moving;
  double ground = 1e300;
  for (std::size_t r = 0; r < t.rows(); ++r)
    if (t.text(r, "item") == "ground") ground = t.number(r, "z from mm");
  if (ground > 1e299) return faults.add("moving.csv does not say where the ground is");
  int wheels = 0, jacks = 0, balls = 0;
  for (std::size_t r = 0; r < t.rows(); ++r) {
    const std::string &item = t.text(r, "item"), &state = t.text(r, "state"), &piece = t.text(r, "piece");
    const double low = t.number(r, "z from mm") - ground;
    if (piece == "tyre") {
      ++wheels;
      if (std::abs(low) > 1) faults.add("{}: its tyre is {:.1f} mm off the ground", item, low);
    }
    if (state == "runs down") {
      ++jacks;
      const double down = low + t.number(r, "by from mm");
      if (down > -travel_left)
        faults.add(
            "{}: run down, its foot is {:.1f} mm {} the ground, {:.0f} mm of travel are wanted beyond it",
            item, std::abs(down), down > 0 ? "over" : "under", travel_left);
    }
    if (piece == "ball's centre") {
      ++balls;
      if (low < lowest_ball || low > highest_ball)
        faults.add("{}: its ball is {:.0f} mm over the ground, {:.0f} to {:.0f} are usual", item, low,
                   lowest_ball, highest_ball);
      const Box& box = packet.model.item(item).box;
      const double x = t.number(r, "x from mm");
      if (x < box.low.x || x > box.high.x)
        faults.add("{}: its ball at x {:.1f} is not within it, {:.1f} to {:.1f}", item, x, box.low.x,
                   box.high.x);
    }
  }
  if (wheels < 2 || jacks < 4 || balls != 1)
    faults.add("moving.csv lists {} tyres, {} jacks and {} couplers", wheels, jacks, balls);
  for (const Item& item : packet.model.items) {
    bool is_wheel = false;
    for (std::size_t r = 0; r < t.rows(); ++r)
      is_wheel = is_wheel || (t.text(r, "item") == item.name && t.text(r, "piece") == "tyre");
    if (const double over = item.box.low.z - ground; !is_wheel && over < road_room)
      faults.add("{}: hangs {:.0f} mm over the ground, {:.0f} mm are wanted on the road", item.name, over,
                 road_room);
  }
}

}  // namespace inspector
