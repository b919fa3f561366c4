// Writes report.json and report.txt from what was examined.
#include "packet/report.h"

#include <fmt/format.h>

#include <nlohmann/json.hpp>

#include "bed/names.h"
#include "examine/findings_json.h"
#include "packet/loads_report.h"
#include "packet/track_report.h"
#include "rules/loads/rules.h"
#include "rules/rule.h"
#include "rules/table.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

Json rounded_list(const std::vector<Mm>& values) {
  Json list = Json::array();
  for (const Mm v : values) list.push_back(to_a_millionth(v));
  return list;
}

const char* const cautions =
    "The program advises; it does not certify. Support the frame before working under it: it can crush. "
    "Chock the "
    "wheels: a bed on level ground can roll. Weld to a qualified procedure. Road rules, brakes, lamps, width "
    "and "
    "ratings differ by place; where law or doubt asks for it, have a licensed engineer review the loads. "
    "Check one "
    "part against its file before cutting or drilling the rest.";

Json account(const Track& t) {
  std::vector<Mm> bunks;
  for (const BunkPlace& b : t.bunks) bunks.push_back(b.x);
  Json json{{"rail_length", to_a_millionth(t.rail_length)},
            {"bunk_pitch", to_a_millionth(t.bunk_pitch)},
            {"total_length", to_a_millionth(t.total_length)},
            {"sections", t.sections},
            {"bunks", t.bunk_count()},
            {"remainder", to_a_millionth(t.remainder)},
            {"joints", rounded_list(t.joints)},
            {"bunk_positions", rounded_list(bunks)},
            {"standoff", to_a_millionth(t.standoff)},
            {"gauge", to_a_millionth(t.gauge)},
            {"head_from", to_a_millionth(t.head_from)},
            {"head_to", to_a_millionth(t.head_to)},
            {"head_lock", to_a_millionth(t.head_lock)}};
  if (!t.sections_alike()) json["rail_lengths"] = rounded_list(t.lengths);
  return json;
}

Json rule_list(const std::vector<Rule>& table) {
  Json list = Json::array();
  for (const Rule& r : table)
    list.push_back(Json{{"code", r.code},
                        {"family", r.family},
                        {"asks", r.asks},
                        {"formula", r.formula},
                        {"limit", r.limit},
                        {"source", r.source},
                        {"change", r.change}});
  return list;
}

}  // namespace

std::string report_json(const Report& report) {
  const Examined& e = report.examined;
  const Heading& h = e.heading();
  Json json{{"format", "bedwright report"},
            {"version", 1},
            {"program", Json{{"name", "bedwright"}, {"version", report.program_version}}},
            {"order", Json{{"number", h.number},
                           {"customer", h.customer},
                           {"date", h.date},
                           {"revision", h.revision},
                           {"kit", e.job.kit.name},
                           {"frame", e.job.frame.name}}},
            {"state", word(report.state)},
            {"counts", counts_json(e.findings)},
            {"findings", findings_json(e.findings)},
            {"track", account(e.bed.track)},
            {"rules", rule_list(all_rules())}};
  json["datum"] = datum_json(e.scene, e.job);
  json["bolts"] = bolts_json(e.scene);
  json["loads"] = loads_json(e.job, e.bed, e.loads);
  // A byte that is no UTF-8 in a name must not cost the report.
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

std::string report_text(const Report& report) {
  const Examined& e = report.examined;
  const Heading& h = e.heading();
  const Track& t = e.bed.track;
  const Figures figures = e.figures();
  std::string text = fmt::format("Order {}, revision {}, for {}, {}\nbedwright {}\nState: {}\n\n", h.number,
                                 h.revision, h.customer, h.date, report.program_version, word(report.state));
  text += fmt::format("Track   {} sections of {}, {} over all\n", t.sections,
                      rail_lengths(t, [&](Mm x) { return figures.say(x); }), figures.say(t.total_length));
  text += t.bunk_pitch > 0 ? fmt::format("Bunks   {} at {}, {} left over in a section\n", t.bunk_count(),
                                         figures.say(t.bunk_pitch), figures.say(t.remainder))
                           : fmt::format("Bunks   {}, at the kit's own holes, {} apart at most\n",
                                         t.bunk_count(), figures.say(t.bunk_spacing()));
  text += fmt::format("Head    runs from {} to {}, locked at {}\n\n", figures.say(t.head_from),
                      figures.say(t.head_to), figures.say(t.head_lock));
  text += findings_table(e.findings, {figures, 100, false}) + "\n";
  text += track_choices_text(e.scene, e.job) + "\n";
  return text + loads_text(e.job, e.bed, e.loads) + "\n" + wrapped(cautions, 0, 100);
}

}  // namespace bedwright
