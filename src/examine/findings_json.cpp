// A finding as JSON, the one form of it.
#include "examine/findings_json.h"

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>

#include "rules/table.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

Json finding_json(const Finding& f) {
  Json subjects = Json::array();
  for (const Subject& s : f.subjects) subjects.push_back(s.name);
  Json changes = Json::array();
  for (const Change& c : f.changes)
    changes.push_back(Json{{"key", c.key}, {"value", c.value}, {"brings", c.brings}});
  return Json{
      {"code", f.code},
      {"severity", severity_word(f.severity)},
      {"subjects", std::move(subjects)},
      {"place", Json{{"x", to_a_millionth(f.x)}, {"y", to_a_millionth(f.y)}, {"z", to_a_millionth(f.z)}}},
      {"measured", to_a_millionth(f.measured)},
      {"limit", to_a_millionth(f.limit)},
      {"margin", to_a_millionth(f.margin)},
      {"unit", f.unit},
      {"message", f.message},
      {"remedy", f.remedy},
      {"changes", std::move(changes)}};
}

// Without a judge every pair that is only warned of is one the cheap test left open.
bool is_open(const Finding& f) { return f.severity == Severity::warn && is_about_clashes(f.code); }

}  // namespace

double to_a_millionth(double value) { return std::round(value * 1e6) / 1e6 + 0.0; }

Json findings_json(const std::vector<Finding>& findings) {
  Json list = Json::array();
  for (const Finding& f : findings) list.push_back(finding_json(f));
  return list;
}

Json counts_json(const std::vector<Finding>& findings) {
  Json counts{{"stop", 0}, {"warn", 0}, {"note", 0}};
  for (const Finding& f : findings) {
    Json& n = counts[severity_word(f.severity)];
    n = n.get<int>() + 1;
  }
  return counts;
}

Json problems_json(const std::vector<Problem>& problems) {
  Json list = Json::array();
  for (const Problem& p : problems)
    list.push_back(Json{{"file", p.where.file},
                        {"line", p.where.line},
                        {"column", p.where.column},
                        {"key", p.where.key},
                        {"what", p.what},
                        {"would_do", p.would_do},
                        {"text", to_line(p)}});
  return list;
}

Json unjudged_json(const Examination& examination) {
  if (!examination) return Json{{"problems", problems_json(examination.problems)}};
  const Examined& e = *examination.bed;
  return Json{{"stopped", e.is_stopped()},
              {"open", std::count_if(e.findings.begin(), e.findings.end(), is_open)},
              {"counts", counts_json(e.findings)},
              {"findings", findings_json(e.findings)}};
}

}  // namespace bedwright
