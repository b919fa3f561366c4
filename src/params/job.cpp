#include "params/job.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <tuple>

#include "params/cross_check.h"
#include "params/input.h"
#include "yaml/document.h"
#include "yaml/key_path.h"
#include "yaml/override.h"
#include "yaml/reader.h"

namespace bedwright {
namespace {

constexpr std::string_view kit_prefix = "kit.", frame_prefix = "frame.";

// One reading of an order: the job being filled, its documents, and all that is wrong.
class Loading {
 public:
  Loading(const std::string& order_path, const std::vector<std::string>& sets) : order_path_(order_path) {
    job_.sets = sets;
    kit_.key_prefix = kit_prefix;
    frame_.key_prefix = frame_prefix;
  }

  std::variant<Job, std::vector<Problem>> run() {
    const auto bytes = read_bytes(order_path_, {order_path_, 0, 0, {}}, problems_);
    if (!bytes) return problems_;
    open(order_, order_path_, *bytes);
    read_document(order_, job_.order, problems_);
    if (open_named("kit", job_.order.kit, kit_)) read_document(kit_, job_.kit, problems_);
    if (open_named("frame", job_.order.frame, frame_)) read_document(frame_, job_.frame, problems_);
    const bool catalog_is_whole = read_catalogs();
    CrossCheck(job_, order_, kit_, frame_, catalog_is_whole, problems_).run();
    if (problems_.empty()) return std::move(job_);
    sort_problems();
    return problems_;
  }

 private:
  void open(Document& document, const std::string& path, const std::string& bytes) {
    job_.inputs.push_back({path, bytes});
    std::string prefix = std::move(document.key_prefix);
    document = parse_document(path, bytes);
    document.key_prefix = std::move(prefix);
    apply_sets(document);
  }

  // Each override goes to the document its key starts with the name of, the order's by default.
  void apply_sets(Document& document) {
    for (std::size_t i = 0; i < job_.sets.size(); ++i) {
      const std::string& set = job_.sets[i];
      const std::string_view prefix = set.starts_with(kit_prefix)     ? kit_prefix
                                      : set.starts_with(frame_prefix) ? frame_prefix
                                                                      : std::string_view{};
      if (prefix != document.key_prefix) continue;
      apply_set(document, set.substr(prefix.size()), static_cast<int>(i) + 1,
                static_cast<int>(prefix.size()));
    }
  }

  // The bytes of the file a key of the order names; `path` becomes how it is opened.
  std::optional<std::string> named_bytes(const std::string& key, const std::string& written,
                                         std::string& path) {
    if (written.empty()) return std::nullopt;  // missing or faulty; reading the order has said so
    path = beside(order_path_, written);
    const Mark where = mark_of(order_, key);
    for (const InputFile& file : job_.inputs) {
      if (!same_file(file.path, path)) continue;
      const bool itself = &file == &job_.inputs.front();
      problems_.push_back({where,
                           itself ? "names the order file itself"
                                  : fmt::format("names {}, which is already read for another key", path),
                           "name another file"});
      return std::nullopt;
    }
    return read_bytes(path, where, problems_);
  }

  bool open_named(const std::string& key, const std::string& written, Document& document) {
    std::string path;
    const auto bytes = named_bytes(key, written, path);
    if (bytes) open(document, path, *bytes);
    return bytes.has_value();
  }

  // Whether every catalogue file was there and sound, so that a name not found is a name at fault.
  bool read_catalogs() {
    bool whole = !job_.order.catalog.empty();
    for (std::size_t i = 0; i < job_.order.catalog.size(); ++i) {
      std::string path;
      const auto bytes = named_bytes(path_to("catalog", i + 1), job_.order.catalog[i], path);
      if (!bytes) {
        whole = false;
        continue;
      }
      job_.inputs.push_back({path, *bytes});
      const std::size_t before = problems_.size();
      read_catalog(path, *bytes, job_.catalog, problems_);
      whole = whole && problems_.size() == before;
    }
    return whole;
  }

  // Files in the order they are read, overrides last; within a file by line and column.
  void sort_problems() {
    const auto file_rank = [&](const std::string& file) {
      const auto found = std::ranges::find(job_.inputs, file, &InputFile::path);
      return std::pair{file == "--set", found - job_.inputs.begin()};
    };
    std::ranges::stable_sort(problems_, {}, [&](const Problem& problem) {
      return std::tuple{file_rank(problem.where.file), problem.where.line, problem.where.column};
    });
  }

  std::string order_path_;
  Job job_;
  Document order_, kit_, frame_;
  std::vector<Problem> problems_;
};

}  // namespace

std::variant<Job, std::vector<Problem>> load_job(const std::string& order_path,
                                                 const std::vector<std::string>& sets) {
  return Loading(order_path, sets).run();
}

}  // namespace bedwright
