// bedwright verify: holds what was released to its digests, and draws it again.
#include <fmt/format.h>

#include <filesystem>

#include "commands/built.h"
#include "commands/changes.h"
#include "commands/make_packet.h"
#include "commands/session.h"
#include "commands/tell.h"
#include "kernel/kernel_judge.h"
#include "packet/built.h"
#include "packet/inputs.h"
#include "packet/record.h"
#include "rules/table.h"
#include "sheets/issue.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

// Faults of one packet, a line each.
class Verifying {
 public:
  Verifying(const Recorded& record, bool redraw, Progress& progress)
      : record_(record), redraw_(redraw), progress_(progress) {}

  std::vector<std::string> faults() {
    if (record_.standing == Standing::damaged) {
      say(damage(record_));
      return faults_;
    }
    const Differences found = differences_on_disk(record_);
    for (const std::string& path : found.missing) say(path + " is missing");
    for (const std::string& path : found.changed) say(path + " was changed since it was written");
    for (const std::string& path : found.extra) say(path + " is none of its files");
    if (!is_digest(record_.input_digest)) say("manifest.json: input_sha256 is no SHA-256");
    if (record_.standing == Standing::trial) return faults_;
    std::vector<Problem> of_built;
    built_of(record_, of_built);
    for (const Problem& problem : of_built) say(to_line(problem));
    if (digest_of_inputs(record_) != record_.input_digest)
      say("manifest.json: input_sha256 is not that of the files in inputs/");
    if (redraw_ && faults_.empty()) redraw();
    return faults_;
  }

  bool redrawn() const { return redrawn_; }

 private:
  void say(std::string fault) { faults_.push_back(std::move(fault)); }

  void redraw() {
    if (is_of_later_program(record_, version()))
      return say(fmt::format(
          "it was released by bedwright {}, which is later than this, {}: draw it again with that program",
          record_.version, version()));
    progress_.step("drawing " + record_.folder.generic_string() + " again");
    std::vector<Problem> problems;
    const auto loaded = load({(record_.folder / inputs_order).string(), {}}, {kernel_judge()}, problems);
    const std::string program =
        record_.version == version()
            ? ""
            : fmt::format("; it was released by bedwright {}, this is {}", record_.version, version());
    if (!loaded) {
      for (const Problem& problem : problems) say("cannot be drawn again: " + to_line(problem));
      if (!program.empty())
        say("to issue it by this program, copy inputs/ to a folder of its own, change there what is named "
            "above "
            "and raise the letter" +
            program);
      return;
    }
    if (loaded->examined->is_stopped())
      return say("drawn again it is stopped: see check " + (record_.folder / inputs_order).string() +
                 program);
    const auto made = make_release(*loaded, revised_by(record_), progress_, problems);
    if (!made) return say("cannot be drawn again: " + to_line(problems.front()));
    redrawn_ = true;
    if (would_be_the_same(record_, made->packet)) return;
    const Differences found = differences(record_, made->packet.files);
    if (found.none()) {
      // The same files by another program: nothing to cut otherwise.
      if (program.empty()) say("drawn again its manifest.json is another");
      return;
    }
    say("drawn again it comes out otherwise" + program + ":\n" + otherwise_text(found));
    for (const char* report : {"report.txt", "report.json"})
      for (const std::string& path : found.changed)
        if (path == report) faults_.back() += std::string(report) + " reads otherwise\n";
    faults_.back().pop_back();
  }

  const Recorded& record_;
  bool redraw_;
  Progress& progress_;
  bool redrawn_ = false;
  std::vector<std::string> faults_;
};

// The packet in a folder, else those in an order's folder, else those of all orders.
std::vector<Recorded> packets_at(const fs::path& folder) {
  if (auto one = recorded(folder)) return {*std::move(one)};
  std::vector<Recorded> of_order = recorded_of_order(folder);
  return of_order.empty() ? all_recorded(folder) : of_order;
}

// The digits that its sheets show; a stopped bed's report has none.
std::string paper_words(const Recorded& record) {
  return record.state == word(PacketState::stopped)
             ? ""
             : fmt::format("; its paper says {}", paper_digits(record.input_digest));
}

}  // namespace

ExitCode verify_command(const VerifyArguments& arguments) {
  Progress progress;
  std::vector<Recorded> records;
  try {
    std::string folder = arguments.folder;
    while (folder.size() > 1 && folder.ends_with('/')) folder.pop_back();
    records = packets_at(folder);
  } catch (const fs::filesystem_error& unreadable) {
    tell("bedwright: {}\n", unreadable.what());
    return bad_input;
  }
  if (records.empty()) {
    tell("bedwright: {} holds no release; name one, as out/QB-1041/A, or an order's folder, or out\n",
         arguments.folder.empty() ? "an empty name" : arguments.folder);
    return bad_input;
  }
  int bad = 0;
  for (const Recorded& record : records) {
    Verifying verifying(record, arguments.redraw, progress);
    const std::vector<std::string> faults = verifying.faults();
    progress.step("");
    bad += !faults.empty();
    if (faults.empty())
      fmt::print("{}: {}, whole: {} files as they were written{}{}\n", record.folder.generic_string(),
                 word(record.standing), record.files.size() + 1,
                 verifying.redrawn() ? ", and the same drawn again" : "", paper_words(record));
    for (const std::string& fault : faults) fmt::print("{}: {}\n", record.folder.generic_string(), fault);
    if (faults.empty()) fmt::print("{}", built_lines(record));
  }
  if (records.size() > 1) fmt::print("{} packets, {} not as they were written\n", records.size(), bad);
  return bad == 0 ? released : stopped;
}

}  // namespace bedwright
