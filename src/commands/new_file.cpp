// Creates a file, and refuses to write over one that is there.
#include "commands/new_file.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

namespace bedwright {
namespace {

constexpr const char* is_there = "give another name, or move that file away first";

std::string cannot_write(const std::filesystem::path& file, int why) {
  return fmt::format("cannot write {}: {}", file.string(), std::strerror(why));
}

}  // namespace

std::string no_new_file_there(const std::filesystem::path& file) {
  std::error_code fault;
  const auto status = std::filesystem::symlink_status(file, fault);
  if (status.type() == std::filesystem::file_type::none)
    return fmt::format("cannot write {}: {}", file.string(), fault.message());
  if (std::filesystem::exists(status)) return fmt::format("{} is there already; {}", file.string(), is_there);
  const std::filesystem::path folder = file.has_parent_path() ? file.parent_path() : ".";
  if (!std::filesystem::is_directory(folder, fault))
    return fmt::format("cannot write {}: there is no folder {}", file.string(), folder.string());
  return {};
}

std::string write_new_file(const std::filesystem::path& file, const std::string& text) {
  // O_EXCL: the file must be made here and now.
  const int fd = ::open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (fd < 0) {
    const int why = errno;
    return cannot_write(file, why) + (why == EEXIST ? fmt::format("; {}", is_there) : "");
  }
  std::size_t done = 0;
  while (done < text.size()) {
    const ssize_t n = ::write(fd, text.data() + done, text.size() - done);
    if (n < 0 && errno == EINTR) continue;
    if (n <= 0) {
      const int why = errno;
      ::close(fd);
      ::unlink(file.c_str());
      return cannot_write(file, why);
    }
    done += static_cast<std::size_t>(n);
  }
  // Some file systems report only here that the disk is full.
  if (::close(fd) != 0 && errno != EINTR) {
    const int why = errno;
    ::unlink(file.c_str());
    return cannot_write(file, why);
  }
  return {};
}

}  // namespace bedwright
