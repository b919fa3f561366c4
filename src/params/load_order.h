// What an order says about loads: how the trailer travels, and the log it works on.
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "units/units.h"
#include "yaml/describe.h"
#include "yaml/mark.h"

namespace bedwright {

enum class HeadAt { off, front, rear };

// One way the trailer is towed. Its tongue share and ratings are judged.
struct TravelCase {
  HeadAt head = HeadAt::front;
  bool cargo = false;
  bool bare = false;  // the frame alone, without track and head
  // The most of the share counts: with nothing on the bed the coupler's load is small.
  bool laden() const { return head != HeadAt::off || cargo; }
  friend bool operator==(const TravelCase&, const TravelCase&) = default;
};

struct Cargo {
  Kg mass = 0;
  Mm position = 0;  // its centre behind the front end of the track
  Mm height = 0;    // its centre above the bunks' flat legs
};

struct RoadOrder {
  // None: the head at its lock, again with the cargo if there is any, the head off, the bare frame.
  std::vector<TravelCase> travels;
  std::optional<Cargo> cargo;
  std::optional<Mm> ball_height;  // middle of the towing ball above the road, laden
  // Tongue load over trailer weight, the least in every way it is towed, the most with
  // head or cargo on: common practice for trailers behind a ball hitch, no published
  // source.
  double share_low = 0.10, share_high = 0.15;
  Mm width_limit = 102 * inch;  // 23 CFR 658.15, National Network of the United States
  // Accelerations in g. Braking and cornering: 49 CFR 393.102(a)(1), the forces
  // cargo securement must withstand. Bump and rebound: common practice, no
  // published source.
  double braking = 0.8, cornering = 0.5, bump = 2.0, rebound = 0.5;
};

struct LogOrder {
  Mm diameter = 0, length = 0;
  Name species;
  std::optional<Mm> position;  // its centre behind the front end of the track; else every place is tried
  // How far its middle stands off a straight line from end to end: 1 in in 16 ft where the
  // order does not say (common practice, no published source).
  std::optional<Mm> crook;
  // By how much its butt is thicker than its top: 1/2 in in 4 ft where the order does not say
  // (the taper the International 1/4-inch log rule takes for granted, from memory).
  std::optional<Mm> taper;
  Mm stands_off() const { return crook.value_or(length / 192); }
  Mm tapers() const { return std::min(taper.value_or(length / 96), diameter); }
};

struct WorkOrder {
  std::optional<LogOrder> log;
  Mm sag_limit = inch / 16;     // of the rails between their supports
  double safety_factor = 1.67;  // yield over stress: AISC 360, allowable strength of a member in bending
  double push = 0.3;            // a log rolled against its stops pushes with this much of its weight
  // A log that lands on its bunks bears with so many of its weights: a load that comes on
  // at once, without a drop, bends a beam twice as far as one laid on (Roark, Formulas for
  // Stress and Strain, dynamic loads; from memory).
  double landing = 2.0;
};

template <class V>
void describe(V& v, TravelCase& t) {
  v.choice("head", t.head, {{"off", HeadAt::off}, {"front", HeadAt::front}, {"rear", HeadAt::rear}},
           "Where the head is on the road: taken off, locked at the front or locked at the rear");
  v.flag("cargo", t.cargo, "Whether the cargo is on it", v.optional);
  v.flag("bare", t.bare, "Whether the track is off too: the frame alone", v.optional);
}
template <class V>
void describe(V& v, Cargo& c) {
  v.mass("mass", c.mass, {1, 10000}, "What is carried on the bunks on the road");
  v.length("position", c.position, {0, 25000}, "Its centre behind the front end of the track");
  v.length("height", c.height, {0, 3000}, "Its centre above the bunks' flat legs", v.optional);
}
template <class V>
void describe(V& v, RoadOrder& r) {
  v.list("travels", r.travels, 12,
         "Ways the trailer is towed; leave out for the head at its lock, the head off and the bare frame",
         v.optional);
  v.object("cargo", r.cargo, "What is carried on the bunks on the road", v.optional);
  v.length("ball_height", r.ball_height, {100, 1500},
           "Middle of the towing ball above the road, with the trailer on it", v.optional);
  v.number("share_low", r.share_low, {0.01, 0.4},
           "Least tongue load over trailer weight, in every way it is towed", v.optional);
  v.number("share_high", r.share_high, {0.02, 0.5},
           "Most tongue load over trailer weight, with the head or cargo on", v.optional);
  v.length("width_limit", r.width_limit, {1000, 4000}, "Widest the trailer may be on the road", v.optional);
  v.number("braking", r.braking, {0, 3}, "Braking, in g", v.optional);
  v.number("cornering", r.cornering, {0, 3}, "Cornering, in g", v.optional);
  v.number("bump", r.bump, {1, 6}, "Downward load over a bump, in weights at rest", v.optional);
  v.number("rebound", r.rebound, {0, 3}, "Upward load after a bump, in weights at rest", v.optional);
}
template <class V>
void describe(V& v, LogOrder& l) {
  v.length("diameter", l.diameter, {50, 3000}, "Mean diameter, with bark");
  v.length("length", l.length, {300, 25000}, "Length");
  v.name("species", l.species, "Species, as the catalogue names it");
  v.length("position", l.position, {0, 25000},
           "Its centre behind the front end of the track; leave out to try every place", v.optional);
  v.length("crook", l.crook, {0, 1000},
           "How far its middle stands off a straight line from end to end; leave out for 1 in in 16 ft",
           v.optional);
  v.length("taper", l.taper, {0, 1000},
           "By how much its butt is thicker than its top; leave out for 1/2 in in 4 ft", v.optional);
}
template <class V>
void describe(V& v, WorkOrder& w) {
  v.object("log", w.log, "The heaviest log the bed works on", v.optional);
  v.length("sag_limit", w.sag_limit, {0.1, 50}, "Most the rails may sag between their supports", v.optional);
  v.number("safety_factor", w.safety_factor, {1, 6}, "Yield strength over stress", v.optional);
  v.number("push", w.push, {0, 2}, "Sideways push of a log rolled against its stops, over its weight",
           v.optional);
  v.number("landing", w.landing, {1, 6}, "What a log bears with as it lands, in its weights", v.optional);
}

}  // namespace bedwright
