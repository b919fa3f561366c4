// Finds, keeps and reads the release that an order revises.
#include "commands/revised.h"

#include <fmt/format.h>

#include <algorithm>
#include <stdexcept>

#include "commands/paste.h"
#include "formats/digest.h"
#include "kernel/kernel_judge.h"
#include "packet/inputs.h"
#include "params/input.h"

namespace bedwright {
namespace {

namespace fs = std::filesystem;

constexpr const char *kept_folder = "inputs/revises/", *digest_name = "digest.txt";

std::optional<std::string> bytes_of(const fs::path& file) {
  std::vector<Problem> told;
  return read_bytes(file.string(), {}, told);
}

// Letterhead and steps, as they were read.
std::string letters_of(const Loaded& loaded) {
  const auto& inputs = loaded.inputs;
  return inputs[inputs.size() - 2].content + inputs[inputs.size() - 1].content;
}

}  // namespace

Revised to_revise(const Recorded& release) {
  const std::string kept = kept_folder + release.order.revision + "/";
  Revised revised{release.order.revision, release.input_digest, release.folder / inputs_order, {}};
  for (const ListedFile& file : release.files) {
    if (!file.path.starts_with(inputs_folder) || file.path.starts_with(kept_folder)) continue;
    const auto bytes = bytes_of(release.folder / file.path);
    if (!bytes || sha256(*bytes) != file.sha256)
      throw std::runtime_error(fmt::format(
          "{} is not as it was released, so what changes against revision {} cannot be told; nothing was "
          "touched: bedwright verify {} tells what became of it; bring the file back from a copy, or move "
          "that folder away",
          (release.folder / file.path).string(), release.order.revision,
          shell_word(release.folder.string())));
    revised.kept.push_back({kept + file.path.substr(std::string(inputs_folder).size()), *bytes});
  }
  revised.kept.push_back({kept + digest_name, release.input_digest + "\n"});
  return revised;
}

std::optional<Revised> revised_by(const Recorded& release) {
  Revised revised;
  for (const ListedFile& file : release.files) {
    if (!file.path.starts_with(kept_folder)) continue;
    const std::string rest = file.path.substr(std::string(kept_folder).size());
    revised.revision = rest.substr(0, rest.find('/'));
    const auto bytes = bytes_of(release.folder / file.path);
    if (!bytes)
      throw std::runtime_error(fmt::format("{} cannot be read; bedwright verify {} tells what became of it",
                                           (release.folder / file.path).string(),
                                           shell_word(release.folder.string())));
    if (file.path.ends_with(std::string("/") + digest_name))
      revised.digest = bytes->substr(0, bytes->find('\n'));
    revised.kept.push_back({file.path, *bytes});
  }
  if (revised.kept.empty()) return std::nullopt;
  revised.order = release.folder / kept_folder / revised.revision / "order.yaml";
  return revised;
}

std::optional<RevisedBed> revised_bed(const Revised& revised, const Job& now,
                                      std::vector<Problem>& problems) {
  auto was = load({revised.order.string(), {}}, {kernel_judge(), false, false}, problems);
  if (!was) return std::nullopt;
  Job job = was->examined->job;
  const Order& order = now.order;
  job.order.order.revision = order.order.revision;
  job.order.order.date = order.order.date;
  job.order.revisions = order.revisions;
  Examination again = examine(std::move(job), {kernel_judge(), false, false});
  if (!again) {
    problems = again.problems;
    return std::nullopt;
  }
  auto headed = with_words(std::move(again.bed), revised.order.string(), problems);
  if (!headed) return std::nullopt;
  return RevisedBed{*std::move(was), *std::move(headed)};
}

Comparison compared(const Loaded& was, const Loaded& now) {
  const Examined &a = *was.examined, &b = *now.examined;
  Comparison found = compare({a.job, a.bed}, {b.job, b.bed}, b.figures());
  // A release keeps its words in a folder of its own; what they say is what counts.
  std::erase_if(found.ordered, [](const HeadLine& line) { return line.what == "order.assembly_template"; });
  if (letters_of(was) != letters_of(now))
    found.ordered.push_back({"the customer's sheets", "their words", "other words"});
  return found;
}

}  // namespace bedwright
