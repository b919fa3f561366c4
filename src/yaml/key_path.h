// Paths to a value in a document: "track.clamps[2].bunk", entries counted from 1.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace bedwright {

// One step down: into a map by key, or into a list by index.
struct KeyStep {
  std::string key;        // empty for a list's entry
  std::size_t index = 0;  // 1 and up for a list's entry, 0 for a key
};

// The steps of a path; none when it is no path (an empty key, an index that is no
// number from 1 up, a bracket left open).
std::optional<std::vector<KeyStep>> parse_key_path(std::string_view path);

// The path with one more step.
std::string path_to(const std::string& parent, const std::string& key);
std::string path_to(const std::string& parent, std::size_t index);

// Whether one path is the other or leads to it.
bool is_within(std::string_view path, std::string_view ancestor);

}  // namespace bedwright
