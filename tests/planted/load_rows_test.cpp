// Rows of the planted-fault matrix for the rules about loads: the base demo with one
// value set so that what is measured lies a hair past its limit, or a hair inside.
// Ratings and limits are set from the figure itself; where the figure cannot be set
// against, the value is sought at which it reaches its limit.
#include "loads/loads.h"
#include "loads/steel.h"
#include "planted/matrix.h"

namespace bedwright {
namespace {

constexpr double part = 1e-5;  // of the limit, past it or inside

LoadsResult loads_of(const Job& job) { return run_loads(job, testing::bed_of(job)); }

// The most of a figure over the ways the order travels.
template <class Figure>
Figure most(const LoadsResult& loads, Figure TowCondition::*figure) {
  Figure largest = 0;
  for (const TowCondition& c : loads.tow.conditions)
    if (c.judged) largest = std::max(largest, c.*figure);
  return largest;
}

// The base demo, with what `set` does to it knowing its loads.
Findings with_loads(const std::function<void(Job&, const LoadsResult&)>& set) {
  return run_demo("base", [&](Job& job) { set(job, loads_of(job)); });
}

// Steel whose allowed stress is just what is asked of it. Strength changes no stress.
void set_yield(Job& job, Mpa stress, Mpa allowed_now, double past) {
  job.frame.yield_strength = frame_yield(job.frame) * stress / allowed_now * (1 - part * past);
}

Planted rating(const char* code, const char* fault,
               const std::function<void(Job&, const LoadsResult&, double less)>& set) {
  return {code, fault, [set](double past) {
            return with_loads([&](Job& job, const LoadsResult& loads) { set(job, loads, 1 - part * past); });
          }};
}

Findings axle_at_its_last_place(double past) {
  return with_loads(
      [&](Job& job, const LoadsResult& loads) { job.order.axle.position = loads.tow.axle_to + past * hair; });
}

// Towed with its head on only, the axle so far forward that the tongue jack just holds a
// twentieth of the bed in the lightest way it may stand on it.
Findings hitch(double past) {
  const auto with_axle = [](Mm x) {
    Job job = testing::demo_job("base");
    job.order.road.travels = {{HeadAt::front, false, false}};
    job.order.axle.position = x;
    return job;
  };
  const auto least = [&](Mm x) {
    double share = 1;
    for (const TowCondition& c : loads_of(with_axle(x)).tow.conditions)
      if (c.judged || c.travel.head == HeadAt::off) share = std::min(share, c.jack / c.mass);
    return share;
  };
  static const Mm at = turn(137 * inch, 100 * inch, [&](double x) { return least(x) < 0.05; });
  return run_demo("base", [&](Job& job) { job = with_axle(at - past * hair); });
}

// A head that balances the bed with its centre at the rear end of its travel.
Findings head_tips(double past) {
  const LoadsResult now = loads_of(testing::demo_job("base"));
  const Tow& t = now.tow;
  const Kg mass = now.weights.head.mass * (t.tips_behind - t.axle_x) / (t.head_to - t.axle_x);
  return run_demo("base", [&](Job& job) { job.kit.head.mass = mass * (1 + part * past); });
}

// A bump at which this comes about.
double bump_for(const Job& job, const std::function<bool(const LoadsResult&)>& comes) {
  const auto with = [&](double bump) {
    Job other = job;
    other.order.road.bump = bump;
    return comes(loads_of(other));
  };
  return turn(job.order.road.bump, 500, with);
}

Findings rolls_parked(double past) {
  const auto least = [](Mm height) {
    Job job = testing::demo_job("base");
    job.kit.head.mass_z = height;
    double slope = 1e9;
    for (const TowCondition& c : loads_of(job).tow.conditions)
      if (c.judged) slope = std::min(slope, c.rolls_parked);
    return slope;
  };
  static const Mm at =
      turn(22 * inch, 1000 * inch, [&](double height) { return least(height) < std::tan(15 * degree); });
  return run_demo("base", [&](Job& job) { job.kit.head.mass_z = at + past * hair; });
}

// By the detail that is used most.
Findings wears_out(double past) {
  const auto used = [](Kg head) {
    Job job = testing::demo_job("base");
    job.kit.head.mass = head;
    double most = 0;
    for (const FatigueDetail& d : loads_of(job).fatigue.details) most = std::max(most, d.range / d.allowed);
    return most;
  };
  const Kg now = testing::demo_job("base").kit.head.mass;
  static const Kg at = turn(now, 60 * now, [&](double head) { return used(head) > 1; });
  return run_demo("base", [&](Job& job) { job.kit.head.mass = at * (1 + part * past); });
}

Findings jack_seat_gives(double past) {
  const auto with = [](double landing) {
    Job job = testing::demo_job("base");
    job.order.work.landing = landing;
    return job;
  };
  const auto used = [&](double landing) {
    const LoadsResult loads = loads_of(with(landing));
    const JackSeat& s = *loads.jack_seat;
    return std::max({s.bolt_shear / s.bolt_shear_allowed,
                     s.bolt_tension / std::max(1e-9, s.bolt_tension_allowed),
                     s.cross_member / s.cross_member_allowed});
  };
  static const double at = turn(2, 100, [&](double landing) { return used(landing) > 1; });
  return run_demo("base", [&](Job& job) { job = with(at * (1 + part * past)); });
}

Findings track_bolt(double past) {
  const auto used = [](Kg head) {
    Job job = testing::demo_job("base");
    job.kit.head.mass = head;
    const TabLoads t = loads_of(job).tabs;
    return std::max(t.bolt_shear / t.bolt_shear_allowed,
                    t.bolt_tension_allowed > 0 ? t.bolt_tension / t.bolt_tension_allowed : 2);
  };
  const Kg now = testing::demo_job("base").kit.head.mass;
  static const Kg at = turn(now, 60 * now, [&](double head) { return used(head) > 1; });
  return run_demo("base", [&](Job& job) { job.kit.head.mass = at * (1 + part * past); });
}

// The rear pair of jacks, moved forward until the weight leaves their span with the
// head at the rear.
Findings tips(double past) {
  const auto with_rear = [](Mm rear) {
    Job job = testing::demo_job("base");
    job.order.jacks = {job.order.jacks.front(), rear};
    return job;
  };
  static const Mm at =
      turn(200 * inch, 60 * inch, [&](double rear) { return loads_of(with_rear(rear)).stand.tips; });
  return run_demo("base", [&](Job& job) { job = with_rear(at - past * hair); });
}

// The middle pair, moved toward the front one until that carries nothing with the
// head over the far span.
Findings lifts(double past) {
  const auto with_middle = [](Mm middle) {
    Job job = testing::demo_job("base");
    job.order.jacks[1] = middle;
    return job;
  };
  const auto least = [&](Mm middle) {
    Newton all = 1e9;
    for (const JackLoad& jack : loads_of(with_middle(middle)).stand.jacks) all = std::min(all, jack.least);
    return all;
  };
  static const Mm at = turn(120 * inch, 25 * inch, [&](double middle) { return least(middle) <= 0; });
  return run_demo("base", [&](Job& job) { job = with_middle(at - past); });
}

}  // namespace

std::vector<Planted> load_rows() {
  return {
      {"TOW-SHARE", "axle at the last place the share allows", axle_at_its_last_place},
      {"OWN-FACTOR", "safety factor of AISC 360, or a little less",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.order.work.safety_factor = 1.67 - past * part; });
       }},
      {"HITCH-TIP", "axle where the tongue jack holds a twentieth, head off", hitch},
      {"ROLL-OVER", "cornering whose limit is where it rolls over",
       [](double past) {
         return with_loads([&](Job& j, const LoadsResult& l) {
           double least = 1e9;
           for (const TowCondition& c : l.tow.conditions)
             if (c.judged) least = std::min(least, c.rolls_at);
           j.order.road.cornering = least / 1.25 * (1 + part * past);
         });
       }},
      {"ROLL-SLOPE", "head so high that it rolls over across 15 degrees", rolls_parked},
      rating("RAIL-ROLL", "bump that twists the rail to what it may be",
             [](Job& j, const LoadsResult& l, double less) {
               j.order.road.bump = bump_for(j,
                                            [&](const LoadsResult& r) {
                                              return r.tabs.rail_torsion > l.tabs.rail_torsion_allowed;
                                            }) /
                                   less;
             }),
      rating("TONGUE-SEAT", "bump that levers the tongue on the front member as hard as it may",
             [](Job& j, const LoadsResult& l, double less) {
               j.order.road.bump *= l.tongue_seat.allowed * 2 * l.tongue_seat.lap /
                                    (l.tongue_seat.arm + l.tongue_seat.lap) / l.tongue.coupler / less;
             }),
      {"FATIGUE", "head so heavy that the road just does not wear it out", wears_out},
      {"JACK-SEAT", "log that lands as hard as a jack's bolts hold", jack_seat_gives},
      rating("JACK-FOOT", "foot as wide as the timber it wants",
             [](Job& j, const LoadsResult& l, double less) { j.frame.jack.foot = l.jack_foot->pad * less; }),
      {"HEAD-LASH", "head of 1100 lb, the most that one strap is for",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.kit.head.mass = 1100 * pound + past * hair; });
       },
       true},
      {"HEAD-TIP", "head that balances the bed at the end of its travel", head_tips},
      rating("TOW-COUPLER", "coupler rated for the trailer's mass",
             [](Job& j, const LoadsResult& l, double less) {
               j.frame.coupler.rating = most(l, &TowCondition::mass) * less;
             }),
      rating("TOW-AXLE", "axle rated for its load",
             [](Job& j, const LoadsResult& l, double less) {
               j.frame.axle.axle_rating = most(l, &TowCondition::axle) * less;
             }),
      rating("TOW-TYRE", "tyre rated for its load",
             [](Job& j, const LoadsResult& l, double less) {
               j.frame.axle.tyre_rating = most(l, &TowCondition::tyre) * less;
             }),
      rating(
          "TOW-WIDTH", "limit at the width it has",
          [](Job& j, const LoadsResult& l, double less) { j.order.road.width_limit = l.tow.width * less; }),
      {"TOW-SIZE", "width told beside the limit, at it",
       [](double past) {
         return with_loads([&](Job& j, const LoadsResult& l) {
           j.order.road.width_limit = l.tow.width * (1 - part * past);
         });
       },
       true},
      {"TOW-LAWS", "trailer of 3000 lb without brakes",
       [](double past) {
         return with_loads([&](Job& j, const LoadsResult& l) {
           j.kit.head.mass += 3000 * pound - most(l, &TowCondition::mass) + past * hair;
         });
       },
       true},
      {"TRACK-BOLT", "head so heavy that the track bolts just hold it", track_bolt},
      {"STAND-LOG", "log whose middle just leaves the front bunk under it",
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.order.work.log->position = testing::demo_bed("base").track.bunks.front().x - past * hair;
           j.order.work.log->taper = 0;
         });
       }},
      {"TAB-WORK", "tabs of steel that just stands what a rail puts on them",
       [](double past) {
         return with_loads([&](Job& j, const LoadsResult& l) {
           set_yield(j, l.tabs.tab_stress_at_work, l.tabs.tab_allowed, past);
         });
       }},
      {"STAND-TIP", "rear jacks where the weight leaves their span", tips},
      rating("STAND-SAG", "limit at the sag it has",
             [](Job& j, const LoadsResult& l, double less) { j.order.work.sag_limit = l.stand.sag * less; }),
      rating("JACK-LOAD", "jacks rated for the most loaded of them",
             [](Job& j, const LoadsResult& l, double less) {
               Newton heaviest = 0;
               for (const JackLoad& jack : l.stand.jacks) heaviest = std::max(heaviest, jack.most);
               j.frame.jack.rating = heaviest / gravity * less;
             }),
      {"JACK-WELD", "fillet that just holds a jack's plate on its tube",
       [](double past) {
         const auto with_leg = [](Mm leg) {
           return run_demo("light", [&](Job& j) { j.frame.welds.jack_plate = leg; });
         };
         const auto breaks = [&](Mm leg) {
           const Findings all = with_leg(leg);
           return std::any_of(all.begin(), all.end(), [](const Finding& f) { return f.code == "JACK-WELD"; });
         };
         return with_leg(turn(4, 0.05, breaks) - past * hair);
       }},
      {"JACK-LIFT", "middle jack where the front one just keeps a load", lifts},
  };
}

}  // namespace bedwright
