// Looks up keys, and makes marks for messages.
#include "yaml/document.h"

#include <algorithm>

#include "yaml/key_path.h"
#include "yaml/text.h"

namespace bedwright {

const Node* Node::find(std::string_view wanted) const {
  if (kind != NodeKind::map) return nullptr;
  const auto found =
      std::find_if(children.begin(), children.end(), [&](const Node& child) { return child.key == wanted; });
  return found == children.end() ? nullptr : &*found;
}

Node* Node::find(std::string_view wanted) {
  return const_cast<Node*>(static_cast<const Node*>(this)->find(wanted));
}

Mark Document::mark(const Place& place, const std::string& key) const {
  if (place.override_number == 0) return {file, place.line, place.column, key};
  if (place.override_number < 0) {
    Mark written = override_marks.at(static_cast<std::size_t>(-place.override_number - 1));
    written.key = key_prefix + key;
    return written;
  }
  return {"--set", place.line, place.column, key_prefix + key};
}

Mark mark_of(const Document& document, const std::string& key) {
  const Node* node = &document.root;
  Place at = node->place.line > 0 ? node->place : Place{1, 1, 0};
  if (const auto steps = parse_key_path(key)) {
    for (const KeyStep& step : *steps) {
      const bool listed =
          node->kind == NodeKind::list && step.index >= 1 && step.index <= node->children.size();
      const Node* next =
          step.index > 0 ? (listed ? &node->children[step.index - 1] : nullptr) : node->find(step.key);
      if (!next) break;
      node = next;
      at = step.index > 0 ? node->place : node->key_place;
    }
  }
  return document.mark(at, key);
}

std::string describe_node(const Node& node) {
  switch (node.kind) {
    case NodeKind::list:
      return "a list";
    case NodeKind::map:
      return "a map";
    case NodeKind::scalar:
      return quoted(node.scalar);
    case NodeKind::null:
      break;
  }
  return "nothing";
}

}  // namespace bedwright
