// An order file with changes written into it, and what differs, line by line.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "rules/finding.h"

namespace bedwright {

// The text with each change in its place (yaml/edit.h): the order's own keys where
// they stand, keys of the kit and the frame among the order's `overrides`. Comments
// and all else are kept byte for byte. Otherwise the change that cannot be
// written into this text.
std::variant<std::string, Change> rewritten(std::string text, const std::vector<Change>& changes);

// The text with the paths of kit, frame, catalogue and the shop's own assembly words,
// relative to folder `from`, made relative to folder `to`; nothing when one cannot be written.
std::variant<std::string, Change> moved_paths(std::string text, const std::string& from,
                                              const std::string& to);

// A unified diff with three lines of context; empty when the texts are equal.
std::string line_diff(const std::string& before, const std::string& after, const std::string& name_before,
                      const std::string& name_after);

}  // namespace bedwright
