// What moves: it keeps clear of everything on its way; the head stays on its rails and
// its stops stop it.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "packet.h"

namespace inspector {
namespace {

// Common practice, no published source: least room round what moves; least a stop's face
// and what strikes it have in common, across and up; room of a wheel before the rail's end.
constexpr double moving_room = 3;
constexpr double least_strike = 10;
constexpr double shares = 0.15;

struct Row {
  std::string item, piece, state, on, shape, moves;
  Point low, high;
  double from = 0, to = 0, lean_from = 0, lean_to = 0;
  bool is_head() const { return on == "rails" || state == "running" || state == "locked"; }
};

std::vector<Row> rows_of(const Packet& packet) {
  const Table& t = packet.moving;
  std::vector<Row> all;
  for (std::size_t r = 0; r < t.rows(); ++r)
    all.push_back({t.text(r, "item"),
                   t.text(r, "piece"),
                   t.text(r, "state"),
                   t.text(r, "on"),
                   t.text(r, "shape"),
                   t.text(r, "moves"),
                   {t.number(r, "x from mm"), t.number(r, "y from mm"), t.number(r, "z from mm")},
                   {t.number(r, "x to mm"), t.number(r, "y to mm"), t.number(r, "z to mm")},
                   t.number_or(r, "by from mm", 0),
                   t.number_or(r, "by to mm", 0),
                   t.number_or(r, "leans from deg", 0),
                   t.number_or(r, "leans to deg", 0)});
  return all;
}

Point way_of(const Row& row) {
  return row.moves == "x" ? Point{1, 0, 0} : row.moves == "y" ? Point{0, 1, 0} : Point{0, 0, 1};
}

using Flat = std::array<double, 2>;

std::vector<Flat> hull(std::vector<Flat> points) {
  std::sort(points.begin(), points.end());
  std::vector<Flat> out;
  for (int turn = 0; turn < 2; ++turn) {
    const std::size_t start = out.size();
    for (const Flat& p : points) {
      while (out.size() >= start + 2) {
        const Flat a = out[out.size() - 2], b = out.back();
        if ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0) break;
        out.pop_back();
      }
      out.push_back(p);
    }
    out.pop_back();
    std::reverse(points.begin(), points.end());
  }
  return out;
}

// The space a piece takes on its whole way. A leaning arm turns about the middle of its
// underside, to -y where the angle is positive; looked at every two degrees.
Body swept(const Row& row) {
  const Point a = row.low + row.from * way_of(row), b = row.high + row.to * way_of(row);
  if (row.lean_from != row.lean_to) {
    const double y = (row.low.y + row.high.y) / 2;
    Body body;
    const int steps = std::max(1, static_cast<int>(std::ceil((row.lean_to - row.lean_from) / 2)));
    for (int i = 0; i < steps; ++i) {
      std::vector<Flat> points;
      for (const int end : {i, i + 1}) {
        const double t =
            (row.lean_from + (row.lean_to - row.lean_from) * end / steps) * std::numbers::pi / 180;
        for (const double across : {row.low.y - y, row.high.y - y})
          for (const double up : {0.0, row.high.z - row.low.z})
            for (const double slide : {row.from, row.to})
              points.push_back({y + slide + across * std::cos(t) - up * std::sin(t),
                                row.low.z + across * std::sin(t) + up * std::cos(t)});
      }
      body.push_back(prism_along_x(hull(points), row.low.x, row.high.x));
    }
    return body;
  }
  if (row.shape == "cylinder along y") {
    const double r = (row.high.z - row.low.z) / 2;
    const Point c = 0.5 * (row.low + row.high);
    Body body;
    for (const double by : {row.from, row.to})
      body.push_back(cylinder({c.x, row.low.y, c.z + by}, {c.x, row.high.y, c.z + by}, r));
    if (row.to - row.from > 0.01)
      body.push_back(
          box_solid({row.low.x, row.low.y, c.z + row.from}, {row.high.x, row.high.y, c.z + row.to}));
    return body;
  }
  if (b.x - a.x < 0.01 || b.y - a.y < 0.01 || b.z - a.z < 0.01) return {};
  if (row.shape == "cylinder along z")
    return {cylinder({(a.x + b.x) / 2, (a.y + b.y) / 2, a.z}, {(a.x + b.x) / 2, (a.y + b.y) / 2, b.z},
                     (row.high.x - row.low.x) / 2)};
  return {box_solid(a, b)};
}

bool is_same_thing(const std::string& item, const std::string& row) {
  return item == row || item.starts_with(row + " ");
}

class Moving {
 public:
  Moving(const Packet& packet, Faults& faults) : packet_(packet), faults_(faults), rows_(rows_of(packet)) {
    for (const Row& row : rows_) {
      if (row.on == "rails") rails_for_ = row.item;
      if (row.state == "stops the head") stops_.push_back(&row);
    }
  }

  void check() {
    for (std::size_t i = 0; i < rows_.size(); ++i) {
      if (rows_[i].shape == "point" || rows_[i].item == "ground" || rows_[i].state == "stops the head")
        continue;
      bodies_.emplace_back(i, swept(rows_[i]));
    }
    for (const auto& [i, body] : bodies_) against_the_bed(rows_[i], body);
    for (std::size_t i = 0; i < bodies_.size(); ++i)
      for (std::size_t j = i + 1; j < bodies_.size(); ++j) against_each_other(bodies_[i], bodies_[j]);
    wheels();
    strikes();
  }

 private:
  bool moves(const std::string& item) const {
    return std::any_of(rows_.begin(), rows_.end(), [&](const Row& r) {
      return is_same_thing(item, r.item) && (!r.moves.empty() || r.is_head());
    });
  }

  bool is_rail_or_stop(const Item& item) const {
    if (std::any_of(stops_.begin(), stops_.end(), [&](const Row* s) { return s->item == item.name; }))
      return true;
    return packet_.form_of(item) == "rail";
  }

  void against_the_bed(const Row& row, const Body& body) {
    if (body.empty() || (row.moves.empty() && row.state != "locked" && row.state != "turns")) return;
    const Box box = box_of(body);
    for (const Item& item : packet_.model.items) {
      if (!box.meets(item.box, moving_room) || is_same_thing(item.name, row.item)) continue;
      const bool carries = item.name == row.on || (row.is_head() && is_rail_or_stop(item));
      const Shared s = shared(body, item.body, 5);
      if (s.depth > shares)
        faults_.add("{}, {} ({}): meets {}, {:.1f} mm deep at least, {}", row.item, row.piece, row.state,
                    item.name, s.depth, place(s.at));
      else if (!carries && !turns_on(row, item) && !moves_with(row, item))
        if (const Apart gap = apart(body, item.body, moving_room); gap.distance < moving_room - 0.05)
          faults_.add("{}, {} ({}): passes {} by {:.1f} mm, {:.1f} mm are wanted, {}", row.item, row.piece,
                      row.state, item.name, gap.distance, moving_room, place(gap.at));
    }
  }

  // A wheel on its axle, an axle under its wheels.
  bool turns_on(const Row& row, const Item& item) const {
    return std::any_of(rows_.begin(), rows_.end(),
                       [&](const Row& r) { return r.on == row.item && r.item == item.name; });
  }
  // What is bolted to what moves (a jack's foot and its own bolts).
  bool moves_with(const Row& row, const Item& item) const {
    return std::any_of(packet_.bolts.begin(), packet_.bolts.end(), [&](const Bolt& bolt) {
      const bool through = std::any_of(bolt.plies.begin(), bolt.plies.end(),
                                       [&](const Item* p) { return p->name == row.item; });
      return through &&
             (is_same_thing(item.name, bolt.name) ||
              std::any_of(bolt.plies.begin(), bolt.plies.end(), [&](const Item* p) { return p == &item; }));
    });
  }

  using Swept = std::pair<std::size_t, Body>;
  void against_each_other(const Swept& a, const Swept& b) {
    const Row &p = rows_[a.first], &q = rows_[b.first];
    if (p.item == q.item || p.on == q.item || q.on == p.item || a.second.empty() || b.second.empty()) return;
    if (!box_of(a.second).meets(box_of(b.second))) return;
    // On the road the head is locked and wheels bump; on the jacks the wheels hang.
    const auto works = [](const Row& r) { return r.state == "running" || r.state == "runs down"; };
    const auto tows = [](const Row& r) { return r.state == "locked"; };
    if ((works(p) && tows(q)) || (works(q) && tows(p))) return;
    if (const Shared s = shared(a.second, b.second, 5); s.depth > shares)
      faults_.add("{}, {} ({}), and {}, {} ({}), can meet, {}", p.item, p.piece, p.state, q.item, q.piece,
                  q.state, place(s.at));
  }

  bool rail_at(Point p) const {
    return std::any_of(packet_.model.items.begin(), packet_.model.items.end(), [&](const Item& item) {
      return packet_.form_of(item) == "rail" && item.box.holds(p) && holds(item.body, p);
    });
  }

  // Each wheel has rail under it all the way; a joint may be open under it, not more.
  void wheels() {
    bool any = false;
    for (const Row& row : rows_) {
      if (row.shape != "point" || row.on != "rails") continue;
      any = true;
      const double step = 5;
      int missing = 0;
      const int count = std::max(1, static_cast<int>((row.to - row.from) / step));
      for (int i = 0; i <= count; ++i) {
        const Point at = row.low + Point{row.from + (row.to - row.from) * i / count, 0, -0.3};
        missing = rail_at(at) ? 0 : missing + 1;
        if (missing > 1 || (missing == 1 && (i == 0 || i == count))) {
          faults_.add("{}, {} ({}): no rail under it {}", row.item, row.piece, row.state, place(at));
          break;
        }
      }
    }
    if (!any) faults_.add("moving.csv says of no wheel that it runs on the rails");
  }

  // At each end of its travel a piece of the running head meets both stops' faces; locked,
  // it stands between them.
  void strikes() {
    if (stops_.size() < 4) faults_.add("{} stops for the head, four are wanted", stops_.size());
    double middle = 0;
    for (const Row* s : stops_) middle += 0.5 * (s->low.x + s->high.x) / static_cast<double>(stops_.size());
    for (const Row* s : stops_) {
      const bool rear = s->low.x > middle;
      double best = -1e300, past = 1e300;
      for (const Row& row : rows_) {
        if (row.state != "running" || row.shape != "box") continue;
        const double face = rear ? s->low.x : s->high.x,
                     end = rear ? row.high.x + row.to : row.low.x + row.from;
        if (std::abs(end - face) > 2) continue;
        past = 0;
        best = std::max(best, std::min(std::min(row.high.y, s->high.y) - std::max(row.low.y, s->low.y),
                                       std::min(row.high.z, s->high.z) - std::max(row.low.z, s->low.z)));
      }
      if (past > 0)
        faults_.add("{}: no piece of the head comes to it at the end of its travel", s->item);
      else if (best < least_strike)
        faults_.add("{}: meets what strikes it by {:.1f} mm, {:.1f} mm across and up are wanted", s->item,
                    best, least_strike);
      for (const Row& row : rows_)
        if (row.state == "locked" && row.on == "rails" &&
            (rear ? row.high.x > s->low.x : row.low.x < s->high.x))
          faults_.add("{}, locked: its wheel at x {:.1f} stands outside {}", row.item, row.low.x, s->item);
    }
  }

  const Packet& packet_;
  Faults& faults_;
  std::vector<Row> rows_;
  std::vector<const Row*> stops_;
  std::vector<Swept> bodies_;
  std::string rails_for_;
};

}  // namespace

void check_moving(const Packet& packet, Faults& faults) { Moving(packet, faults).check(); }

}  // namespace inspector
