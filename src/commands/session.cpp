// Loading, examining and printing, as every command that reads an order does it.
#include "commands/session.h"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "advice/advice.h"
#include "commands/home.h"
#include "commands/tell.h"
#include "kernel/kernel_judge.h"
#include "kernel/step.h"
#include "kernel/viewer.h"
#include "rules/table.h"
#include "sheets/assembly/assembly_figures.h"
#include "sheets/assembly/assembly_pictures.h"

namespace bedwright {

void print_problems(const std::vector<Problem>& problems) {
  for (const Problem& p : problems) tell("{}\n", to_line(p));
  tell("{} problem{} in the input; nothing was written.\n", problems.size(), problems.size() == 1 ? "" : "s");
}

namespace {

// The files join the inputs, so that the packet's digest covers them.
AssemblyText assembly_words(const Examined& e, const std::string& order_path, std::vector<InputFile>& inputs,
                            std::vector<Problem>& problems) {
  const std::string shipped = (home().folder / "templates" / "assembly").string();
  const AssemblyFiles files =
      read_assembly_files(shipped, order_path, e.heading().assembly_template, problems);
  if (!problems.empty()) return {};
  for (const TemplateFile& file : {files.letterhead, files.steps})
    inputs.push_back({file.path, file.content});
  return fill_assembly(files, assembly_figures({e}), assembly_pictures(), problems);
}

}  // namespace

std::vector<Problem> assembly_problems(const Examined& e, const std::string& order_path,
                                       std::vector<InputFile>& inputs) {
  std::vector<Problem> problems;
  assembly_words(e, order_path, inputs, problems);
  return problems;
}

int columns() {
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col >= 60)
    return std::min<int>(size.ws_col, 140);
  return 100;
}

std::optional<Loaded> with_words(std::unique_ptr<Examined> examined, const std::string& order_path,
                                 std::vector<Problem>& problems) {
  Loaded loaded{std::move(examined)};
  const Examined& e = *loaded.examined;
  loaded.inputs = e.job.inputs;
  loaded.assembly = assembly_words(e, order_path, loaded.inputs, problems);
  return problems.empty() ? std::optional(std::move(loaded)) : std::nullopt;
}

std::optional<Loaded> load(const OrderArguments& arguments, const ExamineOptions& options,
                           std::vector<Problem>& problems) {
  FileStore store;
  Examination examination = examine(store, arguments.order, arguments.sets, options);
  if (examination) return with_words(std::move(examination.bed), arguments.order, problems);
  problems = std::move(examination.problems);
  return std::nullopt;
}

std::optional<Loaded> load(const OrderArguments& arguments, const ExamineOptions& options) {
  std::vector<Problem> problems;
  auto loaded = load(arguments, options, problems);
  if (!loaded) print_problems(problems);
  return loaded;
}

std::optional<Loaded> load_and_advise(const OrderArguments& arguments, Progress& progress, Leads* leads) {
  progress.step("checking");
  PairMemory own;
  PairMemory& memory = leads ? leads->memory : own;
  const JudgeMaker judge = kernel_judge(&memory);
  auto loaded = load(arguments, {judge});
  if (!loaded || !loaded->examined->is_stopped()) return loaded;
  if (leads) leads->untried = loaded->examined->findings;
  FileStore store;
  const Retry retry = retry_with(store, arguments.order, arguments.sets, {judge, false, false});
  Examined& e = *loaded->examined;
  const Retry told = [&](const std::vector<std::string>& more) {
    progress.step("trying " + more.front());
    return retry(more);
  };
  advise(e.job, e.bed.track.bunk_count(), told, e.findings);
  return loaded;
}

PacketInput packet_input(const Loaded& loaded, PacketState state, const std::string& input_digest,
                         Progress& progress) {
  const Examined& e = *loaded.examined;
  const auto model = [&e, state] {
    const Heading& h = e.heading();
    return step_text(
        e.bed, {h.number, h.date, h.shop, h.shop, "bedwright " + version(), state != PacketState::released});
  };
  return {e,
          loaded.assembly,
          state,
          version(),
          input_digest,
          [&progress](const std::string& what) { progress.step(what); },
          [&e] { return bed_views(e.bed); },
          model};
}

Progress::Progress() : terminal_(::isatty(STDERR_FILENO) != 0) {}

Progress::~Progress() {
  if (terminal_) tell("\r\033[K");
}

void Progress::step(const std::string& what) {
  if (terminal_) tell("\r\033[K{}", what.empty() ? "" : what + " ...");
}

void print_findings(const Examined& examined) {
  const bool colour = ::isatty(STDOUT_FILENO) != 0 && !std::getenv("NO_COLOR");
  fmt::print("{}", findings_table(examined.findings, {examined.figures(), columns(), colour}));
}

}  // namespace bedwright
