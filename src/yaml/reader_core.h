// The part of the Reader that does not depend on the struct being read.
#pragma once

#include <functional>
#include <optional>
#include <string>
#include <vector>

#include "units/parse.h"
#include "yaml/describe.h"
#include "yaml/document.h"
#include "yaml/need.h"

namespace bedwright {

// Reads the keys of one map. Every fault becomes a Problem and reading goes on;
// a value at fault keeps what it was.
class ReaderCore {
 public:
  static constexpr OptionalKey optional{};

  // `node` is a map; `path` leads to it. All three outlive the reader.
  ReaderCore(const Document& document, const Node& node, std::string path, std::vector<Problem>& problems);

  void text(const char* key, std::string& value, const char* doc, Need need = {});
  void name(const char* key, Name& value, const char* doc, Need need = {});
  void path(const char* key, std::string& value, const char* doc, Need need = {});
  void paths(const char* key, std::vector<std::string>& values, std::size_t most, const char* doc,
             Need need = {});
  void flag(const char* key, bool& value, const char* doc, Need need = {});
  void flag(const char* key, std::optional<bool>& value, const char* doc, Need need = {});
  void number(const char* key, double& value, Range range, const char* doc, Need need = {});
  void count(const char* key, int& value, int low, int high, const char* doc, Need need = {});
  void counts(const char* key, std::vector<int>& values, int low, int high, std::size_t most, const char* doc,
              Need need = {});
  void length(const char* key, Mm& value, Range range, const char* doc, Need need = {});
  void length(const char* key, std::optional<Mm>& value, Range range, const char* doc, Need need = {});
  void lengths(const char* key, std::vector<Mm>& values, Range range, std::size_t most, const char* doc,
               Need need = {});
  void mass(const char* key, Kg& value, Range range, const char* doc, Need need = {});
  void stress(const char* key, Mpa& value, Range range, const char* doc, Need need = {});
  void angle(const char* key, Radians& value, Range range, const char* doc, Need need = {});

  // Call after the last key: reports the keys nobody asked for.
  void finish();

 protected:
  // What would be accepted; worked out only when a message needs it.
  using Words = std::function<std::string()>;
  // The value of a key, which is then known. Missing though required: a problem,
  // with `such_as` as what would do.
  const Node* take(const char* key, const char* doc, Need need, const Words& such_as);
  // The same, of the wanted kind; any other kind is a problem.
  const Node* take_map(const char* key, const char* doc, Need need);
  const Node* take_list(const char* key, std::size_t most, const char* doc, Need need);
  // The index in `words` of a choice's value, if it is one.
  std::optional<std::size_t> take_choice(const char* key, const std::vector<std::string>& words,
                                         const char* doc, Need need);
  bool require_map(const Node& node, const std::string& path);

  const Document& document() const { return document_; }
  std::vector<Problem>& problems() { return problems_; }
  std::string path_of(const char* key) const;

 private:
  std::optional<double> quantity(const Node& node, const std::string& path, Dimension dimension, Range range);
  void quantity(const char* key, double& value, Dimension dimension, Range range, const char* doc, Need need);
  std::optional<std::string> line(const Node& node, const std::string& path);
  std::optional<double> plain_number(const Node& node, const std::string& path, const std::string& such_as);
  std::optional<int> whole_number(const Node& node, const std::string& path, int low, int high);
  void problem(const Node& node, const std::string& path, std::string what, std::string would_do);

  const Document& document_;
  const Node& node_;
  std::string path_;
  std::vector<Problem>& problems_;
  std::vector<std::string> known_;
};

}  // namespace bedwright
