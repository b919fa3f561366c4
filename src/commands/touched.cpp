// Examines releases again with another kit file.
#include "commands/touched.h"

#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <nlohmann/json.hpp>

#include "commands/revised.h"
#include "commands/tell.h"
#include "kernel/kernel_judge.h"
#include "packet/inputs.h"
#include "params/input.h"
#include "rules/table.h"
#include "sheets/tabs/tab_rows.h"
#include "yaml/document.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

struct Touched {
  const Recorded& record;
  std::string fault = {};                 // why it cannot be told; the rest is then empty
  std::vector<std::string> changes = {};  // a phrase each; empty: not touched
  bool frame_stands = false;              // the order was for a frame that stood already
  bool tabs_stay = true;                  // every tab's hole is where it was
  std::vector<std::string> stops = {};    // what stops it with the revised kit, that did not before
};

bool same_tabs(const Bed& a, const Bed& b) {
  const std::vector<TabRow> before = tab_rows(a), now = tab_rows(b);
  return std::equal(
      before.begin(), before.end(), now.begin(), now.end(), [](const TabRow& p, const TabRow& q) {
        return p.number == q.number && p.left == q.left && p.right == q.right &&
               std::abs(p.hole - q.hole) < same_place && std::abs(p.across - q.across) < same_place;
      });
}

std::vector<std::string> stops_of(const Examined& e) {
  std::vector<std::string> stops;
  for (const Finding& f : e.findings)
    if (f.severity == Severity::stop) stops.push_back(fmt::format("{}: {}", f.code, f.message));
  return stops;
}

// In YAML's single quotes, within which only they themselves are doubled.
std::string quoted_for_set(const std::string& path) {
  std::string text = "'";
  for (const char c : path) text += c == '\'' ? std::string("''") : std::string(1, c);
  return text + "'";
}

Touched touched(const Recorded& record, const std::string& kit) {
  Touched found{record};
  const std::string order = (record.folder / inputs_order).string();
  const ExamineOptions options{kernel_judge(), false, false};
  std::vector<Problem> problems;
  const auto was = load({order, {}}, options, problems);
  const auto now = was ? load({order, {"kit=" + quoted_for_set(kit)}}, options, problems) : std::nullopt;
  if (!now) {
    found.fault = to_line(problems.front());
    return found;
  }
  found.changes = change_phrases(compared(*was, *now));
  found.frame_stands = frame_stands(was->examined->job);
  found.tabs_stay = same_tabs(was->examined->bed, now->examined->bed);
  const std::vector<std::string> before = stops_of(*was->examined);
  for (const std::string& stop : stops_of(*now->examined))
    if (std::find(before.begin(), before.end(), stop) == before.end()) found.stops.push_back(stop);
  return found;
}

std::string frame_words(const Touched& t) {
  if (t.frame_stands)
    return t.stops.empty()
               ? fmt::format("its frame stands ({}) and still takes the track", t.record.order.frame)
               : fmt::format("its frame stands ({}) and does not take the track as it is",
                             t.record.order.frame);
  return t.tabs_stay ? "its tabs stay where they are: a frame built to it keeps them"
                     : "its tabs move: a frame built to it does not take the revised track as it is";
}

void print(const Touched& t) {
  const OrderName& o = t.record.order;
  fmt::print("\n{} revision {}, {}, {}: {}\n", o.number, o.revision, o.customer, word(t.record.standing),
             !t.fault.empty()    ? "cannot be told"
             : t.changes.empty() ? "not touched"
             : t.stops.empty()   ? "touched, goes together"
                                 : "touched, does not go together");
  const auto line = [](const std::string& text) { fmt::print("{}", wrapped(text, 2, columns())); };
  if (!t.fault.empty()) return line(t.fault);
  if (t.changes.empty()) return;
  for (const std::string& change : t.changes) line(change);
  line(frame_words(t));
  for (const std::string& stop : t.stops) line("stop " + stop);
}

Json json_of(const Touched& t) {
  return Json{{"number", t.record.order.number},
              {"revision", t.record.order.revision},
              {"customer", t.record.order.customer},
              {"state", word(t.record.standing)},
              {"folder", t.record.folder.generic_string()},
              {"frame", t.record.order.frame},
              {"frame_stands", t.frame_stands},
              {"fault", t.fault},
              {"touched", !t.changes.empty()},
              {"tabs_stay", t.tabs_stay},
              {"changes", t.changes},
              {"stops", t.stops}};
}

}  // namespace

ExitCode touched_orders(const OrdersArguments& arguments, const std::vector<Recorded>& records) {
  std::vector<Problem> problems;
  const auto bytes = read_bytes(arguments.touched_by, {arguments.touched_by, 0, 0, ""}, problems);
  std::string name;
  if (bytes) {
    const Document document = parse_document(arguments.touched_by, *bytes);
    problems = document.problems;
    if (const Node* node = document.root.find("name")) name = node->scalar;
    if (problems.empty() && name.empty())
      problems.push_back(
          {mark_of(document, "name"), "is not there", "write the kit's name, as name: Tansy T49 track"});
  }
  if (!problems.empty()) {
    for (const Problem& p : problems) tell("{}\n", to_line(p));
    return bad_input;
  }
  const std::string kit = fs::absolute(arguments.touched_by).lexically_normal().string();
  Progress progress;
  std::vector<Touched> all;
  for (const Recorded& record : records) {
    const bool may_stand = record.standing == Standing::released || record.standing == Standing::withdrawn;
    if (!may_stand || record.order.kit != name) continue;
    progress.step("trying " + record.folder.generic_string());
    all.push_back(touched(record, kit));
  }
  progress.step("");
  const auto count = [&](auto what) { return std::count_if(all.begin(), all.end(), what); };
  if (arguments.json) {
    Json list = Json::array();
    for (const Touched& t : all) list.push_back(json_of(t));
    const Json json{{"format", "bedwright touched"}, {"version", 1}, {"kit", name}, {"releases", list}};
    fmt::print("{}\n", json.dump(2, ' ', false, Json::error_handler_t::replace));
    return released;
  }
  fmt::print("{}: {} released with it, {} touched", name, all.size(),
             count([](const Touched& t) { return !t.changes.empty(); }));
  if (const auto unknown = count([](const Touched& t) { return !t.fault.empty(); }); unknown > 0)
    fmt::print(", {} that cannot be told", unknown);
  fmt::print("\n");
  for (const Touched& t : all) print(t);
  return released;
}

}  // namespace bedwright
