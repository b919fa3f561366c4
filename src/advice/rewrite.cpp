// Writes a list of changes into the text of an order file.
#include "advice/rewrite.h"

#include <filesystem>

#include "yaml/document.h"
#include "yaml/edit.h"
#include "yaml/key_path.h"

namespace bedwright {

std::variant<std::string, Change> rewritten(std::string text, const std::vector<Change>& changes) {
  for (const Change& change : changes) {
    const bool elsewhere = change.key.starts_with("kit.") || change.key.starts_with("frame.");
    auto written = elsewhere ? with_entry(text, "overrides", change.key, change.value)
                             : with_value(text, change.key, change.value);
    if (!written) return change;
    text = std::move(*written);
  }
  return text;
}

std::variant<std::string, Change> moved_paths(std::string text, const std::string& from,
                                              const std::string& to) {
  namespace fs = std::filesystem;
  // A file named without a folder lies in the current one.
  const auto folder = [](const std::string& named) {
    return fs::absolute(named.empty() ? "." : named).lexically_normal();
  };
  const fs::path old_folder = folder(from), new_folder = folder(to);
  if (old_folder == new_folder) return text;
  const Document document = parse_document("", text);
  std::vector<std::pair<std::string, const Node*>> paths;
  for (const char* key : {"kit", "frame"})
    if (const Node* node = document.root.find(key)) paths.push_back({key, node});
  if (const Node* heading = document.root.find("order"))
    if (const Node* node = heading->find("assembly_template"); node && !node->scalar.empty())
      paths.push_back({"order.assembly_template", node});
  if (const Node* list = document.root.find("catalog"))
    for (std::size_t i = 0; i < list->children.size(); ++i)
      paths.push_back({path_to("catalog", i + 1), &list->children[i]});
  std::vector<Change> changes;
  for (const auto& [key, node] : paths)
    if (!fs::path(node->scalar).is_absolute())
      changes.push_back(
          {key,
           (old_folder / node->scalar).lexically_normal().lexically_relative(new_folder).generic_string()});
  return rewritten(std::move(text), changes);
}

}  // namespace bedwright
