// A YAML file as a tree that remembers where everything was written.
//
// The YAML taken is the part people write by hand: maps with plain keys, lists,
// plain and quoted scalars, anchors and aliases (copied where they are used).
// Everything else is a problem with its place: tags, keys that are not words,
// repeated keys, aliases inside their own anchor, more than one document. Size,
// depth and the tree an alias may grow into are bounded, so a hostile file costs
// a message, not the machine.
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "yaml/mark.h"
#include "yaml/problem.h"

namespace bedwright {

inline constexpr std::size_t largest_file = 1 << 20;  // bytes
inline constexpr int deepest_nesting = 64;
inline constexpr std::size_t most_nodes = 100'000;  // anchors and aliases counted as often as copied

enum class NodeKind { null, scalar, list, map };

struct Place {
  int line = 0, column = 0;  // 1-based
  // Which --set it came from, counted from 1; 0 for the file itself; -1 and below for
  // an override written in another file (Document::override_marks).
  int override_number = 0;

  friend bool operator==(const Place&, const Place&) = default;
};

struct Node {
  NodeKind kind = NodeKind::null;
  std::string scalar;  // without its quotes
  bool quoted = false;
  Place place;
  std::string key;  // in a map: the key this node is the value of, and where that stands
  Place key_place;
  std::vector<Node> children;  // of a list or a map, in order

  const Node* find(std::string_view wanted) const;  // nullptr when there is none, or this is no map
  Node* find(std::string_view wanted);
  friend bool operator==(const Node&, const Node&) = default;
};

struct Document {
  std::string file;        // as the user named it
  std::string key_prefix;  // "kit." where an override names this document's keys so
  Node root;               // null when the file could not be read as a map
  std::vector<Problem> problems;
  std::vector<Mark> override_marks;  // where override -1, -2, ... is written

  Mark mark(const Place& place, const std::string& key) const;
  friend bool operator==(const Document&, const Document&) = default;
};

// Never throws for anything in `text`. In parse_yaml.cpp, which is left out where there
// is no YAML parser; a document then comes from its tree (yaml/tree_json.h).
Document parse_document(const std::string& file, std::string_view text);

// The value a YAML flow text stands for, as behind the '=' of an override:
// "84 in", "[18 in, 222 in]", "{bunk: 4}". Places count from column `column` of
// override `number`, which is for `key`. Problems are added to the document's.
Node parse_value(Document& document, std::string_view text, int number, int column, const std::string& key);

// Where `key` ("track.clamps[2].bunk") stands: its key's place for a map's entry,
// the entry's own for a list's; the nearest thing above it when it is absent.
Mark mark_of(const Document& document, const std::string& key);

// "a map", "a list", "nothing", or the scalar in quotes.
std::string describe_node(const Node& node);

}  // namespace bedwright
