// Reads through to the disk or to the files given, and keeps what was read.
#include "params/file_store.h"

namespace bedwright {

const FileStore::File* FileStore::file(const std::string& path, const Mark& where,
                                       std::vector<Problem>& problems) {
  const auto known = files_.find(path);
  if (known != files_.end()) return &known->second;
  auto read = source_->read(path, where, problems);
  return read ? &files_.emplace(path, *std::move(read)).first->second : nullptr;
}

const FileStore::CatalogFiles& FileStore::catalog(const std::vector<const File*>& files) {
  const auto [at, added] = catalogs_.try_emplace(files);
  if (added) {
    for (const File* file : files) read_catalog(file->document, at->second.catalog, at->second.problems);
  }
  return at->second;
}

const std::string& FileStore::beside(const std::string& order_path, const std::string& written) {
  const auto [at, added] = beside_.try_emplace({order_path, written});
  if (added) at->second = source_->beside(order_path, written);
  return at->second;
}

bool FileStore::same_file(const std::string& a, const std::string& b) {
  const auto [at, added] = same_.try_emplace({a, b});
  if (added) at->second = source_->same_file(a, b);
  return at->second;
}

}  // namespace bedwright
