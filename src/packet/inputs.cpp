// Rewrites an order's references to the files kept beside it.
#include "packet/inputs.h"

#include <fmt/format.h>

#include <algorithm>
#include <set>
#include <stdexcept>

#include "formats/digest.h"
#include "yaml/edit.h"
#include "yaml/key_path.h"

namespace bedwright {
namespace {

constexpr std::size_t longest_name = 64;

// A file's own name in letters every disk takes and YAML reads as they are. Of two that
// come out alike the later gets a number before it, which a second packing keeps.
class Names {
 public:
  std::string fresh(const std::string& path) {
    std::string name = path.substr(path.find_last_of('/') + 1);
    for (char& c : name)
      if (!((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '-' ||
            c == '.' || c == '_'))
        c = '_';
    if (name.size() > longest_name) name.erase(0, name.size() - longest_name);
    if (name.empty() || name[0] == '.') name.insert(0, "_");
    std::string one = name;
    for (int n = 2; !taken_.insert(one).second; ++n) one = fmt::format("{}-{}", n, name);
    return one;
  }

 private:
  std::set<std::string> taken_;
};

std::string digest_of(std::vector<ListedFile> files) {
  std::sort(files.begin(), files.end(),
            [](const ListedFile& a, const ListedFile& b) { return a.path < b.path; });
  std::string all;
  for (const ListedFile& file : files) all += file.sha256 + "  " + file.path + "\n";
  return sha256(all);
}

}  // namespace

std::vector<PacketFile> packed_inputs(const Job& job, const std::vector<InputFile>& inputs,
                                      std::vector<Problem>& problems) {
  const std::size_t catalogs = job.order.catalog.size();
  if (inputs.size() != 3 + catalogs + 2)
    throw std::logic_error("inputs: order, kit, frame, catalogue, letterhead and steps are wanted");
  std::vector<PacketFile> files = {{inputs_order, inputs[0].content}};
  std::vector<std::pair<std::string, std::string>> references;
  const auto put = [&](const std::string& key, const std::string& path, const InputFile& file) {
    if (!key.empty()) references.emplace_back(key, path);
    files.push_back({inputs_folder + path, file.content});
  };
  put("kit", "kit/" + Names().fresh(inputs[1].path), inputs[1]);
  put("frame", "frame/" + Names().fresh(inputs[2].path), inputs[2]);
  Names names;
  for (std::size_t i = 0; i < catalogs; ++i)
    put(path_to("catalog", i + 1), "catalog/" + names.fresh(inputs[3 + i].path), inputs[3 + i]);
  put("", "words/letterhead.txt", inputs[3 + catalogs]);
  put("", "words/steps.txt", inputs[4 + catalogs]);
  // Named even where the words are those that come with the program: its next version's differ.
  references.emplace_back("order.assembly_template", "words");
  for (const auto& [key, path] : references) {
    auto text = with_value(files.front().content, key, path);
    if (!text) {
      problems.push_back({{inputs[0].path, 0, 0, key},
                          "cannot be rewritten in the copy that is kept with the release",
                          "write it plainly on a line of its own, without an anchor or an alias"});
      return {};
    }
    files.front().content = std::move(*text);
  }
  return files;
}

std::string digest_of_inputs(const std::vector<PacketFile>& packed) {
  std::vector<ListedFile> files;
  for (const PacketFile& file : packed) files.push_back({file.path, sha256(file.content)});
  return digest_of(std::move(files));
}

std::string digest_of_inputs(const Recorded& record) {
  std::vector<ListedFile> files;
  for (const ListedFile& file : record.files)
    if (file.path.starts_with(inputs_folder)) files.push_back(file);
  return digest_of(std::move(files));
}

}  // namespace bedwright
