// What stands behind parse_value (yaml/document.h): parse_yaml.cpp has it where
// there is a YAML parser, no_yaml.cpp where there is none.
#pragma once

#include <string>
#include <string_view>

#include "yaml/document.h"

namespace bedwright {

// A value that flow_value does not read. The text is UTF-8 of bounded size; the
// rest is as parse_value has it.
Node parse_other_value(Document& document, std::string_view text, const Place& start, const std::string& key);

}  // namespace bedwright
