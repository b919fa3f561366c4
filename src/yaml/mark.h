// Where in a file something was written.
#pragma once

#include <string>

namespace bedwright {

struct Mark {
  std::string file;          // as the user named it; "--set" for an override
  int line = 0, column = 0;  // 1-based; for an override, the column in its text
  std::string key;           // path, "track.clamps[2].bunk"

  friend bool operator==(const Mark&, const Mark&) = default;
};

// A word that names an entry elsewhere (a section, a bolt size, a tab). Looked up
// after reading, so the mark goes along for the message.
struct Name {
  std::string text;
  Mark mark;
};

}  // namespace bedwright
