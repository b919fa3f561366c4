// On the road: who carries what, and where the axle may stand.
#include <algorithm>
#include <cmath>
#include <limits>

#include "bed/tongue_lap.h"
#include "loads/loads.h"
#include "loads/log.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

struct Setting {
  TravelCase travel;
  bool judged = false;
};

HeadAt lock_of(const Order& order) {
  return order.track.head_lock == HeadLock::front ? HeadAt::front : HeadAt::rear;
}

// Those the order travels in, then the others for comparison.
std::vector<Setting> settings(const Order& order) {
  std::vector<Setting> all;
  for (const TravelCase& t : judged_travels(order)) all.push_back({t, true});
  std::vector<TravelCase> others = usual_travels(order);
  for (HeadAt head : {HeadAt::front, HeadAt::rear}) others.push_back({head, false});
  for (const TravelCase& t : others) {
    const auto is_it = [&](const Setting& s) { return s.travel == t; };
    if (std::none_of(all.begin(), all.end(), is_it)) all.push_back({t, false});
  }
  return all;
}

Mm group_half(const FrameAxle& a) { return (a.count - 1) / 2.0 * a.spread; }

// Everything but the gear, with the head and the cargo where this condition has them.
struct Carriage {
  Body rest;
  std::vector<Weight> loads;  // head and cargo
};

Carriage carriage(const Job& job, const Bed& bed, const BedWeights& w, const TravelCase& t) {
  Carriage c;
  c.rest = t.bare ? w.frame : together(w.frame, w.track);
  if (t.head != HeadAt::off) {
    Body head = w.head;
    head.centre.x += head_locked(job, bed, t.head) - bed.track.head_lock;
    c.rest = together(c.rest, head);
    // On its wheels, as at work.
    const Mm at = head.centre.x - job.kit.head.mass_x;
    for (const BeamLoad& wheel : head_wheels(job, at, head.mass))
      c.loads.push_back({Carried::head, wheel.force, head.centre, wheel.from, wheel.to});
  }
  if (t.cargo && job.order.road.cargo) {
    const Cargo& cargo = *job.order.road.cargo;
    const Body body{cargo.mass,
                    {cargo.position, 0, rail_seat(job, bed) + job.kit.bunk.thickness + cargo.height},
                    Eigen::Matrix3d::Zero()};
    c.rest = together(c.rest, body);
    c.loads.push_back({Carried::track, body.mass, body.centre, cargo.position, cargo.position});
  }
  return c;
}

// Moment of a load about x, from what lies ahead of x: mass times mm.
double moment_ahead(Kg mass, Mm from, Mm to, Mm x) {
  if (x <= from) return 0;
  if (to - from < same_place) return mass * (x - from);
  const Mm end = std::min(x, to);
  return mass * (end - from) / (to - from) * (x - (from + end) / 2);
}

// The mains as one beam from the coupler to the springs' hangers: its moments
// follow from balance alone.
void bend_mains(const Job& job, const Bed& bed, const BedWeights& w, const Carriage& c, const Tow& tow,
                TowCondition& out) {
  const FrameAxle& a = job.frame.axle;
  const Section& section = *job.catalog.section(job.frame.main.section.text);
  std::vector<Mm> hangers;
  for (int i = 0; i < a.count; ++i)
    for (double end : {-0.5, 0.5})
      hangers.push_back(tow.axle_x - group_half(a) + i * a.spread + end * a.spring_length);
  const Kg hanger = (c.rest.mass - out.tongue) / static_cast<double>(hangers.size());
  const Mm start = main_start(job), end = main_end(job, bed);
  std::vector<Mm> places = hangers;
  for (int i = 0; i <= 40; ++i) places.push_back(start + i / 40.0 * (end - start));
  double worst = 0;
  for (Mm x : places) {
    if (x < start || x > end) continue;
    double m = out.tongue * (x - tow.ball_x);
    for (const Weight& load : w.weights)
      if (load.carried == Carried::frame || (load.carried == Carried::track && !out.travel.bare))
        m -= moment_ahead(load.mass, load.from, load.to, x);
    for (const Weight& load : c.loads) m -= moment_ahead(load.mass, load.from, load.to, x);
    for (Mm h : hangers)
      if (h < x) m += hanger * (x - h);
    if (std::abs(m) > std::abs(worst)) {
      worst = m;
      out.main_stress_x = x;
    }
  }
  const double side = 0.5 + std::abs(c.rest.centre.y) / job.frame.main.spacing;
  out.main_stress = std::abs(worst) * gravity * job.order.road.bump * side / bending_of(section).modulus;
}

TowCondition condition(const Job& job, const Bed& bed, const BedWeights& w, const Tow& tow,
                       const Setting& setting) {
  const FrameAxle& a = job.frame.axle;
  const RoadOrder& road = job.order.road;
  const Carriage c = carriage(job, bed, w, setting.travel);
  const Body all = together(c.rest, w.gear);
  TowCondition out;
  out.travel = setting.travel;
  out.judged = setting.judged;
  out.mass = all.mass;
  out.centre = all.centre;
  out.inertia = inertia(all);
  const Mm base = tow.axle_x - tow.ball_x;
  out.tongue = all.mass * (tow.axle_x - all.centre.x) / base;
  out.share = out.tongue / all.mass;
  out.jack = all.mass * (tow.axle_x - all.centre.x) / (tow.axle_x - tow.jack_x);
  out.axles = all.mass - out.tongue;
  out.axle = out.axles / a.count;
  const Mm track = a.tyre_inside + a.tyre_width;
  out.tyre = (out.axles / 2 + all.mass * std::abs(all.centre.y) / track) / a.count;
  // The gear moves with the axle: share s at X where M0 (X - x0) = s M (X - xb).
  const auto place = [&](double s) {
    return (c.rest.mass * c.rest.centre.x - s * all.mass * tow.ball_x) / (c.rest.mass - s * all.mass);
  };
  out.axle_from = place(road.share_low);
  out.axle_to = setting.travel.laden() ? place(road.share_high) : main_end(job, bed);
  if (setting.judged) bend_mains(job, bed, w, c, tow, out);
  return out;
}

void measure(const Job& job, const Bed& bed, Tow& tow) {
  const FrameAxle& a = job.frame.axle;
  Box3 box;
  std::vector<Box3> local(bed.parts.size());
  for (std::size_t i = 0; i < bed.parts.size(); ++i) local[i] = local_bounds(bed.parts[i]);
  for (const Item& item : bed.items) {
    if (!item.shown || item.bolt >= 0) continue;
    const Box3& b = local[item.part];
    for (Mm x : {b.low.x, b.high.x})
      for (Mm y : {b.low.y, b.high.y})
        for (Mm z : {b.low.z, b.high.z}) box.add(item.placement.point({x, y, z}));
  }
  tow.ground_z = -job.catalog.section(job.frame.main.section.text)->depth - a.below - a.tyre_diameter / 2;
  tow.width = box.high.y - box.low.y;
  tow.length = box.high.x - box.low.x;
  tow.height = box.high.z - tow.ground_z;
  const Box3 coupler = bounds(bed, bed.item({Kind::coupler}));
  tow.ball_above = (coupler.low.z + coupler.high.z) / 2 - tow.ground_z;
  tow.half_track = (a.tyre_inside + a.tyre_width) / 2;
}

// Moments about the line from the outer tyres' foot to what holds the front: the ball, or the
// tongue jack's foot on the ground. Neither holds the bed against roll.
void roll(const Tow& tow, TowCondition& c) {
  c.above_road = c.centre.z - tow.ground_z;
  const auto at = [&](double front_share, Mm front_above) {
    const Mm held = tow.half_track * (1 - front_share) - std::abs(c.centre.y),
             tipped = c.above_road - front_share * front_above;
    return tipped > 0 ? std::max(0.0, held / tipped) : std::numeric_limits<double>::infinity();
  };
  c.rolls_at = at(c.share, tow.ball_above);
  c.rolls_parked = at(c.jack / c.mass, 0);
}

// Moments about the axle: the bed without its head holds the tongue down, the head
// behind the axle lifts it.
Mm tips_behind(const Job& job, const BedWeights& w, const Tow& tow) {
  const Body rest = together(together(w.frame, w.track), w.gear);
  if (w.head.mass <= 0) return std::numeric_limits<Mm>::infinity();
  return tow.axle_x + rest.mass * (tow.axle_x - rest.centre.x) / w.head.mass - job.kit.head.mass_x;
}

// Ball, axle, tongue jack, and the head's place at which it tips back.
Tow places_of(const Job& job, const Bed& bed, const BedWeights& weights) {
  Tow tow;
  const Mm tongue = main_start(job) - job.frame.tongue.length;
  tow.axle_x = job.order.axle.position;
  tow.ball_x = tongue - job.frame.coupler.ball_ahead;
  tow.jack_x = tongue + job.frame.tongue_jack.behind_front;
  tow.head_to = bed.track.head_to;
  tow.tips_behind = tips_behind(job, weights, tow);
  return tow;
}

}  // namespace

std::vector<TravelCase> usual_travels(const Order& order) {
  std::vector<TravelCase> all{{lock_of(order), false}};
  if (order.road.cargo) all.push_back({lock_of(order), true});
  all.push_back({HeadAt::off, false});
  all.push_back({HeadAt::off, false, true});
  return all;
}

std::vector<TravelCase> judged_travels(const Order& order) {
  return order.road.travels.empty() ? usual_travels(order) : order.road.travels;
}

AxleRange axle_range(const Job& job, const Bed& bed, const BedWeights& weights, Ways ways) {
  const Tow tow = places_of(job, bed, weights);
  AxleRange range{-1e9, main_end(job, bed)};
  for (const TravelCase& t : judged_travels(job.order)) {
    if (ways != Ways::all && t.laden() != (ways == Ways::laden)) continue;
    const TowCondition c = condition(job, bed, weights, tow, {t, false});
    range.from = std::max(range.from, c.axle_from);
    range.to = std::min(range.to, c.axle_to);
  }
  return range;
}

Tow tow_loads(const Job& job, const Bed& bed, const BedWeights& weights) {
  Tow tow = places_of(job, bed, weights);
  measure(job, bed, tow);
  for (const Setting& s : settings(job.order)) {
    tow.conditions.push_back(condition(job, bed, weights, tow, s));
    roll(tow, tow.conditions.back());
  }
  const AxleRange range = axle_range(job, bed, weights, Ways::all);
  tow.axle_from = range.from;
  tow.axle_to = range.to;
  tow.axle_places = axle_places(job, bed, tow);
  return tow;
}

// Both channels bend as one over the front member; the welds to front member and
// mains take moment and load as lines (the elastic method of the AISC Manual,
// part 8): where they lap each main, and across the front member.
TongueLoads tongue_loads(const Job& job, const Tow& tow) {
  const FrameTongue& t = job.frame.tongue;
  const Section& section = *job.catalog.section(t.section.text);
  TongueLoads out;
  const double braking = job.order.road.braking;
  Kg worst = 0;
  for (const TowCondition& c : tow.conditions) {
    if (!c.judged) continue;
    worst = std::max(worst, std::abs(c.tongue));
    const Kg dips = c.tongue + braking * c.mass * (c.above_road - tow.ball_above) / (tow.axle_x - tow.ball_x);
    out.braking_coupler = std::max(out.braking_coupler, std::abs(dips) * gravity);
    out.braking_push = std::max(out.braking_push, braking * c.mass * gravity);
  }
  out.coupler = worst * gravity * job.order.road.bump;
  out.arm = main_start(job) - tow.ball_x;
  out.moment = out.coupler * out.arm;
  const double modulus = 2 * bending_of(section).modulus;
  out.bump_stress = out.moment / modulus;
  out.braking_stress =
      out.braking_coupler * out.arm / modulus + out.braking_push / (2 * area_of(section) * std::cos(t.angle));
  out.braked = out.braking_stress > out.bump_stress;
  out.stress = std::max(out.bump_stress, out.braking_stress);
  out.allowed = channel_strength(section, out.arm, frame_yield(job.frame)) / job.order.work.safety_factor;

  // One channel: where it laps its main, and two lines askew across the front member.
  // Places along the bed from the mains' front ends.
  struct Line {
    Mm length, from, to;
  };
  const Section& nose = *job.catalog.section(job.frame.front_member.section.text);
  const Mm corner = outer_corner(nose), flat = nose.flange - 2 * corner, askew = flat / std::cos(t.angle);
  std::vector<Line> lines{{askew, -corner - flat, -corner}, {askew, -corner - flat, -corner}};
  const TongueLap lap =
      tongue_lap({t.length, t.back, t.angle}, section, *job.catalog.section(job.frame.main.section.text), 0,
                 t.back, job.frame.main.spacing);
  const Mm leg =
      tongue_leg(section, job.frame.welds.of(job.frame.welds.tongue), job.order.order.figures().step());
  for (const LapRun& run : lap_runs(lap, leg)) lines.push_back({run.length(), run.from.x, run.to.x});
  Mm length = 0, far = 0;
  double first = 0, inertia = 0;
  for (const Line& l : lines) {
    length += l.length;
    first += l.length * (l.from + l.to) / 2;
  }
  const Mm centre = first / length;  // behind the front end
  for (const Line& l : lines) {
    const Mm from_centre = (l.from + l.to) / 2 - centre;
    inertia += l.length * ((l.to - l.from) * (l.to - l.from) / 12 + from_centre * from_centre);
    far = std::max({far, std::abs(l.from - centre), std::abs(l.to - centre)});
  }
  // Up and down, and along: they act square to each other on the throat.
  const auto on_throat = [&](Newton down, Newton along) {
    const double load = down / 2, moment = load * (out.arm + centre);
    return std::hypot(load / length + moment * far / inertia, along / 2 / length) / (weld_throat * leg);
  };
  out.weld_leg = leg;
  out.weld_length = length;
  out.weld_arm = out.arm + centre;
  out.weld_far = far;
  out.weld_inertia = inertia;
  out.braking_weld = on_throat(out.braking_coupler, out.braking_push);
  out.bump_weld = on_throat(out.coupler, 0);
  out.weld = std::max(out.bump_weld, out.braking_weld);

  for (const TowCondition& c : tow.conditions)
    if (c.judged) out.standing = std::max(out.standing, c.jack);
  return out;
}

}  // namespace bedwright
