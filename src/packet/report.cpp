// Writes report.json and report.txt from what was examined.
#include "packet/report.h"

#include <fmt/format.h>

#include <cmath>
#include <nlohmann/json.hpp>

#include "packet/loads_report.h"
#include "packet/track_report.h"
#include "rules/loads/rules.h"
#include "rules/rule.h"
#include "rules/table.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

double rounded(double value) { return std::round(value * 1e6) / 1e6 + 0.0; }

Json rounded_list(const std::vector<Mm>& values) {
  Json list = Json::array();
  for (const Mm v : values) list.push_back(rounded(v));
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

Json counts(const std::vector<Finding>& findings) {
  Json counts{{"stop", 0}, {"warn", 0}, {"note", 0}};
  for (const Finding& f : findings) {
    Json& n = counts[severity_word(f.severity)];
    n = n.get<int>() + 1;
  }
  return counts;
}

Json finding(const Finding& f) {
  Json subjects = Json::array();
  for (const Subject& s : f.subjects) subjects.push_back(s.name);
  Json changes = Json::array();
  for (const Change& c : f.changes)
    changes.push_back(Json{{"key", c.key}, {"value", c.value}, {"brings", c.brings}});
  return Json{{"code", f.code},
              {"severity", severity_word(f.severity)},
              {"subjects", std::move(subjects)},
              {"place", Json{{"x", rounded(f.x)}, {"y", rounded(f.y)}, {"z", rounded(f.z)}}},
              {"measured", rounded(f.measured)},
              {"limit", rounded(f.limit)},
              {"margin", rounded(f.margin)},
              {"unit", f.unit},
              {"message", f.message},
              {"remedy", f.remedy},
              {"changes", std::move(changes)}};
}

Json account(const Track& t) {
  std::vector<Mm> bunks;
  for (const BunkPlace& b : t.bunks) bunks.push_back(b.x);
  return Json{{"rail_length", rounded(t.rail_length)},
              {"bunk_pitch", rounded(t.bunk_pitch)},
              {"total_length", rounded(t.total_length)},
              {"sections", t.sections},
              {"bunks", t.bunk_count()},
              {"remainder", rounded(t.remainder)},
              {"joints", rounded_list(t.joints)},
              {"bunk_positions", rounded_list(bunks)},
              {"standoff", rounded(t.standoff)},
              {"gauge", rounded(t.gauge)},
              {"head_from", rounded(t.head_from)},
              {"head_to", rounded(t.head_to)},
              {"head_lock", rounded(t.head_lock)}};
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
  Json findings = Json::array();
  for (const Finding& f : e.findings) findings.push_back(finding(f));
  Json json{{"format", "bedwright report"},
            {"version", 1},
            {"program", Json{{"name", "bedwright"}, {"version", report.program_version}}},
            {"order", Json{{"number", h.number},
                           {"customer", h.customer},
                           {"date", h.date},
                           {"revision", h.revision},
                           {"kit", e.job.order.kit},
                           {"frame", e.job.order.frame}}},
            {"state", word(report.state)},
            {"counts", counts(e.findings)},
            {"findings", std::move(findings)},
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
  text += fmt::format("Track   {} sections of {}, {} over all\n", t.sections, figures.say(t.rail_length),
                      figures.say(t.total_length));
  text += fmt::format("Bunks   {} at {}, {} left over in a section\n", t.bunk_count(),
                      figures.say(t.bunk_pitch), figures.say(t.remainder));
  text += fmt::format("Head    runs from {} to {}, locked at {}\n\n", figures.say(t.head_from),
                      figures.say(t.head_to), figures.say(t.head_lock));
  text += findings_table(e.findings, {figures, 100, false}) + "\n";
  text += track_choices_text(e.scene, e.job) + "\n";
  return text + loads_text(e.job, e.bed, e.loads) + "\n" + wrapped(cautions, 0, 100);
}

}  // namespace bedwright
