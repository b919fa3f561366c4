// The catalogue: rolled sections, bolt sizes and stock, species and tyres, read from data files.
#pragma once

#include <string>
#include <vector>

#include "catalog/fastener.h"
#include "catalog/section.h"
#include "catalog/timber.h"
#include "yaml/document.h"
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

// Adds the entries of one catalogue file. A name already there is a problem, as is a
// section that cannot make a closed profile or whose published area its own dimensions
// miss by over 2 %.
void read_catalog(const Document& document, Catalog& catalog, std::vector<Problem>& problems);

// The same from a file's text, and the name to report it by.
inline void read_catalog(const std::string& file, const std::string& text, Catalog& catalog,
                         std::vector<Problem>& problems) {
  read_catalog(parse_document(file, text), catalog, problems);
}

}  // namespace bedwright
