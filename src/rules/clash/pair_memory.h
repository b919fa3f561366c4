// What the exact judge said of two forms in one place to each other: the same pair
// comes again in most variants of an order. For several threads at once.
#pragma once

#include <array>
#include <mutex>
#include <optional>
#include <tuple>
#include <unordered_map>
#include <vector>

#include "bed/bed.h"
#include "rules/clash/pair_judge.h"

namespace bedwright {

class PairMemory {
 public:
  // Two items of a bed, as a judge is asked about them.
  struct Question {
    const Bed& bed;
    int a = 0, b = 0;
    bool without_shank_of_a = false;
  };
  std::optional<PairResult> recall(const Question& question);
  void keep(const Question& question, const PairResult& result);

 private:
  using Where = std::array<long long, 9>;
  using Key = std::tuple<int, int, bool, Where>;  // forms by number, b's place from a
  struct Hash {
    std::size_t operator()(const Key& key) const;
  };
  Key key_of(const Question& question);
  int number_of(const Form& form);

  std::mutex lock_;
  std::unordered_multimap<std::size_t, int> numbers_;  // by a hash of the form
  std::vector<Form> forms_;
  std::unordered_map<Key, PairResult, Hash> known_;
};

}  // namespace bedwright
