// Two choices that are solved for, in the report: which bolt length each hole takes,
// and where the track is best pinned.
#pragma once

#include <nlohmann/json.hpp>
#include <string>

#include "rules/scene.h"

namespace bedwright {

// The `datum` and `bolts` objects of report.json (packet/report.h).
nlohmann::ordered_json datum_json(const Scene& scene, const Job& job);
nlohmann::ordered_json bolts_json(const Scene& scene);

// Both as a section for people, 100 columns wide. `scene` must have been made with the job.
std::string track_choices_text(const Scene& scene, const Job& job);

}  // namespace bedwright
