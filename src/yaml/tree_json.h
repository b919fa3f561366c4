// A document as JSON, with every line and column, so that a place without a YAML
// parser reads the same document and reports the same faults in the same words.
//
//     {"file": "kit.yaml", "root": NODE,
//      "problems": [{"where": MARK, "what": "...", "would_do": "..."}]}
//
// A NODE is {"at": PLACE} with what it holds: "text" for a scalar, or "quoted" for
// one in quotes, "list" with its entries or "map" with its values in order, each of
// these with its "key" and "key_at" (a PLACE); none of them for nothing. A PLACE is [line,
// column], or [line, column, override]. A MARK is {"file": "...", "at": [line,
// column], "key": "..."}. "problems", "key_prefix" and "override_marks" are there
// only where the document has them.
#pragma once

#include <nlohmann/json_fwd.hpp>

#include "yaml/document.h"

namespace bedwright {

// Throws nlohmann::json::exception when written out while a name or text in it is no UTF-8.
nlohmann::ordered_json tree_json(const Document& document);

// Throws std::invalid_argument, with the place in the JSON, for anything that
// tree_json does not make: a key too many or too few, a map with a key twice.
Document document_from_json(const nlohmann::ordered_json& tree);

}  // namespace bedwright
