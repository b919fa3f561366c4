// Loads of one variant, without the kernel: masses, road, beams, findings.
#include <benchmark/benchmark.h>

#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {
namespace {

void loads(benchmark::State& state) {
  const Job job = testing::demo_job(testing::good_orders[static_cast<std::size_t>(state.range(0))]);
  const Bed bed = testing::bed_of(job);
  for (auto _ : state) benchmark::DoNotOptimize(run_loads(job, bed));
  state.SetLabel(testing::good_orders[static_cast<std::size_t>(state.range(0))]);
}
BENCHMARK(loads)->DenseRange(0, 3)->Unit(benchmark::kMicrosecond);

// What the parts of one variant's loads take.
void loads_part(benchmark::State& state) {
  const Job job = testing::demo_job("base");
  const Bed bed = testing::bed_of(job);
  const BedWeights w = weigh(bed);
  const Tow tow = tow_loads(job, bed, w);
  const Stand stand = stand_loads(job, bed, w);
  const char* const names[] = {"masses", "tow", "axle places", "stand", "tabs"};
  for (auto _ : state) {
    switch (state.range(0)) {
      case 0:
        benchmark::DoNotOptimize(weigh(bed));
        break;
      case 1:
        benchmark::DoNotOptimize(tow_loads(job, bed, w));
        break;
      case 2:
        benchmark::DoNotOptimize(axle_places(job, bed, tow));
        break;
      case 3:
        benchmark::DoNotOptimize(stand_loads(job, bed, w));
        break;
      default:
        benchmark::DoNotOptimize(tab_loads(job, bed, w, stand));
    }
  }
  state.SetLabel(names[state.range(0)]);
}
BENCHMARK(loads_part)->DenseRange(0, 4)->Unit(benchmark::kMicrosecond);

void loads_with_findings(benchmark::State& state) {
  const Job job = testing::demo_job("base");
  const Bed bed = testing::bed_of(job);
  for (auto _ : state) benchmark::DoNotOptimize(load_findings(job, bed, run_loads(job, bed), {}));
}
BENCHMARK(loads_with_findings)->Unit(benchmark::kMicrosecond);

}  // namespace
}  // namespace bedwright
