// Words for a file that is missing or cannot be read.
#include "params/file_refusal.h"

#include <fmt/format.h>

namespace bedwright {

FileRefusal::FileRefusal(const std::string& path, const Mark& where, std::vector<Problem>& problems)
    : path_(path), where_(where), problems_(problems), named_elsewhere_(where.file != path) {}

void FileRefusal::no_name() const { other("an empty name is the name of no file", "name one"); }

void FileRefusal::missing() const {
  if (path_.find('\\') != std::string::npos) {
    other("does not exist", "write / for \\ between a folder and a file");
    return;
  }
  other("does not exist", named_elsewhere_ ? "check the spelling; files are looked for beside the order"
                                           : "check the spelling");
}

void FileRefusal::folder() const { other("is a folder", "name a file in it"); }

void FileRefusal::other(const std::string& what, const std::string& would_do) const {
  problems_.push_back({where_, named_elsewhere_ ? fmt::format("{} {}", path_, what) : what, would_do});
}

}  // namespace bedwright
