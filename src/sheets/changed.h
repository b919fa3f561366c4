// What of the sheets is not as it was at the last release, and the trade's marks for it: a
// triangle with the new letter, a bar beside the changed rows or picture, a frame around a picture's changed
// words.
#pragma once

#include <string>
#include <vector>

#include "sheets/sheet.h"

namespace bedwright {

enum class SheetFate {
  as_before,  // paper of the last release says all that this one says
  changed,
  fresh,  // there was none of its name
  gone,   // there was one, and is none
};
const char* word(SheetFate fate);

struct FateOfSheet {
  std::string file, title;
  SheetFate fate = SheetFate::changed;
};

// The release that is revised, as its sheets are drawn today: without surrounds, and without
// marks of its own.
struct Before {
  std::string revision;              // its letter
  std::string digest;                // of what it was made from
  bool known = true;                 // false: what it was made from cannot be read any more
  std::vector<Sheet> sheets;         // none where it is not known
  std::vector<std::string> changes;  // what became of it, a phrase with figures each
};

// Marks what changed on each sheet, and gives each its note for the title block. `letter` is
// the new one.
// A row that only moved to another page is not marked, but both pages have changed: what
// is kept from the last release must be whole without them.
std::vector<FateOfSheet> mark_changes(std::vector<Sheet>& sheets, const Before& before,
                                      const std::string& letter);

}  // namespace bedwright
