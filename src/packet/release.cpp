// Writes a packet in the program's own place, then gives the folder its name.
#include "packet/release.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <cerrno>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>
#include <system_error>

#include "packet/workplace.h"

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

// A folder with the whole packet in it, in the workplace.
fs::path filled(const Workplace& place, const Packet& packet, const std::string& manifest_text) {
  fs::path root = place.path() / "packet";
  if (mkdir(root.c_str(), 0777) != 0) fail_on("make", root, errno);
  std::set<fs::path> folders{root};
  const auto put = [&](const std::string& path, const std::string& content) {
    const fs::path file = root / path;
    std::error_code error;
    fs::create_directories(file.parent_path(), error);
    if (error) fail_on("make", file.parent_path(), error.value());
    for (fs::path f = file.parent_path(); f != root; f = f.parent_path()) folders.insert(f);
    write_file(file, content);
  };
  for (const PacketFile& f : packet.files) put(f.path, f.content);
  put(manifest_name, manifest_text);
  for (const fs::path& f : folders) sync_folder(f);
  return root;
}

// In one system call. EINVAL or ENOSYS: a file system that cannot.
int renamed(const fs::path& from, const fs::path& to, unsigned int how) {
  return renameat2(AT_FDCWD, from.c_str(), AT_FDCWD, to.c_str(), how) == 0 ? 0 : errno;
}

[[noreturn]] void fail_to_rename(const fs::path& to, int error) {
  if (error == EINVAL || error == ENOSYS)
    throw std::runtime_error(
        fmt::format("cannot write {} in one step on this file system; it was left alone: choose an output "
                    "folder on a local disk",
                    to.string()));
  fail_on("write", to, error);
}

// The order's own folder, with its name on the disk.
fs::path order_folder(const fs::path& out, const Packet& packet) {
  fs::path folder = out / packet.order.number;
  make_shared_folder(folder);
  sync_folder(out);
  return folder;
}

void check_replaceable(const fs::path& folder) {
  const auto refuse = [&](const std::string& why) {
    throw std::runtime_error(
        fmt::format("{} exists and {}; it was left alone: choose another output folder, or move it away",
                    folder.string(), why));
  };
  if (!fs::is_directory(fs::symlink_status(folder))) refuse("is not a folder");
  if (fs::is_empty(folder)) return;
  const auto record = recorded(folder);
  if (!record) refuse("has no manifest.json, so this program did not make it");
  if (record->standing == Standing::damaged) refuse("its manifest.json is not one of this program");
  const Differences found = differences_on_disk(*record);
  if (!found.extra.empty())
    refuse(fmt::format("holds {}, which its manifest does not list", found.extra.front()));
}

void write_note(const Workplace& place, const fs::path& file, const Packet& packet, const Recorded& earlier,
                const Withdrawal& withdrawal) {
  const nlohmann::ordered_json note = {
      {"format", "bedwright-withdrawn-1"},    {"number", packet.order.number},
      {"revision", packet.order.revision},    {"withdrawn", withdrawal.date},
      {"input_sha256", earlier.input_digest}, {"why", withdrawal.why}};
  const fs::path fresh = place.path() / "note";
  write_file(fresh, note.dump(2, ' ', false, nlohmann::ordered_json::error_handler_t::replace) + "\n");
  // A note without its folder is of a run that died before it withdrew anything.
  if (const int error = renamed(fresh, file, 0)) fail_on("write", file, error);
}

}  // namespace

bool write_release(const fs::path& out, const Packet& packet) {
  const std::string manifest_text = manifest(packet);
  const Workplace place(out);
  const fs::path to = release_folder(out, packet.order.number, packet.order.revision);
  if (fs::exists(fs::symlink_status(to))) return false;
  const fs::path fresh = filled(place, packet, manifest_text);
  const fs::path above = order_folder(out, packet);
  const int error = renamed(fresh, to, RENAME_NOREPLACE);
  if (error == EEXIST) return false;
  if (error != 0) fail_to_rename(to, error);
  sync_folder(above);
  return true;
}

fs::path replace_release(const fs::path& out, const Packet& packet, const Recorded& earlier,
                         const Withdrawal& withdrawal) {
  const std::string manifest_text = manifest(packet);
  const Workplace place(out);
  const fs::path to = release_folder(out, packet.order.number, packet.order.revision);
  const auto now = recorded(to);
  if (!now || now->manifest != earlier.manifest)
    throw std::runtime_error(
        fmt::format("another run has changed {} meanwhile; nothing was touched: draw again", to.string()));
  const fs::path fresh = filled(place, packet, manifest_text);
  int n = 1;
  const auto aside = [&] { return withdrawn_folder(out, packet.order.number, packet.order.revision, n); };
  while (fs::exists(fs::symlink_status(aside()))) ++n;
  // Note, old, new: a run that dies between leaves the old one current, or withdrawn with its
  // reason and nothing in its place. Neither is told as something else.
  write_note(place, withdrawal_note(aside()), packet, earlier, withdrawal);
  if (const int error = renamed(to, aside(), RENAME_NOREPLACE)) {
    fs::remove(withdrawal_note(aside()));
    fail_to_rename(to, error);
  }
  if (const int error = renamed(fresh, to, RENAME_NOREPLACE)) {
    if (renamed(aside(), to, RENAME_NOREPLACE) == 0) fs::remove(withdrawal_note(aside()));
    fail_to_rename(to, error);
  }
  sync_folder(to.parent_path());
  return aside();
}

void write_trial(const fs::path& out, const Packet& packet) {
  const std::string manifest_text = manifest(packet);
  const Workplace place(out);
  const fs::path to = trial_folder(out, packet.order.number);
  const bool there = fs::exists(fs::symlink_status(to));
  if (there) check_replaceable(to);
  const fs::path fresh = filled(place, packet, manifest_text);
  const fs::path above = order_folder(out, packet);
  // What was there goes with the workplace. Without one, what appears meanwhile stays.
  if (const int error = renamed(fresh, to, there ? RENAME_EXCHANGE : RENAME_NOREPLACE))
    fail_to_rename(to, error);
  sync_folder(above);
}

}  // namespace bedwright
