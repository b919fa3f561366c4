// A PairJudge that asks the memory first, where there is one, and then the kernel.
#include "kernel/kernel_judge.h"

#include <stdexcept>

#include "kernel/exact_distance.h"

namespace bedwright {
namespace {

class KernelJudge : public PairJudge {
 public:
  KernelJudge(const Bed& bed, PairMemory* memory) : bed_(bed), memory_(memory) {}
  std::optional<PairResult> judge(int a, int b, bool without_shank_of_a) override {
    if (!memory_) return measured(a, b, without_shank_of_a);
    const PairMemory::Question question{bed_, a, b, without_shank_of_a};
    if (const auto known = memory_->recall(question)) return *known;
    const std::optional<PairResult> result = measured(a, b, without_shank_of_a);
    if (result) memory_->keep(question, *result);
    return result;
  }

 private:
  std::optional<PairResult> measured(int a, int b, bool without_shank_of_a) {
    if (!pairs_) pairs_ = std::make_unique<ExactPairs>(bed_);
    try {
      const Extent extent = without_shank_of_a ? Extent::without_shank : Extent::whole;
      if (!bed_.items[a].moving && !bed_.items[b].moving) return PairResult{0, pairs_->shared(a, b, extent)};
      const Closeness c = pairs_->measure(a, b, extent);
      return PairResult{c.gap, c.common_volume};
    } catch (const std::runtime_error&) {  // the rule that asked says so and stops the bed
      return std::nullopt;
    }
  }

  const Bed& bed_;
  PairMemory* memory_;
  std::unique_ptr<ExactPairs> pairs_;
};

}  // namespace

JudgeMaker kernel_judge(PairMemory* memory) {
  return [memory](const Bed& bed) { return std::make_unique<KernelJudge>(bed, memory); };
}

}  // namespace bedwright
