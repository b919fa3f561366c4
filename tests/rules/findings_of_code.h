// The findings of one rule on a whole bed, without the kernel.
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "rules/rule.h"
#include "support/demo.h"

namespace bedwright::testing {

inline std::vector<Finding> check(const Job& job, const std::string& code) {
  const Bed bed = bed_of(job);
  std::vector<Finding> found;
  for (Finding& f :
       run_checks({bed, job.order.limits, &job, nullptr, {job.order.order.printing, job.order.order.tape}}))
    if (f.code == code) found.push_back(std::move(f));
  return found;
}

}  // namespace bedwright::testing
