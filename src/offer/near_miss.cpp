// Searches for changes to a combination that is stopped, and not for long.
#include "offer/near_miss.h"

#include <algorithm>

#include "advice/suggest.h"

namespace bedwright {
namespace {

// A map has many near misses: each gets what a second of search finds. What the rules
// propose themselves is tried first.
constexpr SearchSettings short_search{2, 200, 60};

std::vector<FreeValue> not_varied(std::vector<FreeValue> free, const std::vector<Varied>& varied) {
  std::erase_if(free, [&](const FreeValue& f) {
    return std::any_of(varied.begin(), varied.end(), [&](const Varied& v) { return v.key == f.change.key; });
  });
  return free;
}

}  // namespace

NearMiss near_miss(FileStore& store, const std::string& order_path, const std::vector<std::string>& sets,
                   const std::vector<Varied>& varied, const JudgeMaker& judge) {
  NearMiss miss;
  // As the combination was judged, with every remedy.
  const Examination examined = examine(store, order_path, sets, {judge, true, true});
  if (!examined) return miss;
  const Examined& e = *examined.bed;
  std::string last;
  for (const Finding& f : e.findings) {
    if (f.severity != Severity::stop) continue;
    if (f.code != last && !f.remedy.empty()) miss.remedies.push_back(f.code + ": " + f.remedy);
    last = f.code;
  }
  const auto retry = [&](const JudgeMaker& with) {
    return retry_with(store, order_path, sets, {with, true, false});
  };
  std::vector<FreeValue> free = not_varied(free_values(e.job, e.bed.track.bunk_count(), e.findings), varied);
  std::stable_partition(free.begin(), free.end(), [](const FreeValue& f) { return !f.proposed_by.empty(); });
  miss.changes = suggest(free, e.findings, retry({}), retry(judge), short_search).changes;
  return miss;
}

}  // namespace bedwright
