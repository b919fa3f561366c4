// Orders to load, as JSON, and what loading makes of each: run by the host and, with
// no disk and no YAML, by node.
//
//     {"files": [{"content": "...", "tree": TREE}], "cases": [{"files": [0, 3], "order": "...", "sets": []}]}
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <vector>

#include "params/job.h"
#include "support/job_text.h"
#include "yaml/tree_json.h"

namespace bedwright::testing {

using Json = nlohmann::ordered_json;

// The text of every case's job, or its problems.
inline Json results_of(const Json& all) {
  Json results = Json::array();
  for (const Json& one : all.at("cases")) {
    std::vector<StoredFile> files;
    for (const Json& at : one.at("files")) {
      const Json& file = all.at("files").at(at.get<std::size_t>());
      files.push_back({file.at("content").get<std::string>(), document_from_json(file.at("tree"))});
    }
    FileStore store(files);
    results.push_back(job_text(
        load_job(store, one.at("order").get<std::string>(), one.at("sets").get<std::vector<std::string>>())));
  }
  return results;
}

}  // namespace bedwright::testing
