// Runs the search for changes, prints what it found, and writes the changed order.
#include "commands/suggest.h"

#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>

#include "advice/rewrite.h"
#include "advice/suggest.h"
#include "commands/new_file.h"
#include "commands/tell.h"
#include "kernel/kernel_judge.h"

namespace bedwright {
namespace {

// Both checks read the files once, and ask the kernel about a pair once, whatever is tried.
Retry told_retry(FileStore& store, const CheckArguments& arguments, Progress& progress,
                 const JudgeMaker& judge) {
  return [&progress, exact = static_cast<bool>(judge),
          retry = retry_with(store, arguments.order, arguments.sets, {judge, false, false}),
          tries = 0](const std::vector<std::string>& more) mutable {
    if (++tries % 50 == 1)
      progress.step(
          fmt::format("looking for the smallest change, {} tried{}", tries - 1, exact ? " exactly" : ""));
    return retry(more);
  };
}

std::string listed(const std::vector<Change>& changes) {
  std::string text;
  for (const Change& c : changes) text += fmt::format("  --set {}=\"{}\"\n", c.key, c.value);
  return text;
}

const char* plural(std::size_t count) { return count == 1 ? "" : "s"; }

void print_none(const Suggestion& s, const std::string& not_written) {
  constexpr std::size_t most_told = 6;
  fmt::print(
      "\nNo set of up to three changes that was tried clears every stop, nor does adding up to six one at a "
      "time\n({} sets tried{}).\n",
      s.tries, s.gave_up ? ", then given up" : "");
  if (!not_written.empty()) fmt::print("{} was not written.\n", not_written);
  if (s.nearest.empty()) return;
  fmt::print("Nearest, with {} stop{} left:\n{}", s.left.size(), plural(s.left.size()), listed(s.nearest));
  for (std::size_t i = 0; i < std::min(most_told, s.left.size()); ++i) {
    const Finding& f = s.left[i];
    fmt::print("  still stopped: {} {}: {}\n", f.code, f.subjects.empty() ? "" : f.subjects.front().name,
               f.message);
  }
  if (s.left.size() > most_told) fmt::print("  and {} more\n", s.left.size() - most_told);
}

// What the user tried by --set goes into the suggested file as well.
std::vector<Change> with_sets(const CheckArguments& arguments, const std::vector<Change>& changes) {
  std::vector<Change> all;
  for (const std::string& set : arguments.sets) {
    const auto equals = set.find('=');
    all.push_back({set.substr(0, equals), set.substr(equals + 1)});
  }
  all.insert(all.end(), changes.begin(), changes.end());
  return all;
}

ExitCode write(const CheckArguments& arguments, const std::string& order, ExitCode code) {
  const std::filesystem::path from = arguments.order, to = arguments.write;
  const auto moved = moved_paths(order, from.parent_path().string(), to.parent_path().string());
  if (const Change* c = std::get_if<Change>(&moved)) {
    tell("bedwright: the path of {} cannot be made to fit {}; write it beside {}\n", c->key, to.string(),
         from.string());
    return bad_input;
  }
  if (const std::string fault = write_new_file(to, std::get<std::string>(moved)); !fault.empty()) {
    tell("bedwright: {}\n", fault);
    return bad_input;
  }
  fmt::print(
      "Wrote {}. Its number and revision are still those of {}: raise the revision before it is drawn.\n",
      to.string(), from.string());
  return code;
}

}  // namespace

ExitCode suggest_changes(const CheckArguments& arguments, const Examined& examined, Leads& leads,
                         Progress& progress, ExitCode code) {
  if (!examined.is_stopped()) {
    fmt::print("Nothing to change.{}\n",
               arguments.write.empty() ? "" : fmt::format(" {} was not written.", arguments.write));
    return code;
  }
  FileStore store;
  // Whoever reads a log of this shall see that it is running.
  if (::isatty(STDERR_FILENO) == 0) {
    std::fflush(stdout);
    tell("looking for the smallest change; that may take a minute ...\n");
  }
  const std::vector<FreeValue> free =
      free_values(examined.job, examined.bed.track.bunk_count(), leads.untried, examined.findings);
  SearchSettings settings;
  settings.most_added = 6;
  const Suggestion s = suggest(free, examined.findings, told_retry(store, arguments, progress, {}),
                               told_retry(store, arguments, progress, kernel_judge(&leads.memory)), settings);
  progress.step("");
  if (s.changes.empty()) {
    print_none(s, arguments.write);
    return code;
  }
  fmt::print("\n{} change{} clear{} every stop ({} sets tried):\n{}", s.changes.size(),
             plural(s.changes.size()), s.changes.size() == 1 ? "s" : "", s.tries, listed(s.changes));
  if (s.fewer_might_do)
    fmt::print("No single change does; fewer than {} might, but not every set was tried.\n",
               s.changes.size());
  const std::string& before = examined.job.inputs.front().content;
  const auto after = rewritten(before, with_sets(arguments, s.changes));
  if (const Change* c = std::get_if<Change>(&after)) {
    tell("bedwright: {} cannot be written into {} as it stands; use the --set above, or change it by hand\n",
         c->key, arguments.order);
    return arguments.write.empty() ? code : bad_input;
  }
  const std::string diff =
      line_diff(before, std::get<std::string>(after), arguments.order, arguments.order + " (suggested)");
  fmt::print("\n{}", diff.empty() ? "That is the order file as it stands, without the --set given.\n" : diff);
  return arguments.write.empty() ? code : write(arguments, std::get<std::string>(after), code);
}

}  // namespace bedwright
