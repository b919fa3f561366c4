// Writes the results of the loads as JSON and as text.
#include "packet/loads_report.h"

#include <fmt/format.h>

#include <cmath>

#include "bed/names.h"
#include "examine/findings_json.h"
#include "loads/travel_name.h"
#include "loads/worked.h"
#include "rules/table.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

Json rounded_list(const std::vector<double>& values) {
  Json list = Json::array();
  for (double v : values) list.push_back(to_a_millionth(v));
  return list;
}

Json figures(std::initializer_list<std::pair<const char*, double>> all) {
  Json object = Json::object();
  for (const auto& [key, value] : all) object[key] = to_a_millionth(value);
  return object;
}

Json condition(const TowCondition& c) {
  Json json{{"name", name(c.travel)}, {"judged", c.judged}, {"mass", to_a_millionth(c.mass)}};
  json["centre"] = figures({{"x", c.centre.x}, {"y", c.centre.y}, {"z", c.centre.z}});
  json["inertia"] = figures({{"roll", c.inertia.x}, {"pitch", c.inertia.y}, {"yaw", c.inertia.z}});
  json.update(figures({{"tongue", c.tongue},
                       {"share", c.share},
                       {"axle", c.axle},
                       {"tyre", c.tyre},
                       {"jack", c.jack},
                       {"axle_from", c.axle_from},
                       {"axle_to", c.axle_to},
                       {"main_stress", c.main_stress},
                       {"above_road", c.above_road},
                       {"rolls_at", c.rolls_at},
                       {"rolls_parked", c.rolls_parked}}));
  return json;
}

Json stand(const Stand& s) {
  Json json = figures({{"log_mass", s.log_mass},
                       {"log_y", s.log_y},
                       {"bunk_load", s.bunk_load},
                       {"main_unbraced", s.main_unbraced},
                       {"log_position", s.log_position},
                       {"head_x", s.head_x},
                       {"sag", s.sag},
                       {"sag_limit", s.sag_limit},
                       {"sag_x", s.sag_x},
                       {"main_sag", s.main_sag},
                       {"rail_sag", s.rail_sag},
                       {"slope", s.slope},
                       {"main_moment", s.main_moment},
                       {"main_shear", s.main_shear},
                       {"main_stress", s.main_stress},
                       {"main_allowed", s.main_allowed},
                       {"web_stress", s.web_stress},
                       {"web_allowed", s.web_allowed},
                       {"rail_stress", s.rail_stress},
                       {"bunk_stress", s.bunk_stress},
                       {"kit_allowed", s.kit_allowed},
                       {"tab_load", s.tab_load}});
  for (const auto& [name, factor] :
       {std::pair{"push_factor", s.push_factor}, {"roll_on_factor", s.roll_on_factor}})
    json[name] = std::isfinite(factor) ? Json(to_a_millionth(factor)) : Json();
  json["side"] = letter(s.side);
  json["jacks"] = Json::array();
  for (const JackLoad& k : s.jacks) {
    Json jack{{"name", name(k.id)}};
    jack.update(figures({{"x", k.x},
                         {"least", s.tips ? 0 : k.least},
                         {"most", k.most},
                         {"drawn", k.drawn},
                         {"lifts", k.lifts}}));
    json["jacks"].push_back(jack);
  }
  const MainCurve& c = s.curve;
  json["curve"] = Json{{"x", rounded_list(c.x)}};
  for (const auto& [name, values] :
       {std::pair{"down", &c.down}, {"slope", &c.slope}, {"moment", &c.moment}, {"shear", &c.shear}})
    json["curve"][name] = Json{{"drawn", rounded_list(values->drawn)},
                               {"least", rounded_list(values->least)},
                               {"most", rounded_list(values->most)}};
  return json;
}

}  // namespace

Json loads_json(const Job& job, const Bed& bed, const LoadsResult& loads) {
  Json json = Json::object();
  json["conditions"] = Json::array();
  for (const TowCondition& c : loads.tow.conditions) json["conditions"].push_back(condition(c));
  const Tow& t = loads.tow;
  json["axle"] = figures({{"x", t.axle_x}, {"from", t.axle_from}, {"to", t.axle_to}});
  json["axle"]["tips_behind"] = std::isfinite(t.tips_behind) ? Json(to_a_millionth(t.tips_behind)) : Json();
  json["axle"]["places"] = rounded_list(t.axle_places);
  json["size"] = figures({{"width", t.width}, {"length", t.length}, {"height", t.height}});
  const TongueLoads& g = loads.tongue;
  json["tongue"] = figures({{"coupler", g.coupler},
                            {"moment", g.moment},
                            {"stress", g.stress},
                            {"allowed", g.allowed},
                            {"weld", g.weld},
                            {"braking_coupler", g.braking_coupler},
                            {"braking_push", g.braking_push},
                            {"braking_stress", g.braking_stress},
                            {"braking_weld", g.braking_weld},
                            {"standing", g.standing}});
  json["stand"] = stand(loads.stand);
  const TabLoads& b = loads.tabs;
  json["tabs"] = figures({{"bolts", b.section_bolts},
                          {"shear", b.shear},
                          {"tension", b.tension},
                          {"vertical", b.vertical},
                          {"bolt_shear", b.bolt_shear},
                          {"bolt_tension", b.bolt_tension},
                          {"bolt_shear_allowed", b.bolt_shear_allowed},
                          {"bolt_tension_allowed", b.bolt_tension_allowed},
                          {"tab_stress", b.tab_stress},
                          {"tab_stress_at_work", b.tab_stress_at_work},
                          {"tab_allowed", b.tab_allowed},
                          {"weld", b.weld},
                          {"weld_allowed", b.weld_allowed},
                          {"weld_at_work", b.weld_at_work},
                          {"weld_at_work_allowed", b.weld_at_work_allowed},
                          {"wheel_off", b.wheel_off},
                          {"held", b.held},
                          {"turning", b.turning},
                          {"turning_at_work", b.turning_at_work},
                          {"bunk_bolt", b.bunk_bolt},
                          {"rail_torsion", b.rail_torsion}});
  json["fatigue"] = figures({{"cycles", loads.fatigue.cycles}, {"swing", loads.fatigue.swing}});
  json["fatigue"]["details"] = Json::array();
  for (const FatigueDetail& d : loads.fatigue.details)
    json["fatigue"]["details"].push_back(Json{{"what", d.what},
                                              {"category", std::string(1, d.category)},
                                              {"range", to_a_millionth(d.range)},
                                              {"allowed", to_a_millionth(d.allowed)}});
  json["margins"] = Json::array();
  for (const LoadMargin& m : load_margins(job, loads))
    json["margins"].push_back(Json{{"code", m.code}, {"what", name(m)}, {"used", to_a_millionth(m.used)}});
  json["assumptions"] = loads.assumptions;
  json["worked"] = worked_lines(job, bed, loads);
  return json;
}

std::string loads_text(const Job& job, const Bed& bed, const LoadsResult& loads) {
  const Figures say = job.order.order.figures(), short_say = say.in_one_unit();
  const Tow& t = loads.tow;
  std::string text =
      "LOADS\n\nOn the road (an asterisk marks the ways this order travels; the others are there to "
      "compare)\n\n";
  text += fmt::format("    {:<26}{:>9}{:>14}{:>10}{:>8}{:>13}{:>10}{:>10}   {}\n", "", "weight", "centre at",
                      "tongue", "share", "tongue jack", "axle", "tyre", "axle may stand");
  for (const TowCondition& c : t.conditions)
    text +=
        fmt::format("  {} {:<26}{:>9}{:>14}{:>10}{:>6.1f} %{:>13}{:>10}{:>10}   {}{}\n", c.judged ? '*' : ' ',
                    name(c.travel), short_say.mass(c.mass), short_say.place(std::round(c.centre.x)),
                    short_say.mass(c.tongue), 100 * c.share, short_say.mass(c.jack), short_say.mass(c.axle),
                    short_say.mass(c.tyre), short_say.place(c.axle_from),
                    c.travel.laden() ? " to " + short_say.place(c.axle_to) : " or more");
  text += fmt::format("\n  Axle at {}; ball at {}.", short_say.place(t.axle_x), short_say.place(t.ball_x));
  if (!t.axle_places.empty()) {
    text += " Recommended, clear of clamps, jacks and cross members:";
    for (std::size_t i = 0; i < t.axle_places.size(); ++i)
      text += (i ? ", " : " ") + short_say.place(t.axle_places[i]);
    text += ".";
  }
  if (t.tips_on_track())
    text +=
        "\n" + wrapped(fmt::format("Uncoupled on wheels and tongue jack it tips back with the head more than "
                                   "{} behind the front end: rear jacks down before the head is unlocked.",
                                   short_say.place(t.tips_behind)),
                       2, 100);
  const Stand& s = loads.stand;
  text += "\n\nAt work, on its jacks\n\n";
  if (s.jacks_enough && !s.tips) {
    for (const JackLoad& k : s.jacks)
      text += fmt::format("    {:<10} at {:<10} {} to {}{}\n", name(k.id), short_say.place(k.x),
                          say.mass(k.least / gravity), say.mass(k.most / gravity),
                          k.lifts > 0 ? ", the main lifts off it by " + say.small(k.lifts) : "");
    text += fmt::format("\n  Sag {} of {} at {}, the head at {}.\n", say.small(s.sag), say.small(s.sag_limit),
                        short_say.place(s.sag_x), short_say.place(s.head_x));
  } else {
    text += "    It does not stand on the jacks as listed.\n";
  }
  text += "\nSums to follow\n\n";
  for (const std::string& line : worked_lines(job, bed, loads)) text += wrapped(line, 4, 100);
  text += "\nWhat is taken for granted\n\n";
  for (const std::string& line : loads.assumptions) text += wrapped(line, 4, 100);
  text += "\n" + wrapped(
                     "These are figures to think with, not a certificate: where law or doubt asks for it, "
                     "have a licensed engineer review them.",
                     0, 100);
  return text;
}

}  // namespace bedwright
