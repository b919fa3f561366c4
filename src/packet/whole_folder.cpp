// Fills a folder in the workplace and gives it its name.
#include "packet/whole_folder.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <stdexcept>
#include <system_error>

#include "formats/digest.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

void sync(const fs::path& path, int flags) {
  const int fd = open(path.c_str(), flags | O_CLOEXEC);
  if (fd < 0) fail_on("open", path, errno);
  const int error = fsync(fd) == 0 ? 0 : errno;
  close(fd);
  if (error != 0) fail_on("sync", path, error);
}

[[noreturn]] void refuse(const fs::path& folder, const std::string& why) {
  throw std::runtime_error(fmt::format(
      "{} {}; nothing was touched: give another folder with --out, or move it away", folder.string(), why));
}

std::string read_file(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  std::string bytes{std::istreambuf_iterator<char>(in), {}};
  if (!in.is_open() || in.bad()) fail_on("read", file, errno);
  return bytes;
}

// "DIGEST  NAME" lines; a line that is none names no file.
std::map<std::string, std::string> digests_in(const std::string& list) {
  constexpr std::size_t digest = 64, gap = 2;
  std::map<std::string, std::string> of;
  for (std::size_t from = 0, to; from < list.size(); from = to + 1) {
    to = std::min(list.find('\n', from), list.size());
    if (to - from > digest + gap)
      of[list.substr(from + digest + gap, to - from - digest - gap)] = list.substr(from, digest);
  }
  return of;
}

// Without links, or a slash at its end.
fs::path plain(const fs::path& folder) {
  const fs::path all = fs::weakly_canonical(fs::absolute(folder));
  return all.has_filename() ? all : all.parent_path();
}

// Whether a listed folder lies there that may be replaced.
bool replaceable(const fs::path& folder, const std::string& list) {
  const auto status = fs::symlink_status(folder);
  if (!fs::exists(status)) return false;
  if (!fs::is_directory(status)) refuse(folder, "is not a folder");
  if (fs::equivalent(folder, fs::current_path()))
    refuse(folder, "is the folder you stand in, and would be replaced as a whole");
  if (fs::is_empty(folder)) return true;
  const bool listed = fs::is_regular_file(fs::symlink_status(folder / list));
  const auto digests = digests_in(listed ? read_file(folder / list) : "");
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(folder)) {
    const std::string name = entry.path().lexically_relative(folder).generic_string();
    if (name == list || (entry.is_directory() && !entry.is_symlink())) continue;
    const auto found = digests.find(name);
    if (found == digests.end())
      refuse(folder, fmt::format("holds {}, which this program did not write", name));
    if (entry.is_symlink() || sha256(read_file(entry.path())) != found->second)
      refuse(folder, fmt::format("holds {}, which was changed since this program wrote it", name));
  }
  if (!listed) refuse(folder, "holds folders, and this program did not make it");
  return true;
}

}  // namespace

void sync_folder(const fs::path& folder) { sync(folder, O_RDONLY | O_DIRECTORY); }

void write_file(const fs::path& path, const std::string& content) {
  const int fd = open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (fd < 0) fail_on("write", path, errno);
  int error = 0;
  for (std::size_t done = 0; done < content.size() && error == 0;) {
    const ssize_t wrote = write(fd, content.data() + done, content.size() - done);
    if (wrote > 0) {
      done += static_cast<std::size_t>(wrote);
    } else if (wrote == 0 || errno != EINTR) {
      error = wrote == 0 ? EIO : errno;
    }
  }
  if (error == 0 && fsync(fd) != 0) error = errno;
  if (close(fd) != 0 && error == 0) error = errno;
  if (error != 0) fail_on("write", path, error);
}

fs::path filled(const Workplace& place, const std::vector<PacketFile>& files) {
  fs::path root = place.path() / "packet";
  if (mkdir(root.c_str(), 0777) != 0) fail_on("make", root, errno);
  std::set<fs::path> folders{root};
  for (const PacketFile& f : files) {
    const fs::path file = root / f.path;
    std::error_code error;
    fs::create_directories(file.parent_path(), error);
    if (error) fail_on("make", file.parent_path(), error.value());
    for (fs::path above = file.parent_path(); above != root; above = above.parent_path())
      folders.insert(above);
    write_file(file, f.content);
  }
  for (const fs::path& f : folders) sync_folder(f);
  return root;
}

int renamed(const fs::path& from, const fs::path& to, unsigned int how) {
  return renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), how) == 0 ? 0 : errno;
}

// EINVAL or ENOSYS: a file system that cannot.
void fail_to_rename(const fs::path& to, int error) {
  if (error == EINVAL || error == ENOSYS)
    throw std::runtime_error(
        fmt::format("cannot write {} in one step on this file system; it was left alone: choose an output "
                    "folder on a local disk",
                    to.string()));
  fail_on("write", to, error);
}

void put_in_place(const fs::path& fresh, const fs::path& to, bool there) {
  if (const int error = renamed(fresh, to, there ? RENAME_EXCHANGE : RENAME_NOREPLACE))
    fail_to_rename(to, error);
  sync_folder(to.parent_path());
}

void write_listed_folder(const fs::path& folder, const std::vector<PacketFile>& files,
                         const std::string& list, const fs::path& place_in) {
  const fs::path to = plain(folder);
  std::vector<PacketFile> all = files;
  std::string digests;
  for (const PacketFile& file : files) digests += sha256(file.content) + "  " + file.path + "\n";
  all.push_back({list, digests});
  const Workplace place(place_in.empty() ? to.parent_path() : place_in);
  const bool there = replaceable(to, list);
  std::error_code error;
  fs::create_directories(to.parent_path(), error);
  if (error) fail_on("make", to.parent_path(), error.value());
  put_in_place(filled(place, all), to, there);
}

void check_listed_folder(const fs::path& folder, const std::string& list) {
  (void)replaceable(plain(folder), list);
}

}  // namespace bedwright
