// bedwright new: writes a starter order with a note on every line.
#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <sstream>

#include "commands/home.h"
#include "commands/new_file.h"
#include "commands/paste.h"
#include "commands/session.h"
#include "commands/tell.h"

namespace bedwright {
namespace {

void replace_all(std::string& text, const std::string& what, const std::string& with) {
  for (std::size_t at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()))
    text.replace(at, what.size(), with);
}

// The file's own name makes a first order number. A space, a point or whatever else
// no folder name should hold keeps the words about it apart as a dash; letters beyond
// ASCII are left out.
std::string number_from(const std::filesystem::path& file) {
  std::string number;
  bool apart = false;
  for (const char c : file.stem().string()) {
    const unsigned char byte = static_cast<unsigned char>(c);
    if (std::isalnum(byte) || c == '-' || c == '_') {
      if (apart && !number.empty() && number.back() != '-') number += '-';
      apart = false;
      number += c;
    } else if (byte < 0x80) {
      apart = true;
    }
  }
  return number.empty() ? "ORDER-1" : number.substr(0, 64);
}

// The starter with its places filled in.
std::string starter(const Home& from, const NewArguments& arguments, const std::filesystem::path& file) {
  const std::filesystem::path source =
      from.folder / "templates" / (arguments.metric ? "order_metric.yaml" : "order_inch.yaml");
  std::ifstream in(source, std::ios::binary);
  if (!in) throw std::runtime_error(fmt::format("cannot read {}: {}", source.string(), std::strerror(errno)));
  std::stringstream text;
  text << in.rdbuf();
  std::string order = text.str();
  const std::filesystem::path folder = std::filesystem::absolute(file).parent_path().lexically_normal();
  const std::filesystem::path params = std::filesystem::absolute(from.folder / "params").lexically_normal();
  replace_all(order, "{{number}}", number_from(file));
  replace_all(order, "{{date}}", today());
  // A source tree may be moved with the orders in it; what is installed stays where it is
  // while an order moves.
  replace_all(order, "{{params}}",
              (from.is_source_tree() ? params.lexically_relative(folder) : params).generic_string());
  replace_all(order, "{{command}}", from.command());
  return order;
}

}  // namespace

ExitCode new_command(const NewArguments& arguments) {
  const std::filesystem::path file = arguments.file;
  if (!file.has_filename() || std::filesystem::is_directory(file)) {
    tell("bedwright: {} is no name for a file; give one, as my_order.yaml\n",
         arguments.file.empty() ? "an empty name" : arguments.file);
    return bad_input;
  }
  const Home from = home();
  const std::string order = starter(from, arguments, file);
  if (const std::string fault = write_new_file(file, order); !fault.empty()) {
    tell("bedwright: {}\n", fault);
    return bad_input;
  }
  const std::string word = shell_word(file.string());
  fmt::print("Wrote {0}. Change what differs, then:\n  {2} check {1}\n  {2} draw {1}\n", file.string(), word,
             from.command());
  return released;
}

}  // namespace bedwright
