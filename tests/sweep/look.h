// One order examined by the program and by the inspection, and what is wrong with that.
#pragma once

#include <cmath>
#include <ctime>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "examine/examine.h"
#include "sweep/inspection.h"
#include "sweep/swept_orders.h"
#ifdef SWEEP_WITH_KERNEL
#include "kernel/kernel_judge.h"
#endif

namespace bedwright::sweep {

enum class Outcome { bad_input, stopped, clear, exception };

struct Look {
  Outcome outcome = Outcome::bad_input;
  std::map<std::string, std::string> failures;      // kind, what
  std::map<std::string, std::string> only_stopped;  // code of a rule that stops what the inspection passes
};

struct LookOptions {
  bool inspect_stopped = true;
  bool ask_kernel = false;  // of every pair the inspection leaves open
};

inline JudgeMaker kernel_where_there_is_one() {
#ifdef SWEEP_WITH_KERNEL
  return kernel_judge();
#else
  return {};
#endif
}

inline double cpu_since(std::clock_t start) {
  return static_cast<double>(std::clock() - start) / CLOCKS_PER_SEC;
}

// A problem is one line that says where, what is wrong, and what would do.
inline std::optional<std::string> fault_of(const std::vector<Problem>& problems) {
  if (problems.empty()) return "neither a bed nor a problem";
  for (const Problem& p : problems) {
    const std::string line = to_line(p);
    if (p.what.empty() || p.would_do.empty() || p.where.file.empty() || line.find('\n') != std::string::npos)
      return "no whole problem: " + line;
  }
  return std::nullopt;
}

inline std::optional<std::string> not_finite(const Examined& e) {
  for (const Finding& f : e.findings) {
    for (const double v : {f.x, f.y, f.z, f.measured, f.limit, f.margin})
      if (!std::isfinite(v)) return f.code + ": " + f.message;
    for (const std::string* text : {&f.message, &f.remedy})
      for (const char* word : {" nan", " inf ", "-nan", "-inf"})
        if (text->find(word) != std::string::npos) return f.code + ": " + *text;
  }
  return std::nullopt;
}

inline void inspect_into(Look& look, const Examined& e, const LookOptions& options) {
  const Inspection inspection = inspect(e.job, e.bed);
  if (e.is_stopped()) {
    if (inspection.rejects.empty())
      for (const Finding& f : e.findings)
        if (f.severity == Severity::stop) look.only_stopped.emplace(f.code, f.message);
    return;
  }
  for (const Reject& r : inspection.rejects) look.failures.emplace("released, but " + r.kind, r.what);
  if (!options.ask_kernel || inspection.undecided.empty()) return;
  if (const JudgeMaker maker = kernel_where_there_is_one()) {
    const auto judge = maker(e.bed);
    for (const Undecided& u : inspection.undecided) {
      const bool shank = e.bed.items[static_cast<std::size_t>(u.a)].bolt >= 0;
      const auto pair = judge->judge(u.a, u.b, shank);
      if (pair && pair->common_volume > 1)
        look.failures.emplace(
            "released, but the kernel finds a shared space",
            fmt::format("{} and {}: {:.1f} mm3", name(e.bed.items[static_cast<std::size_t>(u.a)].id),
                        name(e.bed.items[static_cast<std::size_t>(u.b)].id), pair->common_volume));
    }
  }
}

inline Look look_at(FileStore& store, const std::string& top, const SweptOrder& order,
                    const LookOptions& options) {
  Look look;
  try {
    const std::clock_t start = std::clock();
    Examination examination = examine(store, top + "/" + order.file, order.sets);
    const double seconds = cpu_since(start);
    if (seconds > 1) look.failures.emplace("slow", fmt::format("{:.1f} s", seconds));
    if (!examination) {
      if (const auto fault = fault_of(examination.problems))
        look.failures.emplace("a problem not told", *fault);
      return look;
    }
    if (const auto what = not_finite(*examination.bed)) look.failures.emplace("not finite", *what);
    look.outcome = examination.bed->is_stopped() ? Outcome::stopped : Outcome::clear;
    if (look.outcome == Outcome::stopped && !options.inspect_stopped) return look;
    inspect_into(look, *examination.bed, options);
    const bool in_space =
        look.failures.contains("released, but two things in one place") || options.ask_kernel;
    if (look.outcome == Outcome::clear && in_space) {
      // `check` has its open pairs judged; whether it then still releases is what counts.
      ExamineOptions judged;
      judged.judge = kernel_where_there_is_one();
      if (!judged.judge) return look;
      examination = examine(store, top + "/" + order.file, order.sets, judged);
      if (examination.bed->is_stopped()) {
        look.outcome = Outcome::stopped;
        std::erase_if(look.failures, [](const auto& f) { return f.first.starts_with("released"); });
      }
    }
  } catch (const std::exception& e) {
    look.outcome = Outcome::exception;
    look.failures.emplace("exception", e.what());
  }
  return look;
}

// The order with as few of its sets as still fail so.
inline SweptOrder least(FileStore& store, const std::string& top, SweptOrder order, const std::string& kind,
                        const LookOptions& options) {
  for (std::size_t i = order.sets.size(); i-- > 0;) {
    SweptOrder fewer = order;
    fewer.sets.erase(fewer.sets.begin() + static_cast<long>(i));
    const Look look = look_at(store, top, fewer, options);
    if (look.failures.contains(kind)) order = fewer;
  }
  return order;
}

}  // namespace bedwright::sweep
