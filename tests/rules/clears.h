// Faults in a demo order as they are typed, and that each change a rule offers clears them.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <string>
#include <vector>

#include "rules/findings_of_code.h"
#include "support/demo.h"

namespace bedwright::testing {

inline std::vector<Finding> check_typed(const std::string& order, const std::vector<std::string>& sets,
                                        const std::string& code) {
  const Job job = demo_job(order, sets);
  return check(job, code);
}

inline void expect_each_change_clears(const std::string& order, const std::vector<std::string>& sets,
                                      const std::string& code) {
  const std::vector<Finding> found = check_typed(order, sets, code);
  ASSERT_FALSE(found.empty()) << code;
  for (const Finding& f : found) {
    EXPECT_FALSE(f.changes.empty()) << f.message;
    EXPECT_FALSE(f.remedy.empty()) << f.message;
    for (const Change& c : f.changes) {
      std::vector<std::string> more = sets;
      more.push_back(c.key + "=" + c.value);
      for (const Finding& after : check_typed(order, more, code))
        EXPECT_FALSE(after.severity == Severity::stop && after.subjects == f.subjects &&
                     after.message == f.message)
            << f.message << " stays after " << more.back();
    }
  }
}

}  // namespace bedwright::testing
