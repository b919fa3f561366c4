// The rule book: one entry for each rule, each a function over a Bed.
//
// A rule reads the Scene (the Bed with what several rules need worked out once)
// and appends its findings. Findings come back sorted by severity, code, identity
// and place, so the same Bed gives the same list.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "params/job.h"
#include "rules/clash/pair_judge.h"
#include "rules/finding.h"
#include "units/figures.h"

namespace bedwright {

struct Scene;

struct CheckInput {
  const Bed& bed;
  const Limits& limits;
  // The order behind the Bed; remedies that name one of its values need it.
  const Job* job = nullptr;
  // Without it, pairs the cheap test cannot decide are reported as undecided.
  PairJudge* judge = nullptr;
  Figures figures;
};

struct Rule {
  const char* code;
  const char* family;
  const char* asks;
  const char* formula;
  const char* limit;
  const char* source;
  const char* change;  // what to change when it fails
  void (*check)(const Scene& scene, std::vector<Finding>& findings);
};

const std::vector<Rule>& rules();

// All rules of the table. Sorted.
std::vector<Finding> run_checks(const Scene& scene);
std::vector<Finding> run_checks(const CheckInput& input);

// `findings`, made of this scene without a judge, as they are with one: only the rules
// that left a pair open are run again. The scene keeps no judge.
std::vector<Finding> with_open_pairs_judged(Scene& scene, PairJudge& judge, std::vector<Finding> findings);

// Whether the rule asks about pairs of things, some of which the judge has to decide.
bool is_about_clashes(const std::string& code);

// By severity, then in the table's order, then by what it is about and place.
void sort_findings(std::vector<Finding>& findings, const std::vector<Rule>& table);

// The entry as text, as bedwright explain prints it.
std::string entry_text(const Rule& rule);

// The same by code; nothing when no rule has the code.
std::optional<std::string> explain(const std::string& code);

}  // namespace bedwright
