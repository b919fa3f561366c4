// The catalogue as shipped, for tests that hold it against outside figures.
#pragma once

#include <gtest/gtest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

#include "catalog/catalog.h"

namespace bedwright {

inline Catalog shipped_catalog(std::initializer_list<const char*> files) {
  Catalog catalog;
  std::vector<Problem> problems;
  for (const char* file : files) {
    const std::string path = std::string(BEDWRIGHT_SOURCE) + "/params/catalog/" + file;
    std::ifstream in(path);
    std::stringstream text;
    text << in.rdbuf();
    EXPECT_TRUE(in.good()) << path;
    read_catalog(path, text.str(), catalog, problems);
  }
  for (const Problem& problem : problems) ADD_FAILURE() << to_line(problem);
  return catalog;
}

}  // namespace bedwright
