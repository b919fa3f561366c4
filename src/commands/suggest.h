// check --suggest: looks for the smallest set of changes and shows it.
#pragma once

#include "commands/session.h"

namespace bedwright {

// Prints what was found to standard output, as a diff of the order file where it
// can be written so, and writes the changed order when arguments.write names a
// file. Returns what the command's exit code should be: `code`, unless writing failed.
ExitCode suggest_changes(const CheckArguments& arguments, const Examined& examined, Leads& leads,
                         Progress& progress, ExitCode code);

}  // namespace bedwright
