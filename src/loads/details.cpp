// Works out seats, feet and fatigue from the loads of road and work.
#include "loads/details.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>

#include "loads/loads.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

const JackLoad& heaviest(const Stand& stand) {
  if (stand.jacks.empty()) throw std::logic_error("a bed that stands has jacks");
  return *std::max_element(stand.jacks.begin(), stand.jacks.end(),
                           [](const JackLoad& a, const JackLoad& b) { return a.most < b.most; });
}

// The road of a life: 20 000 miles at 45 miles an hour, the bed going up and down twice a
// second with 0.15 g, root mean square, its heights spread as Rayleigh's. The range of even
// height that wears as much, by the cube root of the mean cube (the slope of AISC 360
// appendix 3), is 2 x (2 sqrt 2 x gamma(5/2))^(1/3) = 3.11 times that. Common practice, no
// published source: AISC 360 gives no road.
constexpr double road_miles = 20000, miles_an_hour = 45, swings_a_second = 2, rough = 0.15;

}  // namespace

Mpa allowed_range(char category, double cycles) {
  struct Line {
    char category;
    double cf, threshold;  // ksi
  };
  static constexpr Line lines[] = {
      {'A', 25, 24}, {'B', 12, 16}, {'C', 4.4, 10}, {'D', 2.2, 7}, {'E', 1.1, 4.5}};
  if (category == 'F') return ksi * std::max(8.0, 100 * std::pow(1.5 / cycles, 0.167));
  for (const Line& line : lines)
    if (line.category == category)
      return ksi * std::max(line.threshold, 1000 * std::pow(line.cf / cycles, 0.333));
  throw std::invalid_argument(std::string("no category ") + category + " of fatigue");
}

JackSeat jack_seat(const Job& job, const Stand& stand) {
  const FrameJack& j = job.frame.jack;
  const JackLoad& jack = heaviest(stand);
  JackSeat s;
  s.jack = jack.id;
  s.load = jack.most;
  s.arm = j.plate_thickness + j.flange_thickness + j.post_width / 2;
  s.turning = s.load * s.arm;
  const BoltSize& size = *job.catalog.bolt(j.hole.bolt.text);
  const Mm2 area = std::numbers::pi / 4 * size.diameter * size.diameter;
  s.bolt_shear = s.load / 4 / area;
  s.bolt_tension = s.turning / j.bolt_z / 2 / area;
  s.bolt_shear_allowed = bolt_shear / bolt_safety;
  s.bolt_tension_allowed = tension_beside(s.bolt_shear);
  // A log's load comes down on the bunks' bolts, inside the web.
  const Mm inside = std::max(0.0, job.frame.main.spacing / 2 - (job.kit.gauge / 2 - job.kit.bunk.line));
  s.twisting = s.load * (s.arm + inside);
  const Section& cross = *job.catalog.section(job.frame.cross_member.section.text);
  s.cross_member = s.twisting / bending_of(cross).modulus;
  s.cross_member_allowed = frame_yield(job.frame) / job.order.work.safety_factor;
  return s;
}

TongueSeat tongue_seat(const Job& job, const TongueLoads& tongue) {
  TongueSeat s;
  s.lap = job.frame.tongue.back;
  s.arm = tongue.arm;
  const Newton down = std::max(tongue.coupler, tongue.braking_coupler) / 2;
  s.front = s.lap > 0 ? down * (s.arm + s.lap) / s.lap : std::numeric_limits<double>::infinity();
  const Mm tf = job.catalog.section(job.frame.front_member.section.text)->flange_thickness;
  s.allowed = 6.25 * frame_yield(job.frame) * tf * tf / job.order.work.safety_factor / 2;
  return s;
}

JackFoot jack_foot(const Job& job, const Stand& stand) {
  JackFoot f;
  f.stated = job.frame.jack.foot.has_value();
  f.side = job.frame.jack.foot.value_or(job.frame.jack.post_width);
  f.load = heaviest(stand).most;
  f.pressure = f.load / (f.side * f.side);
  f.pad = std::sqrt(f.load / soft_ground);
  return f;
}

Fatigue fatigue(const Job& job, const Tow& tow, const TongueLoads& tongue, const TabLoads& tabs) {
  Fatigue f;
  f.cycles = road_miles / miles_an_hour * 3600 * swings_a_second;
  f.swing = 2 * rough * std::cbrt(2 * std::numbers::sqrt2 * std::tgamma(2.5));
  // Of a stress over a bump, which counts so many weights.
  const auto range = [&](double over_a_bump) { return over_a_bump / job.order.road.bump * f.swing; };
  Mpa main = 0;
  for (const TowCondition& c : tow.conditions)
    if (c.judged) main = std::max(main, c.main_stress);
  const auto add = [&](Identity where, const char* what, char category, double over_a_bump) {
    f.details.push_back({where, what, category, range(over_a_bump), allowed_range(category, f.cycles)});
  };
  add({Kind::main}, "main beside what is welded to its flanges", 'E', main);
  add({Kind::tongue}, "tongue at the ends of its welds", 'E', tongue.bump_stress);
  add({Kind::tongue}, "tongue's welds, on the throat", 'F', tongue.bump_weld);
  if (tabs.section_bolts < 2) return f;  // holes without tabs: HOLE-NO-TAB says so
  add({Kind::tab}, "tab along its weld", 'C', tabs.tab_stress);
  // As stress on the throat of a fillet that may carry weld_allowed.
  if (tabs.weld_allowed > 0)
    add({Kind::tab_weld}, "tabs' welds, on the throat", 'F', tabs.weld / tabs.weld_allowed * weld_allowable);
  return f;
}

}  // namespace bedwright
