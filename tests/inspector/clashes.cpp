// Nothing that is not joined shares space, or comes nearer than how the two are placed.
#include <algorithm>
#include <map>
#include <set>

#include "packet.h"

namespace inspector {
namespace {

// How near two things placed by tape, gauge and hole may come to each other: 1/32 in
// either way (common practice, no published source). A bolt may stand so far off the
// middle of its hole too.
constexpr double placed_within = 25.4 / 32;
constexpr double shares = 0.15;   // deeper than the chords of round things
constexpr double tip_room = 1.5;  // beyond a bolt's tip, along it: the weld's pull and the main's camber

using Pair = std::pair<int, int>;
Pair pair(int a, int b) { return {std::min(a, b), std::max(a, b)}; }

struct Joins {
  std::set<Pair> welded, bolted, resting;
  std::set<int> riders;                                 // on the rails: see moving.cpp
  std::map<Pair, Point> axis;                           // of a bolt two things share
  std::set<std::pair<const Part*, const Part*>> alike;  // parts of which some copies are bolted together
  std::map<int, std::set<int>> fastened;                // what each is bolted or welded to
};

Joins joins_of(const Packet& packet) {
  Joins j;
  const auto index = [&](const std::string& name) { return packet.model.by_name.at(name); };
  for (std::size_t r = 0; r < packet.welds.rows(); ++r) {
    const Pair p = pair(index(packet.welds.text(r, "part")), index(packet.welds.text(r, "to")));
    j.welded.insert(p);
    j.fastened[p.first].insert(p.second), j.fastened[p.second].insert(p.first);
  }
  for (const Bolt& bolt : packet.bolts)
    for (const Item* a : bolt.plies)
      for (const Item* b : bolt.plies) {
        if (a == b) continue;
        const Pair p = pair(index(a->name), index(b->name));
        j.bolted.insert(p);
        j.axis[p] = bolt.direction;
        j.alike.insert({a->part, b->part});
        j.fastened[p.first].insert(p.second), j.fastened[p.second].insert(p.first);
      }
  for (std::size_t r = 0; r < packet.moving.rows(); ++r) {
    const std::string &item = packet.moving.text(r, "item"), &on = packet.moving.text(r, "on");
    if (on == "rails")
      for (std::size_t i = 0; i < packet.model.items.size(); ++i)
        if (packet.model.items[i].name == item || packet.model.items[i].name.starts_with(item + " "))
          j.riders.insert(static_cast<int>(i));
    if (!on.empty() && packet.model.by_name.count(item) && packet.model.by_name.count(on))
      j.resting.insert(pair(index(item), index(on)));
  }
  return j;
}

Body moved(const Body& body, Point by) {
  Body out;
  for (const Solid& s : body) out.push_back(s.moved(by));
  return out;
}

// Head, washers, nut and tip as round things, larger by what the bolt may be off.
std::vector<std::pair<std::string, Body>> round_pieces(const Bolt& bolt) {
  std::vector<std::pair<std::string, Body>> all;
  const auto along = [&](double t) { return bolt.seat + t * bolt.direction; };
  for (const Piece& p : bolt.pieces) {
    const bool is_bolt = &p == &bolt.pieces[0], six_sided = is_bolt || &p == bolt.nut;
    double radius = 0;
    for (const Face& f : p.faces) radius = std::max(radius, f.outer);
    if (six_sided) radius *= 1.1547;
    const double to = is_bolt ? 0 : p.to;
    all.emplace_back(is_bolt ? bolt.name + " head" : p.item->name,
                     Body{cylinder(along(p.from + 0.05), along(to - 0.05), radius + placed_within)});
  }
  if (bolt.nut)
    all.emplace_back(bolt.name + " tip", Body{cylinder(along(bolt.nut->to + 0.05), along(bolt.tip + tip_room),
                                                       bolt.diameter / 2 + placed_within)});
  return all;
}

void check_hardware(const Packet& packet, Faults& faults) {
  for (std::size_t i = 0; i < packet.bolts.size(); ++i) {
    const Bolt& bolt = packet.bolts[i];
    const auto own = [&](const Item& item) {
      return std::any_of(bolt.pieces.begin(), bolt.pieces.end(),
                         [&](const Piece& p) { return p.item == &item; });
    };
    for (const auto& [name, body] : round_pieces(bolt)) {
      const Box box = box_of(body);
      for (const Item& item : packet.model.items) {
        if (!box.meets(item.box) || own(item)) continue;
        // Two bolts' pieces are each other's neighbours once, not twice.
        if (packet.is_hardware(item) && item.name < bolt.name) continue;
        const Shared s = shared(body, item.body, 0.3);
        if (s.depth > 0.08)
          faults.add("{}: comes within {:.2f} mm of {} or into it, {}", name, placed_within, item.name,
                     place(s.at));
      }
    }
    // The shank itself, in whatever it has no hole in; the holes it has are bolts.cpp's.
    const Item& shank = *bolt.pieces[0].item;
    for (const Item& item : packet.model.items) {
      const bool ply = std::find(bolt.plies.begin(), bolt.plies.end(), &item) != bolt.plies.end();
      if (own(item) || ply || !shank.box.meets(item.box)) continue;
      if (packet.is_hardware(item) && item.name < bolt.name) continue;
      const Shared s = shared(shank.body, item.body, 1);
      if (s.depth > shares)
        faults.add("{}: goes through {} where it has no hole, {}", bolt.name, item.name, place(s.at));
    }
  }
}

void check_pair(const Packet& packet, const Joins& joins, int a, int b, Faults& faults) {
  const Item &p = packet.model.items[a], &q = packet.model.items[b];
  const Pair both = pair(a, b);
  if (const Shared s = shared(p.body, q.body, 20); s.depth > shares)
    return faults.add("{} and {} share space, {:.2f} mm deep at least, {}", p.name, q.name, s.depth,
                      place(s.at));
  if (joins.riders.count(a) || joins.riders.count(b)) return;
  if (joins.welded.count(both) || joins.resting.count(both)) return;
  if (joins.bolted.count(both)) {
    for (const Point& way : square_to(joins.axis.at(both)))
      for (const double side : {1.0, -1.0})
        if (const Shared s = shared(moved(p.body, side * placed_within * way), q.body, 0.3); s.depth > 0.1)
          return faults.add("{} and {}, bolted together, have less than {:.2f} mm beside each other, {}",
                            p.name, q.name, placed_within, place(s.at));
    return;
  }
  const Apart gap = apart(p.body, q.body, placed_within);
  if (gap.distance >= placed_within - 0.01) return;
  // One lies on the other as on those it is bolted to: a rail on a tab too many.
  if (gap.distance < 0.01 && joins.alike.count({p.part, q.part})) return;
  // Held by one and the same third thing, end to end: rail sections under a gusset.
  if (gap.distance < 0.01 && joins.fastened.count(a) && joins.fastened.count(b)) {
    const auto &of_a = joins.fastened.at(a), &of_b = joins.fastened.at(b);
    if (std::any_of(of_a.begin(), of_a.end(), [&](int third) { return of_b.count(third) > 0; })) return;
  }
  faults.add("{} and {} are not joined and come within {:.2f} mm of each other, {}", p.name, q.name,
             gap.distance, place(gap.at));
}

}  // namespace

void check_clashes(const Packet& packet, Faults& faults) {
  const Joins joins = joins_of(packet);
  const auto& items = packet.model.items;
  for (std::size_t i = 0; i < items.size(); ++i) {
    if (packet.is_hardware(items[i])) continue;
    for (std::size_t j = i + 1; j < items.size(); ++j)
      if (!packet.is_hardware(items[j]) && items[i].box.meets(items[j].box, placed_within))
        check_pair(packet, joins, static_cast<int>(i), static_cast<int>(j), faults);
  }
  check_hardware(packet, faults);
}

}  // namespace inspector
