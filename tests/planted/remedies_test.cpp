// A remedy offered, applied, clears its finding: the rules' own proposals, before the
// advice has tried them, over random faults in the demo orders. BEDWRIGHT_REMEDY_ORDERS
// says how many orders (default 60).
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cstdlib>
#include <map>
#include <random>
#include <set>

#include "examine/examine.h"
#include "params/file_store.h"
#include "support/demo.h"

namespace bedwright {
namespace {

// A value a shop might write, from a range in mm.
struct Range {
  const char* key;
  double from, to;
};

constexpr Range ranges[] = {
    {"frame.tabs.length", 38, 90},
    {"frame.tabs.slot_length", 18, 32},
    {"frame.tabs.weld_leg", 2, 12},
    {"frame.welds.leg", 2, 12},
    {"frame.tabs.hole_diameter", 12, 17},
    {"limits.stock_length", 200, 900},
    {"limits.stock_width", 100, 300},
    {"kit.rail.joint_gap_plus", 0, 6},
    {"kit.rail.height_tolerance", 0, 1},
    {"kit.rail.length_tolerance", 0, 1.5},
    {"limits.torch_diameter", 10, 35},
    {"kit.mounting.end_offset", 40, 90},
    {"tolerances.weld_placement", 0, 3},
    {"limits.most_past_nut", 5, 16},
    {"tolerances.gauge", 0, 4},
    {"limits.tip_clearance", 0, 8},
    {"limits.track_length_error", 2, 9},
    {"limits.joint_step", 0.2, 1},
    {"bolts.track", 25, 70},
    {"bolts.bunk", 20, 50},
    {"bolts.gusset", 20, 50},
    {"bolts.jack", 25, 70},
    {"track.rail_length", 1900, 2150},
    {"track.bunk_pitch", 380, 620},
};

std::string random_fault(std::mt19937& dice) {
  const auto of = [&](int n) { return static_cast<int>(dice() % static_cast<unsigned>(n)); };
  const auto between = [&](double from, double to) { return from + (to - from) * of(1001) / 1000; };
  switch (of(10)) {
    case 0:
      return fmt::format("track.datum={}", of(2) ? "front" : "rear");
    case 1:
      return fmt::format("limits.table_hole={:.2f}", between(0.8, 3));
    case 2:
      return fmt::format("limits.tab_load={:.0f} lb", between(200, 4000));
    case 3:
      return fmt::format("tabs_found=[{{tab: {}{}, x: {:.1f} mm, y: {:.1f} mm}}]", of(2) ? "L" : "R",
                         1 + of(12), between(-8, 8), between(-5, 5));
    default:
      break;
  }
  const Range& r = ranges[of(static_cast<int>(std::size(ranges)))];
  return fmt::format("{}={:.1f} mm", r.key, between(r.from, r.to));
}

// Which finding it is: its rule and what it is about.
using Key = std::pair<std::string, std::vector<Identity>>;
Key key_of(const Finding& f) {
  Key key{f.code, {}};
  for (const Subject& s : f.subjects) key.second.push_back(s.id);
  return key;
}
std::set<Key> keys_of(const std::vector<Finding>& findings) {
  std::set<Key> all;
  for (const Finding& f : findings) all.insert(key_of(f));
  return all;
}

bool is_over_a_bed(const std::string& code) {
  return std::any_of(rules().begin(), rules().end(), [&](const Rule& r) { return r.code == code; });
}

TEST(Remedies, EachOneTheRulesOfferClearsItsFinding) {
  const char* told = std::getenv("BEDWRIGHT_REMEDY_ORDERS");
  const int wanted = told && *told ? std::atoi(told) : 60;
  std::mt19937 dice(20261019);
  FileStore store;
  ExamineOptions cheaply;
  cheaply.load_remedies = false;
  std::map<std::string, int> offered;
  int orders = 0;
  std::map<std::string, int> no_bed;  // by key: the order then does not read
  for (int tries = 0; orders < wanted && tries < 20 * wanted; ++tries) {
    const std::string order = testing::order_path(testing::good_orders[dice() % testing::good_orders.size()]);
    std::vector<std::string> sets;
    for (int faults = 1 + static_cast<int>(dice() % 2); faults > 0; --faults)
      sets.push_back(random_fault(dice));
    const Examination examined = examine(store, order, sets, cheaply);
    if (!examined) continue;
    ++orders;
    std::map<std::string, std::optional<std::set<Key>>> tried;
    for (const Finding& f : examined.bed->findings) {
      if (!is_over_a_bed(f.code)) continue;
      for (const Change& c : f.changes) {
        const std::string set = c.key + "=" + c.value;
        if (!tried.contains(set)) {
          std::vector<std::string> more = sets;
          more.push_back(set);
          const Examination after = examine(store, order, more, cheaply);
          tried[set] = after ? std::optional(keys_of(after.bed->findings)) : std::nullopt;
          if (!after && ++no_bed[f.code + " " + c.key] < 3)
            fmt::print("{} makes no bed of {} with {}\n", set, order, fmt::join(sets, "; "));
        }
        ++offered[f.code];
        if (tried[set] && tried[set]->contains(key_of(f)))
          ADD_FAILURE() << f.code << " " << f.subjects.front().name << " stays after " << set << " in "
                        << order << " with " << fmt::format("{}", fmt::join(sets, "; ")) << "\n  "
                        << f.message << "\n  " << f.remedy;
      }
    }
  }
  EXPECT_EQ(orders, wanted);
  const auto listed = [](const std::map<std::string, int>& counts) {
    std::string text;
    for (const auto& [what, n] : counts) text += fmt::format("{} {} {}", text.empty() ? "" : ",", what, n);
    return text;
  };
  fmt::print("{} orders; remedies applied:{}; made no bed:{}\n", orders, listed(offered), listed(no_bed));
  EXPECT_GE(offered.size(), 8u) << "too few rules met to prove anything";
}

}  // namespace
}  // namespace bedwright
