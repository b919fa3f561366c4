// Reads manifests back and holds them to the disk.
#include "packet/record.h"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <fstream>
#include <iterator>
#include <map>
#include <nlohmann/json.hpp>
#include <set>

#include "formats/digest.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;
using Json = nlohmann::json;

constexpr const char *trial_name = "trial", *withdrawn_mark = ".withdrawn-";

std::optional<std::string> bytes_of(const fs::path& file) {
  std::ifstream in(file, std::ios::binary);
  if (!in) return std::nullopt;
  std::string bytes{std::istreambuf_iterator<char>(in), {}};
  return in.bad() ? std::nullopt : std::optional(std::move(bytes));
}

std::string text_at(const Json& json, const char* key) {
  const auto found = json.is_object() ? json.find(key) : json.end();
  return found != json.end() && found->is_string() ? found->get<std::string>() : std::string();
}

// Whether the manifest says all a record needs.
bool read_manifest(const Json& json, Recorded& record) {
  const Json order = json.is_object() ? json.value("order", Json()) : Json();
  record.order = {text_at(order, "number"), text_at(order, "revision"), text_at(order, "customer"),
                  text_at(order, "date"),   text_at(order, "kit"),      text_at(order, "frame")};
  record.format = text_at(json, "format");
  record.version = text_at(json, "version");
  record.build = text_at(json, "build");
  record.input_digest = text_at(json, "input_sha256");
  record.state = text_at(json, "state");
  const Json files = json.is_object() ? json.value("files", Json()) : Json();
  if (text_at(json, "program") != program_name || record.format != packet_format ||
      record.order.number.empty() || !files.is_array())
    return false;
  for (const Json& file : files) {
    record.files.push_back({text_at(file, "path"), text_at(file, "sha256")});
    if (record.files.back().path.empty() || record.files.back().sha256.empty()) return false;
  }
  return true;
}

// Of one withdrawn: when and why. A note that is lost leaves them empty.
void read_note(Recorded& record) {
  const auto text = bytes_of(withdrawal_note(record.folder));
  const Json note = text ? Json::parse(*text, nullptr, false) : Json();
  record.withdrawn_on = text_at(note, "withdrawn");
  record.why = text_at(note, "why");
}

// As a person compares two names: capitals and blanks make no other customer.
std::string plain_name(const std::string& name) {
  std::string plain;
  for (const char c : name)
    if (c != ' ') plain += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
  return plain;
}

std::vector<fs::path> folders_in(const fs::path& folder) {
  std::vector<fs::path> all;
  if (!fs::is_directory(folder)) return all;
  for (const fs::directory_entry& entry : fs::directory_iterator(folder))
    if (entry.is_directory() && !entry.path().filename().string().starts_with('.'))
      all.push_back(entry.path());
  std::sort(all.begin(), all.end());
  return all;
}

}  // namespace

const char* word(Standing standing) {
  switch (standing) {
    case Standing::released:
      return "released";
    case Standing::withdrawn:
      return "withdrawn";
    case Standing::trial:
      return "trial";
    case Standing::damaged:
      break;
  }
  return "damaged";
}

fs::path release_folder(const fs::path& out, const std::string& number, const std::string& revision) {
  return out / number / revision;
}
fs::path extra_folder(const fs::path& release) {
  return release.parent_path() / "extra" / release.filename();
}
fs::path trial_folder(const fs::path& out, const std::string& number) { return out / number / trial_name; }
fs::path withdrawn_folder(const fs::path& out, const std::string& number, const std::string& revision,
                          int n) {
  return out / number / fmt::format("{}{}{}", revision, withdrawn_mark, n);
}
fs::path withdrawal_note(const fs::path& withdrawn) { return withdrawn.string() + ".json"; }

std::optional<Recorded> recorded(const fs::path& folder) {
  std::error_code error;
  if (!fs::exists(fs::symlink_status(folder / manifest_name, error))) return std::nullopt;
  Recorded record;
  record.folder = folder;
  const auto text = bytes_of(folder / manifest_name);
  if (!text || !read_manifest(Json::parse(*text, nullptr, false), record)) return record;
  record.manifest = *text;
  const std::string name = folder.filename().string();
  record.standing = name == trial_name                               ? Standing::trial
                    : name.find(withdrawn_mark) != std::string::npos ? Standing::withdrawn
                    : record.state == "released"                     ? Standing::released
                                                                     : Standing::damaged;
  if (record.standing == Standing::withdrawn) read_note(record);
  return record;
}

std::vector<Recorded> recorded_of_order(const fs::path& order_folder) {
  std::vector<Recorded> all;
  for (const fs::path& folder : folders_in(order_folder))
    if (auto record = recorded(folder)) all.push_back(*std::move(record));
  return all;
}

std::vector<Recorded> all_recorded(const fs::path& out) {
  std::vector<Recorded> all;
  for (const fs::path& order : folders_in(out)) {
    auto of_order = recorded_of_order(order);
    all.insert(all.end(), std::make_move_iterator(of_order.begin()), std::make_move_iterator(of_order.end()));
  }
  return all;
}

Differences differences_on_disk(const Recorded& record) {
  Differences found;
  std::set<std::string> listed{manifest_name};
  for (const ListedFile& file : record.files) {
    listed.insert(file.path);
    const fs::path path = record.folder / file.path;
    std::error_code error;
    // A link in a file's place is no file of the release, whatever it leads to.
    const auto status = fs::symlink_status(path, error);
    if (!fs::exists(status)) {
      found.missing.push_back(file.path);
      continue;
    }
    const auto bytes = fs::is_regular_file(status) ? bytes_of(path) : std::nullopt;
    if (!bytes || sha256(*bytes) != file.sha256) found.changed.push_back(file.path);
  }
  for (const fs::directory_entry& entry : fs::recursive_directory_iterator(record.folder)) {
    const std::string path = entry.path().lexically_relative(record.folder).generic_string();
    if ((!entry.is_directory() || entry.is_symlink()) && !listed.contains(path)) found.extra.push_back(path);
  }
  std::sort(found.extra.begin(), found.extra.end());
  return found;
}

Differences differences(const std::vector<PacketFile>& before, const std::vector<PacketFile>& files) {
  Recorded record;
  for (const PacketFile& file : before) record.files.push_back({file.path, sha256(file.content)});
  return differences(record, files);
}

Differences differences(const Recorded& record, const std::vector<PacketFile>& files) {
  Differences found;
  std::map<std::string, std::string> digests;
  for (const PacketFile& file : files) digests[file.path] = sha256(file.content);
  for (const ListedFile& file : record.files) {
    const auto other = digests.find(file.path);
    if (other == digests.end())
      found.missing.push_back(file.path);
    else if (other->second != file.sha256)
      found.changed.push_back(file.path);
    if (other != digests.end()) digests.erase(other);
  }
  for (const auto& [path, digest] : digests) found.extra.push_back(path);
  return found;
}

std::string place_fault(const fs::path& out, const OrderName& order) {
  std::error_code error;
  const auto holds_manifest = [&](const fs::path& folder) {
    return fs::exists(fs::symlink_status(folder / manifest_name, error));
  };
  const auto folder_above = [&](const std::string& whose) {
    return fmt::format(
        "{} holds the files of {} itself; nothing was touched: --out names the folder above, which gets one "
        "folder an order",
        out.string(), whose);
  };
  if (const auto itself = recorded(out))
    return folder_above(itself->order.number.empty() ? "an order" : "order " + itself->order.number);
  const std::string name = fs::absolute(out).lexically_normal().filename().string();
  for (const fs::path& folder : folders_in(out))
    if (const auto inside = recorded(folder); inside && inside->order.number == name)
      return folder_above("order " + name);
  const fs::path folder = out / order.number;
  if (holds_manifest(folder))
    return fmt::format(
        "{} holds files of before releases had a folder each; nothing was touched: move it away first, as\n"
        "  mv {} {}-before",
        folder.string(), folder.string(), folder.string());
  for (const Recorded& earlier : recorded_of_order(folder)) {
    if (earlier.standing != Standing::released && earlier.standing != Standing::withdrawn) continue;
    if (earlier.order.number != order.number)
      return fmt::format(
          "{} holds the release of order {}, not of {}; nothing was touched: give another folder with --out, "
          "or move that one away",
          folder.string(), earlier.order.number, order.number);
    if (plain_name(earlier.order.customer) != plain_name(order.customer))
      return fmt::format(
          "order number {} is taken: revision {} is released for {}, and this order is for {}; nothing was "
          "touched: give it a number of its own (order.number)",
          order.number, earlier.order.revision, earlier.order.customer, order.customer);
  }
  return {};
}

std::string damage(const Recorded& record) {
  if (record.format.empty() || record.format == packet_format)
    return "its manifest.json cannot be read, so nothing can be said of its files";
  return fmt::format(
      "its manifest.json is of the form {}, written by bedwright {}, and this program reads {}: look at it "
      "with that program",
      one_line(record.format), one_line(record.version), packet_format);
}

bool is_of_later_program(const Recorded& record, const std::string& version) {
  const auto numbers = [](const std::string& text) {
    std::vector<int> all(1);
    for (const char c : text)
      if (c == '.')
        all.push_back(0);
      else if (c >= '0' && c <= '9' && all.back() < 100000)
        all.back() = all.back() * 10 + (c - '0');
    return all;
  };
  return numbers(record.version) > numbers(version);
}

bool would_be_the_same(const Recorded& record, const Packet& packet) {
  Packet as_built_there = packet;
  as_built_there.build = record.build;
  return manifest(as_built_there) == record.manifest;
}

}  // namespace bedwright
