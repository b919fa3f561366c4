// A trial written down as an order.
#include <fmt/format.h>

#include <filesystem>

#include "advice/rewrite.h"
#include "commands/home.h"
#include "commands/new_file.h"
#include "commands/paste.h"
#include "commands/session.h"
#include "commands/tell.h"
#include "params/job.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

std::optional<Job> read_order(const std::string& path, const std::vector<std::string>& sets) {
  auto read = load_job(path, sets);
  if (Job* job = std::get_if<Job>(&read)) return std::move(*job);
  print_problems(std::get<std::vector<Problem>>(read));
  return std::nullopt;
}

}  // namespace

ExitCode new_from_command(const NewArguments& arguments) {
  const auto refuse = [](const std::string& why) {
    tell("bedwright: {}\n", why);
    return bad_input;
  };
  const fs::path file = arguments.file, from = arguments.from;
  if (const std::string fault = no_new_file_there(file); !fault.empty()) return refuse(fault);
  const auto trial = read_order(arguments.from, arguments.sets);
  if (!trial) return bad_input;
  std::vector<Change> changes;
  for (const std::string& set : arguments.sets) {
    const std::size_t equals = set.find('=');
    changes.push_back({set.substr(0, equals), set.substr(equals + 1)});
  }
  const auto written = rewritten(trial->inputs.front().content, changes);
  if (const Change* c = std::get_if<Change>(&written))
    return refuse(
        fmt::format("{} cannot be written into {} as it stands; change it by hand", c->key, from.string()));
  const auto moved =
      moved_paths(std::get<std::string>(written), from.parent_path().string(), file.parent_path().string());
  if (const Change* c = std::get_if<Change>(&moved))
    return refuse(fmt::format("the path of {} cannot be made to fit {}; write it beside {}", c->key,
                              file.string(), from.string()));
  if (const std::string fault = write_new_file(file, std::get<std::string>(moved)); !fault.empty())
    return refuse(fault);
  // A file that would not read is no order.
  if (!read_order(file.string(), {})) {
    fs::remove(file);
    return refuse(fmt::format("{} would not read as an order, so it was not kept", file.string()));
  }
  const std::string word = shell_word(file.string());
  fmt::print(
      "Wrote {}. Its number and revision are those of {}: raise the revision, or give it a number of its "
      "own, then:\n  {} draw {}\n",
      file.string(), from.string(), home().command(), word);
  return released;
}

}  // namespace bedwright
