// The front door: an order in, all that is known of its bed out.
//
//   order file + overrides ──> Job ──> layout ──> Bed ──> scene, loads ──> findings
//
// It is done once, and every view (check, draw, offer, suggest, compare, tests) reads
// the one Examined it leaves. No terminal, no threads, no clock and no geometry kernel
// in it: the few pairs of things that the cheap test of convex pieces cannot decide
// are asked of a PairJudge, where the caller has one. The same inputs give the same
// result.
//
// A rule reports; it never repairs. Nothing is released by silence: what a rule cannot
// find it throws (NotInBed), and a pair that nobody decided is a warning at least.
#pragma once

#include <memory>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "loads/loads.h"
#include "params/job.h"
#include "rules/scene.h"
#include "yaml/problem.h"

namespace bedwright {

struct ExamineOptions {
  // None: pairs the cheap test cannot decide stay open, as warnings of the clash rules.
  JudgeMaker judge;
  // Ask it only where nothing else stops the bed; which pairs of a bed that is stopped
  // anyway are clear takes ten times as long to say as all the rest.
  bool judge_only_where_clear = false;
  // Look for the remedies of load rules that must be tried to be known (another pair of
  // jacks, a lighter log). Without: the findings are the same, some with fewer changes.
  bool load_remedies = true;
};

// Stays where it is made: the scene points into the bed.
struct Examined {
  Examined(Job job, Bed bed, const ExamineOptions& options);
  Examined(const Examined&) = delete;
  Examined& operator=(const Examined&) = delete;

  const Job job;
  const Bed bed;
  Scene scene;  // what rules and lists ask of the bed, worked out once
  LoadsResult loads;
  std::vector<Finding> findings;  // sorted: severity, rule, what it is about, place

  bool is_stopped() const;
  const Heading& heading() const { return job.order.order; }
  Figures figures() const { return scene.figures; }
};

// Either a bed or what is wrong with the input, never both.
struct Examination {
  std::unique_ptr<Examined> bed;
  std::vector<Problem> problems;  // file, line, column, key, what is wrong, what to write
  explicit operator bool() const { return bed != nullptr; }
};

// `sets` are overrides, "KEY=VALUE", as --set takes them. The store keeps files that are
// read again and again, and may hold files that are on no disk.
Examination examine(FileStore& store, const std::string& order_path,
                    const std::vector<std::string>& sets = {}, const ExamineOptions& options = {});

// An order that is read already; one laid out already, perhaps changed since.
Examination examine(Job job, const ExamineOptions& options = {});
std::unique_ptr<Examined> examine(Job job, Bed bed, const ExamineOptions& options = {});

bool has_stop(const std::vector<Finding>& findings);

// The same findings, those about loads with all their remedies.
std::vector<Finding> with_load_remedies(const Examined& examined, std::vector<Finding> findings);

}  // namespace bedwright
