// Finds a value in the text, writes the new one, and proves the rest unchanged.
#include "yaml/edit.h"

#include <fmt/format.h>

#include <algorithm>
#include <vector>

#include "yaml/document.h"
#include "yaml/key_path.h"
#include "yaml/override.h"

namespace bedwright {
namespace {

// The same but for places, quoting and the order of a map's keys.
bool says_the_same(const Node& a, const Node& b) {
  if (a.kind != b.kind || a.scalar != b.scalar || a.children.size() != b.children.size()) return false;
  for (std::size_t i = 0; i < a.children.size(); ++i) {
    const Node* other = a.kind == NodeKind::map ? b.find(a.children[i].key) : &b.children[i];
    if (!other || !says_the_same(a.children[i], *other)) return false;
  }
  return true;
}

std::size_t start_of_line(const std::string& text, int line) {
  std::size_t at = 0;
  for (int i = 1; i < line; ++i) {
    at = text.find('\n', at);
    if (at == std::string::npos) return text.size();
    ++at;
  }
  return at;
}

// Columns count characters; the text is UTF-8.
std::size_t byte_at(const std::string& text, const Place& place) {
  std::size_t at = start_of_line(text, place.line);
  for (int column = 1; column < place.column && at < text.size(); ++column) {
    ++at;
    while (at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0) == 0x80) ++at;
  }
  return at;
}

// Bytes the scalar takes up as written; nothing when it is not written plainly there.
std::optional<std::size_t> written_size(const std::string& text, std::size_t at, const Node& node) {
  if (text.compare(at, node.scalar.size(), node.scalar) == 0 && !node.quoted) return node.scalar.size();
  const char quote = at < text.size() ? text[at] : ' ';
  if (quote != '"' && quote != '\'') return std::nullopt;
  for (std::size_t i = at + 1; i < text.size(); ++i) {
    const bool escaped = quote == '"' && text[i] == '\\';
    const bool doubled = quote == '\'' && text.compare(i, 2, "''") == 0;
    if (escaped || doubled)
      ++i;
    else if (text[i] == quote)
      return i + 1 - at;
  }
  return std::nullopt;
}

std::string quoted_value(const std::string& value) {
  std::string out = "\"";
  for (const char c : value) {
    if (c == '"' || c == '\\') out += '\\';
    out += c;
  }
  return out + '"';
}

// The node a path leads to; `rest` is what of the path is not there.
const Node* walk(const Node& root, const std::vector<KeyStep>& steps, std::size_t& walked) {
  const Node* node = &root;
  for (walked = 0; walked < steps.size(); ++walked) {
    const KeyStep& step = steps[walked];
    const bool listed =
        node->kind == NodeKind::list && step.index >= 1 && step.index <= node->children.size();
    const Node* next =
        step.index > 0 ? (listed ? &node->children[step.index - 1] : nullptr) : node->find(step.key);
    if (!next) return node;
    node = next;
  }
  return node;
}

// Whether only blanks (and list dashes) stand before `at` on its line.
bool starts_its_line(const std::string& text, std::size_t at) {
  while (at > 0 && (text[at - 1] == ' ' || text[at - 1] == '-')) --at;
  return at == 0 || text[at - 1] == '\n';
}

std::size_t line_start(const std::string& text, std::size_t at) {
  const std::size_t line_end = at == 0 ? std::string::npos : text.rfind('\n', at - 1);
  return line_end == std::string::npos ? 0 : line_end + 1;
}

// `entry` ahead of what starts at `at`: on a line of its own with the same
// indentation, or within brackets with a comma.
std::string put_ahead(const std::string& text, std::size_t at, const std::string& entry) {
  if (!starts_its_line(text, at)) return text.substr(0, at) + entry + ", " + text.substr(at);
  const std::size_t line = line_start(text, at);
  const std::string indent = text.substr(line, at - line);
  return text.substr(0, line) + indent + entry + "\n" + text.substr(line);
}

std::string at_the_end(std::string text, const std::string& lines) {
  if (!text.empty() && text.back() != '\n') text += '\n';
  return text + "\n" + lines;
}

// Every plausible writing of the value; the caller keeps the first that says what is meant.
std::vector<std::string> writings(const std::string& value) { return {value, quoted_value(value)}; }

std::optional<std::string> write_value(const std::string& text, const Node& root,
                                       const std::vector<KeyStep>& steps, const std::string& value) {
  std::size_t walked = 0;
  const Node* node = walk(root, steps, walked);
  if (walked == steps.size()) {
    if (node->kind != NodeKind::scalar || node->place.line == 0) return std::nullopt;
    const std::size_t at = byte_at(text, node->place);
    const auto size = written_size(text, at, *node);
    return size ? std::optional(text.substr(0, at) + value + text.substr(at + *size)) : std::nullopt;
  }
  const KeyStep& missing = steps[walked];
  if (missing.index > 0) return std::nullopt;
  if (walked + 1 == steps.size() && walked > 0 && node->kind == NodeKind::map && !node->children.empty())
    return put_ahead(text, byte_at(text, node->children.front().key_place),
                     fmt::format("{}: {}", missing.key, value));
  if (walked > 0) return std::nullopt;
  std::string lines, indent;
  for (const KeyStep& step : steps) {
    if (step.index > 0) return std::nullopt;
    lines += fmt::format("{}{}:", indent, step.key);
    indent += "  ";
    lines += &step == &steps.back() ? fmt::format(" {}\n", value) : "\n";
  }
  return at_the_end(text, lines);
}

// A written list starts at its bracket or at its first entry.
std::optional<std::string> write_entry(const std::string& text, const Node* list, const std::string& name,
                                       const std::string& entry) {
  if (!list) return at_the_end(text, fmt::format("{}:\n  - {}\n", name, entry));
  if (list->kind != NodeKind::list) return std::nullopt;
  const std::size_t at = byte_at(text, list->place);
  if (at < text.size() && text[at] == '[')
    return text.substr(0, at + 1) + entry + (list->children.empty() ? "" : ", ") + text.substr(at + 1);
  const std::size_t line = start_of_line(text, list->place.line), dash = text.find('-', line);
  if (dash == std::string::npos) return std::nullopt;
  return text.substr(0, line) + text.substr(line, dash - line) + "- " + entry + "\n" + text.substr(line);
}

bool parses_to(const std::string& text, const Node& wanted) {
  const Document document = parse_document("", text);
  return document.problems.empty() && says_the_same(document.root, wanted);
}

}  // namespace

std::optional<std::string> with_value(const std::string& text, const std::string& key,
                                      const std::string& value) {
  const Document document = parse_document("", text);
  const auto steps = parse_key_path(key);
  if (!document.problems.empty() || !steps) return std::nullopt;
  Document wanted = document;
  apply_set(wanted, key + "=" + value);
  if (!wanted.problems.empty()) return std::nullopt;
  for (const std::string& writing : writings(value)) {
    auto written = write_value(text, document.root, *steps, writing);
    if (written && parses_to(*written, wanted.root)) return written;
  }
  return std::nullopt;
}

std::optional<std::string> with_entry(const std::string& text, const std::string& list,
                                      const std::string& key, const std::string& value) {
  const Document document = parse_document("", text);
  if (!document.problems.empty()) return std::nullopt;
  const Node* entries = document.root.find(list);
  if (entries && entries->kind == NodeKind::list)
    for (std::size_t i = 0; i < entries->children.size(); ++i) {
      const Node* named = entries->children[i].find("key");
      if (named && named->scalar == key)
        return with_value(text, fmt::format("{}[{}].value", list, i + 1), value);
    }
  Document wanted = document;
  const std::string entry = fmt::format("{{key: {}, value: {}}}", key, quoted_value(value));
  if (!entries)
    apply_set(wanted, fmt::format("{}=[{}]", list, entry));
  else {
    Node* known = wanted.root.find(list);
    if (known->kind != NodeKind::list) return std::nullopt;
    known->children.insert(known->children.begin(), parse_value(wanted, entry, 1, 1, list));
  }
  for (const std::string& writing : writings(value)) {
    auto written = write_entry(text, entries, list, fmt::format("{{key: {}, value: {}}}", key, writing));
    if (written && parses_to(*written, wanted.root)) return written;
  }
  return std::nullopt;
}

}  // namespace bedwright
