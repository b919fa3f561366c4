// Every weld line: a corner of steel of both its parts, as large as its fillet, along its
// whole length.
#include <algorithm>
#include <cmath>
#include <numbers>

#include "packet.h"

namespace inspector {
namespace {

struct Line {
  std::string a, b;
  Point from, to;
  double leg = 0;
};

enum class Seen { air, a, b };

// A fillet of that leg, looked at along its line: on a circle of 0.9 of the leg about its
// root there must be an opening of air with one part at one end and the other at the
// other, between 45 and 140 degrees wide (a tee or lap is 90; AWS D1.1 takes 60 to 135,
// from memory), and no more of a gap than a fillet is laid over (1/16 in, the same).
bool is_corner(const Section& a, const Section& b, double leg) {
  constexpr int steps = 72;
  std::vector<Seen> round;
  for (int i = 0; i < steps; ++i) {
    const double t = (i + 0.37) * 2 * std::numbers::pi / steps, x = 0.9 * leg * std::cos(t),
                 y = 0.9 * leg * std::sin(t);
    round.push_back(a.holds(x, y) ? Seen::a : b.holds(x, y) ? Seen::b : Seen::air);
  }
  for (int i = 0; i < steps; ++i) {
    if (round[i] == Seen::air || round[(i + 1) % steps] != Seen::air) continue;
    int wide = 0;
    while (wide < steps && round[(i + 1 + wide) % steps] == Seen::air) ++wide;
    const Seen other = round[(i + 1 + wide) % steps];
    const double angle = wide * 360.0 / steps;
    if (other != Seen::air && other != round[i] && angle >= 45 && angle <= 140) return true;
  }
  return false;
}

// Is there steel of the body within the widest gap of the root?
bool reaches(const Section& s, double gap) {
  for (int i = 0; i < 36; ++i) {
    const double t = (i + 0.37) * std::numbers::pi / 18;
    if (s.holds(gap * std::cos(t), gap * std::sin(t))) return true;
  }
  return s.holds(0.01, 0.01);
}

void check_line(const Packet& packet, const Line& line, Faults& faults) {
  constexpr double widest_gap = 25.4 / 16;
  const Item &a = packet.model.item(line.a), &b = packet.model.item(line.b);
  const double full = length(line.to - line.from);
  if (full < 4 * line.leg - 0.01)  // AISC 360 J2.2b
    faults.add("weld {} to {}: {:.1f} mm long, four legs are {:.1f} mm, {}", line.a, line.b, full,
               4 * line.leg, place(line.from));
  // A fillet's ends taper over a leg.
  const double inset = std::min(line.leg, full / 3);
  if (full < 2) return;
  const Point along = unit(line.to - line.from);
  const auto [u, v] = square_to(along);
  const int stretches = std::clamp(static_cast<int>(full / 25), 2, 12);
  for (int i = 0; i <= stretches; ++i) {
    const double at = inset + (full - 2 * inset) * i / stretches;
    const Point root = line.from + at * along;
    const Section of_a(a.body, root, u, v), of_b(b.body, root, u, v);
    for (const auto& [section, name] : {std::pair(&of_a, &line.a), std::pair(&of_b, &line.b)})
      if (!reaches(*section, widest_gap)) {
        faults.add("weld {} to {}: no steel of {} {:.1f} mm along it, {}", line.a, line.b, *name, at,
                   place(root));
        return;
      }
    if (!is_corner(of_a, of_b, line.leg)) {
      faults.add("weld {} to {}: no corner for a fillet of {:.1f} mm {:.1f} mm along it, {}", line.a, line.b,
                 line.leg, at, place(root));
      return;
    }
  }
}

// A bought thing's block that stands on the other part from below, as a spring under a
// main: how much of its upper face has steel over it.
double under(const Solid& block, const Body& other) {
  const Point low = block.box().low, high = block.box().high;
  const Section cut(other, {0, 0, high.z + 0.3}, {1, 0, 0}, {0, 1, 0});
  int on = 0;
  constexpr int grid = 12;
  for (int i = 0; i < grid; ++i)
    for (int k = 0; k < grid; ++k)
      on +=
          cut.holds(low.x + (i + 0.5) / grid * (high.x - low.x), low.y + (k + 0.5) / grid * (high.y - low.y));
  return static_cast<double>(on) / (grid * grid);
}

void check_bought(const Packet& packet, const std::string& a, const std::string& b, Faults& faults) {
  const Item &held = packet.model.item(a), &by = packet.model.item(b);
  if (const Apart gap = apart(held.body, by.body, 50); gap.distance > 1)
    return faults.add("{} is to be fixed to {} and stands {:.1f} mm off it", a, b, gap.distance);
  for (const Solid& block : held.body) {
    if (std::abs(block.box().high.z - by.box.low.z) > 0.5) continue;
    const double part = under(block, by.body);
    if (part > 0 && part < 0.9)
      faults.add("{}: {:.0f} % of what is fixed under {} has steel over it, {}", a, 100 * part, b,
                 place(block.box().high));
  }
}

Point point_at(const Table& t, std::size_t r, const char* end) {
  const std::string e = end;
  return {t.number(r, e + " x mm"), t.number(r, e + " y mm"), t.number(r, e + " z mm")};
}

}  // namespace

void check_welds(const Packet& packet, Faults& faults) {
  const Table& t = packet.welds;
  for (std::size_t r = 0; r < t.rows(); ++r) {
    const std::string &a = t.text(r, "part"), &b = t.text(r, "to");
    if (t.text(r, "from x mm").empty()) {
      if (t.text(r, "kind") == "as its maker says")
        check_bought(packet, a, b, faults);
      else
        faults.add("weld {} to {}: {}", a, b, t.text(r, "kind"));
      continue;
    }
    check_line(packet, {a, b, point_at(t, r, "from"), point_at(t, r, "to"), t.number(r, "leg mm")}, faults);
  }
}

}  // namespace inspector
