// Reads YAML text; with tree_builder.cpp the only source that sees the YAML parser.
#include <fmt/format.h>
#include <yaml-cpp/exceptions.h>
#include <yaml-cpp/parser.h>

#include <algorithm>
#include <sstream>

#include "yaml/document.h"
#include "yaml/parse_value.h"
#include "yaml/slip.h"
#include "yaml/text.h"
#include "yaml/tree_builder.h"

namespace bedwright {
namespace {

constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";

Place place_of_byte(std::string_view text, std::size_t at) {
  const std::string_view before = text.substr(0, at);
  const std::size_t start = before.rfind('\n') == std::string_view::npos ? 0 : before.rfind('\n') + 1;
  return {static_cast<int>(std::ranges::count(before, '\n')) + 1, characters(before.substr(start)) + 1, 0};
}

// Faults of the text as such; none of them leaves anything worth parsing.
bool readable_text(Document& document, std::string_view text) {
  const auto refuse = [&](const Place& at, std::string what, std::string would_do) {
    document.problems.push_back({document.mark(at, {}), std::move(what), std::move(would_do)});
    return false;
  };
  if (text.size() > largest_file) {
    return refuse({1, 1, 0}, fmt::format("is larger than {} bytes", largest_file),
                  "a parameter file is a few kilobytes; is this the right file?");
  }
  if (text.starts_with("\xFF\xFE") || text.starts_with("\xFE\xFF"))
    return refuse({1, 1, 0}, "is text of two bytes a letter (UTF-16)", "save the file as UTF-8");
  if (text.starts_with("PK\x03\x04"))
    return refuse({1, 1, 0}, "is a document of a word processor or a spreadsheet, or another packed file",
                  "write parameters with a plain text editor");
  if (text.find('\r') != std::string_view::npos && text.find('\n') == std::string_view::npos)
    return refuse({1, 1, 0}, "has lines that end with a carriage return alone",
                  "save the file with the line ends of Linux or Windows");
  const std::size_t bad = first_bad_byte(text);
  if (bad != std::string_view::npos) {
    const auto byte = static_cast<unsigned char>(text[bad]);
    return refuse(place_of_byte(text, bad), fmt::format("byte 0x{:02X} is not UTF-8 text", byte),
                  "save the file as UTF-8");
  }
  return true;
}

// What to say where the parser stumbled: the slip that is behind it, else the parser's own words.
Problem broken_off(const Document& document, const Place& place, std::string_view text,
                   const std::string& message) {
  if (place.override_number == 0) {
    if (const auto slip = find_slip(text, place.line))
      return {document.mark({slip->line, slip->column, 0}, {}), slip->what, slip->would_do};
  }
  return {document.mark(place, {}), fmt::format("cannot be read as YAML: {}", message),
          "look at the indentation, colons and brackets here and on the line above"};
}

// Feeds every document of the text to the builder and says how many there were.
// Afterwards the builder holds the first.
int parse_all(Document& document, TreeBuilder& builder, std::string_view text, Node& first) {
  std::istringstream stream{std::string(text)};
  int documents = 0;
  try {
    YAML::Parser parser(stream);
    while (documents < 2 && parser.HandleNextDocument(builder)) {
      if (++documents == 1) first = builder.take();
    }
  } catch (const Stop& stop) {
    document.problems.push_back(stop.problem);
    if (documents == 0) documents = 1;
  } catch (const YAML::Exception& error) {
    document.problems.push_back(broken_off(document, builder.place(error.mark), text, error.msg));
    if (documents == 0) documents = 1;
  }
  return documents;
}

}  // namespace

Document parse_document(const std::string& file, std::string_view text) {
  Document document;
  document.file = file;
  if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
  if (!readable_text(document, text)) return document;
  TreeBuilder builder(document, text);
  Node root;
  const int documents = parse_all(document, builder, text, root);
  const auto refuse = [&](const Place& at, std::string what, std::string would_do) {
    document.problems.push_back({document.mark(at, {}), std::move(what), std::move(would_do)});
  };
  if (documents > 1) refuse({1, 1, 0}, "holds more than one document", "keep one; remove the --- lines");
  const bool broken = !document.problems.empty();
  if (root.kind == NodeKind::map) {
    document.root = std::move(root);
  } else if (root.kind != NodeKind::null) {
    refuse(root.place, fmt::format("holds {} where keys are wanted", describe_node(root)),
           "write keys with their values, such as name: value");
  } else if (!broken) {
    refuse({1, 1, 0}, "is empty", "write the keys it should hold");
  }
  return document;
}

Node parse_other_value(Document& document, std::string_view text, const Place& start,
                       const std::string& key) {
  Node value;
  value.place = start;
  TreeBuilder builder(document, text, start.override_number, start.column, key);
  const int documents = parse_all(document, builder, text, value);
  if (documents == 0) value.place = start;
  if (documents > 1) {
    document.problems.push_back(
        {document.mark(value.place, key), "holds more than one document", "give one value"});
  }
  return value;
}

}  // namespace bedwright
