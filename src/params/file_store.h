// The files orders are made of, each read and parsed once however many variants
// of an order are loaded from it. Not for use by several threads at once: give
// each thread its own.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "yaml/document.h"

namespace bedwright {

class FileStore {
 public:
  struct File {
    std::string content;
    Document document;  // as parse_document gives it
  };
  struct CatalogFiles {
    Catalog catalog;
    std::vector<Problem> problems;
  };

  // Nothing, and a problem at `where`, when the file cannot be read; that is asked
  // again each time. The pointer holds for the store's life.
  const File* file(const std::string& path, const Mark& where, std::vector<Problem>& problems);

  // What these files say together, in order (path, content).
  const CatalogFiles& catalog(const std::vector<const File*>& files, const std::vector<std::string>& paths);

  // A path written in an order's file, and whether two lead to the same file
  // (params/input.h), asked of the disk once.
  const std::string& beside(const std::string& order_path, const std::string& written);
  bool same_file(const std::string& a, const std::string& b);

 private:
  std::map<std::string, File> files_;
  std::map<std::vector<std::string>, CatalogFiles> catalogs_;
  std::map<std::pair<std::string, std::string>, std::string> beside_;
  std::map<std::pair<std::string, std::string>, bool> same_;
};

}  // namespace bedwright
