// What an inspection holds against a bed.
#pragma once

#include <fmt/format.h>

#include <string>
#include <vector>

#include "bed/bed.h"
#include "bed/names.h"
#include "params/job.h"
#include "sweep/solids.h"

namespace bedwright::sweep {

struct Reject {
  std::string kind;  // counted by this
  std::string what;  // with names and millimetres
};

struct Inspected {
  const Job& job;
  const Bed& bed;
  std::vector<Body> bodies;  // by item
  std::vector<Reject> rejects;

  std::string called(int item) const { return name(bed.items[static_cast<std::size_t>(item)].id); }
  void reject(std::string kind, std::string what) { rejects.push_back({std::move(kind), std::move(what)}); }
};

}  // namespace bedwright::sweep
