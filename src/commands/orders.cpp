// bedwright orders: lists what lies in out/ by its manifests.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "commands/built.h"
#include "commands/home.h"
#include "commands/session.h"
#include "commands/tell.h"
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
  return has(r.order.number, a.number) && has(r.order.customer, a.customer) &&
         r.order.date.starts_with(a.year.empty() ? "" : a.year + "-");
}

// A draft is a trial; so is a bed that is stopped.
std::string state(const Recorded& r) {
  return r.standing == Standing::trial ? fmt::format("trial, {}", r.state) : word(r.standing);
}

Json json_of(const Recorded& r) {
  Json json{{"number", r.order.number}, {"revision", r.order.revision}, {"customer", r.order.customer},
            {"date", r.order.date},     {"kit", r.order.kit},           {"frame", r.order.frame},
            {"state", word(r.standing)}};
  if (r.standing == Standing::trial) json["trial"] = r.state;
  if (r.standing == Standing::withdrawn) json["withdrawn"] = {{"date", r.withdrawn_on}, {"why", r.why}};
  json["version"] = r.version;
  json["input_sha256"] = r.input_digest;
  add_built_json(r, json);
  json["folder"] = r.folder.generic_string();
  return json;
}

void print_table(const std::vector<Recorded>& records) {
  std::vector<std::vector<std::string>> rows = {
      {"number", "rev", "date", "state", "customer", "kit", "built"}};
  for (const Recorded& r : records)
    rows.push_back(r.order.number.empty()
                       ? std::vector<std::string>{r.folder.parent_path().filename().string(),
                                                  r.folder.filename().string(), "", state(r),
                                                  "manifest.json cannot be read", "", ""}
                       : std::vector<std::string>{r.order.number, r.order.revision, r.order.date, state(r),
                                                  r.order.customer, r.order.kit, built_cell(r)});
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
