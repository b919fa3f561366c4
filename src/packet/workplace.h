// The program's own place in out/, and the right to write there.
//
// out/.bedwright/ is a name no order can have. `lock` in it is held while anything below
// out/ is written; the file stays, only the system's lock on it comes and goes, with the
// run that holds it. Each run writes in a folder of its own with a random name. Who holds
// the lock is alone, so every such folder it finds was left by a run that died.
#pragma once

#include <filesystem>

namespace bedwright {

class Workplace {
 public:
  // Makes `out`. Waits up to a minute for another run. Throws std::runtime_error then, or
  // when something cannot be made. A leftover that cannot be removed is left.
  explicit Workplace(const std::filesystem::path& out);
  ~Workplace();
  Workplace(const Workplace&) = delete;
  Workplace& operator=(const Workplace&) = delete;

  const std::filesystem::path& path() const { return path_; }  // an empty folder

 private:
  std::filesystem::path path_;
  int lock_ = -1;
};

// Makes a folder others who may write the one above may write too; one that is there is
// fine. Throws std::runtime_error.
void make_shared_folder(const std::filesystem::path& folder);

[[noreturn]] void fail_on(const char* doing, const std::filesystem::path& path, int error);

}  // namespace bedwright
