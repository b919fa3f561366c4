// A small parser for values on one line.
#include "yaml/flow_value.h"

#include <algorithm>

namespace bedwright {
namespace {

// Well within what the YAML parser is asked to take, so that its limits are never met here.
constexpr std::size_t longest_value = 1 << 16, longest_key = 128;
constexpr int deepest_value = 16;

bool is_word(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9'); }
bool continues(char c) { return (static_cast<unsigned char>(c) & 0xC0) == 0x80; }
bool is_null_word(std::string_view text) {
  return text == "~" || text == "null" || text == "Null" || text == "NULL";
}

class FlowReader {
 public:
  FlowReader(std::string_view text, const Place& start) : text_(text), start_(start), here_(start) {}

  std::optional<Node> run() {
    if (text_.size() > longest_value || text_.starts_with("...")) return std::nullopt;
    Node node;
    skip_spaces();
    if (at_end()) {
      node.place = start_;
      return node;
    }
    if (!value(node)) return std::nullopt;
    skip_spaces();
    return at_end() ? std::optional(std::move(node)) : std::nullopt;
  }

 private:
  bool at_end() const { return at_ >= text_.size(); }
  char peek(std::size_t ahead = 0) const { return at_ + ahead < text_.size() ? text_[at_ + ahead] : '\0'; }
  // Columns count characters; the text is UTF-8.
  void step() {
    ++at_;
    if (!continues(peek())) ++here_.column;
  }
  bool take(char wanted) {
    if (peek() != wanted || at_end()) return false;
    step();
    return true;
  }
  void skip_spaces() {
    while (peek() == ' ') step();
  }

  bool value(Node& node) {
    if (depth_ > deepest_value) return false;
    node.place = here_;
    switch (peek()) {
      case '[':
        return list(node);
      case '{':
        return map(node);
      default:
        return scalar(node);
    }
  }

  bool scalar(Node& node) {
    node.place = here_;
    if (peek() == '"' || peek() == '\'') return quoted(node);
    return plain(node);
  }

  // Quotes without escapes but for the single quote written twice.
  bool quoted(Node& node) {
    const char quote = peek();
    node.kind = NodeKind::scalar;
    node.quoted = true;
    step();
    while (!at_end()) {
      const char c = peek();
      if (c == '\\' || c == '\n' || c == '\r' || c == '\t') return false;
      step();
      if (c == quote && (quote != '\'' || !take('\''))) return true;
      node.scalar += c;
    }
    return false;
  }

  bool starts_plain() const {
    const char c = peek();
    if (c == '-' || c == '+') return is_word(peek(1)) || peek(1) == '.';
    return is_word(c) || c == '.' || c == '/' || c == '(' || c == '_';
  }

  // Whether the character here goes on with a plain scalar begun.
  bool goes_on() const {
    const char c = peek();
    if (is_word(c) || (static_cast<unsigned char>(c) & 0x80) != 0) return true;
    if (c == ',') return depth_ == 0;
    if (c == ':') return is_word(peek(1)) || peek(1) == '/' || peek(1) == '\\';
    return c != '\0' && std::string_view(" ./'\"+-_()&*!|>%@$;\\=<^~").find(c) != std::string_view::npos;
  }

  bool plain(Node& node) {
    if (peek() == '~') {
      step();
      return true;
    }
    if (!starts_plain()) return false;
    const std::size_t from = at_;
    while (!at_end() && goes_on()) step();
    std::string_view text = text_.substr(from, at_ - from);
    text = text.substr(0, text.find_last_not_of(' ') + 1);
    if (is_null_word(text)) return true;
    node.kind = NodeKind::scalar;
    node.scalar = text;
    return true;
  }

  bool list(Node& node) {
    node.kind = NodeKind::list;
    return entries(']', [&] { return value(node.children.emplace_back()); });
  }

  bool map(Node& node) {
    node.kind = NodeKind::map;
    return entries('}', [&] {
      Node key;
      if (!scalar(key) || key.scalar.empty() || key.scalar.size() > longest_key) return false;
      if (node.find(key.scalar) || !take(':') || !take(' ')) return false;
      skip_spaces();
      Node& child = node.children.emplace_back();
      child.key = std::move(key.scalar);
      child.key_place = key.place;
      return value(child);
    });
  }

  // What stands between brackets, with commas between.
  template <class Entry>
  bool entries(char close, Entry entry) {
    step();  // the bracket
    ++depth_;
    skip_spaces();
    bool more = !take(close);
    while (more) {
      if (!entry()) return false;
      skip_spaces();
      more = !take(close);
      if (more && !take(',')) return false;
      skip_spaces();
    }
    --depth_;
    return true;
  }

  std::string_view text_;
  Place start_, here_;
  std::size_t at_ = 0;
  int depth_ = 0;
};

}  // namespace

std::optional<Node> flow_value(std::string_view text, const Place& start) {
  return FlowReader(text, start).run();
}

}  // namespace bedwright
