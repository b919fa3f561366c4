// Fills a parameter struct from a document, through the struct's describe()
// (yaml/describe.h). Every fault is reported, not only the first.
//
//     Document document = parse_document(file, text);
//     Kit kit;
//     read_document(document, kit, problems);
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <type_traits>
#include <utility>
#include <vector>

#include "yaml/key_path.h"
#include "yaml/reader_core.h"

namespace bedwright {

class Reader : public ReaderCore {
 public:
  using ReaderCore::ReaderCore;

  template <class Enum>
  void choice(const char* key, Enum& value,
              std::initializer_list<std::pair<const char*, std::type_identity_t<Enum>>> words,
              const char* doc, Need need = {}) {
    std::vector<std::string> names;
    for (const auto& word : words) names.emplace_back(word.first);
    if (const auto index = take_choice(key, names, doc, need)) value = (words.begin() + *index)->second;
  }

  template <class S>
  void object(const char* key, S& value, const char* doc, Need need = {}) {
    if (const Node* node = take_map(key, doc, need)) read_into(*node, path_of(key), value);
  }

  template <class S>
  void object(const char* key, std::optional<S>& value, const char* doc, Need need = {}) {
    if (const Node* node = take_map(key, doc, need)) read_into(*node, path_of(key), value.emplace());
  }

  template <class S>
  void list(const char* key, std::vector<S>& values, std::size_t most, const char* doc, Need need = {}) {
    const Node* node = take_list(key, most, doc, need);
    if (!node) return;
    values.clear();
    for (const Node& entry : node->children) {
      const std::string path = path_to(path_of(key), values.size() + 1);
      S& value = values.emplace_back();
      if (require_map(entry, path)) read_into(entry, path, value);
    }
  }

 private:
  template <class S>
  void read_into(const Node& node, std::string path, S& value) {
    Reader inner(document(), node, std::move(path), problems());
    describe(inner, value);
    inner.finish();
  }
};

// Reads the whole document into `value`. Adds the document's own problems, then
// those of its keys. When the file could not be read as a map, only the former.
template <class S>
void read_document(const Document& document, S& value, std::vector<Problem>& problems) {
  problems.insert(problems.end(), document.problems.begin(), document.problems.end());
  if (document.root.kind != NodeKind::map) return;
  Reader reader(document, document.root, {}, problems);
  describe(reader, value);
  reader.finish();
}

}  // namespace bedwright
