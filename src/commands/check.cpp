#include <fmt/format.h>

#include "commands/new_file.h"
#include "commands/session.h"
#include "commands/suggest.h"
#include "export/report.h"
#include "export/track_report.h"

namespace bedwright {

ExitCode check_command(const CheckArguments& arguments) {
  // Told before the search, which may take a minute; write_new_file makes sure.
  if (const std::string fault = no_new_file_there(arguments.write); !arguments.write.empty() && !fault.empty()) {
    fmt::print(stderr, "bedwright: {}\n", fault);
    return bad_input;
  }
  Progress progress;
  Leads leads;
  const auto loaded = load(arguments);
  if (!loaded) return bad_input;
  const std::vector<Finding> findings = check(*loaded, arguments, progress, &leads);
  progress.step("");
  const bool stop = stops(findings);
  if (arguments.json) {
    const LoadsResult loads = run_loads(loaded->job, loaded->bed);
    fmt::print("{}", report_json({version(), loaded->job.order, stop ? PacketState::stopped : PacketState::released, loaded->bed, findings, &loaded->job, &loads}));
  } else {
    print_findings(findings, *loaded);
    const CheckInput input{loaded->bed, loaded->job.order.limits, &loaded->job, nullptr, figures_of(loaded->job.order.order)};
    fmt::print("\n{}\n", track_choices_text(Scene(input), loaded->job));
    fmt::print("{} {}\n", loaded->job.order.order.number, stop ? "does not go together as ordered." : "goes together.");
  }
  const ExitCode code = stop ? stopped : released;
  return arguments.suggest ? suggest_changes(arguments, *loaded, findings, leads, progress, code) : code;
}

}  // namespace bedwright
