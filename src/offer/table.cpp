// Writes the map as CSV and JSON, reads parts back, and merges them.
#include "offer/table.h"

#include <fmt/format.h>

#include <algorithm>
#include <iterator>
#include <nlohmann/json.hpp>

#include "formats/csv.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

const char* fit_word(Fit fit) {
  return fit == Fit::fits ? "fits" : fit == Fit::stopped ? "stopped" : "impossible";
}

std::string dumped(const Json& json) {
  // A byte that is no UTF-8 in a name must not cost the file.
  return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

std::string row_json(const MapRow& r) {
  return dumped(Json{{"n", r.combination},
                     {"fit", fit_word(r.fit)},
                     {"stops", r.stops},
                     {"warnings", r.warnings},
                     {"by_rule", r.by_rule},
                     {"warned_by", r.warned_by},
                     {"code", r.code},
                     {"margin", r.margin},
                     {"unit", r.unit},
                     {"used", r.used},
                     {"subject", r.subject},
                     {"change", r.change}});
}

std::string near_json(const NearMiss& n) {
  Json changes = Json::array();
  for (const Change& c : n.changes) changes.push_back(Json{{"key", c.key}, {"value", c.value}});
  return dumped(Json{{"n", n.combination}, {"changes", std::move(changes)}, {"remedies", n.remedies}});
}

template <class T>
std::string lines(const char* key, const std::vector<T>& entries, std::string (*text)(const T&)) {
  std::string out = fmt::format("\"{}\": [", key);
  for (std::size_t i = 0; i < entries.size(); ++i)
    out += fmt::format("{}\n  {}", i == 0 ? "" : ",", text(entries[i]));
  return out + (entries.empty() ? "]" : "\n]");
}

Json counts(const OfferMap& map) {
  int of[3] = {0, 0, 0};
  for (const MapRow& r : map.rows) ++of[static_cast<int>(r.fit)];
  return Json{{"fits", of[0]}, {"stopped", of[1]}, {"impossible", of[2]}};
}

MapRow row_from(const Json& j) {
  MapRow r;
  r.combination = j.at("n");
  const std::string fit = j.at("fit");
  r.fit = fit == "fits" ? Fit::fits : fit == "stopped" ? Fit::stopped : Fit::impossible;
  r.stops = j.at("stops");
  r.warnings = j.at("warnings");
  r.by_rule = j.at("by_rule");
  r.warned_by = j.at("warned_by");
  r.code = j.at("code");
  r.margin = j.at("margin");
  r.unit = j.at("unit");
  r.used = j.at("used");
  r.subject = j.at("subject");
  r.change = j.at("change");
  return r;
}

NearMiss near_from(const Json& j) {
  NearMiss n;
  n.combination = j.at("n");
  for (const Json& c : j.at("changes")) n.changes.push_back({c.at("key"), c.at("value")});
  n.remedies = j.at("remedies").get<std::vector<std::string>>();
  return n;
}

MapFile file_from(const Json& j) {
  std::vector<Varied> varied;
  for (const Json& v : j.at("varied"))
    varied.push_back({v.at("key"), v.at("values").get<std::vector<std::string>>()});
  MapFile file{j.at("program").at("version"),
               {},
               {},
               {},
               {},
               printing_called(j.at("order").at("printing")),
               {},
               {Grid(std::move(varied)), {}, {}, {}, 0, 0, 0, 1}};
  const Json& order = j.at("order");
  file.number = order.at("number");
  file.revision = order.at("revision");
  file.date = order.at("date");
  file.digest = order.at("digest");
  file.holds_for = j.at("holds_for").get<std::vector<std::string>>();
  file.map.part = {j.at("part").at("number"), j.at("part").at("of")};
  for (const Json& r : j.at("rows")) file.map.rows.push_back(row_from(r));
  for (const Json& n : j.at("near")) file.map.near.push_back(near_from(n));
  return file;
}

// Every row where it belongs, none more or less.
bool is_whole(const OfferMap& map) {
  const auto size = map.grid.size();
  if (!size || *size == 0 || map.part.number < 1 || map.part.number > map.part.of) return false;
  const std::uint64_t from = map.part.from(*size);
  if (map.rows.size() != map.part.to(*size) - from) return false;
  for (std::size_t i = 0; i < map.rows.size(); ++i)
    if (map.rows[i].combination != from + i) return false;
  return std::all_of(map.near.begin(), map.near.end(), [&](const NearMiss& n) {
    return n.combination >= from && n.combination - from < map.rows.size();
  });
}

bool same_run(const MapFile& a, const MapFile& b) {
  if (a.program_version != b.program_version || a.number != b.number || a.digest != b.digest ||
      a.holds_for != b.holds_for || a.map.part.of != b.map.part.of)
    return false;
  const auto &va = a.map.grid.varied(), &vb = b.map.grid.varied();
  return std::equal(va.begin(), va.end(), vb.begin(), vb.end(),
                    [](const Varied& p, const Varied& q) { return p.key == q.key && p.values == q.values; });
}

}  // namespace

PrintedUnit margin_unit(const std::string& unit, Printing printing) {
  return unit == "mm" ? Figures{printing}.printed(unit) : PrintedUnit{1, unit};
}

std::string map_csv(const MapFile& file) {
  Csv csv;
  std::vector<CsvCell> head;
  for (const Varied& v : file.map.grid.varied()) head.emplace_back(v.key);
  for (const char* name : {"fits", "stops", "warnings", "rule", "margin", "unit", "used", "at", "stopped by",
                           "warned by", "change"})
    head.emplace_back(name);
  csv.row(head);
  for (const MapRow& r : file.map.rows) {
    std::vector<CsvCell> cells;
    const std::vector<std::size_t> values = file.map.grid.values_of(r.combination);
    for (std::size_t i = 0; i < values.size(); ++i)
      cells.emplace_back(file.map.grid.varied()[i].values[values[i]]);
    cells.emplace_back(r.fit == Fit::fits ? "yes" : r.fit == Fit::stopped ? "no" : "cannot");
    cells.emplace_back(r.stops);
    cells.emplace_back(r.warnings);
    cells.emplace_back(r.code);
    const PrintedUnit unit = margin_unit(r.unit, file.printing);
    if (r.unit.empty())
      cells.emplace_back("");
    else
      cells.emplace_back(r.margin / unit.one, 3);
    cells.emplace_back(unit.name);
    if (r.fit == Fit::fits && !r.unit.empty())
      cells.emplace_back(r.used, 3);
    else
      cells.emplace_back("");
    for (const std::string* text : {&r.subject, &r.by_rule, &r.warned_by, &r.change})
      cells.emplace_back(*text);
    csv.row(cells);
  }
  return csv.text();
}

std::string map_json(const MapFile& file) {
  Json varied = Json::array();
  for (const Varied& v : file.map.grid.varied()) varied.push_back(Json{{"key", v.key}, {"values", v.values}});
  const Json order{{"number", file.number},
                   {"revision", file.revision},
                   {"date", file.date},
                   {"printing", printing_word(file.printing)},
                   {"digest", file.digest}};
  std::string out = "{\"format\": \"bedwright offer\",\n\"version\": 2,\n";
  out += fmt::format("\"program\": {},\n",
                     dumped(Json{{"name", "bedwright"}, {"version", file.program_version}}));
  out += fmt::format("\"order\": {},\n\"holds_for\": {},\n\"varied\": {},\n", dumped(order),
                     dumped(file.holds_for), dumped(varied));
  out += fmt::format("\"part\": {},\n",
                     dumped(Json{{"number", file.map.part.number}, {"of", file.map.part.of}}));
  out += fmt::format("\"counts\": {},\n", dumped(counts(file.map)));
  return out + lines("rows", file.map.rows, row_json) + ",\n" + lines("near", file.map.near, near_json) +
         "}\n";
}

std::variant<MapFile, std::string> read_map_json(const std::string& text) {
  try {
    const Json json = Json::parse(text);
    if (json.at("format") != "bedwright offer") return "is no map that bedwright offer has written";
    if (json.at("version") != 2)
      return fmt::format("is of version {}; this program reads version 2", json.at("version").dump());
    MapFile file = file_from(json);
    if (!is_whole(file.map)) return "does not hold the rows its part should";
    return file;
  } catch (const nlohmann::json::parse_error&) {
    return "is no map that bedwright offer has written";
  } catch (const std::invalid_argument& e) {
    return fmt::format("cannot be read as a map ({})", e.what());
  } catch (const nlohmann::json::exception& e) {
    return fmt::format("cannot be read as a map ({})", e.what());
  }
}

std::variant<MapFile, std::string> merged(std::vector<MapFile> parts, std::size_t near_misses) {
  if (parts.empty()) return "there is no part to merge";
  std::sort(parts.begin(), parts.end(),
            [](const MapFile& a, const MapFile& b) { return a.map.part.number < b.map.part.number; });
  const std::uint64_t of = parts.front().map.part.of;
  for (std::size_t i = 0; i < parts.size(); ++i) {
    if (!same_run(parts[i], parts.front()))
      return fmt::format(
          "part {} of {} is of another run than part {} of {}: order, overrides, values varied and program "
          "must be the same",
          parts[i].map.part.number, parts[i].map.part.of, parts.front().map.part.number, of);
    if (i > 0 && parts[i].map.part.number == parts[i - 1].map.part.number)
      return fmt::format("part {} is given twice", parts[i].map.part.number);
  }
  for (std::uint64_t k = 1; k <= of; ++k)
    if (k > parts.size() || parts[k - 1].map.part.number != k)
      return fmt::format("part {} of {} is missing", k, of);
  MapFile all = std::move(parts.front());
  std::vector<NearMiss> near = std::move(all.map.near);
  all.map.near.clear();
  for (std::size_t i = 1; i < parts.size(); ++i) {
    std::move(parts[i].map.rows.begin(), parts[i].map.rows.end(), std::back_inserter(all.map.rows));
    std::move(parts[i].map.near.begin(), parts[i].map.near.end(), std::back_inserter(near));
  }
  all.map.part = {1, 1};
  for (const std::size_t row : nearest_rows(all.map.rows, near_misses)) {
    const std::uint64_t n = all.map.rows[row].combination;
    const auto found =
        std::find_if(near.begin(), near.end(), [&](const NearMiss& m) { return m.combination == n; });
    if (found != near.end()) all.map.near.push_back(std::move(*found));
  }
  return all;
}

}  // namespace bedwright
