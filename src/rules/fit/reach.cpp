// REACH: whether a socket or a wrench gets on each bolt and turns it.
#include "rules/fit/reach.h"

#include <fmt/format.h>

#include <array>
#include <map>
#include <tuple>

#include "rules/fit/tool_room.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

// Common practice, no published source: a tool is kept off the face the head or
// nut bears on by a washer's burr.
constexpr Mm off_face = 0.3;
// Ratchet and hand behind the socket; from memory.
constexpr Mm behind_socket = 1.5 * inch;
constexpr int positions = 12;  // of the handle, 30 degrees apart
constexpr Radians step = 30 * degree;

// One end of a bolt, its axis pointing out of the work.
struct BoltFace {
  Vec3 face, axis;
  Mm height = 0;  // of head or nut
  Mm beyond = 0;  // what stands past it
};

BoltFace place_of(const Bolt& bolt, const Stack& stack, BoltEnd end) {
  if (end == BoltEnd::head)
    return {bolt.seat - stack.head_washers * bolt.direction, -bolt.direction, bolt.size.head_height, 0};
  return {bolt.seat + (stack.plies + stack.nut_washers) * bolt.direction, bolt.direction,
          bolt.size.nut_height, std::max(0.0, stack.past_nut)};
}

// The handle's sweep from `from` to `to` about the axis, as one convex outline: its
// far side two tangents about the arc the middle of its end runs along.
std::vector<Vec2> sweep(const Tools& tools, Mm flats, Radians from, Radians to) {
  const Mm near = tools.wrench_width / 2 * 0.8, far = tools.wrench_length, half = 0.35 * flats;
  const Radians middle = (from + to) / 2, spread = (to - from) / 2;
  std::vector<Vec2> outline;
  const auto add = [&](Mm r, Radians a, Mm aside) {
    outline.push_back({r * std::cos(a) - aside * std::sin(a), r * std::sin(a) + aside * std::cos(a)});
  };
  add(near, middle - spread, -half);
  add(far, middle - spread, -half);
  if (spread > 0) {
    add(far / std::cos(spread / 2), middle - spread / 2, 0);
    add(far / std::cos(spread / 2), middle + spread / 2, 0);
  }
  add(far, middle + spread, half);
  add(near, middle + spread, half);
  return outline;
}

// Where along the axis the jaws sit: their middle at the middle of the flats, off
// the face at least.
Mm jaws_from(const BoltFace& place, const Tools& tools) {
  return std::max(off_face, (place.height - tools.wrench_thickness) / 2);
}

Grip by_wrench(const Obstacles& obstacles, const Placement& frame, const BoltFace& place, const Tools& tools,
               Mm flats, int& try_first) {
  const Mm low = jaws_from(place, tools), high = low + tools.wrench_thickness;
  if (!obstacles.clear(round_outline(tools.wrench_width / 2), low, high, frame)) return Grip::none;
  std::array<bool, positions> free{};
  for (int k = 0; k < positions; ++k) {
    const int i = (try_first + k) % positions, before = (i + positions - 1) % positions;
    free[i] = obstacles.clear(sweep(tools, flats, i * step, (i + 1) * step), low, high, frame);
    if (!free[i] || !free[before]) continue;
    try_first = before;
    return Grip::swing;
  }
  if (free[try_first] && free[(try_first + positions - 1) % positions]) return Grip::swing;
  if (std::find(free.begin(), free.end(), true) != free.end()) return Grip::short_swing;
  for (int i = 0; i < 2 * positions; ++i)
    if (obstacles.clear(sweep(tools, flats, i * step / 2, i * step / 2), low, high, frame)) return Grip::held;
  return Grip::none;
}

const char* word(BoltEnd end) { return end == BoltEnd::head ? "head" : "nut"; }

const char* word(Grip grip) {
  switch (grip) {
    case Grip::none:
      return "no tool goes on";
    case Grip::held:
      return "a wrench goes on but does not swing";
    case Grip::short_swing:
      return "a wrench swings 30 degrees only";
    case Grip::swing:
      return "a wrench swings 60 degrees";
    case Grip::socket:
      break;
  }
  return "a socket goes on";
}

void report(const Scene& scene, int index, Grip head, Grip nut, std::vector<Finding>& findings) {
  const Bolt& bolt = scene.bed.bolts[index];
  const Grip best = std::max(head, nut), other = std::min(head, nut);
  const bool turned = best >= Grip::short_swing, easily = best >= Grip::swing && other >= Grip::held;
  if (easily) return;
  // The end where room would do most: the one that is worse off.
  const BoltEnd end = head <= nut ? BoltEnd::head : BoltEnd::nut;
  const BoltFace place = place_of(bolt, scene.stacks[index], end);
  Finding f = finding_of("REACH", turned ? Severity::warn : Severity::stop, bolt, place.face);
  f.measured = best == Grip::short_swing ? 30 : best >= Grip::swing ? 60 : 0;
  f.limit = turned ? 60 : 30;
  f.margin = f.measured - f.limit;
  f.unit = "degrees";
  f.message = fmt::format("on the head {}; on the nut {}", word(head), word(nut));
  const Tools tools = usual_tools(bolt.size);
  const Figures& say = scene.figures;
  f.remedy = fmt::format(
      "leave {} of room round the {} for a socket, or {} beyond its washer and {} to one side for a wrench",
      say.say(tools.socket_outside), word(end), say.say(jaws_from(place, tools) + tools.wrench_thickness),
      say.say(tools.wrench_length));
  if (turned && other == Grip::none) {
    f.margin = -1;
    f.measured = 1;
    f.limit = 2;
    f.unit = "ends reached";
    f.remedy += fmt::format("; or weld the {} fast before assembly", word(end));
  }
  findings.push_back(std::move(f));
}

}  // namespace

Grip grip_on(const Scene& scene, int index, BoltEnd end, int& try_first) {
  const Bolt& bolt = scene.bed.bolts[index];
  const BoltFace place = place_of(bolt, scene.stacks[index], end);
  const Tools tools = usual_tools(bolt.size);
  const Placement frame = frame_along(place.face, place.axis);
  // A socket's hollow takes what stands past the nut; deeper sockets are longer.
  const Mm tall =
      std::max(tools.socket_length, place.height + place.beyond + tools.socket_length / 2) + behind_socket;
  const std::vector<Vec2> socket = round_outline(tools.socket_outside / 2);
  const auto counts = [&](int item) {
    const Item& it = scene.bed.items[item];
    return it.bolt != index && it.shown && !it.moving;
  };
  const Box3 socket_room = box_of(socket, off_face, tall, frame);
  if (Obstacles(scene, socket_room, counts).clear(socket, off_face, tall, frame)) return Grip::socket;
  const Box3 all = box_of(round_outline(tools.wrench_length * 1.1), 0,
                          jaws_from(place, tools) + tools.wrench_thickness, frame);
  return by_wrench(Obstacles(scene, all, counts), frame, place, tools, bolt.size.wrench, try_first);
}

void check_reach(const Scene& scene, std::vector<Finding>& findings) {
  std::map<std::tuple<Kind, Side, BoltEnd>, int> first;  // like bolts: kind and side of the bed
  for (std::size_t i = 0; i < scene.bed.bolts.size(); ++i) {
    const Bolt& b = scene.bed.bolts[i];
    if (!b.in_place) continue;
    const int bolt = static_cast<int>(i);
    const auto grip = [&](BoltEnd end) {
      return grip_on(scene, bolt, end, first[{b.id.kind, b.id.side, end}]);
    };
    const Grip head = grip(BoltEnd::head);
    report(scene, bolt, head, grip(BoltEnd::nut), findings);
  }
}

}  // namespace bedwright
