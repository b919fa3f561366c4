// Files on the disk, read and parsed when they are asked for.
#include "params/file_store.h"
#include "params/input.h"
#include "params/job.h"

namespace bedwright {
namespace {

class DiskFiles : public FileSource {
 public:
  std::optional<StoredFile> read(const std::string& path, const Mark& where,
                                 std::vector<Problem>& problems) override {
    auto bytes = read_bytes(path, where, problems);
    if (!bytes) return std::nullopt;
    Document document = parse_document(path, *bytes);
    return StoredFile{*std::move(bytes), std::move(document)};
  }
  std::string beside(const std::string& order_path, const std::string& written) override {
    return bedwright::beside(order_path, written);
  }
  bool same_file(const std::string& a, const std::string& b) override { return bedwright::same_file(a, b); }
};

}  // namespace

FileStore::FileStore() : source_(std::make_unique<DiskFiles>()) {}

std::variant<Job, std::vector<Problem>> load_job(const std::string& order_path,
                                                 const std::vector<std::string>& sets) {
  FileStore store;
  return load_job(store, order_path, sets);
}

}  // namespace bedwright
