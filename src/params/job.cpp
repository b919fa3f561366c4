// Loads order, kit, frame and catalogue, and runs the checks between them.
#include "params/job.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "params/cross_check.h"
#include "params/file_store.h"
#include "units/print.h"
#include "units/tape.h"
#include "yaml/document.h"
#include "yaml/key_path.h"
#include "yaml/override.h"
#include "yaml/reader.h"

namespace bedwright {
namespace {

constexpr std::string_view kit_prefix = "kit.", frame_prefix = "frame.";

// Places the order gives by the track become distances from its front. A fraction
// comes to the tape's nearest mark, as someone will lay it out.
void work_out_places(Order& order, const Kit& kit) {
  const Mm total = track_length(order, kit);
  if (order.axle.fraction > 0) order.axle.position = on_tape(order.axle.fraction * total, order.order.tape);
  for (const Mm ahead : order.jacks_from_rear) order.jacks.push_back(total - ahead);
  if (order.jacks.size() < 2) return;
  const auto [first, last] = std::minmax_element(order.jacks.begin(), order.jacks.end());
  const Mm from = *first, apart = (*last - *first) / (order.jacks_between + 1);
  for (int i = 1; i <= order.jacks_between; ++i)
    order.jacks.push_back(on_tape(from + i * apart, order.order.tape));
}

// A metric order that names no tape is laid out with one in millimetres.
void assume_tape(const Document& order, Heading& heading) {
  const Node* written = order.root.find("order");
  if (heading.printing == Printing::metric && written && !written->find("tape")) heading.tape = 1;
}

// One reading of an order: the job being filled, its documents, and all that is wrong.
class Loading {
 public:
  Loading(FileStore& store, const std::string& order_path, const std::vector<std::string>& sets)
      : store_(store), order_path_(order_path) {
    job_.sets = sets;
    kit_.key_prefix = kit_prefix;
    frame_.key_prefix = frame_prefix;
  }

  std::variant<Job, std::vector<Problem>> run() {
    const FileStore::File* file = store_.file(order_path_, {order_path_, 0, 0, {}}, problems_);
    if (!file) return problems_;
    open(order_, order_path_, *file);
    read_document(order_, job_.order, problems_);
    assume_tape(order_, job_.order.order);
    if (open_named("kit", job_.order.kit, kit_)) read_document(kit_, job_.kit, problems_);
    if (open_named("frame", job_.order.frame, frame_)) read_document(frame_, job_.frame, problems_);
    const bool catalog_is_whole = read_catalogs();
    CrossCheck(job_, order_, kit_, frame_, catalog_is_whole, problems_).run();
    if (!problems_.empty()) {
      sort_problems();
      return problems_;
    }
    work_out_places(job_.order, job_.kit);
    return std::move(job_);
  }

 private:
  void open(Document& document, const std::string& path, const FileStore::File& file) {
    job_.inputs.push_back({path, file.content});
    std::string prefix = std::move(document.key_prefix);
    document = file.document;
    document.key_prefix = std::move(prefix);
    apply_overrides(document);
    apply_sets(document);
  }

  // What the order says of the keys of this file.
  void apply_overrides(Document& document) {
    if (document.key_prefix.empty()) return;
    for (const OrderOverride& o : job_.order.overrides) {
      if (!o.key.text.starts_with(document.key_prefix) || o.value.text.empty()) continue;
      apply_written(document, o.key.text.substr(document.key_prefix.size()), o.value.text, o.value.mark);
    }
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

  // The file a key of the order names; `path` becomes how it is opened.
  const FileStore::File* named_file(const std::string& key, const std::string& written, std::string& path) {
    if (written.empty()) return nullptr;  // missing or faulty; reading the order has said so
    path = store_.beside(order_path_, written);
    const Mark where = mark_of(order_, key);
    for (const InputFile& file : job_.inputs) {
      if (!store_.same_file(file.path, path)) continue;
      const bool itself = &file == &job_.inputs.front();
      problems_.push_back({where,
                           itself ? "names the order file itself"
                                  : fmt::format("names {}, which is already read for another key", path),
                           "name another file"});
      return nullptr;
    }
    return store_.file(path, where, problems_);
  }

  bool open_named(const std::string& key, const std::string& written, Document& document) {
    std::string path;
    const FileStore::File* file = named_file(key, written, path);
    if (file) open(document, path, *file);
    return file != nullptr;
  }

  // Whether every catalogue file was there and sound, so that a name not found is a name at fault.
  bool read_catalogs() {
    bool whole = !job_.order.catalog.empty();
    std::vector<const FileStore::File*> files;
    for (std::size_t i = 0; i < job_.order.catalog.size(); ++i) {
      std::string path;
      const FileStore::File* file = named_file(path_to("catalog", i + 1), job_.order.catalog[i], path);
      if (!file) {
        whole = false;
        continue;
      }
      job_.inputs.push_back({path, file->content});
      files.push_back(file);
    }
    const FileStore::CatalogFiles& read = store_.catalog(files);
    job_.catalog = read.catalog;
    problems_.insert(problems_.end(), read.problems.begin(), read.problems.end());
    return whole && read.problems.empty();
  }

  // Files in the order they are read, overrides last; within a file by line and column.
  void sort_problems() {
    const auto file_rank = [&](const std::string& file) {
      const auto found = std::find_if(job_.inputs.begin(), job_.inputs.end(),
                                      [&](const InputFile& input) { return input.path == file; });
      return std::pair{file == "--set", found - job_.inputs.begin()};
    };
    const auto rank = [&](const Problem& problem) {
      return std::tuple(file_rank(problem.where.file), problem.where.line, problem.where.column);
    };
    std::stable_sort(problems_.begin(), problems_.end(),
                     [&](const Problem& a, const Problem& b) { return rank(a) < rank(b); });
  }

  FileStore& store_;
  std::string order_path_;
  Job job_;
  Document order_, kit_, frame_;
  std::vector<Problem> problems_;
};

}  // namespace

std::array<NamedLength, 6> named_lengths(const Job& job) {
  const BoltLengths& named = job.order.bolts;
  const Kit& k = job.kit;
  const FrameFile& f = job.frame;
  return {{{"bolts.track", named.track, &k.mounting.hole},
           {"bolts.bunk", named.bunk, &k.bunk.hole},
           {"bolts.gusset", named.gusset, &k.gusset.hole},
           {"bolts.stop", named.stop, &k.track_stop.hole},
           {"bolts.jack", named.jack, &f.jack.hole},
           {"bolts.tongue_jack", named.tongue_jack, &f.tongue_jack.hole}}};
}

std::variant<Job, std::vector<Problem>> load_job(FileStore& store, const std::string& order_path,
                                                 const std::vector<std::string>& sets) {
  return Loading(store, order_path, sets).run();
}

}  // namespace bedwright
