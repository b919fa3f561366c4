#include "commands/session.h"

#include <fmt/format.h>
#include <sys/ioctl.h>
#include <unistd.h>

#include <algorithm>
#include <cstdio>
#include <cstdlib>

#include "advice/advice.h"
#include "checks/table.h"
#include "commands/kernel_judge.h"
#include "layout/layout.h"
#include "loads/rules/rules.h"
#include "sheets/assembly_figures.h"
#include "sheets/assembly_pictures.h"

namespace bedwright {
namespace {

void print_problems(const std::vector<Problem>& problems) {
  for (const Problem& p : problems) fmt::print(stderr, "{}\n", to_line(p));
  fmt::print(stderr, "{} problem{} in the input; nothing was written.\n", problems.size(), problems.size() == 1 ? "" : "s");
}

// The files join the job's inputs, so that the packet's digest covers them.
AssemblyText assembly_words(Job& job, const Bed& bed, const std::string& order_path, std::vector<Problem>& problems) {
  const std::string shipped = (home() / "templates" / "assembly").string();
  const AssemblyFiles files = read_assembly_files(shipped, order_path, job.order.order.assembly_template, problems);
  if (!problems.empty()) return {};
  for (const TemplateFile& file : {files.letterhead, files.steps}) job.inputs.push_back({file.path, file.content});
  return fill_assembly(files, assembly_figures({job, bed}), assembly_pictures(), problems);
}

}  // namespace

std::vector<Problem> assembly_problems(Job& job, const Bed& bed, const std::string& order_path) {
  std::vector<Problem> problems;
  assembly_words(job, bed, order_path, problems);
  return problems;
}

int columns() {
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col >= 60) return std::min<int>(size.ws_col, 140);
  return 100;
}

std::optional<Loaded> load(const OrderArguments& arguments) {
  auto read = load_job(arguments.order, arguments.sets);
  if (const auto* problems = std::get_if<std::vector<Problem>>(&read)) {
    print_problems(*problems);
    return std::nullopt;
  }
  Job& job = std::get<Job>(read);
  auto laid = lay_out(job);
  if (const auto* problems = std::get_if<std::vector<Problem>>(&laid)) {
    print_problems(*problems);
    return std::nullopt;
  }
  std::vector<Problem> problems;
  AssemblyText words = assembly_words(job, std::get<Bed>(laid), arguments.order, problems);
  if (!problems.empty()) {
    print_problems(problems);
    return std::nullopt;
  }
  return Loaded{std::move(job), std::move(std::get<Bed>(laid)), std::move(words)};
}

Figures figures_of(const Heading& heading) { return {heading.printing, heading.tape}; }

std::vector<Finding> check_once(const Job& job, const Bed& bed, PairJudge* judge, bool load_remedies) {
  const Figures figures = figures_of(job.order.order);
  std::vector<Finding> findings = run_checks({bed, job.order.limits, &job, nullptr, figures});
  if (judge) findings = with_open_pairs_judged({bed, job.order.limits, &job, judge, figures}, std::move(findings));
  const std::vector<Finding> loads = load_findings(job, bed, run_loads(job, bed), figures, load_remedies);
  findings.insert(findings.end(), loads.begin(), loads.end());
  sort_findings(findings, all_rules());
  return findings;
}

std::optional<std::vector<Finding>> check_variant(FileStore& store, const std::string& order, const std::vector<std::string>& sets,
                                                  bool exact, PairMemory* memory) {
  const auto read = load_job(store, order, sets);
  const Job* job = std::get_if<Job>(&read);
  if (!job) return std::nullopt;
  const auto laid = lay_out(*job);
  const Bed* bed = std::get_if<Bed>(&laid);
  if (!bed) return std::nullopt;
  KernelJudge judge(*bed, memory);
  return check_once(*job, *bed, exact ? &judge : nullptr, false);
}

std::vector<Finding> check(const Loaded& loaded, const OrderArguments& arguments, Progress& progress, Leads* leads) {
  progress.step("checking");
  PairMemory own;
  PairMemory& memory = leads ? leads->memory : own;
  KernelJudge judge(loaded.bed, &memory);
  std::vector<Finding> findings = check_once(loaded.job, loaded.bed, &judge);
  if (!stops(findings)) return findings;
  if (leads) leads->untried = findings;
  FileStore store;
  const Retry retry = [&](const std::vector<std::string>& more) {
    progress.step("trying " + more.front());
    std::vector<std::string> sets = arguments.sets;
    sets.insert(sets.end(), more.begin(), more.end());
    return check_variant(store, arguments.order, sets, true, &memory);
  };
  advise(loaded.job, loaded.bed.track.bunks, retry, findings);
  return findings;
}

bool stops(const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(), [](const Finding& f) { return f.severity == Severity::stop; });
}

std::filesystem::path home() {
  const char* told = std::getenv("BEDWRIGHT_HOME");
  return told && *told ? told : BEDWRIGHT_SOURCE_HOME;
}

std::string version() { return BEDWRIGHT_VERSION; }

Progress::Progress() : terminal_(::isatty(STDERR_FILENO) != 0) {}

Progress::~Progress() {
  if (terminal_) fmt::print(stderr, "\r\033[K");
}

void Progress::step(const std::string& what) {
  if (terminal_) fmt::print(stderr, "\r\033[K{}", what.empty() ? "" : what + " ...");
}

void print_findings(const std::vector<Finding>& findings, const Loaded& loaded) {
  const bool colour = ::isatty(STDOUT_FILENO) != 0 && !std::getenv("NO_COLOR");
  fmt::print("{}", findings_table(findings, {figures_of(loaded.job.order.order), columns(), colour}));
}

}  // namespace bedwright
