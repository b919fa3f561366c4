// Takes the lock, clears what dead runs left, makes a folder to work in.
#include "packet/workplace.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <stdlib.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <chrono>
#include <stdexcept>
#include <system_error>
#include <thread>
#include <vector>

namespace bedwright {
namespace {

namespace fs = std::filesystem;

constexpr std::chrono::milliseconds patience{60000}, pause{20};
constexpr const char *own_folder = ".bedwright", *work_prefix = "work-";

// Another user's lock file can be read if not written, and a lock needs no more on a
// local disk.
int open_lock(const fs::path& file) {
  constexpr int plain = O_CLOEXEC | O_NOFOLLOW;
  int fd = open(file.c_str(), O_RDWR | plain);
  if (fd < 0 && errno == ENOENT) {
    fd = open(file.c_str(), O_RDWR | O_CREAT | O_EXCL | plain, 0666);
    if (fd >= 0) (void)fchmod(fd, 0666);  // a shared folder's lock is everyone's
    if (fd < 0 && errno == EEXIST) fd = open(file.c_str(), O_RDWR | plain);
  }
  if (fd < 0 && errno == EACCES) fd = open(file.c_str(), O_RDONLY | plain);
  if (fd < 0) fail_on("write", file, errno);
  return fd;
}

int locked(const fs::path& file) {
  const int fd = open_lock(file);
  const auto until = std::chrono::steady_clock::now() + patience;
  while (flock(fd, LOCK_EX | LOCK_NB) != 0) {
    const int error = errno;
    if (error == EINTR) continue;
    const bool waited = std::chrono::steady_clock::now() > until;
    if (error == EWOULDBLOCK && !waited) {
      std::this_thread::sleep_for(pause);
      continue;
    }
    close(fd);
    if (error != EWOULDBLOCK) fail_on("lock", file, error);
    throw std::runtime_error(fmt::format(
        "{} is locked: another run is writing into the same folder; wait for it to end", file.string()));
  }
  return fd;
}

void remove_leftovers(const fs::path& folder) {
  std::error_code ignored;  // another user's, perhaps: it takes room, and nothing else
  std::vector<fs::path> old;
  for (fs::directory_iterator it(folder, ignored), end; !ignored && it != end; it.increment(ignored))
    if (it->path().filename().string().starts_with(work_prefix)) old.push_back(it->path());
  for (const fs::path& path : old) fs::remove_all(path, ignored);
}

}  // namespace

void fail_on(const char* doing, const fs::path& path, int error) {
  throw std::runtime_error(
      fmt::format("cannot {} {}: {}", doing, path.string(), std::generic_category().message(error)));
}

void make_shared_folder(const fs::path& folder) {
  if (mkdir(folder.c_str(), 0777) == 0) {
    struct stat above {};
    if (stat(folder.parent_path().c_str(), &above) == 0) (void)chmod(folder.c_str(), above.st_mode & 07777);
    return;
  }
  const int error = errno;
  std::error_code ignored;
  if (error == EEXIST && fs::is_directory(fs::symlink_status(folder, ignored))) return;
  fail_on("make", folder, error == EEXIST ? ENOTDIR : error);
}

Workplace::Workplace(const fs::path& out) {
  std::error_code error;
  fs::create_directories(out, error);
  if (error) fail_on("make", out, error.value());
  const fs::path own = out / own_folder;
  make_shared_folder(own);
  lock_ = locked(own / "lock");
  remove_leftovers(own);
  std::string name = (own / (std::string(work_prefix) + "XXXXXX")).string();
  if (mkdtemp(name.data()) == nullptr) {
    const int why = errno;
    close(lock_);
    fail_on("make", name, why);
  }
  path_ = name;
}

Workplace::~Workplace() {
  std::error_code ignored;  // a leftover is harmless: the next run removes it
  fs::remove_all(path_, ignored);
  close(lock_);
}

}  // namespace bedwright
