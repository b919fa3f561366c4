// The catalogue: rolled sections, bolt sizes and stock, species and tyres, read from data files.
#pragma once

#include <string>
#include <vector>

#include "catalog/fastener.h"
#include "catalog/section.h"
#include "catalog/timber.h"
#include "yaml/problem.h"

namespace bedwright {

struct Catalog {
  std::vector<Section> sections;
  std::vector<BoltSize> bolts;
  std::vector<Species> species;
  std::vector<Tyre> tyres;
  // nullptr when there is none of that name.
  const Section* section(const std::string& name) const;
  const BoltSize* bolt(const std::string& name) const;
  const Species* species_named(const std::string& name) const;
};

// Adds the entries of one catalogue file (its text, and the name to report it
// by). A name already there is a problem, as is a section that cannot make a
// closed profile or whose published area its own dimensions miss by over 2 %.
void read_catalog(const std::string& file, const std::string& text, Catalog& catalog,
                  std::vector<Problem>& problems);

}  // namespace bedwright
