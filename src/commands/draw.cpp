// bedwright draw: examines an order and writes its packet.
#include <fmt/format.h>

#include <stdexcept>
#include <system_error>

#include "commands/built.h"
#include "commands/changes.h"
#include "commands/home.h"
#include "commands/make_packet.h"
#include "commands/paste.h"
#include "commands/session.h"
#include "commands/tell.h"
#include "formats/font.h"
#include "packet/release.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

std::string shown(const fs::path& folder) { return fs::relative(folder).generic_string(); }

std::string first_of(const Differences& found) {
  const auto some = [](const std::vector<std::string>& paths, const char* what) {
    if (paths.empty()) return std::string();
    return fmt::format("  {} {}{}\n", paths.front(), what,
                       paths.size() > 1 ? fmt::format(", and {} more", paths.size() - 1) : "");
  };
  return some(found.missing, "is missing") + some(found.changed, "was changed") +
         some(found.extra, "is none of its files");
}

class Drawing {
 public:
  Drawing(const DrawArguments& arguments, const Loaded& loaded, Progress& progress)
      : arguments_(arguments),
        loaded_(loaded),
        e_(*loaded.examined),
        progress_(progress),
        out_(arguments.out.empty() ? home().out() : fs::path(arguments.out)),
        order_(order_name(e_.job)) {}

  ExitCode draw() {
    if (const std::string fault = place_fault(out_, order_); !fault.empty()) return refuse(fault);
    const bool trial = arguments_.draft || !e_.job.sets.empty() || e_.is_stopped();
    return trial ? draw_trial() : draw_release();
  }

 private:
  ExitCode refuse(const std::string& why) {
    progress_.step("");
    tell("bedwright: {}\n", why);
    return bad_input;
  }

  ExitCode draw_trial() {
    const Packet packet = trial_packet(loaded_, arguments_.draft, progress_);
    progress_.step("writing");
    write_trial(out_, packet);
    progress_.step("");
    print_findings(e_);
    const std::string where = shown(trial_folder(out_, order_.number));
    if (packet.state == PacketState::draft)
      fmt::print("{}, NOT FOR FABRICATION: {} files in {}/\n", arguments_.draft ? "Draft" : "Trial",
                 packet.files.size() + 1, where);
    else
      fmt::print("Not released: nothing to cut or drill was written; the report is in {}/\n", where);
    if (!e_.job.sets.empty() && packet.state == PacketState::draft)
      fmt::print(
          "A trial is no release. Written down as an order it can be one: bedwright new --from {}{} FILE\n",
          shell_word(arguments_.order), set_words());
    return e_.is_stopped() ? stopped : released;
  }

  std::string set_words() const {
    std::string words;
    for (const std::string& set : arguments_.sets) words += " --set " + shell_word(set);
    return words;
  }

  ExitCode draw_release() {
    const fs::path folder = release_folder(out_, order_.number, order_.revision);
    // Twice where another run has released it between the look and the writing.
    for (int looks = 0; looks < 2; ++looks) {
      const auto earlier = recorded(folder);
      if (!earlier && fs::exists(fs::symlink_status(folder)))
        return refuse(fmt::format(
            "{} exists and has no manifest.json, so this program did not make it; it was left alone: choose "
            "another output folder, or move it away",
            folder.string()));
      // What is out under this letter already says itself what it revised.
      const bool out_already = earlier && earlier->standing == Standing::released;
      const auto before =
          out_already ? std::nullopt : last_release(recorded_of_order(out_ / order_.number), e_.job.order);
      std::vector<Problem> problems;
      const auto made = make_release(loaded_,
                                     out_already ? revised_by(*earlier)
                                     : before    ? std::optional(to_revise(*before))
                                                 : std::nullopt,
                                     progress_, problems);
      if (!made) {
        progress_.step("");
        print_problems(problems);
        return bad_input;
      }
      if (earlier) return beside(*earlier, *made);
      progress_.step("writing");
      if (!write_release(out_, made->packet)) continue;
      // Said first: it stands, whatever becomes of the comparison.
      tell_released(made->packet);
      if (before) fmt::print("{}", since_text(*made, loaded_, *before));
      return released;
    }
    return refuse(fmt::format("{} is being changed by another run; draw again", folder.string()));
  }

  void tell_released(const Packet& packet) {
    progress_.step("");
    print_findings(e_);
    fmt::print("Released: {} files in {}/\n", packet.files.size() + 1,
               shown(release_folder(out_, order_.number, order_.revision)));
  }

  // What to do where this letter is released already.
  ExitCode beside(const Recorded& earlier, const MadeRelease& made) {
    const std::string what = fmt::format("order {} revision {}", order_.number, order_.revision),
                      where = shown(earlier.folder);
    const bool damaged = earlier.standing != Standing::released;
    const Differences on_disk = damaged ? Differences{} : differences_on_disk(earlier);
    const bool same = would_be_the_same(earlier, made.packet);
    if (same && on_disk.none()) {
      progress_.step("");
      print_findings(e_);
      fmt::print("Already released, the same: {} in {}/; nothing was touched.\n", what, where);
      return released;
    }
    if (!arguments_.replace.empty()) return replace(earlier, made.packet);
    const std::string other_hands =
        damaged          ? fmt::format("{}/ is where {} is released: {}", where, what, damage(earlier))
        : on_disk.none() ? ""
                         : fmt::format("{}/ is not as {} was released:\n{}", where, what, first_of(on_disk));
    if (damaged || (same && !on_disk.none()))
      return refuse(
          fmt::format("{}{}Nothing was touched. draw with --replace \"WHY\" keeps it beside, marked "
                      "withdrawn, and releases anew.",
                      other_hands, damaged ? "\n" : ""));
    progress_.step("comparing");
    const std::string differs = same_letter_text(earlier, loaded_, made, progress_);
    return refuse(
        fmt::format("{} is released already, in {}/, and this is not the same; nothing was touched.\n{}{}",
                    what, where, other_hands, differs));
  }

  ExitCode replace(const Recorded& earlier, const Packet& packet) {
    progress_.step("writing");
    const fs::path aside = replace_release(out_, packet, earlier, {arguments_.replace, today()});
    tell_released(packet);
    fmt::print("The one before is withdrawn ({}) and kept in {}/: do not build from it.\n",
               arguments_.replace, shown(aside));
    if (const auto withdrawn = recorded(aside)) fmt::print("{}", built_lines(*withdrawn));
    return released;
  }

  const DrawArguments& arguments_;
  const Loaded& loaded_;
  const Examined& e_;
  Progress& progress_;
  const fs::path out_;
  const OrderName order_;
};

std::string replace_fault(const DrawArguments& arguments) {
  if (!arguments.replaces) return {};
  if (arguments.draft || !arguments.sets.empty())
    return "--replace is for a release; a trial (--set, --draft) replaces none";
  if (arguments.replace.find_first_not_of(' ') == std::string::npos)
    return "--replace wants the reason in words, as --replace \"pads were cut too thin\"";
  if (control_character(arguments.replace) != std::string::npos ||
      first_bad_byte(arguments.replace) != std::string::npos)
    return "the reason for --replace has a control character in it; write it in plain words on one line";
  return {};
}

}  // namespace

ExitCode draw_command(const DrawArguments& arguments) {
  if (const std::string fault = font_fault(); !fault.empty()) {
    tell("bedwright: {}\n", fault);
    return bad_input;
  }
  if (const std::string fault = replace_fault(arguments); !fault.empty()) {
    tell("bedwright: {}\n", fault);
    return bad_input;
  }
  Progress progress;
  progress.step("laying out");
  const auto loaded = load_and_advise(arguments, progress);
  if (!loaded) return bad_input;
  try {
    return Drawing(arguments, *loaded, progress).draw();
  } catch (const std::runtime_error& refused) {  // a place that cannot be written is the user's to mend
    progress.step("");
    tell("bedwright: {}\n", refused.what());
    return bad_input;
  }
}

}  // namespace bedwright
