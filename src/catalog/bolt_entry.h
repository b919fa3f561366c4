// From a bolt as written to a bolt size, and what can be wrong with one as a whole.
#pragma once

#include <string>
#include <vector>

#include "catalog/catalog_file.h"
#include "catalog/fastener.h"

namespace bedwright {

// One thing wrong inside an entry: the key at fault ("" for the whole), what is wrong, and what to write.
struct Fault {
  std::string key, what, would_do;
};

// The pitch comes from threads_per_inch where that is given; 0 when the entry
// gives neither or both, which faults() then reports.
BoltSize to_bolt(const BoltEntry& entry);

// Figures that cannot stand together: a hole no larger than its bolt, a washer
// that does not go on, stock lengths out of order; length tolerances given twice or not at all.
std::vector<Fault> faults(const BoltEntry& entry, const BoltSize& bolt);

}  // namespace bedwright
