// Handles the parser's events one by one, and refuses what we do not take.
#include "yaml/tree_builder.h"

#include <fmt/format.h>

#include <algorithm>

#include "yaml/key_path.h"
#include "yaml/slip.h"
#include "yaml/text.h"

namespace bedwright {

std::size_t count_nodes(const Node& node) {
  std::size_t total = 1;
  for (const Node& child : node.children) total += count_nodes(child);
  return total;
}

TreeBuilder::TreeBuilder(Document& document, std::string_view text, int override_number, int first_column,
                         std::string base_key)
    : document_(document),
      text_(text),
      line_starts_{0},
      override_number_(override_number),
      first_column_(first_column),
      base_key_(std::move(base_key)) {
  for (std::size_t i = 0; i < text.size(); ++i) {
    if (text[i] == '\n') line_starts_.push_back(i + 1);
  }
}

Node TreeBuilder::take() { return std::move(root_); }

Place TreeBuilder::place(const YAML::Mark& mark) const {
  if (mark.is_null())
    return override_number_ == 0 ? Place{1, 1, 0} : Place{override_number_, 1, override_number_};
  const auto line = std::min<std::size_t>(std::max(mark.line, 0), line_starts_.size() - 1);
  const std::size_t from = line_starts_[line];
  const std::size_t to = std::min(text_.size(), from + static_cast<std::size_t>(std::max(mark.column, 0)));
  const int column = 1 + characters(text_.substr(from, to - from));
  if (override_number_ == 0) return {static_cast<int>(line) + 1, column, 0};
  return {override_number_, line == 0 ? column + first_column_ - 1 : column, override_number_};
}

std::string TreeBuilder::path() const {
  std::string path = base_key_;
  for (const Open& open : stack_) {
    if (open.node.kind == NodeKind::list) {
      path = path_to(path, open.node.children.size() + 1);
    } else if (open.key_ready) {
      path = path_to(path, open.key);
    }
  }
  return path;
}

void TreeBuilder::problem(const Place& at, std::string what, std::string would_do) {
  document_.problems.push_back({document_.mark(at, path()), std::move(what), std::move(would_do)});
}

void TreeBuilder::count(std::size_t nodes, const Place& at) {
  nodes_ += nodes;
  if (nodes_ > most_nodes) {
    throw Stop{{document_.mark(at, path()),
                fmt::format("holds more than {} values, anchors and aliases unfolded", most_nodes),
                "shorten it or use fewer aliases"}};
  }
}

void TreeBuilder::reject_tag(const std::string& tag, const Place& at) {
  // "?" and "!" are the parser's words for a plain and a quoted value without a tag.
  if (tag.empty() || tag == "?" || tag == "!") return;
  problem(at, fmt::format("has the tag {}", quoted(tag)), "leave the tag out; tags are not used here");
}

void TreeBuilder::OnDocumentStart(const YAML::Mark&) { root_ = {}; }

void TreeBuilder::OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) {
  Node node;
  node.place = place(mark);
  count(1, node.place);
  add(std::move(node), anchor);
}

void TreeBuilder::OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                           const std::string& value) {
  Node node;
  node.kind = NodeKind::scalar;
  node.scalar = value;
  node.quoted = tag == "!";
  node.place = place(mark);
  count(1, node.place);
  reject_tag(tag, node.place);
  // The parser takes a quote that runs on through the rest of the file for closed at its end.
  const auto from = mark.is_null() ? text_.size()
                                   : line_starts_[static_cast<std::size_t>(mark.line)] +
                                         static_cast<std::size_t>(mark.column);
  if (const auto slip = node.quoted ? quote_left_open(text_, from) : std::nullopt)
    throw Stop{{document_.mark(node.place, path()), slip->what, slip->would_do}};
  add(std::move(node), anchor);
}

void TreeBuilder::OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) {
  const Place at = place(mark);
  const bool inside = std::ranges::any_of(stack_, [&](const Open& open) { return open.anchor == anchor; });
  if (inside) {
    throw Stop{{document_.mark(at, path()), "is an alias to something it is itself part of",
                "write the value out instead of the alias"}};
  }
  const auto found = anchors_.find(anchor);
  // The parser has refused aliases to anchors it has not seen; one whose key was let go is the rest.
  if (found == anchors_.end()) {
    throw Stop{
        {document_.mark(at, path()), "is an alias to nothing", "write the value out instead of the alias"}};
  }
  count(count_nodes(found->second), at);
  add(found->second, YAML::NullAnchor);
}

void TreeBuilder::open(NodeKind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor) {
  Open open;
  open.node.kind = kind;
  open.node.place = place(mark);
  open.anchor = anchor;
  count(1, open.node.place);
  reject_tag(tag, open.node.place);
  if (stack_.size() >= deepest_nesting) {
    throw Stop{{document_.mark(open.node.place, {}),
                fmt::format("is nested more than {} deep", deepest_nesting),
                "flatten it; a parameter file is a few levels deep"}};
  }
  stack_.push_back(std::move(open));
}

void TreeBuilder::OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                                  YAML::EmitterStyle::value) {
  open(NodeKind::list, mark, tag, anchor);
}

void TreeBuilder::OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                             YAML::EmitterStyle::value) {
  open(NodeKind::map, mark, tag, anchor);
}

void TreeBuilder::close() {
  Open done = std::move(stack_.back());
  stack_.pop_back();
  add(std::move(done.node), done.anchor);
}

void TreeBuilder::add(Node node, YAML::anchor_t anchor) {
  if (anchor != YAML::NullAnchor) {
    count(count_nodes(node), node.place);  // the copy kept for its aliases
    anchors_[anchor] = node;
  }
  if (stack_.empty()) {
    root_ = std::move(node);
    return;
  }
  Open& parent = stack_.back();
  if (parent.node.kind == NodeKind::list) {
    parent.node.children.push_back(std::move(node));
    return;
  }
  if (!parent.key_ready) {
    take_key(parent, node);
    return;
  }
  node.key = std::move(parent.key);
  node.key_place = parent.key_place;
  parent.key_ready = false;
  if (!parent.drop_value) parent.node.children.push_back(std::move(node));
}

void TreeBuilder::take_key(Open& map, const Node& node) {
  map.drop_value = node.kind != NodeKind::scalar || node.scalar.empty();
  map.key_place = node.place;
  if (map.drop_value) {
    problem(node.place, fmt::format("has {} for a key", describe_node(node)), "write a key as a plain word");
    map.key.assign(1, '?');
    map.key_ready = true;
    return;
  }
  map.key = node.scalar;
  map.key_ready = true;
  if (!map.keys.insert(node.scalar).second) {
    map.drop_value = true;
    const Node* first = map.node.find(node.scalar);
    problem(node.place, "is given a second time",
            first ? fmt::format("keep one of the two; the first is on line {}", first->key_place.line)
                  : "keep one of the two");
  }
}

}  // namespace bedwright
