#include "commands/new_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace bedwright {

std::string write_new_file(const std::filesystem::path& file, const std::string& text) {
  // O_EXCL: the file must be made here and now.
  const int fd = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (fd < 0) {
    const char* hint = errno == EEXIST ? "; give another name, or move that file away first" : "";
    return fmt::format("cannot write {}: {}{}", file.string(), std::strerror(errno), hint);
  }
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t n = ::write(fd, text.data() + done, text.size() - done);
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) {
      const int why = errno;
      ::close(fd);
      ::unlink(file.c_str());
      return fmt::format("cannot write {}: {}", file.string(), std::strerror(why));
    }
    done += static_cast<std::size_t>(n);
  }
  ::close(fd);
  return {};
}

}  // namespace bedwright
