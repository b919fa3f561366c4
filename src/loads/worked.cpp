// Writes the sums out in lines, and how much of each limit is used.
#include "loads/worked.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "loads/steel.h"
#include "loads/travel_name.h"

namespace bedwright {
namespace {

// Figures of one sum in the order's one unit, without the other in brackets.
Figures plain(const Job& job) { return job.order.order.figures().in_one_unit(); }

const TowCondition& heaviest(const Tow& tow) {
  const TowCondition* most = &tow.conditions.front();
  for (const TowCondition& c : tow.conditions)
    if (c.judged && c.mass > most->mass) most = &c;
  return *most;
}

void tow_lines(const Job& job, const LoadsResult& r, std::vector<std::string>& lines) {
  const Figures say = plain(job);
  const Tow& t = r.tow;
  const BedWeights& w = r.weights;
  const Mm base = t.axle_x - t.ball_x;
  lines.push_back(fmt::format("Weights: frame {} at {}, track {} at {}, head {}, axle and wheels {} at {}.",
                              say.mass(w.frame.mass), say.place(w.frame.centre.x), say.mass(w.track.mass),
                              say.place(w.track.centre.x), say.mass(w.head.mass), say.mass(w.gear.mass),
                              say.place(w.gear.centre.x)));
  for (const TowCondition& c : t.conditions) {
    if (!c.judged) continue;
    lines.push_back(
        fmt::format("Tongue, {}: {} x ({} - {}) / ({} + {}) = {} x {} / {} = {}, which is {:.1f} %.",
                    name(c.travel), say.mass(c.mass), say.place(t.axle_x), say.place(c.centre.x),
                    say.place(t.axle_x), say.place(-t.ball_x), say.mass(c.mass),
                    say.place(t.axle_x - c.centre.x), say.place(base), say.mass(c.tongue), 100 * c.share));
  }
  const Body rest = together(together(w.frame, w.track), w.gear);
  if (w.head.mass > 0)
    lines.push_back(
        fmt::format("Uncoupled on wheels and tongue jack the bed without its head holds the tongue down by "
                    "{} x ({} - {}) = "
                    "{}; the head, {}, takes that up {} behind the axle, at {}: further back the bed tips.",
                    say.mass(rest.mass), say.place(t.axle_x), say.place(rest.centre.x),
                    say.moment(rest.mass * gravity * (t.axle_x - rest.centre.x)), say.mass(w.head.mass),
                    say.place(t.tips_behind + job.kit.head.mass_x - t.axle_x), say.place(t.tips_behind)));
  const TowCondition& c = heaviest(t);
  const FrameAxle& a = job.frame.axle;
  const Mm track = a.tyre_inside + a.tyre_width;
  lines.push_back(fmt::format("Axle, {}: ({} - {}) / {} = {} of {}.", name(c.travel), say.mass(c.mass),
                              say.mass(c.tongue), a.count, say.mass(c.axle), say.mass(a.axle_rating)));
  lines.push_back(fmt::format("Tyre: ({} / 2 + {} x {} / {}) / {} = {} of {}.", say.mass(c.axles),
                              say.mass(c.mass), say.small(std::abs(c.centre.y)), say.place(track), a.count,
                              say.mass(c.tyre), say.mass(a.tyre_rating)));
  const Section& section = *job.catalog.section(job.frame.tongue.section.text);
  const TongueLoads& g = r.tongue;
  lines.push_back(fmt::format(
      "Tongue over a bump: {:g} x {} x {} = {}; over two {} of S = {}: {} of {}.", job.order.road.bump,
      say.force(g.coupler / job.order.road.bump), say.place(g.arm), say.moment(g.moment), section.name,
      say.section_modulus(bending_of(section).modulus), say.stress(g.stress), say.stress(g.allowed)));
  lines.push_back(
      fmt::format("Its welds, one channel: ({} / {} + {} x {} x {} / {}) / (0.707 x {}) = {} of {}.",
                  say.force(g.coupler / 2), say.place(g.weld_length), say.force(g.coupler / 2),
                  say.place(g.weld_arm), say.place(g.weld_far), say.section_modulus(g.weld_inertia),
                  say.small(g.weld_leg), say.stress(g.weld), say.stress(weld_allowable)));
}

// What bears on the jacks and what they push, as drawn: both sums are shown, and both
// moments about the front end of the track.
void balance_lines(const LoadsResult& r, const Figures& say, std::vector<std::string>& lines) {
  const Stand& s = r.stand;
  const Body bed = together(together(r.weights.frame, r.weights.track), r.weights.gear);
  std::string jacks;
  Newton up = 0;
  double up_moment = 0;
  for (std::size_t i = 0; i < s.jacks.size() / 2; ++i) {
    const Newton pair = s.jacks[i].drawn + s.jacks[i + s.jacks.size() / 2].drawn;
    jacks += fmt::format("{}{} at {}", i ? ", " : "", say.mass(pair / gravity), say.place(s.jacks[i].x));
    up += pair, up_moment += pair * s.jacks[i].x;
  }
  const Kg head = r.weights.head.mass;
  const double down_moment =
      gravity * (bed.mass * bed.centre.x + head * s.wheels_x + s.log_mass * s.log_position);
  lines.push_back(fmt::format(
      "Balance where it sags most: pairs of jacks push {}: together {}, {} about the front of the track.",
      jacks, say.mass(up / gravity), say.moment(up_moment)));
  lines.push_back(fmt::format(
      "On them: bed {} at {}, head {} at {}{}: together {}, {}.", say.mass(bed.mass), say.place(bed.centre.x),
      say.mass(head), say.place(s.wheels_x),
      s.log_mass > 0 ? fmt::format(", log {} at {}", say.mass(s.log_mass), say.place(s.log_position)) : "",
      say.mass(bed.mass + head + s.log_mass), say.moment(down_moment)));
}

void stand_lines(const Job& job, const Bed& bed, const LoadsResult& r, std::vector<std::string>& lines) {
  const Figures say = plain(job);
  const Stand& s = r.stand;
  if (job.order.work.log) {
    const LogOrder& log = *job.order.work.log;
    lines.push_back(fmt::format("Log: pi/4 x ({})^2 x {} of {} = {}; on {} bunks, {} on the worst.",
                                say.place(log.diameter), say.place(log.length), log.species.text,
                                say.mass(s.log_mass), s.log_bunks, say.force(s.bunk_load)));
  }
  if (!s.jacks_enough || s.tips || !s.log_lies) return;
  balance_lines(r, say, lines);
  const Section& main = *job.catalog.section(job.frame.main.section.text);
  const Bending b = bending_of(main);
  lines.push_back(fmt::format(
      "Main {}: largest moment {} at {}, over S = {}: {} of {}. Largest shear {}, over {} x {} of {}: {} of "
      "{}.",
      main.name, say.moment(s.main_moment), say.place(s.main_moment_x), say.section_modulus(b.modulus),
      say.stress(s.main_stress), say.stress(s.main_allowed), say.force(s.main_shear),
      say.small(web_area(main) / main.web), say.small(main.web), is_closed(main) ? "its two sides" : "web",
      say.stress(s.web_stress), say.stress(s.web_allowed)));
  // One span as a simple beam under the mean load: more than the true sag of inner
  // spans, which their neighbours hold up, and of the same order.
  std::vector<Mm> jacks = job.order.jacks;
  std::sort(jacks.begin(), jacks.end());
  Mm span = 0;
  for (std::size_t i = 1; i < jacks.size(); ++i) span = std::max(span, jacks[i] - jacks[i - 1]);
  const Newton even = (r.weights.frame.mass + r.weights.track.mass + r.weights.gear.mass + s.log_mass) *
                      gravity / 2 * span / (main_end(job, bed) - main_start(job));
  const Newton point = r.weights.head.mass * gravity / 2;
  const Mm simple = 5 * even * span * span * span / (384 * steel_modulus * b.inertia) +
                    point * span * span * span / (48 * steel_modulus * b.inertia);
  lines.push_back(fmt::format(
      "Sag: {} in the main, {} in the rail, {} of {}. Rough check, the longest span L = {} as a simple beam, "
      "E = {}, I = {}: 5 x {} x L^3 / 384 EI + {} x L^3 / 48 EI = {}.",
      say.small(s.main_sag), say.small(s.rail_sag), say.small(s.sag), say.small(s.sag_limit), say.place(span),
      say.elasticity(steel_modulus), say.inertia(b.inertia), say.force(even), say.force(point),
      say.small(simple)));
}

void tab_lines(const Job& job, const LoadsResult& r, std::vector<std::string>& lines) {
  const TabLoads& t = r.tabs;
  if (t.section_bolts < 2) return;
  const Figures say = plain(job);
  const RoadOrder& road = job.order.road;
  lines.push_back(fmt::format(
      "Track bolts, {} in a section, fore and aft or sideways: {} x {:g} g / {} = {}: {} of {}.",
      t.section_bolts, say.mass(t.carried), std::max(road.braking, road.cornering), t.section_bolts,
      say.force(t.shear), say.stress(t.bolt_shear), say.stress(t.bolt_shear_allowed)));
  const std::string overturning =
      t.sideways ? fmt::format("{:g} g x {} / {} / {}", road.cornering, say.place(t.above),
                               say.place(t.across), t.section_bolts / 2)
                 : fmt::format("{:g} g x {} / {} / 2", road.braking, say.place(t.above), say.place(t.along));
  lines.push_back(fmt::format("Along a bolt: head {} x {} + {} x {:g} g / {} = {} + {} = {}: {} of {}.",
                              say.mass(r.weights.head.mass), overturning, say.mass(t.carried), road.rebound,
                              t.section_bolts, say.force(t.overturning), say.force(t.lift),
                              say.force(t.tension), say.stress(t.bolt_tension),
                              say.stress(t.bolt_tension_allowed)));
  lines.push_back(
      fmt::format("Tab over a bump: {} on its hole bends it to {} of {}; its weld carries {} of {}.",
                  say.force(t.vertical), say.stress(t.tab_stress), say.stress(t.tab_allowed),
                  say.along_weld(t.weld), say.along_weld(t.weld_allowed)));
}

}  // namespace

std::vector<std::string> worked_lines(const Job& job, const Bed& bed, const LoadsResult& r) {
  std::vector<std::string> lines;
  tow_lines(job, r, lines);
  stand_lines(job, bed, r, lines);
  tab_lines(job, r, lines);
  return lines;
}

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
  all.push_back({"TAB-WORK", "tabs at work", r.tabs.tab_stress_at_work / r.tabs.tab_allowed});
  Newton most = 0;
  for (const JackLoad& k : s.jacks) most = std::max(most, k.most);
  all.push_back({"JACK-LOAD", "jacks", most / (frame.jack.rating * gravity)});
  return all;
}

}  // namespace bedwright
