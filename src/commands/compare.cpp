#include "compare/compare.h"

#include <fmt/format.h>

#include "commands/session.h"

namespace bedwright {

ExitCode compare_command(const CompareArguments& arguments) {
  // Both are read before giving up, so that both files' problems are told.
  const auto a = load({arguments.a, {}}), b = load({arguments.b, {}});
  if (!a || !b) return bad_input;
  const Comparison comparison = compare({a->job, a->bed}, {b->job, b->bed}, figures_of(a->job.order.order));
  const Heading &head_a = a->job.order.order, &head_b = b->job.order.order;
  if (arguments.json) fmt::print("{}", comparison_json(comparison, head_a, head_b));
  else fmt::print("{}", comparison_text(comparison, head_a, head_b, columns()));
  return released;
}

}  // namespace bedwright
