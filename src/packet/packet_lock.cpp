// Takes the lock, and waits a little for another run to let go of it.
#include "packet/packet_lock.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <stdexcept>
#include <system_error>
#include <thread>

namespace bedwright {
namespace {

constexpr std::chrono::milliseconds patience{10000}, pause{20};

std::string reason(int error) { return std::generic_category().message(error); }

// The holder removes the file when done; a lock on a removed file guards nothing.
bool still_there(int fd, const std::filesystem::path& file) {
  struct stat held {
  }, named{};
  return fstat(fd, &held) == 0 && stat(file.c_str(), &named) == 0 && held.st_ino == named.st_ino &&
         held.st_dev == named.st_dev;
}

}  // namespace

PacketLock::PacketLock(std::filesystem::path file) : file_(std::move(file)) {
  const auto until = std::chrono::steady_clock::now() + patience;
  for (;;) {
    fd_ = open(file_.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0666);
    if (fd_ < 0) throw std::runtime_error(fmt::format("cannot write {}: {}", file_.string(), reason(errno)));
    if (flock(fd_, LOCK_EX | LOCK_NB) == 0) {
      if (still_there(fd_, file_)) return;
    } else if (errno != EWOULDBLOCK) {
      const int error = errno;
      close(fd_);
      throw std::runtime_error(fmt::format("cannot lock {}: {}", file_.string(), reason(error)));
    }
    close(fd_);
    if (std::chrono::steady_clock::now() > until) {
      throw std::runtime_error(fmt::format(
          "{} is locked: another run is writing the same folder; wait for it to end", file_.string()));
    }
    std::this_thread::sleep_for(pause);
  }
}

PacketLock::~PacketLock() {
  unlink(file_.c_str());
  close(fd_);
}

}  // namespace bedwright
