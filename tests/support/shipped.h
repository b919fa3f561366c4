// The files that come with the program, read from the disk once, for stores that have none.
#pragma once

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <stdexcept>
#include <string>
#include <vector>

#include "params/file_store.h"

namespace bedwright::testing {

struct Text {
  std::string path, bytes;  // "params/orders/base.yaml"
};

inline std::string bytes_of(const std::filesystem::path& file) {
  std::ifstream stream(file, std::ios::binary);
  if (!stream) throw std::runtime_error(file.string() + " cannot be read");
  return {std::istreambuf_iterator<char>(stream), {}};
}

// Everything below params/, by path.
inline std::vector<Text> shipped_texts(const std::filesystem::path& params) {
  std::vector<Text> texts;
  for (const auto& entry : std::filesystem::recursive_directory_iterator(params))
    if (entry.path().extension() == ".yaml")
      texts.push_back({"params/" + std::filesystem::relative(entry.path(), params).generic_string(),
                       bytes_of(entry.path())});
  std::sort(texts.begin(), texts.end(), [](const Text& a, const Text& b) { return a.path < b.path; });
  return texts;
}

// What `new` writes, as starter_inch and starter_metric among the orders.
inline std::vector<Text> starter_texts(const std::filesystem::path& templates) {
  std::vector<Text> texts;
  for (const std::string unit : {"inch", "metric"}) {
    std::string text = bytes_of(templates / ("order_" + unit + ".yaml"));
    const auto fill = [&text](const std::string& place, const std::string& with) {
      for (std::size_t at; (at = text.find(place)) != std::string::npos;)
        text.replace(at, place.size(), with);
    };
    fill("{{number}}", "QB-1");
    fill("{{date}}", "2026-11-28");
    fill("{{params}}", "..");
    texts.push_back({"params/orders/starter_" + unit + ".yaml", text});
  }
  return texts;
}

// Both, parsed.
inline std::vector<StoredFile> shipped_files(const std::filesystem::path& top) {
  std::vector<Text> texts = shipped_texts(top / "params");
  const std::vector<Text> starters = starter_texts(top / "templates");
  texts.insert(texts.end(), starters.begin(), starters.end());
  std::vector<StoredFile> files;
  for (const Text& text : texts) files.push_back({text.bytes, parse_document(text.path, text.bytes)});
  return files;
}

inline std::string shipped_order(const std::string& name) { return "params/orders/" + name + ".yaml"; }

}  // namespace bedwright::testing
