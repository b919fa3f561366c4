// Writes the files beside the folder, then exchanges the two.
#include "packet/packet.h"

#include <fcntl.h>
#include <fmt/format.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <cstdio>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>
#include <system_error>

#include "formats/digest.h"
#include "packet/packet_lock.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::ordered_json;

constexpr const char* manifest_name = "manifest.json";
constexpr const char* format_name = "bedwright-packet-1";
constexpr const char* program_name = "bedwright";

[[noreturn]] void fail(const std::string& doing, const fs::path& path, int error) {
  throw std::runtime_error(
      fmt::format("cannot {} {}: {}", doing, path.string(), std::generic_category().message(error)));
}

void check_path(const std::string& path) {
  const fs::path p(path);
  const bool plain =
      !path.empty() && p.is_relative() && p.has_filename() && path != manifest_name &&
      std::none_of(p.begin(), p.end(), [](const fs::path& s) { return s == ".." || s == "."; });
  if (!plain) throw std::invalid_argument(fmt::format("packet: '{}' is no path for a packet's file", path));
}

void sync(const fs::path& path, int flags) {
  const int fd = open(path.c_str(), flags | O_CLOEXEC);
  if (fd < 0) fail("open", path, errno);
  const int error = fsync(fd) == 0 ? 0 : errno;
  close(fd);
  if (error != 0) fail("sync", path, error);
}

void write_file(const fs::path& path, const std::string& content) {
  const int fd = open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  if (fd < 0) fail("write", path, errno);
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
  if (error != 0) fail("write", path, error);
}

// Removes the folder when the write does not come to its end.
class Workplace {
 public:
  explicit Workplace(fs::path path) : path_(std::move(path)) {
    std::error_code error;
    if (!fs::create_directory(path_, error)) fail("make", path_, error ? error.value() : EEXIST);
  }
  ~Workplace() {
    std::error_code ignored;  // a leftover is harmless: the next run removes it
    fs::remove_all(path_, ignored);
  }
  Workplace(const Workplace&) = delete;
  Workplace& operator=(const Workplace&) = delete;
  const fs::path& path() const { return path_; }

 private:
  fs::path path_;
};

void fill(const fs::path& root, const Packet& packet, const std::string& manifest_text) {
  std::set<fs::path> folders{root};
  const auto put = [&](const std::string& path, const std::string& content) {
    const fs::path file = root / path;
    std::error_code error;
    fs::create_directories(file.parent_path(), error);
    if (error) fail("make", file.parent_path(), error.value());
    for (fs::path f = file.parent_path(); f != root; f = f.parent_path()) folders.insert(f);
    write_file(file, content);
  };
  for (const PacketFile& f : packet.files) put(f.path, f.content);
  put(manifest_name, manifest_text);
  for (const fs::path& f : folders) sync(f, O_RDONLY | O_DIRECTORY);
}

// The paths an existing folder's manifest lists; refuses what is not ours.
std::set<std::string> listed(const fs::path& folder) {
  const auto refuse = [&](const std::string& why) {
    throw std::runtime_error(
        fmt::format("{} exists and {}; it was left alone: choose another output folder, or move it away",
                    folder.string(), why));
  };
  std::ifstream in(folder / manifest_name, std::ios::binary);
  if (!in) refuse("has no readable manifest.json, so this program did not make it");
  const Json json = Json::parse(in, nullptr, false);
  if (!json.is_object() || json.value("program", Json()) != program_name || !json.contains("files") ||
      !json["files"].is_array()) {
    refuse("its manifest.json is not one of this program");
  }
  std::set<std::string> paths{manifest_name};
  for (const Json& f : json["files"]) {
    if (!f.is_object() || !f.contains("path") || !f["path"].is_string())
      refuse("its manifest.json is damaged");
    paths.insert(f["path"].get<std::string>());
  }
  return paths;
}

void check_replaceable(const fs::path& folder) {
  const auto refuse = [&](const std::string& why) {
    throw std::runtime_error(
        fmt::format("{} exists and {}; it was left alone: choose another output folder, or move it away",
                    folder.string(), why));
  };
  if (!fs::is_directory(fs::symlink_status(folder))) refuse("is not a folder");
  if (fs::is_empty(folder)) return;
  const std::set<std::string> ours = listed(folder);
  for (const fs::directory_entry& e : fs::recursive_directory_iterator(folder)) {
    const std::string path = e.path().lexically_relative(folder).generic_string();
    const bool plain_folder = e.is_directory() && !e.is_symlink();
    if (!plain_folder && ours.count(path) == 0)
      refuse(fmt::format("holds {}, which its manifest does not list", path));
  }
}

void exchange(const fs::path& fresh, const fs::path& folder) {
  const bool there = fs::exists(fs::symlink_status(folder));
  if (there) check_replaceable(folder);
  // Without a folder to replace, one that appears meanwhile is not overwritten.
  const unsigned int how = there ? RENAME_EXCHANGE : RENAME_NOREPLACE;
  if (renameat2(AT_FDCWD, fresh.c_str(), AT_FDCWD, folder.c_str(), how) != 0) {
    const int error = errno;
    if (error == EINVAL || error == ENOSYS) {
      throw std::runtime_error(
          fmt::format("cannot replace {} in one step on this file system; it was left alone: choose an "
                      "output folder on a local disk",
                      folder.string()));
    }
    fail("replace", folder, error);
  }
}

void remove_leftovers(const fs::path& parent, const std::string& prefix) {
  std::vector<fs::path> old;
  for (const fs::directory_entry& e : fs::directory_iterator(parent)) {
    if (e.path().filename().string().rfind(prefix, 0) == 0) old.push_back(e.path());
  }
  for (const fs::path& p : old) {
    std::error_code error;
    fs::remove_all(p, error);
    if (error) fail("remove the leftover", p, error.value());
  }
}

}  // namespace

std::string manifest(const Packet& packet) {
  std::vector<const PacketFile*> files;
  for (const PacketFile& f : packet.files) {
    check_path(f.path);
    files.push_back(&f);
  }
  std::sort(files.begin(), files.end(), [](const auto* a, const auto* b) { return a->path < b->path; });
  Json list = Json::array();
  for (std::size_t i = 0; i < files.size(); ++i) {
    if (i > 0 && files[i]->path == files[i - 1]->path) {
      throw std::invalid_argument(fmt::format("packet: '{}' is given twice", files[i]->path));
    }
    list.push_back({{"path", files[i]->path},
                    {"bytes", files[i]->content.size()},
                    {"sha256", sha256(files[i]->content)}});
  }
  // Same input, same bytes: the build stands here and in no other file of a packet. It is
  // one text for one commit, on any machine, so one program still writes one manifest; and
  // the packets of two builds are held to each other by the digests below.
  const Json json = {{"format", format_name},
                     {"program", program_name},
                     {"version", packet.version},
                     {"build", packet.build},
                     {"input_sha256", packet.input_digest},
                     {"sets", packet.sets},
                     {"state", word(packet.state)},
                     {"files", list}};
  return json.dump(2, ' ', false, Json::error_handler_t::replace) + "\n";
}

void write_packet(const fs::path& given, const Packet& packet) {
  const std::string manifest_text = manifest(packet);
  fs::path folder = fs::absolute(given).lexically_normal();
  if (!folder.has_filename()) folder = folder.parent_path();
  const fs::path parent = folder.parent_path();
  const std::string name = folder.filename().string();
  if (name.empty()) throw std::runtime_error(fmt::format("{} is no output folder", given.string()));

  std::error_code error;
  fs::create_directories(parent, error);
  if (error) fail("make", parent, error.value());
  const PacketLock lock(parent / ("." + name + ".lock"));
  const std::string prefix = "." + name + ".part-";
  remove_leftovers(parent, prefix);
  if (fs::exists(fs::symlink_status(folder))) check_replaceable(folder);

  const Workplace fresh(parent / fmt::format("{}{}", prefix, getpid()));
  fill(fresh.path(), packet, manifest_text);
  exchange(fresh.path(), folder);  // what was there goes with the workplace
  sync(parent, O_RDONLY | O_DIRECTORY);
}

}  // namespace bedwright
