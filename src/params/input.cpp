// Reads a file's bytes, and finds files named beside another.
#include "params/input.h"

#include <fmt/format.h>

#include <filesystem>
#include <fstream>
#include <iterator>
#include <system_error>

#include "params/file_refusal.h"
#include "yaml/document.h"

namespace fs = std::filesystem;

namespace bedwright {

std::optional<std::string> read_bytes(const std::string& path, const Mark& where,
                                      std::vector<Problem>& problems) {
  const FileRefusal refusal(path, where, problems);
  const auto refuse = [&](const std::string& what, const std::string& would_do) {
    refusal.other(what, would_do);
    return std::nullopt;
  };
  if (path.empty()) {
    refusal.no_name();
    return std::nullopt;
  }
  std::error_code error;
  const fs::file_status status = fs::status(path, error);
  if (status.type() == fs::file_type::not_found) {
    refusal.missing();
    return std::nullopt;
  }
  if (error) return refuse(fmt::format("cannot be opened ({})", error.message()), "check the path");
  if (status.type() == fs::file_type::directory) {
    refusal.folder();
    return std::nullopt;
  }
  if (status.type() != fs::file_type::regular) return refuse("is not an ordinary file", "name a file");
  const auto size = fs::file_size(path, error);
  if (!error && size > largest_file) {
    return refuse(fmt::format("is larger than {} bytes", largest_file),
                  "a parameter file is a few kilobytes; is this the right file?");
  }
  std::ifstream stream(path, std::ios::binary);
  if (!stream) return refuse("cannot be opened", "check that you may read it");
  std::string bytes{std::istreambuf_iterator<char>(stream), std::istreambuf_iterator<char>()};
  if (stream.bad()) return refuse("cannot be read to its end", "check the disk it is on");
  return bytes;
}

std::string beside(const std::string& order_path, const std::string& written) {
  const fs::path raw = fs::path(order_path).parent_path() / written;
  const fs::path plain = raw.lexically_normal();
  // Behind a linked folder, ".." leads elsewhere than it reads; the path is then left as written.
  std::error_code error;  // a loop of links, a name too long: told where the file is opened
  return same_file(raw.string(), plain.string()) || !fs::exists(raw, error) ? plain.string() : raw.string();
}

bool same_file(const std::string& a, const std::string& b) {
  std::error_code error;
  return fs::equivalent(a, b, error) && !error;
}

}  // namespace bedwright
