// Where there is no YAML parser: files come as trees (yaml/tree_json.h), and a
// value of an override is one of those flow_value reads.
#include "yaml/parse_value.h"

namespace bedwright {

Node parse_other_value(Document& document, std::string_view, const Place& start, const std::string& key) {
  document.problems.push_back({document.mark(start, key), "has a value that is not read here",
                               "write a word or a figure, text in quotes, [first, second] or {key: value}"});
  Node nothing;
  nothing.place = start;
  return nothing;
}

}  // namespace bedwright
