// Where an override's value is read, with its place for messages.
#include "yaml/parse_value.h"

#include "yaml/flow_value.h"
#include "yaml/text.h"

namespace bedwright {

Node parse_value(Document& document, std::string_view text, int number, int column, const std::string& key) {
  const Place start{number, column, number};
  if (text.size() > largest_file || first_bad_byte(text) != std::string_view::npos) {
    document.problems.push_back(
        {document.mark(start, key), "has a value that is not plain UTF-8 text", "write the value in UTF-8"});
    Node nothing;
    nothing.place = start;
    return nothing;
  }
  if (auto value = flow_value(text, start)) return *std::move(value);
  return parse_other_value(document, text, start, key);
}

}  // namespace bedwright
