// BOLT-KINDS: fewer different bolt lengths than now would serve every hole.
#include <fmt/format.h>

#include <algorithm>
#include <map>

#include "rules/fit/bolt_kinds.h"
#include "rules/rule_list.h"

namespace bedwright {
namespace {

void add_length(std::vector<Mm>& lengths, Mm length) {
  const auto at = std::find_if(lengths.begin(), lengths.end(), [&](Mm l) { return l > length - same_place; });
  if (at == lengths.end() || *at > length + same_place) lengths.insert(at, length);
}

LengthSet suiting(const Scene& scene, std::size_t bolt) {
  const auto& lengths = scene.bed.bolts[bolt].size.lengths;
  LengthSet set;
  for (std::size_t k = 0; k < std::min(lengths.size(), set.size()); ++k)
    set[k] = length_suits(scene, bolt, lengths[k]);
  return set;
}

// Only the lengths the maker packs.
LengthSet boxed(const KindsOfSize& kinds, const BoltSize& size) {
  LengthSet set;
  for (std::size_t k = 0; k < std::min(size.lengths.size(), set.size()); ++k)
    set[k] = std::any_of(kinds.in_kit.begin(), kinds.in_kit.end(),
                         [&](Mm l) { return std::abs(l - size.lengths[k]) < same_place; });
  return set;
}

void choose_fewest(KindsOfSize& kinds, const std::vector<LengthSet>& suits, const BoltSize& size) {
  std::vector<LengthSet> served;
  std::vector<std::size_t> holes;
  for (std::size_t h = 0; h < suits.size(); ++h) {
    if (suits[h].none()) continue;
    served.push_back(suits[h]);
    holes.push_back(h);
  }
  const auto choice = fewest_lengths(served);
  if (!choice) return;
  for (const int k : choice->lengths) kinds.fewest.push_back(size.lengths[k]);
  for (std::size_t i = 0; i < holes.size(); ++i)
    kinds.holes[holes[i]].fewest = size.lengths[choice->takes[i]];
}

void choose_from_kit(const Scene& scene, KindsOfSize& kinds, const std::vector<LengthSet>& suits,
                     const BoltSize& size) {
  const LengthSet box = boxed(kinds, size);
  bool any = false, all = true;
  for (std::size_t h = 0; h < suits.size(); ++h) {
    if (!comes_with_kit(scene.bed.bolts[kinds.holes[h].bolt].id.kind)) continue;
    any = true;
    const LengthSet both = suits[h] & box;
    all = all && both.any();
    for (std::size_t k = 0; k < both.size(); ++k) {
      if (!both[k]) continue;
      kinds.holes[h].from_kit = size.lengths[k];
      break;
    }
  }
  kinds.kit_serves = any && all;
}

KindsOfSize kinds_of_size(const Scene& scene, const BoltSize& size, const std::vector<std::size_t>& bolts) {
  KindsOfSize kinds;
  kinds.size = size.name;
  if (scene.input.job)
    for (const KitBox& b : scene.input.job->kit.box)
      if (b.bolt.text == size.name) add_length(kinds.in_kit, b.length);
  std::vector<LengthSet> suits;
  for (const std::size_t b : bolts) {
    suits.push_back(suiting(scene, b));
    HoleChoice hole{static_cast<int>(b), {}, std::nullopt, std::nullopt};
    for (std::size_t k = 0; k < suits.back().size(); ++k)
      if (suits.back()[k]) hole.suits.push_back(size.lengths[k]);
    kinds.holes.push_back(std::move(hole));
    add_length(kinds.now, scene.bed.bolts[b].length);
  }
  choose_fewest(kinds, suits, size);
  choose_from_kit(scene, kinds, suits, size);
  return kinds;
}

std::string lengths_text(const BoltSize& size, const std::vector<Mm>& lengths) {
  std::string text;
  for (std::size_t i = 0; i < lengths.size(); ++i)
    text += (i == 0 ? "" : i + 1 == lengths.size() ? " and " : ", ") + bolt_length_text(size, lengths[i]);
  return text;
}

// Lengths the exact choice gives bolts of each kind.
std::map<Kind, std::vector<Mm>> by_kind(const Scene& scene, const KindsOfSize& kinds) {
  std::map<Kind, std::vector<Mm>> all;
  for (const HoleChoice& h : kinds.holes)
    if (h.fewest) add_length(all[scene.bed.bolts[h.bolt].id.kind], *h.fewest);
  return all;
}

// The whole `bolts` entry, so that one change sets every kind at once; lengths the
// owner has named for other sizes stay. Nothing when a kind would take two lengths,
// which the order cannot say.
std::optional<Change> change_for(const Scene& scene, const KindsOfSize& kinds) {
  if (!scene.input.job) return std::nullopt;
  std::map<std::string, std::string> entries;
  for (const Kind bolts : bolt_kinds)
    if (const auto length = scene.input.job->order.bolts.*bolt_use(bolts).named)
      entries[bolt_use(bolts).key] = scene.figures.set(*length);
  for (const auto& [bolts, lengths] : by_kind(scene, kinds)) {
    if (lengths.size() > 1) return std::nullopt;
    entries[bolt_use(bolts).key] =
        bolt_length_text(scene.bed.bolts[kinds.holes.front().bolt].size, lengths.front());
  }
  std::string value;
  for (const auto& [key, length] : entries)
    value += fmt::format("{}{}: {}", value.empty() ? "{" : ", ", key, length);
  return Change{"bolts", value + "}"};
}

std::string which_takes_which(const Scene& scene, const KindsOfSize& kinds) {
  const BoltSize& size = scene.bed.bolts[kinds.holes.front().bolt].size;
  std::string text;
  for (const auto& [bolts, lengths] : by_kind(scene, kinds))
    text += fmt::format("{}{}s {}", text.empty() ? "" : ", ", word(bolts), lengths_text(size, lengths));
  return text;
}

}  // namespace

const char* role_word(Kind bolts) { return bolt_use(bolts).word; }
bool comes_with_kit(Kind bolts) { return bolt_use(bolts).from_kit; }

std::vector<KindsOfSize> kinds_of_bolts(const Scene& scene) {
  std::vector<std::pair<const BoltSize*, std::vector<std::size_t>>> sizes;
  for (std::size_t b = 0; b < scene.bed.bolts.size(); ++b) {
    const Bolt& bolt = scene.bed.bolts[b];
    if (!bolt.in_place || stands(scene.bed, bolt)) continue;
    const auto at = std::find_if(sizes.begin(), sizes.end(),
                                 [&](const auto& s) { return s.first->name == bolt.size.name; });
    if (at == sizes.end())
      sizes.push_back({&bolt.size, {b}});
    else
      at->second.push_back(b);
  }
  std::vector<KindsOfSize> all;
  for (const auto& [size, bolts] : sizes) all.push_back(kinds_of_size(scene, *size, bolts));
  return all;
}

void check_bolt_kinds(const Scene& scene, std::vector<Finding>& findings) {
  Identity size{Kind::bolt_size};
  for (const KindsOfSize& kinds : kinds_of_bolts(scene)) {
    ++size.number;
    const bool all_served =
        std::all_of(kinds.holes.begin(), kinds.holes.end(), [](const HoleChoice& h) { return h.fewest; });
    if (!all_served || kinds.fewest.size() >= kinds.now.size()) continue;
    const Bolt& first = scene.bed.bolts[kinds.holes.front().bolt];
    Finding f =
        finding_of("BOLT-KINDS", Severity::note, {size, word(size.kind) + " " + kinds.size}, first.seat);
    f.measured = static_cast<double>(kinds.now.size());
    f.limit = static_cast<double>(kinds.fewest.size());
    f.margin = f.limit - f.measured;
    f.unit = "lengths";
    f.message = fmt::format("the {} bolts come in {} lengths ({}); {} would serve every hole", kinds.size,
                            kinds.now.size(), lengths_text(first.size, kinds.now),
                            lengths_text(first.size, kinds.fewest));
    f.remedy = fmt::format("use {}", which_takes_which(scene, kinds));
    if (kinds.kit_serves)
      f.remedy += fmt::format("; the kit's own {} serve its holes", lengths_text(first.size, kinds.in_kit));
    if (const auto change = change_for(scene, kinds)) f.changes.push_back(*change);
    findings.push_back(std::move(f));
  }
}

}  // namespace bedwright
