// Everything hangs together: by welds, by bolts, or as the list of what moves says; and
// nothing the shop makes hangs on one bolt, about which it could turn.
#include <algorithm>
#include <map>
#include <numeric>
#include <set>

#include "packet.h"

namespace inspector {
namespace {

class Groups {
 public:
  explicit Groups(std::size_t count) : parent_(count) { std::iota(parent_.begin(), parent_.end(), 0); }
  int of(int i) { return parent_[i] == i ? i : parent_[i] = of(parent_[i]); }
  void join(int a, int b) { parent_[of(a)] = of(b); }

 private:
  std::vector<int> parent_;
};

// What is welded together, and how many bolts hold it to anything else.
void check_turning(const Packet& packet, Faults& faults) {
  const Model& model = packet.model;
  Groups welded(model.items.size());
  for (std::size_t r = 0; r < packet.welds.rows(); ++r) {
    const auto p = model.by_name.find(packet.welds.text(r, "part")),
               q = model.by_name.find(packet.welds.text(r, "to"));
    if (p != model.by_name.end() && q != model.by_name.end()) welded.join(p->second, q->second);
  }
  std::map<int, std::set<std::string>> bolts;
  for (const Bolt& bolt : packet.bolts) {
    std::set<int> held;
    for (const Item* ply : bolt.plies) held.insert(welded.of(model.by_name.at(ply->name)));
    for (const int group : held)
      if (held.size() > 1) bolts[group].insert(bolt.name);
  }
  for (std::size_t i = 0; i < model.items.size(); ++i) {
    const Item& item = model.items[i];
    const std::string& origin = packet.origin.at(item.part->name);
    if (origin == "bought" || origin == "kit") continue;
    const auto& by = bolts[welded.of(static_cast<int>(i))];
    if (by.size() == 1)
      faults.add("{}: only {} holds it, it can turn, {}", item.name, *by.begin(), place(item.origin));
  }
}

// A rail that lies on more than two welded tabs rocks, unless it is shimmed: no three
// tabs are welded to one height (common practice, no published source).
void check_shims(const Packet& packet, Faults& faults) {
  const Table hardware(packet.folder / "lists/hardware.csv");
  for (std::size_t r = 0; r < hardware.rows(); ++r)
    if (hardware.text(r, "item").starts_with("shim")) return;
  std::set<std::string> welded;
  for (std::size_t r = 0; r < packet.welds.rows(); ++r) welded.insert(packet.welds.text(r, "part"));
  std::map<std::string, int> rests;
  for (const Bolt& bolt : packet.bolts)
    for (const Item* rail : bolt.plies)
      if (packet.form_of(*rail) == "rail" &&
          std::any_of(bolt.plies.begin(), bolt.plies.end(),
                      [&](const Item* p) { return welded.count(p->name) > 0; }))
        ++rests[rail->name];
  for (const auto& [rail, count] : rests)
    if (count > 2) {
      faults.add("{} lies on {} welded tabs, and there are no shims on the hardware list", rail, count);
      return;
    }
}

// What stands clamped on something stands on it with its whole foot.
void check_seat(const Packet& packet, std::size_t row, Faults& faults) {
  const Table& t = packet.moving;
  const Point low{t.number(row, "x from mm"), t.number(row, "y from mm"), t.number(row, "z from mm")},
      high{t.number(row, "x to mm"), t.number(row, "y to mm"), 0};
  const Section seat(packet.model.item(t.text(row, "on")).body, {0, 0, low.z - 0.3}, {1, 0, 0}, {0, 1, 0});
  constexpr int grid = 12;
  int on = 0;
  for (int i = 0; i < grid; ++i)
    for (int k = 0; k < grid; ++k)
      on += seat.holds(low.x + (i + 0.5) / grid * (high.x - low.x),
                       low.y + (k + 0.5) / grid * (high.y - low.y));
  if (on < grid * grid)
    faults.add("{}: {:.0f} % of its foot stands on {}, {}", t.text(row, "item"), 100.0 * on / (grid * grid),
               t.text(row, "on"), place(low));
}

}  // namespace

void check_held(const Packet& packet, Faults& faults) {
  const Model& model = packet.model;
  Groups groups(model.items.size());
  const auto join = [&](const std::string& a, const std::string& b) {
    const auto p = model.by_name.find(a), q = model.by_name.find(b);
    if (p == model.by_name.end() || q == model.by_name.end())
      faults.add("{} and {} are to be joined, and the model has not both", a, b);
    else
      groups.join(p->second, q->second);
  };
  for (std::size_t r = 0; r < packet.welds.rows(); ++r)
    join(packet.welds.text(r, "part"), packet.welds.text(r, "to"));
  for (const Bolt& bolt : packet.bolts) {
    for (const Item* ply : bolt.plies) join(bolt.name, ply->name);
    for (const Piece& piece : bolt.pieces) join(bolt.name, piece.item->name);
  }
  std::set<std::string> rides;  // on the rails: see moving.cpp
  for (std::size_t r = 0; r < packet.moving.rows(); ++r) {
    const std::string &item = packet.moving.text(r, "item"), &on = packet.moving.text(r, "on");
    if (on == "rails") rides.insert(item);
    if (on.empty() || on == "rails") continue;
    join(item, on);
    const Apart gap = apart(model.item(item).body, model.item(on).body, 20);
    if (gap.distance > 0.5) faults.add("{} is to sit on {} and is {:.1f} mm from it", item, on, gap.distance);
    if (packet.moving.text(r, "state") == "clamped") check_seat(packet, r, faults);
  }
  check_turning(packet, faults);
  check_shims(packet, faults);
  std::map<int, int> size;
  for (std::size_t i = 0; i < model.items.size(); ++i) ++size[groups.of(static_cast<int>(i))];
  int frame = -1;
  for (const auto& [group, count] : size)
    if (frame < 0 || count > size[frame]) frame = group;
  for (std::size_t i = 0; i < model.items.size(); ++i) {
    const Item& item = model.items[i];
    bool ride = false;
    for (const std::string& r : rides) ride = ride || item.name == r || item.name.starts_with(r + " ");
    if (!ride && groups.of(static_cast<int>(i)) != frame)
      faults.add("{}: nothing holds it to the rest, {}", item.name, place(item.origin));
  }
}

}  // namespace inspector
