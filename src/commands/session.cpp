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

namespace bedwright {
namespace {

void print_problems(const std::vector<Problem>& problems) {
  for (const Problem& p : problems) fmt::print(stderr, "{}\n", to_line(p));
  fmt::print(stderr, "{} problem{} in the input; nothing was written.\n", problems.size(), problems.size() == 1 ? "" : "s");
}

// Columns of the terminal on standard output, or a page's when there is none.
int columns() {
  winsize size{};
  if (::ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) == 0 && size.ws_col >= 60) return std::min<int>(size.ws_col, 140);
  return 100;
}

}  // namespace

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
  return Loaded{std::move(job), std::move(std::get<Bed>(laid))};
}

Figures figures_of(const Heading& heading) { return {heading.printing, heading.tape}; }

namespace {

// The kernel is asked only of a bed that nothing else stops: what the cheap test
// leaves open is then said to be undecided, and parts no kernel can make (a hole
// through an edge) have been stopped before it meets them.
std::vector<Finding> check_once(const Job& job, const Bed& bed) {
  const Figures figures = figures_of(job.order.order);
  std::vector<Finding> findings = run_checks({bed, job.order.limits, &job, nullptr, figures});
  if (stops(findings)) return findings;
  KernelJudge judge(bed);
  return run_checks({bed, job.order.limits, &job, &judge, figures});
}

}  // namespace

std::vector<Finding> check(const Loaded& loaded, const OrderArguments& arguments, Progress& progress) {
  progress.step("checking");
  std::vector<Finding> findings = check_once(loaded.job, loaded.bed);
  if (!stops(findings)) return findings;
  const Retry retry = [&](const std::vector<std::string>& more) -> std::optional<std::vector<Finding>> {
    progress.step("trying " + more.front());
    std::vector<std::string> sets = arguments.sets;
    sets.insert(sets.end(), more.begin(), more.end());
    const auto read = load_job(arguments.order, sets);
    const Job* job = std::get_if<Job>(&read);
    if (!job) return std::nullopt;
    const auto laid = lay_out(*job);
    const Bed* bed = std::get_if<Bed>(&laid);
    if (!bed) return std::nullopt;
    return check_once(*job, *bed);
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
