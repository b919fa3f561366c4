// The files orders are made of, each read and parsed once however many variants
// of an order are loaded from it. Not for use by several threads at once: give
// each thread its own.
#pragma once

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

#include "catalog/catalog.h"
#include "yaml/document.h"

namespace bedwright {

struct StoredFile {
  std::string content;  // its bytes, for the digest of the inputs
  Document document;    // as parse_document gives it
};

// Where a store's files come from.
class FileSource {
 public:
  virtual ~FileSource() = default;
  // Nothing, and a problem at `where`, when there is no file to be read.
  virtual std::optional<StoredFile> read(const std::string& path, const Mark& where,
                                         std::vector<Problem>& problems) = 0;
  // A path written in an order's file, from that file's folder.
  virtual std::string beside(const std::string& order_path, const std::string& written) = 0;
  // Whether two paths lead to the same file, however they are written.
  virtual bool same_file(const std::string& a, const std::string& b) = 0;
};

class FileStore {
 public:
  using File = StoredFile;
  struct CatalogFiles {
    Catalog catalog;
    std::vector<Problem> problems;
  };

  // Of the files on the disk (disk_files.cpp, left out where nothing parses them).
  FileStore();
  // Of these files alone, each found under its document's name; there need be no disk.
  // Throws std::invalid_argument when two have one name.
  explicit FileStore(const std::vector<File>& files);

  // Nothing, and a problem at `where`, when the file cannot be read; that is asked
  // again each time. The pointer holds for the store's life.
  const File* file(const std::string& path, const Mark& where, std::vector<Problem>& problems);

  // What these files say together, in order.
  const CatalogFiles& catalog(const std::vector<const File*>& files);

  // As the source has them, asked once.
  const std::string& beside(const std::string& order_path, const std::string& written);
  bool same_file(const std::string& a, const std::string& b);

 private:
  std::unique_ptr<FileSource> source_;
  std::map<std::string, File> files_;
  std::map<std::vector<const File*>, CatalogFiles> catalogs_;
  std::map<std::pair<std::string, std::string>, std::string> beside_;
  std::map<std::pair<std::string, std::string>, bool> same_;
};

}  // namespace bedwright
