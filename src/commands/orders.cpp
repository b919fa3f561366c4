// bedwright orders: lists what lies in out/ by its manifests.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <nlohmann/json.hpp>
#include <optional>
#include <sstream>

#include "commands/built.h"
#include "commands/home.h"
#include "commands/session.h"
#include "commands/tell.h"
#include "commands/touched.h"
#include "formats/digest.h"
#include "packet/record.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

std::string small(const std::string& text) {
  std::string all;
  for (const char c : text) all += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return all;
}

bool has(const std::string& text, const std::string& part) {
  return small(text).find(small(part)) != std::string::npos;
}

// What cannot be read is never left out: whose it is nobody knows.
bool is_wanted(const OrdersArguments& a, const Recorded& r) {
  if (r.standing == Standing::damaged && r.order.number.empty()) return true;
  return has(r.order.number, a.number) && has(r.order.customer, a.customer) && has(r.order.kit, a.kit) &&
         r.order.date.starts_with(a.year.empty() ? "" : a.year + "-");
}

// A draft is a trial; so is a bed that is stopped.
std::string state(const Recorded& r) {
  return r.standing == Standing::trial ? fmt::format("trial, {}", r.state) : word(r.standing);
}

// As heavy as it travels, by the packet's own report (packet/report.h): loads.conditions, the most
// of those that are judged. Only that list is parsed, so that hundreds of orders list at once. Nothing where
// the report is not there, was changed or tells no mass.
std::optional<Kg> mass_of(const Recorded& r) {
  const auto listed = std::find_if(r.files.begin(), r.files.end(),
                                   [](const ListedFile& file) { return file.path == "report.json"; });
  if (listed == r.files.end()) return std::nullopt;
  std::ifstream file(r.folder / listed->path, std::ios::binary);
  const std::string text{std::istreambuf_iterator<char>(file), {}};
  constexpr const char* key = "\n    \"conditions\": ";
  const auto at = text.find(key);
  if (!file || at == std::string::npos || sha256(text) != listed->sha256) return std::nullopt;
  std::istringstream list(text.substr(at + std::string(key).size()));
  Json conditions;
  try {
    list >> conditions;
  } catch (const Json::parse_error&) {
    return std::nullopt;
  }
  std::optional<Kg> most;
  for (const Json& c : conditions)
    if (c.is_object() && c.value("judged", false) && c.contains("mass") && c["mass"].is_number())
      most = std::max(most.value_or(0), c["mass"].get<double>());
  return most;
}

Json json_of(const Recorded& r) {
  Json json{{"number", r.order.number}, {"revision", r.order.revision}, {"customer", r.order.customer},
            {"date", r.order.date},     {"kit", r.order.kit},           {"frame", r.order.frame},
            {"state", word(r.standing)}};
  if (r.standing == Standing::trial) json["trial"] = r.state;
  if (r.standing == Standing::withdrawn) json["withdrawn"] = {{"date", r.withdrawn_on}, {"why", r.why}};
  const std::optional<Kg> mass = mass_of(r);
  json["mass_kg"] = mass ? Json(*mass) : Json();
  json["version"] = r.version;
  json["input_sha256"] = r.input_digest;
  add_built_json(r, json);
  json["folder"] = r.folder.generic_string();
  return json;
}

void print_table(const std::vector<Recorded>& records) {
  std::vector<std::vector<std::string>> rows = {
      {"number", "rev", "date", "state", "lb", "kg", "customer", "kit", "built"}};
  for (const Recorded& r : records) {
    if (r.order.number.empty()) {
      rows.push_back({r.folder.parent_path().filename().string(), r.folder.filename().string(), "", state(r),
                      "", "", "manifest.json cannot be read", "", ""});
      continue;
    }
    const std::optional<Kg> mass = mass_of(r);
    const auto figure = [&](double unit) {
      return mass ? fmt::format("{:.0f}", *mass / unit) : std::string("?");
    };
    rows.push_back({r.order.number, r.order.revision, r.order.date, state(r), figure(pound), figure(1),
                    r.order.customer, r.order.kit, built_cell(r)});
  }
  std::vector<std::size_t> widths(rows.front().size());
  for (const auto& row : rows)
    for (std::size_t i = 0; i < row.size(); ++i) widths[i] = std::max(widths[i], row[i].size());
  for (std::size_t k = 0; k < rows.size(); ++k) {
    std::string line;
    for (std::size_t i = 0; i < rows[k].size(); ++i) line += fmt::format("{:<{}}  ", rows[k][i], widths[i]);
    line.erase(line.find_last_not_of(' ') + 1);
    fmt::print("{}\n", line);
    if (k > 0) fmt::print("{}", built_notes(records[k - 1]));
    const bool withdrawn = k > 0 && records[k - 1].standing == Standing::withdrawn;
    if (withdrawn)
      fmt::print("  withdrawn {}: {}\n", records[k - 1].withdrawn_on,
                 records[k - 1].why.empty() ? "the note beside it is lost" : records[k - 1].why);
  }
}

}  // namespace

ExitCode orders_command(const OrdersArguments& arguments) {
  const fs::path out = arguments.out.empty() ? home().out() : fs::path(arguments.out);
  std::vector<Recorded> records;
  try {
    if (!arguments.out.empty() && !fs::is_directory(out)) {
      tell("bedwright: there is no folder {}\n", out.string());
      return bad_input;
    }
    records = all_recorded(out);
  } catch (const fs::filesystem_error& unreadable) {
    tell("bedwright: {}\n", unreadable.what());
    return bad_input;
  }
  std::erase_if(records, [&](const Recorded& r) { return !is_wanted(arguments, r); });
  if (!arguments.touched_by.empty()) return touched_orders(arguments, records);
  if (arguments.json) {
    Json list = Json::array();
    for (const Recorded& r : records) list.push_back(json_of(r));
    const Json json{{"format", "bedwright orders"}, {"version", 1}, {"orders", list}};
    fmt::print("{}\n", json.dump(2, ' ', false, Json::error_handler_t::replace));
  } else if (records.empty()) {
    fmt::print("Nothing found in {}.\n", out.string());
  } else {
    print_table(records);
  }
  return released;
}

}  // namespace bedwright
