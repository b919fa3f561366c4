// Where the axle group may stand: on the tape's marks, with its hangers on free main
// and its wheels clear of everything above them.
#include <algorithm>
#include <cmath>

#include "loads/loads.h"

namespace bedwright {
namespace {

// Along the bed; ends are free.
struct Stretch {
  Mm from, to;
  bool holds(Mm x) const { return x > from && x < to; }
};

// What a spring hanger's weld needs to itself under the main: common practice, no
// published source.
constexpr Mm hanger_room = inch;

// Stretches of main where no hanger can be welded.
std::vector<Stretch> taken_by_frame(const Job& job, const Bed& bed) {
  std::vector<Stretch> all;
  const FrameJack& j = job.frame.jack;
  for (Mm x : job.order.jacks)
    all.push_back({x - j.plate_length / 2 - hanger_room, x + j.plate_length / 2 + hanger_room});
  const Mm flange = job.catalog.section(job.frame.cross_member.section.text)->flange;
  for (const Item& item : bed.items)
    if (item.id.kind == Kind::cross_member)
      all.push_back({item.placement.origin.x - flange - hanger_room, item.placement.origin.x + hanger_room});
  return all;
}

// Whether the item goes where the axle goes.
bool goes_along(Kind kind) { return kind == Kind::wheel || kind == Kind::axle; }

// Places of the group's centre at which a wheel at full bump, a spring or an axle tube
// would meet a part, by their boxes: clamps and log stops in every pose, bunks, jacks,
// cross members. The springs' seats on the mains are meant to meet.
std::vector<Stretch> shut_out(const Job& job, const Bed& bed, Mm axle_x) {
  struct Gear {
    Box3 box;
    Mm room;
  };
  std::vector<Gear> gear;
  std::vector<Box3> parts;
  for (std::size_t i = 0; i < bed.items.size(); ++i) {
    const Item& item = bed.items[i];
    if (item.bolt >= 0 || item.id.kind == Kind::main) continue;
    if (!goes_along(item.id.kind)) {
      parts.push_back(bounds(bed, static_cast<int>(i)));
      continue;
    }
    for (const Box3& box : block_bounds(bed, static_cast<int>(i)))
      gear.push_back({box, item.moving ? job.order.limits.moving_clearance : 0});
  }
  std::vector<Stretch> all;
  for (const auto& [g, room] : gear)
    for (const Box3& p : parts) {
      const bool level = g.low.z < p.high.z + room && p.low.z < g.high.z + room,
                 beside = g.low.y < p.high.y + room && p.low.y < g.high.y + room;
      if (level && beside)
        all.push_back({p.low.x - room - (g.high.x - axle_x), p.high.x + room - (g.low.x - axle_x)});
    }
  return all;
}

struct Ground {
  std::vector<Stretch> hangers, centre;
  Mm start, end;
};

bool clear(const FrameAxle& a, const Ground& ground, Mm x) {
  const auto in = [](const std::vector<Stretch>& all, Mm at) {
    return std::any_of(all.begin(), all.end(), [&](const Stretch& s) { return s.holds(at); });
  };
  if (in(ground.centre, x)) return false;
  for (int i = 0; i < a.count; ++i)
    for (double side : {-0.5, 0.5}) {
      const Mm hanger = x + (i - (a.count - 1) / 2.0) * a.spread + side * a.spring_length;
      if (hanger < ground.start || hanger > ground.end || in(ground.hangers, hanger)) return false;
    }
  return true;
}

}  // namespace

// Whole inches or centimetres, which are marks of every tape; single marks when none of those will do.
std::vector<Mm> axle_places(const Job& job, const Bed& bed, const Tow& tow) {
  constexpr std::size_t most = 5;
  if (tow.axle_from > tow.axle_to) return {};
  const Figures figures = job.order.order.figures();
  const Ground ground{taken_by_frame(job, bed), shut_out(job, bed, tow.axle_x), main_start(job),
                      main_end(job, bed)};
  const Mm middle = (tow.axle_from + tow.axle_to) / 2;
  for (Mm grid : {figures.place_step(), figures.mark}) {
    std::vector<Mm> places;
    for (Mm x = std::ceil(tow.axle_from / grid) * grid; x <= tow.axle_to; x += grid)
      if (clear(job.frame.axle, ground, x)) places.push_back(x);
    std::stable_sort(places.begin(), places.end(),
                     [&](Mm p, Mm q) { return std::abs(p - middle) < std::abs(q - middle); });
    if (places.size() > most) places.resize(most);
    if (!places.empty()) return places;
  }
  return {};
}

}  // namespace bedwright
