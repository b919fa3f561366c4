// The loads in the report: an object for programs, a section for people.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "loads/loads.h"

namespace bedwright {

// The `loads` object of report.json (packet/report.h).
nlohmann::ordered_json loads_json(const Job& job, const Bed& bed, const LoadsResult& loads);

// Table of conditions, jacks, sums to follow by hand, assumptions; 100 columns wide.
std::string loads_text(const Job& job, const Bed& bed, const LoadsResult& loads);

}  // namespace bedwright
