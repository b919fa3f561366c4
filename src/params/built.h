// What was built from a release, as the shop writes it down: out/<order>/<revision>.built.yaml.
#pragma once

#include <string>
#include <vector>

#include "yaml/describe.h"

namespace bedwright {

struct BuiltBed {
  std::string serial, built_on, by;
  std::vector<std::string> notes;  // what stands otherwise than drawn
};

struct Built {
  std::string release;  // which release: packet/built.h, release_mark
  std::vector<BuiltBed> beds;
};

template <class V>
void describe(V& v, BuiltBed& b) {
  v.text("serial", b.serial, "Serial number, as it is stamped on the bed");
  v.text("built_on", b.built_on, "Day it was finished, year-month-day");
  v.text("by", b.by, "Who built it", v.optional);
  v.paths("notes", b.notes, 100, "As built: what stands otherwise than drawn, a line each", v.optional);
}
template <class V>
void describe(V& v, Built& b) {
  v.text("release", b.release, "The release it was built from; bedwright built writes it");
  v.list("beds", b.beds, 100, "Every bed built from this release");
}

}  // namespace bedwright
