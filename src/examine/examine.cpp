// Runs layout, loads and rules in their order, then asks the judge of open pairs.
#include "examine/examine.h"

#include <algorithm>

#include "layout/layout.h"
#include "rules/loads/rules.h"
#include "rules/standing_remedies.h"

namespace bedwright {
namespace {

CheckInput input_of(const Job& job, const Bed& bed) {
  return {bed, job.order.limits, &job, nullptr, job.order.order.figures()};
}

void add(std::vector<Finding>& findings, std::vector<Finding> more) {
  std::move(more.begin(), more.end(), std::back_inserter(findings));
  sort_findings(findings, all_rules());
}

}  // namespace

bool has_stop(const std::vector<Finding>& findings) {
  return std::any_of(findings.begin(), findings.end(),
                     [](const Finding& f) { return f.severity == Severity::stop; });
}

Examined::Examined(Job job_in, Bed bed_in, const ExamineOptions& options)
    : job(std::move(job_in)), bed(std::move(bed_in)), scene(input_of(job, bed)), loads(run_loads(job, bed)) {
  findings = run_checks(scene);
  std::vector<Finding> about_loads = load_findings(job, bed, loads, figures(), options.load_remedies);
  const bool clear = !has_stop(findings) && !has_stop(about_loads);
  if (options.judge && (clear || !options.judge_only_where_clear)) {
    const std::unique_ptr<PairJudge> judge = options.judge(bed);
    findings = with_open_pairs_judged(scene, *judge, std::move(findings));
  }
  add(findings, std::move(about_loads));
  keep_to_what_stands(job, findings);
}

bool Examined::is_stopped() const { return has_stop(findings); }

std::unique_ptr<Examined> examine(Job job, Bed bed, const ExamineOptions& options) {
  return std::make_unique<Examined>(std::move(job), std::move(bed), options);
}

Examination examine(Job job, const ExamineOptions& options) {
  auto laid = lay_out(job);
  if (auto* problems = std::get_if<std::vector<Problem>>(&laid)) return {nullptr, std::move(*problems)};
  return {examine(std::move(job), std::move(std::get<Bed>(laid)), options), {}};
}

Examination examine(FileStore& store, const std::string& order_path, const std::vector<std::string>& sets,
                    const ExamineOptions& options) {
  auto read = load_job(store, order_path, sets);
  if (auto* problems = std::get_if<std::vector<Problem>>(&read)) return {nullptr, std::move(*problems)};
  return examine(std::move(std::get<Job>(read)), options);
}

std::vector<Finding> with_load_remedies(const Examined& e, std::vector<Finding> findings) {
  if (std::erase_if(findings, [](const Finding& f) { return is_about_loads(f.code); }) == 0) return findings;
  add(findings, load_findings(e.job, e.bed, e.loads, e.figures()));
  keep_to_what_stands(e.job, findings);
  return findings;
}

}  // namespace bedwright
