// What a page loads: one function, JSON in and JSON out.
//
//     examine('{"files": {PATH: TREE, ...}, "order": PATH, "sets": ["KEY=VALUE", ...]}')
//
// A TREE is a file already parsed (yaml/tree_json.h) and says its own PATH; every file
// the order names must be among them, and nothing else is looked for. The answer has one
// of these shapes (examine/findings_json.h):
//
//     {"problems": [...]}    the order cannot be read or laid out
//     {"stopped": bool, "open": n, "counts": {...}, "findings": [...]}
//     {"error": "..."}       what was asked is not of the form above
//
// There is no geometry kernel here: the pairs only it can decide stay "open", as
// warnings. Nothing is kept from one call to the next, and a call that fails leaves the
// module as it was.
//
// Bound by embind, not as a plain C function: it takes a text of any length to the
// module and back as UTF-8 and frees it; a C function would leave that to every caller,
// and the usual wrapper of one puts its text on the stack, where a catalogue may not fit.
#include <emscripten/bind.h>
#include <fmt/format.h>

#include <nlohmann/json.hpp>
#include <stdexcept>

#include "examine/findings_json.h"
#include "yaml/tree_json.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

std::vector<StoredFile> files_in(const Json& trees) {
  std::vector<StoredFile> files;
  for (const auto& [path, tree] : trees.items()) {
    // Its bytes are for the digest of a packet, which is not made here.
    files.push_back({"", document_from_json(tree)});
    if (files.back().document.file != path)
      throw std::invalid_argument(
          fmt::format("the file {} calls itself {}", path, files.back().document.file));
  }
  return files;
}

Json answer_to(const Json& asked) {
  const bool known = asked.is_object() && asked.size() == 3 && asked.contains("files") &&
                     asked["files"].is_object() && asked.contains("order") && asked["order"].is_string() &&
                     asked.contains("sets") && asked["sets"].is_array();
  if (!known) throw std::invalid_argument("asked must be {\"files\": {}, \"order\": \"\", \"sets\": []}");
  FileStore store(files_in(asked["files"]));
  const auto order = asked["order"].get<std::string>();
  const auto sets = asked["sets"].get<std::vector<std::string>>();
  return unjudged_json(examine(store, order, sets));
}

// A byte that is no UTF-8 in a name must not cost the answer.
std::string text_of(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

std::string examine_json(const std::string& asked) {
  try {
    return text_of(answer_to(Json::parse(asked)));
  } catch (const std::exception& error) {
    return text_of({{"error", error.what()}});
  }
}

}  // namespace

EMSCRIPTEN_BINDINGS(bedwright) { emscripten::function("examine", &examine_json); }

}  // namespace bedwright
