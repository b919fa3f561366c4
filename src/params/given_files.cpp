// Files handed over already parsed. Paths are words here: nothing is asked of a disk.
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <set>
#include <stdexcept>

#include "params/file_refusal.h"
#include "params/file_store.h"

namespace fs = std::filesystem;

namespace bedwright {
namespace {

std::string plain(const fs::path& path) { return path.lexically_normal().string(); }

class GivenFiles : public FileSource {
 public:
  explicit GivenFiles(std::set<std::string> names) : names_(std::move(names)) {}

  // The store knows every file there is, so one that is asked for here is none of them.
  std::optional<StoredFile> read(const std::string& path, const Mark& where,
                                 std::vector<Problem>& problems) override {
    const FileRefusal refusal(path, where, problems);
    if (path.empty())
      refusal.no_name();
    else if (is_folder(path))
      refusal.folder();
    else
      refusal.missing();
    return std::nullopt;
  }

  // Plain, unless only the path as written is a file's name.
  std::string beside(const std::string& order_path, const std::string& written) override {
    const fs::path raw = fs::path(order_path).parent_path() / written;
    const std::string normal = plain(raw);
    return names_.contains(raw.string()) && !names_.contains(normal) ? raw.string() : normal;
  }

  bool same_file(const std::string& a, const std::string& b) override {
    return plain(fs::path(a)) == plain(fs::path(b));
  }

 private:
  // A folder that holds one of the files, or is above where they are named from.
  bool is_folder(const std::string& path) const {
    const fs::path normal = fs::path(path).lexically_normal();
    const auto upward = [](const fs::path& part) {
      return part.empty() || part == "." || part == ".." || part == "/";
    };
    if (std::all_of(normal.begin(), normal.end(), upward)) return true;
    std::string folder = normal.string();
    if (!folder.ends_with('/')) folder += '/';
    return std::any_of(names_.begin(), names_.end(),
                       [&](const std::string& name) { return plain(fs::path(name)).starts_with(folder); });
  }

  std::set<std::string> names_;
};

}  // namespace

FileStore::FileStore(const std::vector<File>& files) {
  std::set<std::string> names;
  for (const File& file : files) {
    if (!files_.emplace(file.document.file, file).second)
      throw std::invalid_argument(fmt::format("two files are given as {}", file.document.file));
    names.insert(file.document.file);
  }
  source_ = std::make_unique<GivenFiles>(std::move(names));
}

}  // namespace bedwright
