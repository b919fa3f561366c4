// Tries each change that a finding proposes, and keeps those that clear it.
#include "advice/advice.h"

#include <algorithm>
#include <map>
#include <set>

#include "advice/stops.h"
#include "rules/standing_remedies.h"

namespace bedwright {
namespace {

// Each different change is tried once, whoever proposes it.
class Trials {
 public:
  Trials(const Retry& retry, const std::vector<Finding>& now) : retry_(retry), now_(stops_of(now)) {}

  // Stops the change brings; nothing when it does not clear `stop`, or when there
  // are no tries left.
  std::optional<int> brings(const Change& change, const Stop& stop) {
    const std::set<Stop>* after = stops_after(change);
    if (!after || remains(stop, now_, *after)) return std::nullopt;
    return static_cast<int>(
        std::count_if(after->begin(), after->end(), [&](const Stop& s) { return !now_.contains(s); }));
  }

 private:
  const std::set<Stop>* stops_after(const Change& change) {
    const std::string set = change.key + "=" + change.value;
    auto it = tried_.find(set);
    if (it == tried_.end()) {
      if (static_cast<int>(tried_.size()) >= most_tries) return nullptr;
      const auto findings = retry_({set});
      it = tried_.emplace(set, findings ? std::optional(stops_of(*findings)) : std::nullopt).first;
    }
    return it->second ? &*it->second : nullptr;
  }

  const Retry& retry_;
  std::set<Stop> now_;
  std::map<std::string, std::optional<std::set<Stop>>> tried_;
};

// Enough to choose from without hiding the best under the rest.
constexpr std::size_t most_shown = 3;

}  // namespace

Retry retry_with(FileStore& store, std::string order_path, std::vector<std::string> sets,
                 ExamineOptions options) {
  return [&store, path = std::move(order_path), sets = std::move(sets), options = std::move(options)](
             const std::vector<std::string>& more) -> std::optional<std::vector<Finding>> {
    std::vector<std::string> all = sets;
    all.insert(all.end(), more.begin(), more.end());
    Examination again = examine(store, path, all, options);
    return again ? std::optional(std::move(again.bed->findings)) : std::nullopt;
  };
}

void advise(const Job& job, int bunks, const Retry& retry, std::vector<Finding>& findings) {
  Trials trials(retry, findings);
  for (Finding& f : findings) {
    if (f.severity != Severity::stop) continue;
    std::vector<Change> proposed = f.changes, kept;
    const std::vector<Change> more = candidates(job, bunks, f);
    proposed.insert(proposed.end(), more.begin(), more.end());
    std::erase_if(proposed, [&](const Change& c) { return !can_be_done(job.frame, f.code, c); });
    std::size_t clean = 0;
    for (Change& change : proposed) {
      const auto brings = trials.brings(change, stop_of(f));
      if (!brings) continue;
      change.brings = *brings;
      kept.push_back(change);
      // The rule's own changes come first and are all tried; of the others the nearest that works is enough.
      if (*brings == 0) ++clean;
      if (clean > 0 && &change - proposed.data() >= static_cast<std::ptrdiff_t>(f.changes.size())) break;
    }
    std::stable_sort(kept.begin(), kept.end(),
                     [](const Change& a, const Change& b) { return a.brings < b.brings; });
    if (kept.size() > most_shown) kept.resize(most_shown);
    f.changes = std::move(kept);
  }
}

}  // namespace bedwright
