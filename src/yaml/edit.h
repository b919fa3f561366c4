// Changing one value in the text of a YAML file and leaving every other byte as
// its writer left it: comments, order, quoting, indentation.
#pragma once

#include <optional>
#include <string>

namespace bedwright {

// The text with the scalar at `key` ("track.clamps[2].bunk") replaced by `value`,
// any YAML flow value. A key that is missing is added: as the first of the map it
// belongs to, or with that map at the end of the file. The result is parsed and
// compared: nothing comes back when it would say anything else than the old text
// with that one value set (a value that is a list, an alias, a form this does not know).
std::optional<std::string> with_value(const std::string& text, const std::string& key,
                                      const std::string& value);

// The same for an entry {key: KEY, value: VALUE} of the list `list` at the top of
// the file: the entry with that key gets the value, or a new one stands first.
std::optional<std::string> with_entry(const std::string& text, const std::string& list,
                                      const std::string& key, const std::string& value);

}  // namespace bedwright
