// One order examined in every way the views examine it: for `check`, for a cell of
// `offer`'s map and, as in a browser, without the kernel. They may differ in what only
// the kernel decides, and in nothing else. BEDWRIGHT_SAME_ORDERS says how many random
// orders (default 20: ten seconds); BEDWRIGHT_BRUTE_SEED where to start.
#include <gtest/gtest.h>

#include <chrono>
#include <cstdlib>
#include <iostream>
#include <map>
#include <set>
#include <tuple>

#include "brute/random_order.h"
#include "kernel/kernel_judge.h"
#include "offer/map.h"
#include "rules/clash/clash.h"
#include "rules/clash/pair_memory.h"
#include "support/shipped.h"

namespace bedwright {
namespace {

using testing::OrderMaker;
using testing::RandomOrder;
using Findings = std::vector<Finding>;
using Pair = std::tuple<std::string, Identity, Identity>;  // the rule's code, two whole things

int number_from(const char* name, int otherwise) {
  const char* text = std::getenv(name);
  return text && *text ? std::atoi(text) : otherwise;
}

// Every field, figures to the last bit.
std::string told(const Finding& f) {
  std::string text = fmt::format("{} {} at {:a} {:a} {:a}: {:a} of {:a}, {:a} {}\n  {}\n  {}\n", f.code,
                                 static_cast<int>(f.severity), f.x, f.y, f.z, f.measured, f.limit, f.margin,
                                 f.unit, f.message, f.remedy);
  for (const Subject& s : f.subjects)
    text += fmt::format("  {} = {} + {}\n", s.name, s.in_two.whole(), name(s.id));
  for (const NameAt& n : f.names_in_remedy) text += fmt::format("  name {} {}\n", n.from, n.length);
  for (const Change& c : f.changes) text += fmt::format("  {}={} brings {}\n", c.key, c.value, c.brings);
  return text;
}

// Finding by finding, in order; the first that is not the same is told.
void expect_same(const Findings& a, const Findings& b) {
  EXPECT_EQ(a.size(), b.size());
  for (std::size_t i = 0; i < std::min(a.size(), b.size()); ++i)
    if (told(a[i]) != told(b[i])) {
      ADD_FAILURE() << "number " << i + 1 << "\n" << told(a[i]) << "is elsewhere\n" << told(b[i]);
      return;
    }
}

Pair pair_of(const std::string& code, const Identity& a, const Identity& b) {
  const Identity x = whole_thing(a), y = whole_thing(b);
  return {code, std::min(x, y), std::max(x, y)};
}

Pair pair_of(const Finding& f) { return pair_of(f.code, f.subjects.at(0).id, f.subjects.at(1).id); }

// The pairs of things that meet somewhere in a way the cheap test leaves open.
std::set<Pair> open_pairs(const Examined& unjudged) {
  const Bed& bed = unjudged.bed;
  std::set<Pair> pairs;
  for (const bool moving : {false, true})
    for (const Meeting& m : meetings(unjudged.scene, moving))
      if (m.standing != Standing::overlap)
        pairs.insert(pair_of(moving ? "CLASH-MOVING" : "CLASH", bed.items[m.a].id, bed.items[m.b].id));
  return pairs;
}

// Those about open pairs, and the rest.
struct Parted {
  std::map<Pair, const Finding*> open;
  Findings rest;
};

Parted part(const Findings& findings, const std::set<Pair>& open) {
  Parted parted;
  for (const Finding& f : findings)
    if (is_about_clashes(f.code) && open.contains(pair_of(f)))
      EXPECT_TRUE(parted.open.emplace(pair_of(f), &f).second) << "told twice: " << told(f);
    else
      parted.rest.push_back(f);
  return parted;
}

// As a cell tells findings: "HOLE-FIT 3, CLASH 1".
std::string counted(const Findings& findings, Severity severity) {
  std::map<std::string, int> counts;
  std::vector<std::string> order;
  for (const Finding& f : findings)
    if (f.severity == severity && counts[f.code]++ == 0) order.push_back(f.code);
  std::string text;
  for (const std::string& code : order)
    text += fmt::format("{}{} {}", text.empty() ? "" : ", ", code, counts[code]);
  return text;
}

int number_of(const Findings& findings, Severity severity) {
  return static_cast<int>(std::count_if(findings.begin(), findings.end(),
                                        [&](const Finding& f) { return f.severity == severity; }));
}

struct Tally {
  int orders = 0, impossible = 0, stopped = 0, findings = 0, open = 0, cleared = 0, near = 0, clashing = 0;
};

// What is said without the kernel and what `check` says: the same but for open pairs.
// Of those none is new with the kernel, and none the cheap test stopped is let go.
void hold_unjudged(const Examined& unjudged, const Examined& check, Tally& tally) {
  const std::set<Pair> pairs = open_pairs(unjudged);
  const Parted before = part(unjudged.findings, pairs), after = part(check.findings, pairs);
  expect_same(before.rest, after.rest);
  for (const auto& [key, f] : after.open) EXPECT_TRUE(before.open.contains(key)) << told(*f);
  for (const auto& [key, f] : before.open) {
    const auto now = after.open.find(key);
    const bool gone = now == after.open.end();
    EXPECT_NE(f->severity, Severity::note) << told(*f);
    if (f->severity == Severity::stop) {
      EXPECT_TRUE(!gone && now->second->severity == Severity::stop) << "let go: " << told(*f);
      continue;
    }
    ++tally.open;
    ++(gone ? tally.cleared : now->second->severity == Severity::stop ? tally.clashing : tally.near);
  }
}

// A cell asks the kernel only where nothing else stops the bed, and leaves what is only
// near out of a stopped one; the rest of it is what `check` says.
void hold_cell(const Examined& cell, const Examined& unjudged, const Examined& check) {
  const Examined& same = unjudged.is_stopped() ? unjudged : check;
  expect_same(with_load_remedies(cell, cell.findings), same.findings);
  const MapRow row = row_of(cell);
  EXPECT_EQ(row.fit, check.is_stopped() ? Fit::stopped : Fit::fits);
  Findings expected = check.findings;
  if (check.is_stopped()) {
    std::set<Pair> stopped_without;
    for (const Finding& f : unjudged.findings)
      if (f.severity == Severity::stop && is_about_clashes(f.code)) stopped_without.insert(pair_of(f));
    std::erase_if(expected, [&](const Finding& f) {
      return is_about_clashes(f.code) && (f.severity != Severity::stop ||
                                          (unjudged.is_stopped() && !stopped_without.contains(pair_of(f))));
    });
  }
  EXPECT_EQ(row.stops, number_of(expected, Severity::stop));
  EXPECT_EQ(row.warnings, number_of(expected, Severity::warn));
  EXPECT_EQ(row.by_rule, counted(expected, Severity::stop));
  EXPECT_EQ(row.warned_by, counted(expected, Severity::warn));
}

std::string told(const std::vector<Problem>& problems) {
  std::string text;
  for (const Problem& p : problems) text += to_line(p) + "\n";
  return text;
}

class Same {
 public:
  void hold(const RandomOrder& order) {
    std::string trace = order.name;
    for (const std::string& set : order.sets) trace += " --set '" + set + "'";
    SCOPED_TRACE(trace);
    const auto examined = [&](const ExamineOptions& options) {
      return examine(store_, testing::shipped_order(order.name), order.sets, options);
    };
    const Examination unjudged = examined({}), check = examined({kernel_judge()}),
                      cell = examined({kernel_judge(&memory_), true, false});
    ++tally.orders;
    EXPECT_EQ(told(unjudged.problems), told(check.problems));
    EXPECT_EQ(told(cell.problems), told(check.problems));
    ASSERT_EQ(bool(unjudged), bool(check));
    ASSERT_EQ(bool(cell), bool(check));
    if (!check) {
      ++tally.impossible;
      return;
    }
    tally.stopped += check.bed->is_stopped();
    tally.findings += static_cast<int>(check.bed->findings.size());
    hold_unjudged(*unjudged.bed, *check.bed, tally);
    hold_cell(*cell.bed, *unjudged.bed, *check.bed);
  }

  Tally tally;

 private:
  FileStore store_{testing::shipped_files(BEDWRIGHT_SOURCE)};
  PairMemory memory_;  // one for all cells, as a map has
};

TEST(SameFindings, OfEveryOrderAsItIsShipped) {
  Same same;
  for (const testing::BaseOrder& base : testing::every_base) same.hold({base.name, {}});
  EXPECT_EQ(same.tally.impossible, 0) << "a base that is no order spoils nothing";
}

TEST(SameFindings, OfRandomOrdersHoweverTheyAreExamined) {
  const int wanted = number_from("BEDWRIGHT_SAME_ORDERS", 20);
  OrderMaker maker(static_cast<unsigned>(number_from("BEDWRIGHT_BRUTE_SEED", 1)), testing::every_base);
  Same same;
  const auto start = std::chrono::steady_clock::now();
  for (int i = 0; i < wanted; ++i) same.hold(maker.make());
  const Tally& t = same.tally;
  std::cout << t.orders << " orders, " << t.impossible << " of them impossible, " << t.stopped << " stopped; "
            << t.findings << " findings; " << t.open << " pairs left open without the kernel: " << t.cleared
            << " clear, " << t.near << " near, " << t.clashing << " in one place; "
            << std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() << " s\n";
  if (t.orders >= 20) {
    EXPECT_GT(t.orders - t.impossible, t.orders / 2) << "orders this spoilt prove nothing";
    EXPECT_GT(t.stopped, t.orders / 10);
    EXPECT_GT(t.open, t.orders / 10);
    EXPECT_GT(t.clashing, 0);
  }
}

}  // namespace
}  // namespace bedwright
