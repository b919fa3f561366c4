// Random orders with random faults: the rules against brute force, and the
// remedies against a new check. BEDWRIGHT_BRUTE_ORDERS says how many orders
// (default 8: half a minute); BEDWRIGHT_BRUTE_SEED where to start.
#include "brute/brute_force.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <ctime>
#include <iostream>

#include "advice/stops.h"
#include "brute/random_order.h"
#include "commands/kernel_judge.h"
#include "commands/session.h"
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

// Things by one name, whatever state they are in: rules tell the worst of all places
// where two things meet, in the states they meet worst in.
class Names {
 public:
  explicit Names(const Bed& bed) {
    std::map<int, std::string> first;  // by group
    for (const Item& item : bed.items)
      if (item.group > 0) thing_[item.name] = first.try_emplace(item.group, item.name).first->second;
  }
  const std::string& thing(const std::string& name) const {
    const auto known = thing_.find(name);
    return known == thing_.end() ? name : known->second;
  }

  // Whether a stop names these two: both, or the bolt's tip and the other.
  bool is_stopped(const std::vector<Finding>& findings, const FoundClash& clash) const {
    return std::any_of(findings.begin(), findings.end(), [&](const Finding& f) {
      std::set<std::string> named;
      for (const std::string& s : f.subjects) named.insert(thing(s));
      return f.severity == Severity::stop && named.contains(thing(clash.a)) && named.contains(thing(clash.b));
    });
  }

 private:
  std::map<std::string, std::string> thing_;
};

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
    const auto read = load_job(store, testing::order_path(order.name), order.sets);
    const Job* job = std::get_if<Job>(&read);
    if (!job) {
      ++impossible;
      continue;
    }
    const auto laid = lay_out(*job);
    const Bed* bed = std::get_if<Bed>(&laid);
    if (!bed) {
      ++impossible;
      continue;
    }
    ++tried;
    KernelJudge judge(*bed);
    const std::vector<Finding> findings = check_once(*job, *bed, &judge);
    const bool is_stopped = stops(findings);
    stopped += is_stopped;
    const Names names(*bed);
    try {
      for (const FoundClash& clash : brute.clashes(*job, *bed)) {
        ++clashes;
        if (names.is_stopped(findings, clash)) continue;
        ++missed;
        ADD_FAILURE() << clash.a << " and " << clash.b << " share " << clash.volume << " mm3 and no rule stops them\n" << told(order);
      }
    } catch (const std::runtime_error& e) {
      // A part no kernel can make, such as one with a hole through its edge.
      ++unmade;
      EXPECT_TRUE(is_stopped) << e.what() << "\n" << told(order);
    }
    constexpr int now_and_then = 25;
    if (tried % now_and_then == 0) std::cout << tried << " orders, " << clashes << " clashes, " << missed << " missed, " << cpu_seconds() - start << " s" << std::endl;
  }
  std::cout << tried << " orders (" << impossible << " more could not be read or laid out), " << stopped << " stopped, " << brute.pairs << " pairs looked at, "
            << brute.measured << " measured, " << clashes << " clashes found, " << unmade << " stopped orders with a part no kernel can make, " << missed << " missed; " << cpu_seconds() - start << " s of CPU\n";
  if (tried >= 8) {
    EXPECT_GT(clashes, tried / 10) << "orders this sound prove nothing";
  }
}

TEST(Brute, ARemedyAppliedClearsItsFinding) {
  // Remedies are tried with the kernel, a hundred and more an order: fewer orders.
  const int wanted = std::max(2, orders_wanted() / 4);
  OrderMaker maker(first_seed() + 1000);
  int tried = 0, offered = 0, failed = 0, without = 0;
  Progress progress;
  const double start = cpu_seconds();
  while (tried < wanted) {
    const RandomOrder order = maker.make();
    const OrderArguments arguments{testing::order_path(order.name), order.sets};
    const auto read = load_job(arguments.order, arguments.sets);
    if (!std::holds_alternative<Job>(read)) continue;
    const auto laid = lay_out(std::get<Job>(read));
    if (!std::holds_alternative<Bed>(laid)) continue;
    const Loaded loaded{std::get<Job>(read), std::get<Bed>(laid)};
    const std::vector<Finding> findings = check(loaded, arguments, progress);
    if (!stops(findings)) continue;
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
          const auto again = check_variant(fresh, arguments.order, sets, true);
          ASSERT_TRUE(again) << told(order) << " then " << set;
          after[set] = stops_of(*again);
        }
        ++offered;
        if (!remains(stop_of(f), stops_of(findings), after[set])) continue;
        ++failed;
        ADD_FAILURE() << f.code << " " << f.subjects.front() << " is still stopped after " << set << "\n" << told(order);
      }
    }
  }
  std::cout << tried << " stopped orders, " << offered << " remedies applied, " << failed << " did not clear their finding, " << without
            << " stops had none to offer; " << cpu_seconds() - start << " s of CPU\n";
}

}  // namespace
}  // namespace bedwright
