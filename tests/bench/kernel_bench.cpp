// Solids, STEP and views of the base demo order, each with the bare kernel's time for the same work beside
// it. Benchmarks of a room live in a file of their own in this folder; the build takes every *.cpp here.
#include <benchmark/benchmark.h>

#include "bed/names.h"
#include "bench/floor.h"
#include "formats/page_svg.h"
#include "kernel/exact_distance.h"
#include "kernel/shapes.h"
#include "kernel/step.h"
#include "kernel/viewer.h"
#include "sheets/bed_picture.h"
#include "support/demo.h"

namespace bedwright {
namespace {

const Bed& bed() {
  static const Bed made = testing::demo_bed("base");
  return made;
}
const StepHeader header{"A-1042", "2024-05-31", "An Author", "A Shop", "bedwright bench"};

void solids(benchmark::State& state) {
  for (auto _ : state) {
    Shapes shapes(bed());
    for (std::size_t i = 0; i < bed().parts.size(); ++i) {
      benchmark::DoNotOptimize(shapes.part(static_cast<int>(i)));
    }
  }
}
BENCHMARK(solids)->Unit(benchmark::kMillisecond);

void one_part(benchmark::State& state) {
  const Part& part = bed().parts[state.range(0)];
  state.SetLabel(name(part));
  for (auto _ : state) benchmark::DoNotOptimize(build_part(part));
}
BENCHMARK(one_part)->DenseRange(0, 5)->Unit(benchmark::kMillisecond);

void step(benchmark::State& state) {
  std::size_t bytes = 0;
  for (auto _ : state) bytes = step_text(bed(), header).size();
  state.counters["bytes"] = static_cast<double>(bytes);
}
BENCHMARK(step)->Unit(benchmark::kMillisecond);

void step_floor(benchmark::State& state) {
  step_text(bed(), header);  // leaves the kernel's settings as ours
  const TopoDS_Compound whole = floor::together(floor::ready_shapes(bed(), false));
  std::size_t bytes = 0;
  for (auto _ : state) bytes = floor::bare_step(whole);
  state.counters["bytes"] = static_cast<double>(bytes);
}
BENCHMARK(step_floor)->Unit(benchmark::kMillisecond);

void first_view(benchmark::State& state) {
  for (auto _ : state) benchmark::DoNotOptimize(Viewer(bed()).view(isometric_view));
}
BENCHMARK(first_view)->Unit(benchmark::kMillisecond);

void next_view(benchmark::State& state) {
  Viewer viewer(bed());
  viewer.view(isometric_view);
  for (auto _ : state) benchmark::DoNotOptimize(viewer.view(isometric_view));
}
BENCHMARK(next_view)->Unit(benchmark::kMillisecond);

void view_floor(benchmark::State& state) {
  const std::vector<TopoDS_Shape> shapes = floor::ready_shapes(bed(), true);
  const gp_Ax2 eye(gp_Pnt(), gp_Dir(-1, 1, 1), gp_Dir(-1, -1, 0));
  for (auto _ : state) benchmark::DoNotOptimize(floor::bare_view(shapes, eye));
}
BENCHMARK(view_floor)->Unit(benchmark::kMillisecond);

void picture(benchmark::State& state) {
  const View view = Viewer(bed()).view(isometric_view);
  for (auto _ : state) benchmark::DoNotOptimize(page_svg(picture_page(view, {"A-1042", "A", {}, true})));
}
BENCHMARK(picture)->Unit(benchmark::kMillisecond);

// A bolt against the main below it.
void exact_pair(benchmark::State& state) {
  ExactPairs pairs(bed());
  const int bolt = bed().item({Kind::track_bolt, Side::right, 7}),
            main = bed().item({Kind::main, Side::right});
  for (auto _ : state) benchmark::DoNotOptimize(pairs.measure(bolt, main));
}
BENCHMARK(exact_pair)->Unit(benchmark::kMillisecond);

}  // namespace
}  // namespace bedwright

BENCHMARK_MAIN();
