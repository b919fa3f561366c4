// bedwright offer ORDER --frames: which frames on the lot take the order's track, and with how
// much work on their tabs.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <map>
#include <set>
#include <sstream>
#include <tuple>

#include "commands/session.h"
#include "commands/tell.h"
#include "params/frame.h"
#include "units/print.h"
#include "yaml/reader.h"

namespace bedwright {
namespace {

// One round proposes tabs for holes that have none, the next what those uncover.
constexpr int most_rounds = 4;

struct Row {
  std::string file, name;
  int cut_off = 0, file_slots = 0, add = 0;  // tabs, both sides
  std::string pinned;                        // at which end, where it is not the order's
  std::set<std::string> stops;               // codes of what no work on tabs clears
  std::string unread;                        // why it could not be tried
  int work() const { return cut_off + file_slots + add; }
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

// The work that stops propose, and the end to pin the track at: of each key the value that does
// most.
std::map<std::string, std::string> proposed(const std::vector<Finding>& findings) {
  std::map<std::string, std::string> work;
  for (const Finding& f : findings) {
    if (f.severity != Severity::stop) continue;
    for (const Change& c : f.changes)
      if ((c.key.starts_with("frame.tabs.to_") || c.key == "track.datum") &&
          c.value.size() > work[c.key].size())
        work[c.key] = c.value;
  }
  return work;
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
  const std::size_t fixed = order.sets.size();
  std::map<std::string, std::string> work;
  for (int round = 0; round < most_rounds; ++round) {
    order.sets.resize(fixed);
    for (const auto& [key, value] : work) order.sets.push_back(fmt::format("{}={}", key, value));
    const auto loaded = load(order, {}, problems);
    if (!loaded) {
      row.unread = to_line(problems.front());
      return row;
    }
    const Examined& e = *loaded->examined;
    const FrameTabs& t = e.job.frame.tabs;
    row.cut_off = 2 * static_cast<int>(t.to_cut_off.size() + t.to_replace.size());
    row.file_slots = 2 * static_cast<int>(t.to_file.size());
    row.add = 2 * static_cast<int>(t.to_add.size() + t.to_replace.size());
    row.pinned = work.contains("track.datum") ? ", pinned at its " + work.at("track.datum") : "";
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
  return row;
}

std::string verdict(const Row& r) {
  if (!r.unread.empty()) return r.unread;
  if (!r.stops.empty()) {
    std::string codes;
    for (const std::string& code : r.stops) codes += (codes.empty() ? "" : ", ") + code;
    return "no: " + codes;
  }
  return (r.work() == 0 ? "as it stands" : "after this work") + r.pinned;
}

}  // namespace

ExitCode offer_frames(const OfferArguments& arguments) {
  Progress progress;
  std::vector<Row> rows;
  for (const std::string& path : arguments.frames) {
    progress.step("trying " + path);
    rows.push_back(row_of(arguments, path));
  }
  const auto rank = [](const Row& r) { return r.unread.empty() ? r.stops.empty() ? 0 : 1 : 2; };
  std::stable_sort(rows.begin(), rows.end(), [&](const Row& a, const Row& b) {
    return std::tuple(rank(a), a.work()) < std::tuple(rank(b), b.work());
  });
  std::size_t wide = 5;
  for (const Row& r : rows) wide = std::max(wide, (r.name.empty() ? r.file : r.name).size());
  fmt::print("{:{}}  {:>7}  {:>5}  {:>4}  {}\n", "FRAME", wide, "CUT OFF", "FILE", "ADD", "TAKES THE TRACK");
  for (const Row& r : rows)
    fmt::print("{:{}}  {:>7}  {:>5}  {:>4}  {}\n", r.name.empty() ? r.file : r.name, wide, r.cut_off,
               r.file_slots, r.add, verdict(r));
  const auto take = std::count_if(rows.begin(), rows.end(), [&](const Row& r) { return rank(r) == 0; });
  fmt::print("{} of {} take it; figures are tabs, both sides. A code: bedwright explain CODE.\n", take,
             rows.size());
  const bool unread = std::any_of(rows.begin(), rows.end(), [](const Row& r) { return !r.unread.empty(); });
  return unread ? bad_input : take > 0 ? released : stopped;
}

}  // namespace bedwright
