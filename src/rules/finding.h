// What a rule says of a Bed.
#pragma once

#include <string>
#include <vector>

#include "bed/names.h"
#include "units/units.h"

namespace bedwright {

enum class Severity { stop, warn, note };

// A change that would clear a finding, as the --set it amounts to.
struct Change {
  std::string key;    // "frame.tabs.slot_length"
  std::string value;  // "1-1/4 in"
  int brings = 0;     // stops that are not there now and that it would bring
};

// What a finding is about: an item, a part, a bolt, or what is spoken of as a whole.
// The name is for printing, whole and in two; who the subject is, `id` says.
struct Subject {
  Identity id;
  NameInTwo in_two;
  std::string name;

  Subject(const Identity& who)
      : Subject(who, name_in_two(who)) {}  // NOLINT: a subject is written as what it is
  Subject(const Item& item) : Subject(item.id) {}
  Subject(const Bolt& bolt) : Subject(bolt.id) {}
  Subject(const Part& part) : Subject(part.id, name_in_two(part)) {}
  // With more to say than the identity tells; `who` still is one of its kind.
  Subject(const Identity& who, std::string printed) : Subject(who, NameInTwo{std::move(printed), ""}) {}

  friend bool operator==(const Subject& a, const Subject& b) { return a.id == b.id; }

 private:
  Subject(const Identity& who, NameInTwo called) : id(who), in_two(std::move(called)), name(in_two.whole()) {}
};

// Where a text has a name.
struct NameAt {
  std::size_t from = 0, length = 0;
};

struct Finding {
  std::string code;  // rule's code, e.g. "HOLE-FIT"
  Severity severity = Severity::stop;
  std::vector<Subject> subjects;               // the first is what it is about
  Mm x = 0, y = 0, z = 0;                      // where, world
  double measured = 0, limit = 0, margin = 0;  // margin < 0 where it fails
  std::string unit;                            // "mm", "threads"
  std::string message;                         // one sentence with the figures
  std::string remedy;                          // one sentence with a number in it
  std::vector<NameAt> names_in_remedy;         // those of its subjects, in order (see add_name)
  std::vector<Change> changes;                 // alternatives, cheapest first; each alone clears the finding
};

}  // namespace bedwright
