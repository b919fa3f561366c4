#include "advice/suggest.h"

#include <algorithm>
#include <map>
#include <set>

namespace bedwright {
namespace {

using Stops = std::set<Stop>;
using Set = std::vector<int>;  // of options, ascending

bool meets(const Stops& a, const Stops& b) {
  return std::any_of(a.begin(), a.end(), [&](const Stop& s) { return b.contains(s); });
}

// The same value may be proposed by many findings.
std::vector<FreeValue> each_once(const std::vector<FreeValue>& free) {
  std::vector<FreeValue> kept;
  std::set<std::pair<std::string, std::string>> seen;
  for (const FreeValue& f : free)
    if (seen.insert({f.change.key, f.change.value}).second) kept.push_back(f);
  return kept;
}

struct Outcome {
  Stops left;
  int warnings = 0;
};

class Search {
 public:
  Search(const std::vector<FreeValue>& free, const std::vector<Finding>& now, const Retry& cheap, const Retry& exact,
         const SearchSettings& settings)
      : free_(each_once(free)), now_(stops_of(now)), cheap_(cheap), exact_(exact), settings_(settings) {}

  Suggestion run() {
    std::vector<Set> level = singles();
    for (int size = 1; size <= settings_.most_changes && !level.empty(); ++size) {
      if (size > 1) level = grown(level);
      if (offer(level)) return std::move(result_);
    }
    report_nearest();
    return std::move(result_);
  }

 private:
  const Outcome* outcome(const Set& set) {
    const auto known = outcomes_.find(set);
    if (known != outcomes_.end()) return known->second ? &*known->second : nullptr;
    if (result_.tries >= settings_.most_tries) {
      result_.gave_up = true;
      return nullptr;
    }
    ++result_.tries;
    const auto findings = cheap_(sets(set));
    std::optional<Outcome>& kept = outcomes_[set];
    if (!findings) return nullptr;
    kept.emplace();
    kept->left = stops_of(*findings);
    kept->warnings = static_cast<int>(findings->size());
    if (!nearest_ || kept->left.size() < outcomes_[*nearest_]->left.size()) nearest_ = set;
    return &*kept;
  }

  std::vector<std::string> sets(const Set& set) const {
    std::vector<std::string> texts;
    for (const int option : set) texts.push_back(free_[option].change.key + "=" + free_[option].change.value);
    return texts;
  }

  const std::string& key(int option) const { return free_[option].change.key; }

  int cost(const Set& set) const {
    int sum = 0;
    for (const int option : set) sum += free_[option].cost;
    return sum;
  }

  // Of two values of one parameter with the same effect only the nearer is kept.
  std::vector<Set> singles() {
    std::map<std::pair<std::string, Stops>, int> best;
    std::vector<Set> level;
    for (int option = 0; option < static_cast<int>(free_.size()); ++option) {
      const Outcome* after = outcome({option});
      if (!after) continue;
      const auto [at, first] = best.try_emplace({key(option), after->left}, option);
      if (!first && free_[at->second].cost <= free_[option].cost) continue;
      at->second = option;
    }
    for (const auto& [effect, option] : best) level.push_back({option});
    return level;
  }

  // Sets of one change more. Those that are worth growing have cleared something;
  // the rest of the options are tried where they clear what the set leaves.
  std::vector<Set> grown(std::vector<Set>& level) {
    std::vector<Set> useful;
    for (const Set& set : level)
      if (const Outcome* after = outcome(set); after && clears_something(*after)) useful.push_back(set);
    std::sort(useful.begin(), useful.end(), [&](const Set& a, const Set& b) {
      const std::size_t left_a = outcome(a)->left.size(), left_b = outcome(b)->left.size();
      return std::tuple(left_a, cost(a), a) < std::tuple(left_b, cost(b), b);
    });
    std::vector<Set> next;
    std::set<Set> seen;
    for (const bool must_cover : {true, false}) {
      for (const Set& set : useful) grow(set, must_cover, seen, next);
      if (std::any_of(next.begin(), next.end(), [&](const Set& s) { return outcome(s)->left.empty(); })) break;
    }
    return next;
  }

  bool clears_something(const Outcome& after) const {
    return std::any_of(now_.begin(), now_.end(), [&](const Stop& s) { return !after.left.contains(s); });
  }

  void grow(const Set& set, bool must_cover, std::set<Set>& seen, std::vector<Set>& next) {
    const Stops left = outcome(set)->left;
    for (int option = 0; option < static_cast<int>(free_.size()); ++option) {
      if (std::any_of(set.begin(), set.end(), [&](int o) { return key(o) == key(option); })) continue;
      const auto alone = outcomes_.find({option});
      if (alone == outcomes_.end() || !alone->second) continue;
      if (!helps(*alone->second, left, must_cover)) continue;
      Set more = set;
      more.insert(std::lower_bound(more.begin(), more.end(), option), option);
      if (!seen.insert(more).second) continue;
      const Outcome* after = outcome(more);
      if (after && after->left.size() < left.size()) next.push_back(more);
    }
  }

  // `alone`: what the option leaves by itself. Stops that were not there at first
  // (the set has brought them) it cannot have cleared; it may yet.
  bool helps(const Outcome& alone, const Stops& left, bool must_cover) const {
    Stops of_now;
    for (const Stop& s : left)
      if (now_.contains(s)) of_now.insert(s);
    if (of_now.empty()) return true;
    if (must_cover) return !meets(of_now, alone.left);
    return std::any_of(of_now.begin(), of_now.end(), [&](const Stop& s) { return !alone.left.contains(s); });
  }

  // The least costly set of these that clears everything and passes the exact check.
  bool offer(const std::vector<Set>& level) {
    std::vector<Set> clear;
    for (const Set& set : level)
      if (const Outcome* after = outcome(set); after && after->left.empty()) clear.push_back(set);
    std::sort(clear.begin(), clear.end(), [&](const Set& a, const Set& b) {
      return std::tuple(outcome(a)->warnings, cost(a), a) < std::tuple(outcome(b)->warnings, cost(b), b);
    });
    for (const Set& set : clear) {
      if (exact_tries_ >= settings_.most_exact) {
        result_.gave_up = true;
        return false;
      }
      ++exact_tries_;
      const auto findings = exact_(sets(set));
      if (!findings || !stops_of(*findings).empty()) continue;
      result_.changes = changes(set);
      return true;
    }
    return false;
  }

  std::vector<Change> changes(const Set& set) const {
    std::vector<Change> all;
    for (const int option : set) all.push_back(free_[option].change);
    return all;
  }

  void report_nearest() {
    if (!nearest_ || outcomes_[*nearest_]->left.size() >= now_.size()) return;
    const auto findings = exact_(sets(*nearest_));
    if (!findings) return;
    result_.nearest = changes(*nearest_);
    for (const Finding& f : *findings)
      if (f.severity == Severity::stop) result_.left.push_back(f);
  }

  const std::vector<FreeValue> free_;
  const Stops now_;
  const Retry &cheap_, &exact_;
  const SearchSettings settings_;
  std::map<Set, std::optional<Outcome>> outcomes_;
  std::optional<Set> nearest_;
  int exact_tries_ = 0;
  Suggestion result_;
};

}  // namespace

Suggestion suggest(const std::vector<FreeValue>& free, const std::vector<Finding>& now, const Retry& cheap, const Retry& exact,
                   const SearchSettings& settings) {
  return Search(free, now, cheap, exact, settings).run();
}

}  // namespace bedwright
