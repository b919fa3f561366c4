// bedwright offer ORDER --frames: which frames on the lot take the order's track, and with how
// much work on their tabs.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <optional>
#include <set>
#include <sstream>
#include <tuple>

#include "commands/session.h"
#include "commands/tell.h"
#include "draw/table2d.h"
#include "params/frame.h"
#include "sheets/frame/changes.h"
#include "units/print.h"
#include "yaml/reader.h"

namespace bedwright {
namespace {

// One round proposes tabs for holes that have none, the next what those uncover, and so on.
constexpr int most_rounds = 6;

struct Row {
  std::string file, name;
  WorkCount work;
  std::optional<double> minutes;  // by the order's times; none where these do not say
  std::string pinned;             // at which end, where it is not the order's
  std::set<std::string> stops;    // codes of what no work on the frame clears
  std::string unread;             // why it could not be tried
};

// What the frame itself says of where jacks and axle are, as the order's own values.
std::vector<std::string> as_it_stands(const FrameFile& frame) {
  std::vector<std::string> sets;
  const Mm ahead = frame.main.front_overhang;
  std::string jacks;
  for (const Mm x : frame.jack.existing)
    jacks += (jacks.empty() ? "" : ", ") + as_written(Dimension::length, x - ahead);
  if (!jacks.empty()) sets.push_back("jacks=[" + jacks + "]");
  if (frame.axle.existing)
    sets.push_back("axle.position=" + as_written(Dimension::length, *frame.axle.existing - ahead));
  return sets;
}

bool is_work(const std::string& key) {
  for (const char* of : {"frame.tabs.to_", "frame.tabs.left.to_", "frame.tabs.right.to_"})
    if (key.starts_with(of)) return true;
  return false;
}

// The work that stops propose, and the end to pin the track at: of each key the value that does
// most.
std::map<std::string, std::string> proposed(const std::vector<Finding>& findings) {
  std::map<std::string, std::string> work;
  for (const Finding& f : findings) {
    if (f.severity != Severity::stop) continue;
    for (const Change& c : f.changes)
      if ((is_work(c.key) || c.key == "track.datum") && c.value.size() > work[c.key].size())
        work[c.key] = c.value;
  }
  return work;
}

// The order with that frame under it, worked on round by round until nothing more is proposed.
void try_frame(OrderArguments order, Row& row) {
  const std::size_t fixed = order.sets.size();
  std::map<std::string, std::string> work;
  for (int round = 0; round < most_rounds; ++round) {
    order.sets.resize(fixed);
    for (const auto& [key, value] : work) order.sets.push_back(fmt::format("{}={}", key, value));
    std::vector<Problem> problems;
    const auto loaded = load(order, {}, problems);
    if (!loaded) {
      row.unread = to_line(problems.front());
      return;
    }
    const Examined& e = *loaded->examined;
    row.work = work_of(frame_changes(e.job, e.bed));
    row.minutes = minutes_of(row.work, e.job.order.times);
    if (work.contains("track.datum")) row.pinned = ", pinned at its " + work.at("track.datum");
    row.stops.clear();
    for (const Finding& f : e.findings)
      if (f.severity == Severity::stop) row.stops.insert(f.code);
    bool more = false;
    for (const auto& [key, value] : proposed(e.findings)) {
      more = more || work[key] != value;
      work[key] = value;
    }
    if (!more) break;
  }
}

Row row_of(const OfferArguments& arguments, const std::string& path) {
  Row row;
  row.file = path;
  FrameFile frame;
  std::vector<Problem> problems;
  std::ifstream in(path, std::ios::binary);
  std::stringstream content;
  content << in.rdbuf();
  if (!in) {
    row.unread = "cannot be read";
    return row;
  }
  read_document(parse_document(path, content.str()), frame, problems);
  if (!problems.empty()) {
    row.unread = to_line(problems.front());
    return row;
  }
  row.name = frame.name;
  OrderArguments order{arguments.order, arguments.sets};
  order.sets.push_back("frame=" + std::filesystem::absolute(path).string());
  for (const std::string& set : as_it_stands(frame)) order.sets.push_back(set);
  try_frame(order, row);
  // New tabs are less exact than measured ones: where holes do not fit, pinned at the middle.
  if (row.unread.empty() && row.stops.contains("HOLE-FIT")) {
    Row middle = row;
    middle.pinned = ", pinned at its middle";
    order.sets.emplace_back("track.datum=middle");
    try_frame(order, middle);
    if (middle.unread.empty() && middle.stops.size() < row.stops.size()) row = middle;
  }
  return row;
}

std::string verdict(const Row& r) {
  if (!r.unread.empty()) return r.unread;
  if (!r.stops.empty()) {
    std::string codes;
    for (const std::string& code : r.stops) codes += (codes.empty() ? "" : ", ") + code;
    return "no: " + codes;
  }
  return (r.work.to_the_frame() == 0 ? "as it stands" : "after this work") + r.pinned;
}

// Those that take the track first, the least work first: by the hour where that is known.
std::tuple<int, double, int> rank(const Row& r) {
  if (!r.unread.empty()) return {2, 0, 0};
  if (!r.stops.empty()) return {1, 0, static_cast<int>(r.stops.size())};
  return {0, r.minutes.value_or(0), r.work.to_the_frame() + r.work.shims};
}

void print_table(const std::vector<Row>& rows) {
  Table2d table{{"FRAME", "CUT OFF", "FILE", "DRILL", "WELD ON", "SHIM", "HOURS", "TAKES THE TRACK"}, {}};
  const auto count = [](int n) { return n > 0 ? std::to_string(n) : std::string("-"); };
  for (const Row& r : rows) {
    const std::string name = r.name.empty() ? r.file : r.name;
    // Work that does not clear the stops is no work to do.
    if (!r.unread.empty() || !r.stops.empty()) {
      table.rows.push_back({name, "", "", "", "", "", "", verdict(r)});
      continue;
    }
    const WorkCount& w = r.work;
    table.rows.push_back({name, count(w.cut_off), count(w.file), count(w.holes), count(w.add), count(w.shims),
                          r.minutes ? fmt::format("{:.1f}", *r.minutes / 60) : "?", verdict(r)});
  }
  std::vector<std::size_t> wide;
  for (std::size_t c = 0; c < table.head.size(); ++c) {
    wide.push_back(table.head[c].size());
    for (const auto& row : table.rows)
      if (c + 1 < row.size()) wide[c] = std::max(wide[c], row[c].size());
  }
  const auto print = [&](const std::vector<std::string>& row) {
    std::string line;
    for (std::size_t c = 0; c + 1 < row.size(); ++c)
      line += c == 0 ? fmt::format("{:{}}", row[c], wide[c]) : fmt::format("  {:>{}}", row[c], wide[c]);
    fmt::print("{}  {}\n", line, row.back());
  };
  print(table.head);
  for (const auto& row : table.rows) print(row);
}

}  // namespace

ExitCode offer_frames(const OfferArguments& arguments) {
  Progress progress;
  std::vector<Row> rows;
  for (const std::string& path : arguments.frames) {
    progress.step("trying " + path);
    rows.push_back(row_of(arguments, path));
  }
  std::stable_sort(rows.begin(), rows.end(), [](const Row& a, const Row& b) { return rank(a) < rank(b); });
  print_table(rows);
  const auto take =
      std::count_if(rows.begin(), rows.end(), [](const Row& r) { return std::get<0>(rank(r)) == 0; });
  fmt::print(
      "{} of {} take it. Figures are tabs, each counted, and holes drilled in place; SHIM: tabs, where "
      "heights "
      "were measured. A code: bedwright explain CODE.\n",
      take, rows.size());
  if (std::any_of(rows.begin(), rows.end(),
                  [](const Row& r) { return std::get<0>(rank(r)) == 0 && !r.minutes; }))
    fmt::print("HOURS ?: the order does not say how long a task takes; give minutes under its key times.\n");
  const bool unread = std::any_of(rows.begin(), rows.end(), [](const Row& r) { return !r.unread.empty(); });
  return unread ? bad_input : take > 0 ? released : stopped;
}

}  // namespace bedwright
