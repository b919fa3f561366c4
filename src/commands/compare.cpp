#include "compare/compare.h"

#include <fmt/format.h>

#include <algorithm>

#include "commands/kernel_judge.h"
#include "commands/session.h"

namespace bedwright {
namespace {

// Every rule, the kernel behind those of clashes, as check has them.
int stop_count(const Loaded& loaded) {
  KernelJudge judge(loaded.bed);
  const std::vector<Finding> findings = check_once(loaded.job, loaded.bed, &judge, false);
  return static_cast<int>(std::count_if(findings.begin(), findings.end(), [](const Finding& f) { return f.severity == Severity::stop; }));
}

}  // namespace

ExitCode compare_command(const CompareArguments& arguments) {
  // Both are read before giving up, so that both files' problems are told.
  const auto a = load({arguments.a, {}}), b = load({arguments.b, {}});
  if (!a || !b) return bad_input;
  const Comparison comparison = compare({a->job, a->bed}, {b->job, b->bed}, figures_of(a->job.order.order));
  Progress progress;
  progress.step("checking");
  const Told told_a{a->job.order.order, arguments.a, stop_count(*a)}, told_b{b->job.order.order, arguments.b, stop_count(*b)};
  progress.step("");
  if (arguments.json) fmt::print("{}", comparison_json(comparison, told_a, told_b));
  else fmt::print("{}", comparison_text(comparison, told_a, told_b, columns()));
  return released;
}

}  // namespace bedwright
