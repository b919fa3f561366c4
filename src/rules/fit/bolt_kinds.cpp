// The search for the fewest lengths: deeper by one length at a time.
#include "rules/fit/bolt_kinds.h"

#include <algorithm>

namespace bedwright {
namespace {

constexpr int bits = static_cast<int>(LengthSet().size());

// Holes that the same lengths suit.
struct Alike {
  LengthSet suits;
  int holes = 0;
};

std::vector<Alike> alike_of(const std::vector<LengthSet>& suits) {
  std::vector<Alike> kinds;
  for (const LengthSet& s : suits) {
    const auto at = std::find_if(kinds.begin(), kinds.end(), [&](const Alike& k) { return k.suits == s; });
    if (at == kinds.end())
      kinds.push_back({s, 1});
    else
      ++at->holes;
  }
  return kinds;
}

int shortest(const LengthSet& set) {
  for (int i = 0; i < bits; ++i)
    if (set[i]) return i;
  return -1;
}

// A longer length that suits no hole a shorter one does not is never taken: in any
// choice the shorter can stand in for it, with no more lengths and cheaper pieces.
LengthSet worth_trying(const std::vector<Alike>& kinds) {
  LengthSet kept;
  const auto serves_no_more = [&](int longer, int shorter) {
    return std::all_of(kinds.begin(), kinds.end(),
                       [&](const Alike& k) { return !k.suits[longer] || k.suits[shorter]; });
  };
  for (int i = 0; i < bits; ++i) {
    bool wanted = std::any_of(kinds.begin(), kinds.end(), [&](const Alike& k) { return k.suits[i]; });
    for (int j = 0; j < i && wanted; ++j) wanted = !kept[j] || !serves_no_more(i, j);
    kept[i] = wanted;
  }
  return kept;
}

class Search {
 public:
  explicit Search(std::vector<Alike> kinds) : kinds_(std::move(kinds)), candidates_(worth_trying(kinds_)) {}

  LengthSet run() {
    for (int most = 1;; ++most) {
      choose({}, most);
      if (found_) return best_;
    }
  }

 private:
  // Pieces of each length, the longest first.
  std::vector<int> pieces(const LengthSet& chosen) const {
    std::vector<int> counts(bits, 0);
    for (const Alike& k : kinds_) counts[bits - 1 - shortest(k.suits & chosen)] += k.holes;
    return counts;
  }

  void choose(LengthSet chosen, int left) {
    const Alike* open = nullptr;
    for (const Alike& k : kinds_) {
      if ((k.suits & chosen).any()) continue;
      if (!open || (k.suits & candidates_).count() < (open->suits & candidates_).count()) open = &k;
    }
    if (!open) {
      keep_if_better(chosen);
      return;
    }
    if (left == 0) return;
    const LengthSet tries = open->suits & candidates_;
    for (int i = 0; i < bits; ++i)
      if (tries[i]) choose(LengthSet(chosen).set(i), left - 1);
  }

  void keep_if_better(const LengthSet& chosen) {
    std::vector<int> counts = pieces(chosen);
    if (found_ && counts >= fewest_) return;
    found_ = true;
    best_ = chosen;
    fewest_ = std::move(counts);
  }

  std::vector<Alike> kinds_;
  LengthSet candidates_;
  bool found_ = false;
  LengthSet best_;
  std::vector<int> fewest_;
};

}  // namespace

std::optional<LengthChoice> fewest_lengths(const std::vector<LengthSet>& suits) {
  if (std::any_of(suits.begin(), suits.end(), [](const LengthSet& s) { return s.none(); }))
    return std::nullopt;
  LengthChoice choice;
  if (suits.empty()) return choice;
  const LengthSet chosen = Search(alike_of(suits)).run();
  for (const LengthSet& s : suits) choice.takes.push_back(shortest(s & chosen));
  for (int i = 0; i < bits; ++i)
    if (chosen[i]) choice.lengths.push_back(i);
  return choice;
}

}  // namespace bedwright
