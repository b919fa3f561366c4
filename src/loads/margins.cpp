// How much of each limit the loads use.
#include <algorithm>
#include <cmath>

#include "loads/steel.h"
#include "loads/travel_name.h"
#include "loads/worked.h"

namespace bedwright {

std::string name(const LoadMargin& margin, bool brief) {
  return margin.travel ? margin.figure + ", " + name(*margin.travel, brief) : margin.figure;
}

std::vector<LoadMargin> load_margins(const Job& job, const LoadsResult& r) {
  const RoadOrder& road = job.order.road;
  const FrameFile& frame = job.frame;
  std::vector<LoadMargin> all;
  const double middle = (road.share_low + road.share_high) / 2, half = (road.share_high - road.share_low) / 2;
  for (const TowCondition& c : r.tow.conditions) {
    if (!c.judged) continue;
    const double off = (c.share - middle) / half;
    // Without a load only the least counts.
    all.push_back(
        {"TOW-SHARE", "tongue share", c.travel.laden() ? std::abs(off) : std::max(0.0, -off), c.travel});
  }
  // The others in the way of travelling that uses most.
  const auto worst_way = [&](const char* code, const char* what, double TowCondition::*figure, double limit) {
    const TowCondition* worst = nullptr;
    for (const TowCondition& c : r.tow.conditions)
      if (c.judged && (!worst || c.*figure > worst->*figure)) worst = &c;
    all.push_back({code, what, worst->*figure / limit, worst->travel});
  };
  worst_way("TOW-COUPLER", "coupler", &TowCondition::mass, frame.coupler.rating);
  worst_way("TOW-AXLE", "axle", &TowCondition::axle, frame.axle.axle_rating);
  worst_way("TOW-TYRE", "tyre", &TowCondition::tyre, frame.axle.tyre_rating);
  worst_way("TOW-BEND", "mains on the road", &TowCondition::main_stress, r.stand.main_allowed);
  double used = 0, life = 0;
  const TowCondition* tops = nullptr;
  for (const TowCondition& c : r.tow.conditions)
    if (c.judged && roll_limit(job) / c.rolls_at > used) used = roll_limit(job) / c.rolls_at, tops = &c;
  if (tops) all.push_back({"ROLL-OVER", "rolling over", used, tops->travel});
  for (const FatigueDetail& d : r.fatigue.details) life = std::max(life, d.range / d.allowed);
  all.push_back({"FATIGUE", "a life on the road", life});
  all.push_back({"TONGUE-SEAT", "front member's flange", r.tongue_seat.front / r.tongue_seat.allowed});
  all.push_back({"TONGUE-BEND", "tongue", r.tongue.stress / r.tongue.allowed});
  all.push_back({"TONGUE-WELD", "tongue welds", r.tongue.weld / weld_allowable});
  all.push_back({"TOW-WIDTH", "width", r.tow.width / road.width_limit});
  if (r.tabs.section_bolts >= 2) {
    all.push_back({"TRACK-BOLT", "track bolts",
                   std::max(r.tabs.bolt_shear / r.tabs.bolt_shear_allowed,
                            r.tabs.bolt_tension / r.tabs.bolt_tension_allowed)});
    all.push_back({"TAB-ROAD", "tabs on the road",
                   std::max(r.tabs.tab_stress / r.tabs.tab_allowed,
                            r.tabs.weld_allowed > 0 ? r.tabs.weld / r.tabs.weld_allowed : 0)});
  }
  const Stand& s = r.stand;
  if (!s.jacks_enough || s.tips || !s.log_lies) return all;
  all.push_back({"STAND-SAG", "sag", s.sag / s.sag_limit});
  all.push_back({"STAND-BEND", "mains at work",
                 std::max(s.main_stress / s.main_allowed, s.web_stress / s.web_allowed)});
  all.push_back({"STAND-BEND", "rails and bunks", std::max(s.rail_stress, s.bunk_stress) / s.kit_allowed});
  all.push_back(
      {"TAB-WORK", "tabs at work",
       std::max(r.tabs.tab_stress_at_work / r.tabs.tab_allowed,
                r.tabs.weld_at_work_allowed > 0 ? r.tabs.weld_at_work / r.tabs.weld_at_work_allowed : 0)});
  if (r.jack_seat)
    all.push_back({"JACK-SEAT", "jacks' bolts and cross members",
                   std::max({r.jack_seat->bolt_shear / r.jack_seat->bolt_shear_allowed,
                             r.jack_seat->bolt_tension / std::max(1e-9, r.jack_seat->bolt_tension_allowed),
                             r.jack_seat->cross_member / r.jack_seat->cross_member_allowed})});
  Newton most = 0;
  for (const JackLoad& k : s.jacks) most = std::max(most, k.most);
  all.push_back({"JACK-LOAD", "jacks", most / (frame.jack.rating * gravity)});
  return all;
}

}  // namespace bedwright
