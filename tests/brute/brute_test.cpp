// Random orders with random faults: the rules against brute force, and the
// remedies against a new check. BEDWRIGHT_BRUTE_ORDERS says how many orders
// (default 8: half a minute); BEDWRIGHT_BRUTE_SEED where to start.
#include <gtest/gtest.h>

#include <cstdlib>
#include <ctime>
#include <iostream>

#include "advice/stops.h"
#include "bed/names.h"
#include "brute/brute_force.h"
#include "brute/random_order.h"
#include "commands/session.h"
#include "kernel/kernel_judge.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::BruteForce;
using testing::FoundClash;
using testing::OrderMaker;
using testing::RandomOrder;

int number_from(const char* name, int otherwise) {
  const char* text = std::getenv(name);
  return text && *text ? std::atoi(text) : otherwise;
}
int orders_wanted() { return number_from("BEDWRIGHT_BRUTE_ORDERS", 8); }
unsigned first_seed() { return static_cast<unsigned>(number_from("BEDWRIGHT_BRUTE_SEED", 1)); }

// Whether a stop names these two, in whatever state: rules tell the worst of all places
// where two things meet, in the states they meet worst in.
bool is_stopped(const std::vector<Finding>& findings, const FoundClash& clash) {
  return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
    const auto names = [&](const Identity& thing) {
      return std::any_of(f.subjects.begin(), f.subjects.end(),
                         [&](const Subject& s) { return is_same_thing(s.id, thing); });
    };
    return f.severity == Severity::stop && names(clash.a) && names(clash.b);
  });
}

double cpu_seconds() { return static_cast<double>(std::clock()) / CLOCKS_PER_SEC; }

std::string told(const RandomOrder& order) {
  std::string text = order.name;
  for (const std::string& set : order.sets) text += " --set '" + set + "'";
  return text;
}

TEST(Brute, TheRulesMissNoClashThatEveryPairShows) {
  OrderMaker maker(first_seed());
  BruteForce brute;
  FileStore store;
  int tried = 0, impossible = 0, stopped = 0, clashes = 0, unmade = 0, missed = 0;
  const double start = cpu_seconds();
  while (tried < orders_wanted()) {
    const RandomOrder order = maker.make();
    const Examination examination =
        examine(store, testing::order_path(order.name), order.sets, {kernel_judge()});
    if (!examination) {
      ++impossible;
      continue;
    }
    ++tried;
    const Examined& examined = *examination.bed;
    stopped += examined.is_stopped();
    try {
      for (const FoundClash& clash : brute.clashes(examined.job, examined.bed)) {
        ++clashes;
        if (is_stopped(examined.findings, clash)) continue;
        ++missed;
        ADD_FAILURE() << name(clash.a) << " and " << name(clash.b) << " share " << clash.volume
                      << " mm3 and no rule stops them\n"
                      << told(order);
      }
    } catch (const std::runtime_error& e) {
      // A part no kernel can make, such as one with a hole through its edge.
      ++unmade;
      EXPECT_TRUE(examined.is_stopped()) << e.what() << "\n" << told(order);
    }
    constexpr int now_and_then = 25;
    if (tried % now_and_then == 0)
      std::cout << tried << " orders, " << clashes << " clashes, " << missed << " missed, "
                << cpu_seconds() - start << " s" << std::endl;
  }
  std::cout << tried << " orders (" << impossible << " more could not be read or laid out), " << stopped
            << " stopped, " << brute.pairs << " pairs looked at, " << brute.measured << " measured, "
            << clashes << " clashes found, " << unmade << " stopped orders with a part no kernel can make, "
            << missed << " missed; " << cpu_seconds() - start << " s of CPU\n";
  if (tried >= 8) {
    EXPECT_GT(clashes, tried / 10) << "orders this sound prove nothing";
  }
}

TEST(Brute, ARemedyAppliedClearsItsFinding) {
  // Remedies are tried with the kernel, a hundred and more for each order: fewer orders.
  const int wanted = std::max(2, orders_wanted() / 4);
  OrderMaker maker(first_seed() + 1000);
  int tried = 0, offered = 0, failed = 0, without = 0;
  Progress progress;
  const double start = cpu_seconds();
  while (tried < wanted) {
    const RandomOrder order = maker.make();
    const OrderArguments arguments{testing::order_path(order.name), order.sets};
    // Else what is wrong with the order would be printed.
    FileStore store;
    if (!examine(store, arguments.order, arguments.sets, {nullptr, false, false})) continue;
    const auto loaded = load_and_advise(arguments, progress);
    ASSERT_TRUE(loaded) << told(order);
    const std::vector<Finding>& findings = loaded->examined->findings;
    if (!has_stop(findings)) continue;
    ++tried;
    std::map<std::string, std::set<Stop>> after;  // by change: what still stops with it
    for (const Finding& f : findings) {
      if (f.severity != Severity::stop) continue;
      if (f.changes.empty()) ++without;
      for (const Change& c : f.changes) {
        const std::string set = c.key + "=" + c.value;
        if (!after.contains(set)) {
          // As a person would: everything read anew.
          std::vector<std::string> sets = order.sets;
          sets.push_back(set);
          FileStore fresh;
          const Examination again = examine(fresh, arguments.order, sets, {kernel_judge(), false, false});
          ASSERT_TRUE(again) << told(order) << " then " << set;
          after[set] = stops_of(again.bed->findings);
        }
        ++offered;
        if (!remains(stop_of(f), stops_of(findings), after[set])) continue;
        ++failed;
        ADD_FAILURE() << f.code << " " << f.subjects.front().name << " is still stopped after " << set << "\n"
                      << told(order);
      }
    }
  }
  std::cout << tried << " stopped orders, " << offered << " remedies applied, " << failed
            << " did not clear their finding, " << without << " stops had none to offer; "
            << cpu_seconds() - start << " s of CPU\n";
}

}  // namespace
}  // namespace bedwright
