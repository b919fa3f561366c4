// Walks to the value an override names, and puts the new one there.
#include "yaml/override.h"

#include <fmt/format.h>

#include "yaml/key_path.h"
#include "yaml/text.h"

namespace bedwright {
namespace {

class Override {
 public:
  Override(Document& document, int number, int skipped)
      : document_(document), at_{number, skipped + 1, number} {}

  void apply(const std::string& text) {
    const std::size_t equals = text.find('=');
    if (equals == std::string::npos) {
      return refuse({}, fmt::format("{} has no =", quoted(text)), "write it as key=value");
    }
    const std::string path = text.substr(0, equals);
    if (path.empty()) return refuse({}, "has nothing before its =", "write it as key=value");
    const auto steps = parse_key_path(path);
    if (!steps) {
      return refuse(path, "is no path to a key",
                    "write it as key.key or list[2].key, entries counted from 1");
    }
    if (steps->size() > deepest_nesting) return refuse(path, "is too deep", "name a key the files have");
    const std::size_t faults = document_.problems.size();
    const int column = at_.column + static_cast<int>(equals) + 1;
    Node value = parse_value(document_, std::string_view(text).substr(equals + 1), at_.line, column, path);
    if (document_.problems.size() > faults) return;
    // Done on a copy, so that a path that fails half way has made nothing.
    Node root = document_.root;
    if (place_value(root, *steps, path, std::move(value))) document_.root = std::move(root);
  }

 private:
  void refuse(const std::string& key, std::string what, std::string would_do) {
    document_.problems.push_back({document_.mark(at_, key), std::move(what), std::move(would_do)});
  }

  bool place_value(Node& root, const std::vector<KeyStep>& steps, const std::string& path, Node value) {
    Node* node = &root;
    std::string walked;
    for (const KeyStep& step : steps) {
      node = step.index > 0 ? entry(*node, step.index, walked, path) : child(*node, step.key, walked, path);
      if (!node) return false;
      walked = step.index > 0 ? path_to(walked, step.index) : path_to(walked, step.key);
    }
    value.key = node->key;
    value.key_place = at_;
    *node = std::move(value);
    return true;
  }

  // A null, such as a key with nothing behind it, becomes what the path needs.
  bool become(Node& node, NodeKind kind) {
    if (node.kind == NodeKind::null) {
      node.kind = kind;
      node.place = at_;
    }
    return node.kind == kind;
  }

  Node* child(Node& node, const std::string& key, const std::string& walked, const std::string& path) {
    if (!become(node, NodeKind::map)) {
      refuse(path, fmt::format("leads through {}, which is {}", walked, describe_node(node)),
             node.kind == NodeKind::list ? fmt::format("name an entry, such as {}[1]", walked)
                                         : "name a key that has keys of its own");
      return nullptr;
    }
    if (Node* found = node.find(key)) return found;
    return &added(node, key);
  }

  Node* entry(Node& node, std::size_t index, const std::string& walked, const std::string& path) {
    if (!become(node, NodeKind::list)) {
      refuse(path, fmt::format("numbers an entry of {}, which is {}", walked, describe_node(node)),
             "number the entries of a list only");
      return nullptr;
    }
    const std::size_t size = node.children.size();
    if (index <= size) return &node.children[index - 1];
    if (index == size + 1) return &added(node, {});
    refuse(path, fmt::format("names entry {} of {}, which has {}", index, walked, size),
           size == 0 ? "use entry 1 to add the first"
                     : fmt::format("use an entry from 1 to {}, or {} to add one", size, size + 1));
    return nullptr;
  }

  Node& added(Node& parent, const std::string& key) {
    Node& node = parent.children.emplace_back();
    node.key = key;
    node.place = node.key_place = at_;
    return node;
  }

  Document& document_;
  Place at_;
};

}  // namespace

void apply_set(Document& document, const std::string& text, int number, int skipped) {
  Override(document, number, skipped).apply(text);
}

void apply_written(Document& document, const std::string& key, const std::string& value,
                   const Mark& written) {
  document.override_marks.push_back(written);
  Override(document, -static_cast<int>(document.override_marks.size()), 0).apply(key + "=" + value);
}

}  // namespace bedwright
