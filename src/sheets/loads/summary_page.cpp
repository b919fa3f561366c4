// Lays out the engineer's summary.
#include "sheets/loads/summary_page.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

#include "loads/steel.h"
#include "loads/travel_name.h"
#include "loads/worked.h"
#include "sheets/loads/page_frame.h"

namespace bedwright {
namespace {

constexpr Mm letters = 2.5;

// The most that limits with these codes use: "62 %".
std::string used(const std::vector<LoadMargin>& margins, const std::vector<std::string>& codes) {
  double most = -1;
  for (const LoadMargin& m : margins)
    if (std::find(codes.begin(), codes.end(), m.code) != codes.end()) most = std::max(most, m.used);
  return most < 0 ? "-" : fmt::format("{:.0f} %", 100 * most);
}

Table2d cases_table(const Job& job, const LoadsResult& loads) {
  const RoadOrder& road = job.order.road;
  const WorkOrder& work = job.order.work;
  const std::vector<LoadMargin> m = load_margins(job, loads);
  const std::string practice = "common practice", regulation = "49 CFR 393.102(a)";
  const auto g = [](double a) { return fmt::format("{:g} g", a); };
  const auto times = [](double a) { return fmt::format("x {:g}", a); };
  Table2d t{{"case", "load", "from", "what is judged", "used"}, {}};
  const auto add = [&](const std::string& what, const std::string& load, const std::string& from,
                       const std::string& judged, const std::vector<std::string>& codes) {
    t.rows.push_back({what, load, from, judged, used(m, codes)});
  };
  add("road, over a bump", times(road.bump), practice, "mains, front member, tabs and their welds",
      {"TOW-BEND", "TONGUE-SEAT", "TAB-ROAD"});
  add("road, bump or braking", times(road.bump) + " or " + g(road.braking), regulation,
      "tongue and its welds", {"TONGUE-BEND", "TONGUE-WELD"});
  add("road, braking, cornering, rebound",
      g(road.braking) + ", " + g(road.cornering) + ", " + g(road.rebound), regulation + ", " + practice,
      "track bolts", {"TRACK-BOLT"});
  add("road, sideways", fmt::format("{:.3g} g", roll_limit(job)), "1.25 x cornering", "rolling over",
      {"ROLL-OVER"});
  add("road, a life of it",
      fmt::format("{:.2f}, {:.1f} million times", loads.fatigue.swing, loads.fatigue.cycles / 1e6),
      "AISC 360 appendix 3; road: " + practice, "welds, mains, tongue, tabs", {"FATIGUE"});
  add("work, log at rest", "x 1", "FPL Technical Note 218, spread", "sag of rails and mains", {"STAND-SAG"});
  add("work, log lands", times(work.landing), "Roark, load at once", "mains, bunks, rails, tabs",
      {"STAND-BEND", "TAB-WORK"});
  add("work, log lands", times(work.landing), "Roark, load at once", "jacks, their bolts, cross members",
      {"JACK-LOAD", "JACK-SEAT"});
  return t;
}

Table2d rolling_table(const LoadsResult& loads, const Figures& say) {
  Table2d t{{"way", "weight above road", "rolls over at", "across", "parked, across"}, {}};
  const auto slope = [](double rise) { return fmt::format("{:.0f} degrees", std::atan(rise) / degree); };
  for (const TowCondition& c : loads.tow.conditions)
    if (c.judged)
      t.rows.push_back({name(c.travel, true), say.place(c.above_road), fmt::format("{:.2f} g", c.rolls_at),
                        slope(c.rolls_at), slope(c.rolls_parked)});
  return t;
}

Table2d feet_table(const Job& job, const std::vector<SunkFoot>& feet, const Figures& say) {
  Table2d t{{"foot at", "1/8 in (3 mm) down: rails out", "most on a jack", "may sink"}, {}};
  for (const SunkFoot& f : feet)
    t.rows.push_back(
        {say.place(f.x),
         f.tips ? "it tips"
                : fmt::format("{}{}", say.small(f.out), f.out > job.order.work.sag_limit ? ", OVER" : ""),
         f.tips ? "-"
                : fmt::format("{} at {}{}", say.mass(f.most / gravity), say.place(f.most_x),
                              f.most > job.frame.jack.rating * gravity ? ", OVER" : ""),
         say.small(f.enough)});
  return t;
}

// Where the figures of the frame's sections come from, each once.
std::set<std::string> handbooks(const Job& job) {
  const auto& f = job.frame;
  std::set<std::string> all;
  for (const Name& name : {f.main.section, f.cross_member.section, f.front_member.section,
                           f.rear_member.section, f.tongue.section}) {
    const Section& section = *job.catalog.section(name.text);
    all.insert(section.published ? section.published->source : section.name + " from its outline");
  }
  return all;
}

}  // namespace

List2d summary_page(const Job& job, const Bed& bed, const LoadsResult& loads, const Issue& issue) {
  List2d list;
  const LoadsPens pens = pens_of(list);
  const Figures say = job.order.order.figures().in_one_unit();
  const Mm top = start_page(list, pens, job, "Loads: an engineer's summary", 3, issue);
  const Mm left = loads_border + mark_room,
           column = (loads_page_width - 2 * loads_border - 2 * mark_room - 4) / 2,
           middle = left + column + mark_room;
  const auto table = [&](const Table2d& t, Mm x, Mm y, Mm width) {
    const Mm height = fitting(t, width, letters);
    draw_table(list, t, 0, t.rows.size(), {x, y}, height, pens.text, pens.picture.thin);
    return y - static_cast<double>(t.rows.size() + 1) * table_row_height * height - 3;
  };
  Mm y = write(list, pens.text, {left, top - 3}, column, 3.5,
               {"Cases, factors, sources, and how much of each limit is used"});
  y = table(cases_table(job, loads), left, y, 2 * column);
  const Mm below = y;
  y = write(list, pens.text, {left, below}, column, 3.5, {"Strength"});
  const Stand& s = loads.stand;
  const Section& main = *job.catalog.section(job.frame.main.section.text);
  y = write(
      list, pens.text, {left, y}, column, letters,
      {fmt::format("Frame: grade {}, {} yield over {:g}: {} in bending, {} in shear (AISC 360 chapters "
                   "F and G). Mains are "
                   "held sideways every {} at most; section {} allows them {}.",
                   job.frame.grade, say.stress(frame_yield(job.frame)), job.order.work.safety_factor,
                   say.stress(frame_yield(job.frame) / job.order.work.safety_factor),
                   say.stress(s.web_allowed), say.place(s.main_unbraced), is_closed(main) ? "F7" : "F2",
                   say.stress(s.main_allowed)),
       fmt::format("Kit: no grade stated, {} yield. Fillets: E70 on the throat, 0.60 x 70 ksi / 2.00, "
                   "and the steel beside them "
                   "(table J2.5, section J4.2). Bolts: ASTM A307 (tables J3.2, section J3.7).",
                   say.stress(kit_yield)),
       fmt::format("Sections: {}; kit angles from their outlines. Ratings (coupler, axle, tyre, jacks): "
                   "their makers', as the order's files state.",
                   fmt::join(handbooks(job), ", "))});
  y = write(list, pens.text, {left, y - 2}, column, 3.5, {"Ground that gives, under one main"});
  if (!s.jacks_enough || s.tips || !s.log_lies) {
    y = write(list, pens.text, {left, y}, column, letters,
              {"Not worked: the bed does not stand on its jacks."});
  } else {
    y = table(feet_table(job, sunk_feet(job, bed, loads.weights), say), left, y, column);
    y = write(list, pens.text, {left, y}, column, letters,
              {fmt::format("The rails may be {} out and a jack carry {}. \"May sink\" is what one foot may "
                           "go down, log and head at their worst: level the bed as closely as that, log "
                           "on, and look again "
                           "after the first log.",
                           say.small(job.order.work.sag_limit), say.mass(job.frame.jack.rating)),
               loads.jack_foot ? fmt::format("The most loaded foot, {} square{}, presses {} on the ground; "
                                             "{} (International Building Code table "
                                             "1806.2, the least it lists) wants {} of timber square.",
                                             say.small(loads.jack_foot->side),
                                             loads.jack_foot->stated ? "" : " (the post's end, none stated)",
                                             say.ground(loads.jack_foot->pressure), say.ground(soft_ground),
                                             say.place(loads.jack_foot->pad))
                               : ""});
  }
  y = write(list, pens.text, {left, y - 2}, column, 3.5,
            {"Rolling over, as a stiff body; parked: on wheels and tongue jack"});
  table(rolling_table(loads, say), left, y, column);
  y = write(list, pens.text, {middle, below}, column, 3.5, {"Not looked at"});
  y = write(
      list, pens.text, {middle, y}, column, letters,
      {"The mains' twist between cross members; hangers, springs, spindles, hubs and wheels; coupler, ball "
       "and chains; the "
       "head's own frame and lock; clamps and stops as they hold a log being sawn; stresses left by welding; "
       "rust; wind; cold; "
       "what a crane or a fork lifts it by.",
       "Wear of jacks, bolts worked loose, holes worn oval. A life at work, log after log: only the road's "
       "is counted.",
       "A log dropped from a height, or rolled on faster than a walk: it lands harder than is counted here.",
       "Loads from the tow vehicle: swaying, a sharp turn with the wheels against a kerb, reversing into "
       "something."});
  y = write(list, pens.text, {middle, y - 2}, column, 3.5, {"Where a licensed engineer must sign"});
  std::string near;
  for (const LoadMargin& m : load_margins(job, loads))
    if (m.used > 0.9 && m.code != "TOW-SHARE")
      near += fmt::format("{}{} ({:.0f} %)", near.empty() ? "" : ", ", name(m, true), 100 * m.used);
  y = write(
      list, pens.text, {middle, y}, column, letters,
      {"The program advises; it does not certify, and nobody has signed this page.",
       "Wherever the law of the place asks for it; where a factor of the order is milder than the usual "
       "one (rule OWN-FACTOR); for a "
       "frame that stands and whose steel is not known; where anything listed as not looked at matters; "
       "after a crash or a bend.",
       near.empty() ? "No limit is used by more than nine tenths."
                    : "Used by more than nine tenths, to be looked at first: " + near + "."});
  y = write(list, pens.text, {middle, y - 2}, column, 3.5, {"Before you build"});
  write(list, pens.text, {middle, y}, column, letters,
        {"A heavy frame can crush, a trailer on level ground can roll away, a log that rolls on can tip the "
         "bed.",
         "Chock the wheels and set every jack on firm ground before a log is rolled on. Weld to a qualified "
         "procedure.",
         "Road rules, brakes, lamps, width and ratings differ by place."});
  return list;
}

}  // namespace bedwright
