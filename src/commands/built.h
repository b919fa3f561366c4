// What was built from a release, in a person's words.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "packet/record.h"

namespace bedwright {

// "QM-0117 2026-11-20", of several with a comma between; "?" where built.yaml cannot be used.
std::string built_cell(const Recorded& record);

// A line for each bed and each of its notes, indented; or what is wrong with built.yaml.
std::string built_lines(const Recorded& record);

// Below a line of a list that has the cell: the notes alone, and what is wrong.
std::string built_notes(const Recorded& record);

// "built": the beds; "built_problems": what is wrong with built.yaml. Neither where there is none.
void add_built_json(const Recorded& record, nlohmann::ordered_json& json);

}  // namespace bedwright
