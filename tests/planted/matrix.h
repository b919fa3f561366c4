// Shared by the rows of the planted-fault matrix.
#pragma once

#include <algorithm>
#include <cmath>
#include <functional>
#include <string>
#include <vector>

#include "examine/examine.h"
#include "rules/loads/rules.h"
#include "support/demo.h"

namespace bedwright {

using Findings = std::vector<Finding>;

// Makes the bed with its figure at the limit, `past` of a step beyond it: +1 for
// the fault, -1 for the twin. `always`: a note that every bed gets; it has no twin.
struct Planted {
  const char* code;
  const char* fault;
  std::function<Findings(double past)> run;
  bool always = false;
};

inline constexpr Mm hair = 0.01;

// A demo order, changed, by every rule, the kernel not asked.
inline Findings run_demo(const std::string& order, const std::function<void(Job&)>& change) {
  Job job = testing::demo_job(order);
  change(job);
  Bed bed = testing::bed_of(job);
  return examine(std::move(job), std::move(bed))->findings;
}

// Where `fails` turns between a value that holds and one that does not.
inline double turn(double holds, double breaks, const std::function<bool(double)>& fails) {
  for (int i = 0; i < 60 && std::abs(breaks - holds) > 2e-7 * std::max(1.0, std::abs(breaks)); ++i)
    (fails((holds + breaks) / 2) ? breaks : holds) = (holds + breaks) / 2;
  return (holds + breaks) / 2;
}

// The rules about loads (load_rows_test.cpp).
std::vector<Planted> load_rows();
// Those whose limit is set from hand statics (load_rows_by_hand_test.cpp).
std::vector<Planted> load_rows_by_hand();

}  // namespace bedwright
