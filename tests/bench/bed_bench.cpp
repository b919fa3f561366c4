// Everything that needs no kernel, on the base demo order: reading, layout,
// checks, flat patterns.
#include <benchmark/benchmark.h>

#include "kernel/kernel_judge.h"
#include "rules/rule.h"
#include "sheets/cut/cut.h"
#include "sheets/drill/drill.h"
#include "support/demo.h"

namespace bedwright {
namespace {

const Job& job() {
  static const Job read = testing::demo_job("base");
  return read;
}

const Bed& bed() {
  static const Bed laid = testing::bed_of(job());
  return laid;
}

void read_order(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(testing::demo_job("base"));
}
BENCHMARK(read_order)->Unit(benchmark::kMillisecond);

void layout(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(lay_out(job()));
}
BENCHMARK(layout)->Unit(benchmark::kMillisecond);

// Without the kernel, as a search over many variants runs them.
void checks(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(run_checks({bed(), job().order.limits, &job(), nullptr, {}}));
}
BENCHMARK(checks)->Unit(benchmark::kMillisecond);

// With the kernel behind the pairs the cheap test leaves open.
void checks_exact(benchmark::State& state) {
  for (auto _ : state) {
    const std::unique_ptr<PairJudge> judge = kernel_judge()(bed());
    benchmark::DoNotOptimize(run_checks({bed(), job().order.limits, &job(), judge.get(), {}}));
  }
}
BENCHMARK(checks_exact)->Unit(benchmark::kMillisecond);

void cut_files(benchmark::State& state) {
  for (auto _ : state)
    for (const Part& part : bed().parts)
      if (part.origin == Origin::made && std::holds_alternative<Plate>(part.form))
        benchmark::DoNotOptimize(cut_file(part, job().order.order, Printing::inches));
}
BENCHMARK(cut_files)->Unit(benchmark::kMillisecond);

void drill_files_of_mains(benchmark::State& state) {
  const int main = bed().part({Kind::main});
  for (auto _ : state) benchmark::DoNotOptimize(drill_files(drill_drawing(bed(), main, job().order.order)));
}
BENCHMARK(drill_files_of_mains)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace bedwright
