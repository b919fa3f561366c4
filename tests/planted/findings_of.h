// What the program finds on a demo order with values set, the kernel asked as it asks.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "commands/session.h"
#include "support/demo.h"

namespace bedwright::testing {

inline std::vector<Finding> findings_of(const std::string& order, const std::vector<std::string>& sets) {
  OrderArguments arguments{order_path(order), sets};
  const auto loaded = load(arguments);
  if (!loaded) throw std::runtime_error("the order does not read");
  Progress progress;
  return check(*loaded, arguments, progress);
}

}  // namespace bedwright::testing
