// The base bed as a person would work it with a table of sections and a pocket calculator:
// its parts weighed from what the files in params/ state and the AISC Manual's weights a
// foot (tables 1-5 and 1-7, from memory), and a beam on two supports by balance alone. It
// shares nothing with src/loads. Inches and pounds, places behind the track's front end.
#pragma once

#include <algorithm>
#include <cmath>
#include <initializer_list>
#include <string>
#include <vector>

namespace bedwright::testing {

struct Lump {
  double from = 0, to = 0, pounds = 0;  // evenly between them
  double middle() const { return (from + to) / 2; }
};
using Lumps = std::vector<Lump>;

inline Lumps both(std::initializer_list<Lumps> all) {
  Lumps sum;
  for (const Lumps& some : all) sum.insert(sum.end(), some.begin(), some.end());
  return sum;
}
inline double weight(const Lumps& all) {
  double sum = 0;
  for (const Lump& l : all) sum += l.pounds;
  return sum;
}
inline double moment(const Lumps& all) {
  double sum = 0;
  for (const Lump& l : all) sum += l.pounds * l.middle();
  return sum;
}
inline double centre(const Lumps& all) { return moment(all) / weight(all); }
inline Lumps times(Lumps all, double factor) {
  for (Lump& l : all) l.pounds *= factor;
  return all;
}

inline constexpr double plate_weight = 0.2836;  // lb/in3: 490 lb/ft3

// C6x8.2 mains and ends, C4x5.4 across, C5x6.7 tongue, jacks, coupler, tongue jack, tabs.
inline Lumps frame_of_base(const std::vector<double>& jacks = {17, 120, 223}) {
  Lumps s;
  const auto add = [&](double pounds, double at) { s.push_back({at, at, pounds}); };
  s.push_back({0, 240, 2 * 20 * 8.2});
  add(44.0 / 12 * 8.2, -0.96);   // front member, its flange ahead of the mains
  add(44.0 / 12 * 8.2, 240.96);  // rear member
  for (int i = 1; i <= 6; ++i) add(43.6 / 12 * 5.4, 240.0 * i / 7);  // cross members, 36 in at most
  s.push_back({-38, 4.75, 2 * (38 + 4.75) / 0.9063 / 12 * 6.7});     // tongue, 25 degrees
  add(9, -38);                                                       // coupler
  add(13, -24);                                                      // tongue jack
  add(8 * 14 * 0.375 * plate_weight, -24);                           // its plate
  for (const double x : jacks)
    add(2 * (14 + 6 * 4.25 * 0.375 * plate_weight + 1.2), x);                   // with plates and bolts
  add(2 * 32 * 0.25 * plate_weight, 237);                                       // corner gussets, 8 x 8 / 2
  const double tab = ((3 * 4.375 - 0.5) * 0.5 + 3 * 2 * 0.375) * plate_weight;  // less its slot
  for (int section = 0; section < 3; ++section)
    for (const double at : {5.5, 28.5, 51.5, 74.5}) add(2 * tab, 80 * section + at);
  return s;
}

// Inch pounds to the right of the centre line: what stops and clamps weigh out there.
inline constexpr double aside_of_track = -21 * 15 + 18 * 14;

// The kit's sets: 2 in from a section's ends, else at every 20 in.
inline constexpr double bunks_of_base[] = {2, 20, 40, 60, 82, 100, 120, 140, 162, 180, 200, 220, 238};

// L4x3x1/4 rails at 5.8 lb/ft, L2-1/2x2-1/2x3/16 bunks at 3.07 lb/ft, and what sits on them.
inline Lumps track_of_base() {
  Lumps s;
  const auto add = [&](double pounds, double at) { s.push_back({at, at, pounds}); };
  s.push_back({0, 240, 2 * 20 * 5.8});
  for (double bunk : bunks_of_base) add(47.5 / 12 * 3.07 + 0.4, bunk);  // with two bolts
  add(4 * (9 * 1.5 * 0.25 * plate_weight + 0.5), 120);                  // joint gussets and their bolts
  for (const double stop : {8.75, 231.25}) add(2 * 2.5, stop);          // track stops
  for (const double stop : {60.0, 120.0, 180.0}) add(7, stop);          // log stops, 15 in to the left
  for (const double clamp : {82.0, 162.0}) add(9, clamp);               // clamps, 14 in to the right
  add(24 * 0.22, 120);                                                  // track bolts
  return s;
}

inline Lumps axles_at(std::initializer_list<double> places) {
  Lumps s;
  for (double x : places) s.push_back({x, x, 165 + 2 * 48});
  return s;
}

// A straight log of even thickness that is laid on: what hand sums know. Of its kind the heaviest:
// a fifth more than the table says (FPL Technical Note 218).
inline const std::vector<std::string> straight_log{"work.log.crook=0 in", "work.log.taper=0 in",
                                                   "work.landing=1"};
inline constexpr double heaviest_of_its_kind = 1.2;

// Free at its ends, on supports at a and b; downward loads.
class TwoSupports {
 public:
  TwoSupports(double a, double b, Lumps loads) : a_(a), b_(b), loads_(std::move(loads)) {}
  double rear() const { return (moment(loads_) - weight(loads_) * a_) / (b_ - a_); }
  double front() const { return weight(loads_) - rear(); }
  // Sagging positive.
  double bending(double x) const {
    double m = front() * std::max(0.0, x - a_) + rear() * std::max(0.0, x - b_);
    for (const Lump& l : loads_) m -= ahead(l, x) * lever(l, x);
    return m;
  }
  // Just beside x, on its rear side.
  double shear(double x) const {
    double v = (x >= a_ ? front() : 0) + (x >= b_ ? rear() : 0);
    for (const Lump& l : loads_) v -= ahead(l, x);
    return v;
  }
  // The curve of M / EI summed twice by trapezia; downward positive.
  std::vector<double> down(double from, double to, double ei, int pieces = 4000) const {
    const double step = (to - from) / pieces;
    std::vector<double> w(1, 0);
    double slope = 0, before = bending(from) / ei;
    for (int i = 1; i <= pieces; ++i) {
      const double now = bending(from + i * step) / ei, next = slope - step * (before + now) / 2;
      w.push_back(w.back() + step * (slope + next) / 2);
      slope = next, before = now;
    }
    const auto at = [&](double x) { return w[static_cast<std::size_t>(std::lround((x - from) / step))]; };
    const double at_a = at(a_), tilt = (at(b_) - at_a) / (b_ - a_);
    for (int i = 0; i <= pieces; ++i) w[static_cast<std::size_t>(i)] -= at_a + tilt * (from + i * step - a_);
    return w;
  }
  double most_bending(double from, double to) const {
    double most = 0;
    for (double x = from; x <= to; x += 0.125) most = std::max(most, std::abs(bending(x)));
    return most;
  }

 private:
  static double ahead(const Lump& l, double x) {
    if (x <= l.from) return 0;
    return l.to > l.from && x < l.to ? l.pounds * (x - l.from) / (l.to - l.from) : l.pounds;
  }
  static double lever(const Lump& l, double x) { return x - (l.from + std::min(x, l.to)) / 2; }
  double a_, b_;
  Lumps loads_;
};

inline Lumps head_at_lock(double pounds, double at = 104, double wheel_base = 26) {
  return {{at - wheel_base / 2, at - wheel_base / 2, pounds / 2},
          {at + wheel_base / 2, at + wheel_base / 2, pounds / 2}};
}

// Lumps about the axle: tongue load on the ball, 41 in ahead of the mains.
inline double tongue_of(const Lumps& all, double axle) {
  return weight(all) * (axle - centre(all)) / (axle + 41);
}

// The mains as one beam, from the ball to the two hangers 13 in ahead of the axle and
// behind it; each takes half of what is neither gear nor on the tongue.
inline double bent_by_hand(const Lumps& carried, double gear, const std::vector<double>& hangers,
                           double axle) {
  const Lumps all = both({carried, {{axle, axle, gear}}});
  const double tongue = tongue_of(all, axle),
               each = (weight(carried) - tongue) / static_cast<double>(hangers.size());
  double most = 0;
  for (double x = 0; x <= 240; x += 0.125) {
    double m = tongue * (x + 41);
    for (const Lump& l : carried) {
      const double end = std::min(x, l.to);
      if (x <= l.from) continue;
      const double share = l.to > l.from ? (end - l.from) / (l.to - l.from) : 1;
      m -= l.pounds * share * (x - (l.from + end) / 2);
    }
    for (double h : hangers) m += each * std::max(0.0, x - h);
    most = std::max(most, std::abs(m));
  }
  return most;
}

inline constexpr double s_c6x82 = 4.38, s_c5x67 = 3.00;  // in3, AISC Manual table 1-5

// Over a bump of twice the load at rest, on the tab at 85-1/2 in of the right rail, two tabs a
// section: the head's wheels at 91 and 117 in, 3 in to that side of a gauge of 49, the rail's 5.8
// lb/ft, and a bolt's part of the rest of the track. The wheels ride the upright leg's middle,
// 1-1/8 in outside the hole. Of what that turns the rail and its bunks hold 0.227,
// as the program shares it (no outside figure), the tab the rest. Pounds, inch pounds.
struct TabOverABump {
  double down = 0, turning = 0;
  TabOverABump() {
    const double wheel = 305 * (0.5 + 3.0 / 49);
    const Lumps wheels{{91, 91, wheel}, {117, 117, wheel}};
    const TwoSupports under_wheels(85.5, 154.5, wheels);
    const TwoSupports rail(85.5, 154.5, both({wheels, {{80, 160, 5.8 * 80 / 12}}}));
    down = 2 * (rail.front() + weight(track_of_base()) / 3 / 4);
    turning = 2 * under_wheels.front() * 1.125 * (1 - 0.227);
  }
};

// One tongue channel's fillets as lines (elastic method, AISC Manual part 8). Its web leaves the
// centre line 1.931 in (flange 1.75 in at 25 degrees) and 3 mm at the front cut, and so passes
// under the main's flange, 20.08 to 22 in out, from 0.669 in behind the mains' ends; the toe's
// edge stays inside. Fillets 3/16 in: all of a leg must lie under the flange, which ends the outer
// run where the web is 21.83 in out. The fillet across the tongue's rear end, which the shop lays
// too, is not counted on. Inches, psi.
struct TongueWelds {
  double leg = 3.0 / 16, length = 0, middle = 0, far = 0, inertia = 0;
  TongueWelds() {
    const double tan25 = 0.4663, cos25 = 0.9063, web = 1.75 / cos25 + 3 / 25.4;
    const double starts = (22 - 1.92 - web) / tan25 - 38, ends = (22 - leg * cos25 - web) / tan25 - 38;
    struct Line {
      double length, from, to;
    };
    const Line lines[] = {
        {1.92 / cos25, -1.92, 0}, {1.92 / cos25, -1.92, 0}, {(ends - starts) / cos25, starts, ends}};
    for (const Line& l : lines) length += l.length, middle += l.length * (l.from + l.to) / 2;
    middle /= length;
    for (const Line& l : lines) {
      inertia += l.length * (std::pow(l.to - l.from, 2) / 12 + std::pow((l.from + l.to) / 2 - middle, 2));
      far = std::max({far, std::abs(l.from - middle), std::abs(l.to - middle)});
    }
  }
  // Under a load on this channel, at the ball 41 in ahead of the mains' ends.
  double stress(double load) const {
    return (load / length + load * (41 + middle) * far / inertia) / (0.7071 * leg);
  }
};

}  // namespace bedwright::testing
