// bedwright check: examines an order and prints its findings.
#include <fmt/format.h>

#include "commands/new_file.h"
#include "commands/session.h"
#include "commands/suggest.h"
#include "commands/tell.h"
#include "packet/report.h"
#include "packet/track_report.h"

namespace bedwright {

ExitCode check_command(const CheckArguments& arguments) {
  // Said before the search, which may take a minute; write_new_file asks again.
  if (const std::string fault = no_new_file_there(arguments.write);
      !arguments.write.empty() && !fault.empty()) {
    tell("bedwright: {}\n", fault);
    return bad_input;
  }
  Progress progress;
  Leads leads;
  const auto loaded = load_and_advise(arguments, progress, &leads);
  progress.step("");
  if (!loaded) return bad_input;
  const Examined& e = *loaded->examined;
  const bool stop = e.is_stopped();
  if (arguments.json) {
    fmt::print("{}", report_json({version(), stop ? PacketState::stopped : PacketState::released, e}));
  } else {
    print_findings(e);
    fmt::print("\n{}\n", track_choices_text(e.scene, e.job));
    fmt::print("{} {}\n", e.heading().number, stop ? "does not go together as ordered." : "goes together.");
  }
  const ExitCode code = stop ? stopped : released;
  return arguments.suggest ? suggest_changes(arguments, e, leads, progress, code) : code;
}

}  // namespace bedwright
