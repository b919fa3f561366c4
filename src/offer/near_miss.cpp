#include "offer/near_miss.h"

#include <algorithm>

#include "advice/suggest.h"
#include "layout/layout.h"

namespace bedwright {
namespace {

// A map has many near misses: each gets what a second of search finds. What the rules
// propose themselves is tried first.
constexpr SearchSettings short_search{2, 200, 60};

// As the combination was judged: with the kernel where nothing stops it without.
std::vector<Finding> judged(const CheckBed& check, const Job& job, const Bed& bed) {
  return with_load_remedies(job, bed, check(job, bed, true));
}

std::vector<FreeValue> not_varied(std::vector<FreeValue> free, const std::vector<Varied>& varied) {
  std::erase_if(free, [&](const FreeValue& f) {
    return std::any_of(varied.begin(), varied.end(), [&](const Varied& v) { return v.key == f.change.key; });
  });
  return free;
}

}  // namespace

NearMiss near_miss(FileStore& store, const std::string& order_path, const std::vector<std::string>& sets,
                   const std::vector<Varied>& varied, const CheckBed& check) {
  NearMiss miss;
  const auto read = load_job(store, order_path, sets);
  const Job* job = std::get_if<Job>(&read);
  if (!job) return miss;
  const auto laid = lay_out(*job);
  const Bed* bed = std::get_if<Bed>(&laid);
  if (!bed) return miss;
  const std::vector<Finding> findings = judged(check, *job, *bed);
  std::string last;
  for (const Finding& f : findings) {
    if (f.severity != Severity::stop) continue;
    if (f.code != last && !f.remedy.empty()) miss.remedies.push_back(f.code + ": " + f.remedy);
    last = f.code;
  }
  const auto retry = [&](bool exact) -> Retry {
    return [&, exact](const std::vector<std::string>& more) -> std::optional<std::vector<Finding>> {
      std::vector<std::string> all = sets;
      all.insert(all.end(), more.begin(), more.end());
      const auto other = load_job(store, order_path, all);
      const Job* other_job = std::get_if<Job>(&other);
      if (!other_job) return std::nullopt;
      const auto other_laid = lay_out(*other_job);
      const Bed* other_bed = std::get_if<Bed>(&other_laid);
      if (!other_bed) return std::nullopt;
      return check(*other_job, *other_bed, exact);
    };
  };
  std::vector<FreeValue> free = not_varied(free_values(*job, bed->track.bunks, findings), varied);
  std::stable_partition(free.begin(), free.end(), [](const FreeValue& f) { return !f.proposed_by.empty(); });
  miss.changes = suggest(free, findings, retry(false), retry(true), short_search).changes;
  return miss;
}

}  // namespace bedwright
