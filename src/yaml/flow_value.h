// Values as people write them on one line: a word or a figure, text in quotes,
// [first, second], {key: value}. Needs no YAML parser.
#pragma once

#include <optional>
#include <string_view>

#include "yaml/document.h"

namespace bedwright {

// What the text stands for, the same in everything as the YAML parser has it. Its
// first character stands at `start`. Nothing where the text is written in any other
// of YAML's ways (escapes, comments, anchors, tags, several lines, faults): that
// parser then reads it.
std::optional<Node> flow_value(std::string_view text, const Place& start);

}  // namespace bedwright
