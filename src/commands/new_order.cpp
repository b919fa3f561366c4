#include <fmt/chrono.h>
#include <fmt/format.h>

#include <cerrno>
#include <cstring>
#include <ctime>
#include <fstream>
#include <sstream>

#include "commands/new_file.h"
#include "commands/session.h"

namespace bedwright {
namespace {

void replace_all(std::string& text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
}

// The file's own name makes a first order number, with what no folder name can
// hold left out.
std::string number_from(const std::filesystem::path& file) {
  std::string number;
  for (char c : file.stem().string())
    if (std::isalnum(static_cast<unsigned char>(c)) || c == '-' || c == '_') number += c;
  return number.empty() ? "ORDER-1" : number.substr(0, 64);
}

std::string today() {
  const std::time_t now = std::time(nullptr);
  return fmt::format("{:%Y-%m-%d}", fmt::localtime(now));
}

// The starter with its places filled in; paths are relative to the new file.
std::string starter(const NewArguments& arguments, const std::filesystem::path& file) {
  const std::filesystem::path source = home() / "templates" / (arguments.metric ? "order_metric.yaml" : "order_inch.yaml");
  std::ifstream in(source, std::ios::binary);
  if (!in) throw std::runtime_error(fmt::format("cannot read {}: {}", source.string(), std::strerror(errno)));
  std::stringstream text;
  text << in.rdbuf();
  std::string order = text.str();
  const std::filesystem::path folder = std::filesystem::absolute(file).parent_path().lexically_normal();
  const std::filesystem::path params = std::filesystem::absolute(home() / "params").lexically_normal();
  replace_all(order, "{{number}}", number_from(file));
  replace_all(order, "{{date}}", today());
  replace_all(order, "{{params}}", params.lexically_relative(folder).generic_string());
  return order;
}

}  // namespace

ExitCode new_command(const NewArguments& arguments) {
  const std::filesystem::path file = arguments.file;
  const std::string order = starter(arguments, file);
  if (const std::string fault = write_new_file(file, order); !fault.empty()) {
    fmt::print(stderr, "bedwright: {}\n", fault);
    return bad_input;
  }
  fmt::print("Wrote {}. Change what differs, then:\n  ./bedwright check {}\n  ./bedwright draw {}\n", file.string(), file.string(), file.string());
  return released;
}

}  // namespace bedwright
