// Demo orders for tests.
#pragma once

#include <stdexcept>
#include <string>
#include <vector>

#include "layout/layout.h"
#include "params/job.h"

namespace bedwright::testing {

inline const std::vector<std::string> good_orders = {"base", "one_extension", "metric", "lot_frame"};

inline std::string order_path(const std::string& name) {
  return std::string(BEDWRIGHT_SOURCE) + "/params/orders/" + name + ".yaml";
}

// Throws with every problem in the text when the order does not read.
inline Job demo_job(const std::string& name, const std::vector<std::string>& sets = {}) {
  auto loaded = load_job(order_path(name), sets);
  if (auto* job = std::get_if<Job>(&loaded)) return std::move(*job);
  std::string all;
  for (const Problem& p : std::get<std::vector<Problem>>(loaded)) all += to_line(p) + "\n";
  throw std::runtime_error(all);
}

inline Bed bed_of(const Job& job) {
  auto laid = lay_out(job);
  if (auto* bed = std::get_if<Bed>(&laid)) return std::move(*bed);
  std::string all;
  for (const Problem& p : std::get<std::vector<Problem>>(laid)) all += to_line(p) + "\n";
  throw std::runtime_error(all);
}

inline Bed demo_bed(const std::string& name, const std::vector<std::string>& sets = {}) {
  return bed_of(demo_job(name, sets));
}

}  // namespace bedwright::testing
