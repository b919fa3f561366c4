// The kernel as the judge of pairs: nothing is built until the first pair comes.
#pragma once

#include <memory>

#include "bed/bed.h"
#include "checks/exact_distance.h"
#include "checks/pair_judge.h"

namespace bedwright {

class KernelJudge : public PairJudge {
 public:
  explicit KernelJudge(const Bed& bed) : bed_(bed) {}
  PairResult judge(int a, int b, bool without_shank_of_a) override {
    if (!pairs_) pairs_ = std::make_unique<ExactPairs>(bed_);
    const Closeness c = pairs_->measure(a, b, without_shank_of_a ? Extent::without_shank : Extent::whole);
    return {c.gap, c.common_volume};
  }

 private:
  const Bed& bed_;
  std::unique_ptr<ExactPairs> pairs_;
};

}  // namespace bedwright
