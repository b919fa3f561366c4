// Writes a tree as JSON, and reads and checks one.
#include "yaml/tree_json.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <set>
#include <stdexcept>

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

// A file may nest so deep, and an override may put a value as deep behind a path as long.
constexpr int deepest_tree = 2 * deepest_nesting + 1;

Json place_json(const Place& place) {
  Json at = {place.line, place.column};
  if (place.override_number != 0) at.push_back(place.override_number);
  return at;
}

Json mark_json(const Mark& mark) {
  return {{"file", mark.file}, {"at", {mark.line, mark.column}}, {"key", mark.key}};
}

Json node_json(const Node& node) {
  Json json = Json::object();
  if (!node.key.empty()) json["key"] = node.key;
  if (node.key_place != Place{}) json["key_at"] = place_json(node.key_place);
  json["at"] = place_json(node.place);
  if (node.kind == NodeKind::scalar) json[node.quoted ? "quoted" : "text"] = node.scalar;
  if (node.kind != NodeKind::list && node.kind != NodeKind::map) return json;
  Json& children = json[node.kind == NodeKind::map ? "map" : "list"] = Json::array();
  for (const Node& child : node.children) children.push_back(node_json(child));
  return json;
}

[[noreturn]] void refuse(const std::string& where, const std::string& what) {
  throw std::invalid_argument(fmt::format("a document's tree, {}: {}", where, what));
}

// The keys of one object, each asked for once; what is left over at the end is refused.
class Keys {
 public:
  Keys(const Json& json, std::string where) : json_(json), where_(std::move(where)) {
    if (!json.is_object()) refuse(where_, "is no object");
  }

  const Json* find(const char* key) {
    const auto found = json_.find(key);
    if (found == json_.end()) return nullptr;
    ++asked_;
    return &*found;
  }
  const Json& get(const char* key) {
    const Json* found = find(key);
    if (!found) refuse(where_, fmt::format("has no {}", key));
    return *found;
  }
  std::string text(const char* key) { return as_text(get(key), key); }
  std::string as_text(const Json& json, const char* key) const {
    if (!json.is_string()) refuse(where_, fmt::format("{} is no text", key));
    return json.get<std::string>();
  }
  const Json& list(const char* key) { return as_list(get(key), key); }
  const Json& as_list(const Json& json, const char* key) const {
    if (!json.is_array()) refuse(where_, fmt::format("{} is no list", key));
    return json;
  }
  Place place(const char* key, std::size_t most) {
    const Json& at = list(key);
    const bool whole = std::all_of(at.begin(), at.end(), [](const Json& n) {
      return n.is_number_integer() && std::abs(n.get<double>()) < 1e9;
    });
    if (!whole || at.size() < 2 || at.size() > most) refuse(where_, fmt::format("{} is no place", key));
    return {at[0].get<int>(), at[1].get<int>(), at.size() == 3 ? at[2].get<int>() : 0};
  }
  bool has(const char* key) const { return json_.contains(key); }
  void finish() const {
    if (asked_ != json_.size()) refuse(where_, "has a key that is not known, or two where one belongs");
  }

 private:
  const Json& json_;
  std::string where_;
  std::size_t asked_ = 0;
};

// Each entry of a map has a key of its own; the entries of a list have none.
void check_keys(const Node& parent, const std::string& where) {
  std::set<std::string_view> keys;
  for (const Node& child : parent.children) {
    if (child.key.empty() == (parent.kind == NodeKind::map))
      refuse(where, "has an entry with a key too many or few");
    if (parent.kind == NodeKind::map && !keys.insert(child.key).second)
      refuse(where, fmt::format("has the key {} twice", child.key));
  }
}

void read_node(const Json& json, const std::string& where, int depth, Node& node) {
  if (depth > deepest_tree) refuse(where, "is nested too deep");
  Keys of(json, where);
  if (const Json* key = of.find("key")) node.key = of.as_text(*key, "key");
  if (of.has("key_at")) node.key_place = of.place("key_at", 3);
  node.place = of.place("at", 3);
  const auto read_text = [&](const Json& text) {
    node.kind = NodeKind::scalar;
    node.scalar = of.as_text(text, "its text");
  };
  const auto read_children = [&](NodeKind kind, const Json& list) {
    node.kind = kind;
    for (const Json& entry : of.as_list(list, "what it holds")) {
      const std::string place = fmt::format("{}/{}", where, node.children.size() + 1);
      read_node(entry, place, depth + 1, node.children.emplace_back());
    }
    check_keys(node, where);
  };
  if (const Json* text = of.find("text")) {
    read_text(*text);
  } else if (const Json* quoted = of.find("quoted")) {
    read_text(*quoted);
    node.quoted = true;
  } else if (const Json* list = of.find("list")) {
    read_children(NodeKind::list, *list);
  } else if (const Json* map = of.find("map")) {
    read_children(NodeKind::map, *map);
  }
  of.finish();
}

Mark mark_from(const Json& json, const std::string& where) {
  Keys of(json, where);
  const Place at = of.place("at", 2);
  Mark mark{of.text("file"), at.line, at.column, of.text("key")};
  of.finish();
  return mark;
}

Problem problem_from(const Json& json, const std::string& where) {
  Keys of(json, where);
  Problem problem{mark_from(of.get("where"), where + "/where"), of.text("what"), of.text("would_do")};
  of.finish();
  return problem;
}

}  // namespace

Json tree_json(const Document& document) {
  Json json = {{"file", document.file}, {"root", node_json(document.root)}};
  if (!document.key_prefix.empty()) json["key_prefix"] = document.key_prefix;
  for (const Problem& problem : document.problems)
    json["problems"].push_back(
        {{"where", mark_json(problem.where)}, {"what", problem.what}, {"would_do", problem.would_do}});
  for (const Mark& mark : document.override_marks) json["override_marks"].push_back(mark_json(mark));
  return json;
}

Document document_from_json(const Json& tree) {
  Document document;
  Keys of(tree, "the whole");
  document.file = of.text("file");
  read_node(of.get("root"), "root", 0, document.root);
  if (const Json* prefix = of.find("key_prefix")) document.key_prefix = of.as_text(*prefix, "key_prefix");
  if (const Json* problems = of.find("problems"))
    for (const Json& p : of.as_list(*problems, "problems"))
      document.problems.push_back(problem_from(p, fmt::format("problems/{}", document.problems.size() + 1)));
  if (const Json* marks = of.find("override_marks"))
    for (const Json& m : of.as_list(*marks, "override_marks"))
      document.override_marks.push_back(
          mark_from(m, fmt::format("override_marks/{}", document.override_marks.size() + 1)));
  of.finish();
  return document;
}

}  // namespace bedwright
