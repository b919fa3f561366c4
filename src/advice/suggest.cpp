// The search: single changes, then pairs and threes, then one change after another.
#include "advice/suggest.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <set>
#include <tuple>

#include "yaml/key_path.h"

namespace bedwright {
namespace {

using Stops = std::set<Stop>;
using Set = std::vector<int>;  // of options, ascending

// The same value may be proposed by many findings; the cheapest price is its price.
std::vector<FreeValue> each_once(const std::vector<FreeValue>& free) {
  std::vector<FreeValue> kept;
  std::map<std::pair<std::string, std::string>, std::size_t> seen;
  for (const FreeValue& f : free) {
    const auto [at, first] = seen.try_emplace({f.change.key, f.change.value}, kept.size());
    if (first) {
      kept.push_back(f);
      continue;
    }
    FreeValue& same = kept[at->second];
    same.cost = std::min(same.cost, f.cost);
    same.proposed_by.insert(f.proposed_by.begin(), f.proposed_by.end());
  }
  return kept;
}

constexpr int most_asked_for_nearest = 40;

struct Outcome {
  Stops left;
  Stops remain;  // those of the order as it is that are still there
  int warnings = 0;
  bool exact = false;  // else there may be stops that only the kernel sees
};

class Search {
 public:
  Search(const std::vector<FreeValue>& free, const std::vector<Finding>& now, const Retry& cheap,
         const Retry& exact, const SearchSettings& settings)
      : free_(each_once(free)),
        now_(stops_of(now)),
        cheap_(cheap),
        exact_(exact),
        settings_(settings),
        most_tries_(settings.most_tries),
        most_exact_(settings.most_exact) {}

  Suggestion run() {
    std::vector<Set> level = singles();
    if (offer(level)) return std::move(result_);
    bool so_few = false;  // as far as single changes show, so few might be enough
    for (int size = 2; size <= settings_.most_changes; ++size) {
      const std::vector<Set> likely = covers(size);
      so_few |= !likely.empty();
      if (offer_each(likely) || (size == 2 && offer(proposed_together()))) {
        result_.fewer_might_do = size > 2;
        return std::move(result_);
      }
    }
    if (!so_few && added_one_by_one()) return std::move(result_);
    if (!so_few) most_tries_ = std::min(settings_.most_tries, result_.tries + settings_.most_unlikely_tries);
    for (int size = 2; size <= settings_.most_changes && !level.empty(); ++size) {
      level = grown(level);
      if (offer(level)) return std::move(result_);
    }
    if (!added_one_by_one()) report_nearest();
    return std::move(result_);
  }

 private:
  const Outcome* outcome(const Set& set) {
    const auto known = outcomes_.find(set);
    if (known != outcomes_.end()) return known->second ? &*known->second : nullptr;
    if (result_.tries >= most_tries_) {
      result_.gave_up = true;
      return nullptr;
    }
    ++result_.tries;
    return kept(set, cheap_(sets(set)), false);
  }

  // The same, with the kernel.
  const Outcome* exact_outcome(const Set& set) {
    const Outcome* known = outcome(set);
    if (!known || known->exact) return known;
    if (exact_tries_ >= most_exact_) {
      result_.gave_up = true;
      return nullptr;
    }
    ++exact_tries_;
    return kept(set, exact_(sets(set)), true);
  }

  const Outcome* kept(const Set& set, const std::optional<std::vector<Finding>>& findings, bool exact) {
    std::optional<Outcome>& kept = outcomes_[set];
    kept.reset();
    if (!findings) return nullptr;
    kept.emplace();
    kept->exact = exact;
    kept->left = stops_of(*findings);
    for (const Stop& s : now_)
      if (remains(s, now_, kept->left)) kept->remain.insert(s);
    kept->warnings = static_cast<int>(std::count_if(
        findings->begin(), findings->end(), [](const Finding& f) { return f.severity == Severity::warn; }));
    return &*kept;
  }

  // Of these sets the one that leaves the fewest stops, then of the fewest changes, then
  // the least costly, as the kernel sees them. It sees no fewer than the cheap check, so
  // only what would be first needs it.
  std::optional<Set> nearest_of(const std::vector<Set>& sets) {
    using Nearness = std::tuple<std::size_t, std::size_t, int, Set>;
    std::set<Nearness> queue;
    const auto put = [&](const Set& set, const Outcome* o) {
      if (o) queue.insert({o->left.size(), set.size(), cost(set), set});
    };
    for (const Set& set : sets) put(set, outcome(set));
    // Where the kernel sees a stop in all of them, asking on would only rank them anew.
    int asked = 0;
    while (!queue.empty()) {
      const Set first = std::get<Set>(*queue.begin());
      queue.erase(queue.begin());
      if (outcome(first)->exact) return first;
      if (++asked <= most_asked_for_nearest) put(first, exact_outcome(first));
    }
    return std::nullopt;
  }

  std::vector<std::string> sets(const Set& set) const {
    std::vector<std::string> texts;
    for (const int option : set) texts.push_back(free_[option].change.key + "=" + free_[option].change.value);
    return texts;
  }

  const std::string& key(int option) const { return free_[option].change.key; }

  // A whole list and one of its entries are one parameter.
  bool same_key(int a, int b) const { return is_within(key(a), key(b)) || is_within(key(b), key(a)); }

  bool has_key(const Set& set, int option) const {
    return std::any_of(set.begin(), set.end(), [&](int o) { return same_key(o, option); });
  }

  static Set with(Set set, int option) {
    set.insert(std::lower_bound(set.begin(), set.end(), option), option);
    return set;
  }

  int cost(const Set& set) const {
    int sum = 0;
    for (const int option : set) sum += free_[option].cost;
    return sum;
  }

  // Of two values of one parameter with the same effect only the less costly is kept;
  // of those that clear everything all, for the kernel may see what differs.
  std::vector<Set> singles() {
    std::map<std::pair<std::string, Stops>, int> best;
    std::vector<Set> level;
    for (int option = 0; option < static_cast<int>(free_.size()); ++option) {
      const Outcome* after = outcome({option});
      if (!after) continue;
      if (after->left.empty()) {
        level.push_back({option});
        continue;
      }
      const auto [at, first] = best.try_emplace({key(option), after->left}, option);
      if (!first && free_[option].cost < free_[at->second].cost) at->second = option;
    }
    for (const auto& [effect, option] : best) level.push_back({option});
    return level;
  }

  // Sets whose changes, each as it does alone, clear every stop between them. Those that
  // bring fewest stops first, then the least costly; no more than half the tries left.
  std::vector<Set> covers(int size) {
    std::vector<Alone> alone;
    for (int option = 0; option < static_cast<int>(free_.size()); ++option)
      if (const Outcome* o = outcome({option}); o && o->remain.size() < now_.size())
        alone.push_back(alone_of(option, *o));
    Covers found{static_cast<std::size_t>(std::max(0, (most_tries_ - result_.tries) / 2)), {}};
    add_covers(alone, 0, size, {}, {}, std::vector<bool>(now_.size()), found);
    std::vector<Set> all;
    for (const auto& [brought, cost, set] : found.best) all.push_back(set);
    return all;
  }

  struct Alone {
    int option;
    std::vector<bool> clears;  // of now_, in its order
    Stops brings;
  };

  struct Covers {
    std::size_t most;
    std::set<std::tuple<std::size_t, int, Set>> best;  // brought, cost
  };

  Alone alone_of(int option, const Outcome& o) const {
    Alone a{option, {}, {}};
    for (const Stop& s : now_) a.clears.push_back(!o.remain.contains(s));
    std::set_difference(o.left.begin(), o.left.end(), now_.begin(), now_.end(),
                        std::inserter(a.brings, a.brings.end()));
    return a;
  }

  void add_covers(const std::vector<Alone>& alone, std::size_t from, int more, const Set& set,
                  const Stops& brought, const std::vector<bool>& cleared, Covers& found) {
    for (std::size_t i = from; i < alone.size(); ++i) {
      const Alone& a = alone[i];
      if (has_key(set, a.option)) continue;
      std::vector<bool> now_cleared = cleared;
      bool adds = false;
      for (std::size_t s = 0; s < a.clears.size(); ++s)
        if (a.clears[s] && !cleared[s]) now_cleared[s] = adds = true;
      if (!adds) continue;  // no set is the smallest that has it
      const bool all = std::find(now_cleared.begin(), now_cleared.end(), false) == now_cleared.end();
      if (all == (more > 1)) continue;
      Stops brings = brought;
      brings.insert(a.brings.begin(), a.brings.end());
      const Set longer = with(set, a.option);
      if (more > 1) {
        add_covers(alone, i + 1, more - 1, longer, brings, now_cleared, found);
        continue;
      }
      found.best.insert({brings.size(), cost(longer), longer});
      if (found.best.size() <= found.most) continue;
      found.best.erase(std::prev(found.best.end()));
      result_.gave_up = true;
    }
  }

  // The first of these that clears everything.
  bool offer_each(const std::vector<Set>& sets) {
    for (const Set& set : sets)
      if (const Outcome* after = outcome(set); after && after->left.empty() && offer({set})) return true;
    return false;
  }

  // Sets of one change more. Those that are worth growing have cleared something;
  // the rest of the options are tried where they clear some of what the set leaves.
  std::vector<Set> grown(const std::vector<Set>& level) {
    std::vector<Set> useful, next;
    for (const Set& set : level)
      if (const Outcome* after = outcome(set);
          after && !after->left.empty() && after->remain.size() < now_.size())
        useful.push_back(set);
    std::sort(useful.begin(), useful.end(), [&](const Set& a, const Set& b) {
      const std::size_t left_a = outcome(a)->left.size(), left_b = outcome(b)->left.size();
      return std::tuple(left_a, cost(a), a) < std::tuple(left_b, cost(b), b);
    });
    std::set<Set> seen;
    for (const Set& set : useful) grow(set, seen, next);
    return next;
  }

  // Two values for what one finding is about may do together what neither does alone.
  std::vector<Set> proposed_together() {
    std::vector<Set> next;
    for (int a = 0; a < static_cast<int>(free_.size()); ++a)
      for (int b = a + 1; b < static_cast<int>(free_.size()); ++b) {
        const auto& by = free_[b].proposed_by;
        if (same_key(a, b) ||
            std::none_of(by.begin(), by.end(), [&](int f) { return free_[a].proposed_by.contains(f); }))
          continue;
        const Outcome* after = outcome({a, b});
        if (after && after->left.size() < now_.size()) next.push_back({a, b});
      }
    return next;
  }

  void grow(const Set& set, std::set<Set>& seen, std::vector<Set>& next) {
    const Outcome& before = *outcome(set);
    for (int option = 0; option < static_cast<int>(free_.size()); ++option) {
      if (has_key(set, option)) continue;
      const auto alone = outcomes_.find({option});
      if (alone == outcomes_.end() || !alone->second) continue;
      if (!helps(*alone->second, before)) continue;
      const Set more = with(set, option);
      if (!seen.insert(more).second) continue;
      const Outcome* after = outcome(more);
      if (after && after->left.size() < before.left.size()) next.push_back(more);
    }
  }

  // `alone`: what the option leaves by itself. Stops that were not there at first
  // (the set has brought them) it cannot have cleared; it may yet.
  static bool helps(const Outcome& alone, const Outcome& set) {
    if (set.remain.empty()) return true;
    return std::any_of(set.remain.begin(), set.remain.end(),
                       [&](const Stop& s) { return !alone.remain.contains(s); });
  }

  // The least costly set of these that clears everything, as the kernel sees it.
  bool offer(const std::vector<Set>& level) {
    std::vector<Set> clear;
    for (const Set& set : level)
      if (const Outcome* after = outcome(set); after && after->left.empty()) clear.push_back(set);
    std::sort(clear.begin(), clear.end(), [&](const Set& a, const Set& b) {
      return std::tuple(cost(a), outcome(a)->warnings, a) < std::tuple(cost(b), outcome(b)->warnings, b);
    });
    for (const Set& set : clear)
      if (clears_all(set)) {
        result_.changes = changes(set);
        return true;
      }
    return false;
  }

  bool clears_all(const Set& set) {
    const Outcome* after = exact_outcome(set);
    return after && after->left.empty();
  }

  std::vector<Set> all_tried() const {
    std::vector<Set> all;
    for (const auto& [set, tried] : outcomes_)
      if (tried) all.push_back(set);
    return all;
  }

  bool added_one_by_one() {
    if (settings_.most_added > 0) {
      most_tries_ = std::max(most_tries_, result_.tries + settings_.most_adding_tries);
      most_exact_ = std::max(most_exact_, exact_tries_ + settings_.most_adding_tries);
    }
    nearest_ = nearest_of(all_tried());
    if (!nearest_) return false;
    while (!outcome(*nearest_)->left.empty()) {
      if (static_cast<int>(nearest_->size()) >= settings_.most_added) return false;
      std::vector<Set> more;
      for (int option = 0; option < static_cast<int>(free_.size()); ++option)
        if (!has_key(*nearest_, option)) more.push_back(with(*nearest_, option));
      const auto best = nearest_of(more);
      if (!best || outcome(*best)->left.size() >= outcome(*nearest_)->left.size()) return false;
      nearest_ = best;
    }
    result_.changes = changes(without_needless(*nearest_));
    result_.fewer_might_do = true;
    return true;
  }

  // What was added early may have been made needless by what came later.
  Set without_needless(Set set) {
    for (std::size_t i = set.size(); i-- > 0 && set.size() > 1;) {
      Set fewer = set;
      fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(i));
      if (clears_all(fewer)) set = fewer;
    }
    return set;
  }

  std::vector<Change> changes(const Set& set) const {
    std::vector<Change> all;
    for (const int option : set) all.push_back(free_[option].change);
    return all;
  }

  void report_nearest() {
    if (!nearest_ || outcome(*nearest_)->left.size() >= now_.size()) return;
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
  int most_tries_, most_exact_;
  std::map<Set, std::optional<Outcome>> outcomes_;
  std::optional<Set> nearest_;
  int exact_tries_ = 0;
  Suggestion result_;
};

}  // namespace

Suggestion suggest(const std::vector<FreeValue>& free, const std::vector<Finding>& now, const Retry& cheap,
                   const Retry& exact, const SearchSettings& settings) {
  return Search(free, now, cheap, exact, settings).run();
}

}  // namespace bedwright
