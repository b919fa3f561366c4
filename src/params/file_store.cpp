#include "params/file_store.h"

#include "params/input.h"

namespace bedwright {

const FileStore::File* FileStore::file(const std::string& path, const Mark& where,
                                       std::vector<Problem>& problems) {
  const auto known = files_.find(path);
  if (known != files_.end()) return &known->second;
  auto bytes = read_bytes(path, where, problems);
  if (!bytes) return nullptr;
  Document document = parse_document(path, *bytes);
  return &files_.emplace(path, File{std::move(*bytes), std::move(document)}).first->second;
}

const FileStore::CatalogFiles& FileStore::catalog(const std::vector<const File*>& files,
                                                  const std::vector<std::string>& paths) {
  const auto [at, added] = catalogs_.try_emplace(paths);
  if (added) {
    for (std::size_t i = 0; i < files.size(); ++i)
      read_catalog(paths[i], files[i]->content, at->second.catalog, at->second.problems);
  }
  return at->second;
}

const std::string& FileStore::beside(const std::string& order_path, const std::string& written) {
  const auto [at, added] = beside_.try_emplace({order_path, written});
  if (added) at->second = bedwright::beside(order_path, written);
  return at->second;
}

bool FileStore::same_file(const std::string& a, const std::string& b) {
  const auto [at, added] = same_.try_emplace({a, b});
  if (added) at->second = bedwright::same_file(a, b);
  return at->second;
}

}  // namespace bedwright
