// Writes a packet in the program's own place, then gives the folder its name.
#include "packet/release.h"

#include <fmt/format.h>

#include <cerrno>
#include <cstdio>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "packet/built.h"
#include "packet/whole_folder.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

// The files and the manifest that names them.
fs::path filled(const Workplace& place, const Packet& packet, const std::string& manifest_text) {
  std::vector<PacketFile> files = packet.files;
  files.push_back({manifest_name, manifest_text});
  return filled(place, files);
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

void move_if_there(const fs::path& from, const fs::path& to) {
  const int error = renamed(from, to, RENAME_NOREPLACE);
  if (error != 0 && error != ENOENT) fail_on("move", from, error);
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
  const auto taken = [](const fs::path& path) { return fs::exists(fs::symlink_status(path)); };
  while (taken(aside()) || taken(built_file(aside())) || taken(extra_folder(aside()))) ++n;
  // Sheets drawn on request would be taken for the new one's; they can be drawn again.
  move_if_there(extra_folder(to), extra_folder(aside()));
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
  // What was built, was built from the one before; the file itself says so too.
  move_if_there(built_file(to), built_file(aside()));
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
  order_folder(out, packet);
  put_in_place(fresh, to, there);
}

}  // namespace bedwright
