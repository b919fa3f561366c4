// A lock file beside an output folder, held for the length of one write.
#pragma once

#include <filesystem>

namespace bedwright {

class PacketLock {
 public:
  // Waits up to ten seconds for another run. Throws std::runtime_error then, or
  // when the file cannot be made.
  explicit PacketLock(std::filesystem::path file);
  ~PacketLock();
  PacketLock(const PacketLock&) = delete;
  PacketLock& operator=(const PacketLock&) = delete;

 private:
  std::filesystem::path file_;
  int fd_ = -1;
};

}  // namespace bedwright
