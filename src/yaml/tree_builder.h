// Turns the events of the YAML parser into our tree. Only parse_yaml.cpp needs it.
#pragma once

#include <yaml-cpp/eventhandler.h>
#include <yaml-cpp/mark.h>

#include <map>
#include <set>
#include <string>
#include <vector>

#include "yaml/document.h"

namespace bedwright {

// What stops the reading for good; everything less is added to the problems.
struct Stop {
  Problem problem;
};

class TreeBuilder : public YAML::EventHandler {
 public:
  // `text` is what the parser reads, to count columns in characters where the
  // parser counts bytes. For an override: its number, the column its value
  // starts in and the key it is for.
  TreeBuilder(Document& document, std::string_view text, int override_number = 0, int first_column = 1,
              std::string base_key = {});

  // The finished value, and whether the document had one.
  Node take();
  Place place(const YAML::Mark& mark) const;

  void OnDocumentStart(const YAML::Mark& mark) override;
  void OnDocumentEnd() override {}
  void OnNull(const YAML::Mark& mark, YAML::anchor_t anchor) override;
  void OnAlias(const YAML::Mark& mark, YAML::anchor_t anchor) override;
  void OnScalar(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                const std::string& value) override;
  void OnSequenceStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                       YAML::EmitterStyle::value style) override;
  void OnSequenceEnd() override { close(); }
  void OnMapStart(const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor,
                  YAML::EmitterStyle::value style) override;
  void OnMapEnd() override { close(); }

 private:
  // A list or map still being filled.
  struct Open {
    Node node;
    YAML::anchor_t anchor = YAML::NullAnchor;
    bool key_ready = false;  // map: the next node is the value of `key`
    std::string key;
    Place key_place;
    std::set<std::string, std::less<>> keys;
    bool drop_value = false;  // the key was faulty or repeated: its value is read and let go
  };

  void open(NodeKind kind, const YAML::Mark& mark, const std::string& tag, YAML::anchor_t anchor);
  void close();
  void add(Node node, YAML::anchor_t anchor);
  void take_key(Open& map, const Node& node);
  void count(std::size_t nodes, const Place& at);
  void reject_tag(const std::string& tag, const Place& at);
  void problem(const Place& at, std::string what, std::string would_do);
  std::string path() const;

  Document& document_;
  std::string_view text_;
  std::vector<std::size_t> line_starts_;
  int override_number_, first_column_;
  std::string base_key_;
  std::vector<Open> stack_;
  std::map<YAML::anchor_t, Node> anchors_;
  std::size_t nodes_ = 0;
  Node root_;
};

std::size_t count_nodes(const Node& node);

}  // namespace bedwright
