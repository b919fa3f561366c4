#include <fmt/format.h>

#include "commands/session.h"
#include "export/report.h"

namespace bedwright {

ExitCode check_command(const CheckArguments& arguments) {
  Progress progress;
  const auto loaded = load(arguments);
  if (!loaded) return bad_input;
  const std::vector<Finding> findings = check(*loaded, arguments, progress);
  progress.step("");
  const bool stop = stops(findings);
  if (arguments.json) {
    fmt::print("{}", report_json({version(), loaded->job.order, stop ? PacketState::stopped : PacketState::released, loaded->bed, findings}));
  } else {
    print_findings(findings, *loaded);
    fmt::print("{} {}\n", loaded->job.order.order.number, stop ? "does not go together as ordered." : "goes together.");
  }
  return stop ? stopped : released;
}

}  // namespace bedwright
