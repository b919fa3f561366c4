// bedwright compare: lays two orders out and prints what differs.
#include "compare/compare.h"

#include <fmt/format.h>

#include <algorithm>

#include "commands/built.h"
#include "commands/session.h"
#include "kernel/kernel_judge.h"
#include "packet/inputs.h"
#include "packet/record.h"

namespace bedwright {
namespace {

int stop_count(const std::vector<Finding>& findings) {
  return static_cast<int>(std::count_if(findings.begin(), findings.end(),
                                        [](const Finding& f) { return f.severity == Severity::stop; }));
}

// What stands otherwise on the beds that were built from it.
std::string built_text(const std::optional<Recorded>& release) {
  const std::string lines = release ? built_lines(*release) : "";
  return lines.empty() ? "" : fmt::format("\n{}\n{}", release->folder.generic_string(), lines);
}

}  // namespace

ExitCode compare_command(const CompareArguments& arguments) {
  // Both are read before giving up, so that both files' problems are printed.
  Progress progress;
  progress.step("checking");
  const ExamineOptions options{kernel_judge(), false, false};
  const auto release_a = recorded(arguments.a), release_b = recorded(arguments.b);
  const auto order_of = [](const std::optional<Recorded>& release, const std::string& path) {
    return release ? (release->folder / inputs_order).string() : path;
  };
  const auto loaded_a = load({order_of(release_a, arguments.a), {}}, options),
             loaded_b = load({order_of(release_b, arguments.b), {}}, options);
  progress.step("");
  if (!loaded_a || !loaded_b) return bad_input;
  const Examined &a = *loaded_a->examined, &b = *loaded_b->examined;
  const Comparison comparison = compare({a.job, a.bed}, {b.job, b.bed}, a.figures());
  const Told told_a{a.heading(), arguments.a, stop_count(a.findings)},
      told_b{b.heading(), arguments.b, stop_count(b.findings)};
  if (arguments.json)
    fmt::print("{}", comparison_json(comparison, told_a, told_b));
  else
    fmt::print("{}", comparison_text(comparison, told_a, told_b, columns()) + built_text(release_a) +
                         built_text(release_b));
  return released;
}

}  // namespace bedwright
