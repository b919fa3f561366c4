// Writes the sums out in lines.
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

// A kerb: common practice, no published source.
constexpr Mm kerb = 6 * inch;

const TowCondition& least_stable(const Tow& tow) {
  const TowCondition* least = &tow.conditions.front();
  for (const TowCondition& c : tow.conditions)
    if (c.judged && c.rolls_at < least->rolls_at) least = &c;
  return *least;
}

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
  const Mm track = 2 * t.half_track;
  lines.push_back(fmt::format("Axle, {}: ({} - {}) / {} = {} of {}.", name(c.travel), say.mass(c.mass),
                              say.mass(c.tongue), a.count, say.mass(c.axle), say.mass(a.axle_rating)));
  lines.push_back(fmt::format("Tyre: ({} / 2 + {} x {} / {}) / {} = {} of {}.", say.mass(c.axles),
                              say.mass(c.mass), say.small(std::abs(c.centre.y)), say.place(track), a.count,
                              say.mass(c.tyre), say.mass(a.tyre_rating)));
  const TowCondition& top = least_stable(t);
  lines.push_back(
      fmt::format("Rolling over, {}: ({} x (1 - {:.3f}) - {}) / ({} - {:.3f} x {}) = {:.2f} g, or across a "
                  "slope of {:.0f} degrees; uncoupled on "
                  "its tongue jack {:.0f} degrees.",
                  name(top.travel), say.place(t.half_track), top.share, say.small(std::abs(top.centre.y)),
                  say.place(top.above_road), top.share, say.place(t.ball_above), top.rolls_at,
                  std::atan(top.rolls_at) / degree, std::atan(top.rolls_parked) / degree));
  // One wheel on a kerb: the bed leans, and does not twist, for the ball lets it roll.
  const double leans = kerb / (2 * t.half_track), side = 0.5 + c.above_road * leans / (2 * t.half_track);
  lines.push_back(
      fmt::format("One wheel on a kerb {} high, {}: it leans by {} / {}, the ball lets it roll, so the frame "
                  "is not twisted; {:.0f} % of "
                  "the axle's load is on the lower wheels, where a bump counts {:.0f} %.",
                  say.place(kerb), name(c.travel), say.place(kerb), say.place(2 * t.half_track), 100 * side,
                  50 * job.order.road.bump));
  const Section& section = *job.catalog.section(job.frame.tongue.section.text);
  const TongueLoads& g = r.tongue;
  lines.push_back(fmt::format(
      "Tongue over a bump: {:g} x {} x {} = {}; over two {} of S = {}: {} of {}.", job.order.road.bump,
      say.force(g.coupler / job.order.road.bump), say.place(g.arm), say.moment(g.moment), section.name,
      say.section_modulus(bending_of(section).modulus), say.stress(g.bump_stress), say.stress(g.allowed)));
  lines.push_back(
      fmt::format("Braking {:g} g, the tow vehicle alone: {} x ({} - {}) / {} dips the nose: {} on the "
                  "coupler at rest and so, {} along "
                  "the tongue: {} of {}.",
                  job.order.road.braking, say.mass(c.mass), say.place(c.above_road), say.place(t.ball_above),
                  say.place(base), say.force(g.braking_coupler), say.force(g.braking_push),
                  say.stress(g.braking_stress), say.stress(g.allowed)));
  lines.push_back(
      fmt::format("Its welds, one channel: ({} / {} + {} x {} x {} / {}) / (0.707 x {}) = {} of {}.",
                  say.force(g.coupler / 2), say.place(g.weld_length), say.force(g.coupler / 2),
                  say.place(g.weld_arm), say.place(g.weld_far), say.section_modulus(g.weld_inertia),
                  say.small(g.weld_leg), say.stress(g.bump_weld), say.stress(weld_allowable)));
  const TongueSeat& seat = r.tongue_seat;
  lines.push_back(
      fmt::format("Front member's flange over one tongue channel: half of the coupler's load x ({} + {}) / "
                  "{} = {} of {}.",
                  say.place(seat.arm), say.place(seat.lap), say.place(seat.lap), say.force(seat.front),
                  say.force(seat.allowed)));
}

void life_lines(const Job& job, const LoadsResult& r, std::vector<std::string>& lines) {
  const Figures say = plain(job);
  const Fatigue& life = r.fatigue;
  std::string text;
  for (const FatigueDetail& d : life.details)
    text += fmt::format("{}{} {} of {} ({})", text.empty() ? "" : ", ", d.what, say.stress(d.range),
                        say.stress(d.allowed), d.category);
  lines.push_back(fmt::format("A life on the road, {:.1f} million swings of {:.2f} of the load at rest: {}.",
                              life.cycles / 1e6, life.swing, text));
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
    const Species* wood = job.catalog.species_named(log.species.text);
    lines.push_back(
        fmt::format("Log: pi/4 x ({})^2 x {} of {}, {:.0f} % over the table's mean, = {}; crook {}, taper "
                    "{}: as it is turned {} to {} "
                    "bunks carry it, and as it lands with {:g} of its weight one of them {}: {} of {}.",
                    say.place(log.diameter), say.place(log.length), log.species.text, 100 * wood->spread,
                    say.mass(s.log_mass), say.small(log.stands_off()), say.small(log.tapers()),
                    s.log_bunks_least, s.log_bunks, job.order.work.landing, say.force(s.bunk_load),
                    say.stress(s.bunk_stress), say.stress(s.kit_allowed)));
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
  if (const auto& seat = r.jack_seat)
    lines.push_back(
        fmt::format("Most on a jack, as the log lands: {}, {} out from the web: its bolts are sheared to {} "
                    "of {} and pulled to {} of {}; a "
                    "cross member is bent to {} of {}.",
                    say.force(seat->load), say.small(seat->arm), say.stress(seat->bolt_shear),
                    say.stress(seat->bolt_shear_allowed), say.stress(seat->bolt_tension),
                    say.stress(seat->bolt_tension_allowed), say.stress(seat->cross_member),
                    say.stress(seat->cross_member_allowed)));
  if (const auto& foot = r.jack_foot)
    lines.push_back(
        fmt::format("Under a foot: {} / ({})^2 = {}{}; soft ground bears {}, which wants {} square.",
                    say.force(foot->load), say.small(foot->side), say.ground(foot->pressure),
                    foot->stated ? "" : " (no foot stated: the post's end)", say.ground(soft_ground),
                    say.place(foot->pad)));
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
      fmt::format("The wheels stand {} outside the track bolts. The rail's twist and the bunks hold {:.0f} % "
                  "of that moment (rail {} of {}, "
                  "{} on a bunk's bolt); the tab takes the rest.",
                  say.small(t.wheel_off), 100 * t.held, say.stress(t.rail_torsion),
                  say.stress(t.rail_torsion_allowed), say.force(t.bunk_bolt)));
  lines.push_back(fmt::format(
      "Tab over a bump: {} on its hole and {} bend it to {} of {}; its weld carries {} of {}. As a log "
      "lands: {} of "
      "{}, weld {} of {}.",
      say.force(t.vertical), say.moment(t.turning), say.stress(t.tab_stress), say.stress(t.tab_allowed),
      say.along_weld(t.weld), say.along_weld(t.weld_allowed), say.stress(t.tab_stress_at_work),
      say.stress(t.tab_allowed), say.along_weld(t.weld_at_work), say.along_weld(t.weld_at_work_allowed)));
}

}  // namespace

std::vector<std::string> worked_lines(const Job& job, const Bed& bed, const LoadsResult& r) {
  std::vector<std::string> lines;
  tow_lines(job, r, lines);
  stand_lines(job, bed, r, lines);
  tab_lines(job, r, lines);
  life_lines(job, r, lines);
  return lines;
}

}  // namespace bedwright
