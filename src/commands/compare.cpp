// bedwright compare: lays two orders out and prints what differs.
#include "compare/compare.h"

#include <fmt/format.h>

#include <algorithm>

#include "commands/session.h"
#include "kernel/kernel_judge.h"

namespace bedwright {
namespace {

int stop_count(const std::vector<Finding>& findings) {
  return static_cast<int>(std::count_if(findings.begin(), findings.end(),
                                        [](const Finding& f) { return f.severity == Severity::stop; }));
}

}  // namespace

ExitCode compare_command(const CompareArguments& arguments) {
  // Both are read before giving up, so that both files' problems are printed.
  Progress progress;
  progress.step("checking");
  const ExamineOptions options{kernel_judge(), false, false};
  const auto loaded_a = load({arguments.a, {}}, options), loaded_b = load({arguments.b, {}}, options);
  progress.step("");
  if (!loaded_a || !loaded_b) return bad_input;
  const Examined &a = *loaded_a->examined, &b = *loaded_b->examined;
  const Comparison comparison = compare({a.job, a.bed}, {b.job, b.bed}, a.figures());
  const Told told_a{a.heading(), arguments.a, stop_count(a.findings)},
      told_b{b.heading(), arguments.b, stop_count(b.findings)};
  if (arguments.json)
    fmt::print("{}", comparison_json(comparison, told_a, told_b));
  else
    fmt::print("{}", comparison_text(comparison, told_a, told_b, columns()));
  return released;
}

}  // namespace bedwright
