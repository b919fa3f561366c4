// Makes a key of two forms and their relative place, and keeps the answers.
#include "rules/clash/pair_memory.h"

#include <cmath>
#include <functional>

namespace bedwright {
namespace {

// A map of millions of combinations must not fill the machine: a few hundred bytes each.
constexpr std::size_t most_kept = 50000;

std::size_t mixed(std::size_t a, std::size_t b) {
  return a ^ (b + static_cast<std::size_t>(0x9e3779b97f4a7c15ULL) + (a << 6) + (a >> 2));
}

std::size_t hash_of(std::initializer_list<double> values) {
  std::size_t all = values.size();
  for (const double v : values) all = mixed(all, std::hash<double>{}(v));
  return all;
}

// Of what tells most forms of a kind apart; equality has the last word.
std::size_t hash_of(const Plate& p) {
  return hash_of(
      {p.thickness, static_cast<double>(p.holes.size()), p.outline.empty() ? 0 : p.outline.front().at.x});
}
std::size_t hash_of(const Member& m) {
  return hash_of({m.length, m.section.depth, static_cast<double>(m.holes.size()), m.start_mitre});
}
std::size_t hash_of(const Hardware& h) {
  return hash_of({static_cast<double>(h.kind), h.size.diameter, h.length});
}
std::size_t hash_of(const Bought& b) {
  const Vec3 high = b.envelope.empty() ? Vec3{} : b.envelope.back().high;
  return hash_of({static_cast<double>(b.envelope.size()), high.x, high.y, high.z});
}

}  // namespace

std::size_t PairMemory::Hash::operator()(const Key& key) const {
  const auto& [a, b, without_shank, where] = key;
  std::size_t all = mixed(static_cast<std::size_t>(a), 2 * static_cast<std::size_t>(b) + without_shank);
  for (const long long w : where) all = mixed(all, std::hash<long long>{}(w));
  return all;
}

int PairMemory::number_of(const Form& form) {
  const std::size_t hash = mixed(form.index(), std::visit([](const auto& f) { return hash_of(f); }, form));
  const auto [from, to] = numbers_.equal_range(hash);
  for (auto at = from; at != to; ++at)
    if (forms_[at->second] == form) return at->second;
  forms_.push_back(form);
  const int number = static_cast<int>(forms_.size()) - 1;
  numbers_.emplace(hash, number);
  return number;
}

// Places to 1e-7 mm and directions to 1e-9: a thousandth of what the rules call the
// same place, and more than rounding leaves between variants laid out alike.
PairMemory::Key PairMemory::key_of(const Question& q) {
  constexpr double places = 1e7, directions = 1e9;
  const Placement &a = q.bed.items[q.a].placement, &b = q.bed.items[q.b].placement;
  Where where{};
  std::size_t i = 0;
  for (const Vec3& v : {places * a.local_point(b.origin), directions * a.local_direction(b.x_axis),
                        directions * a.local_direction(b.y_axis)})
    for (const double c : {v.x, v.y, v.z}) where[i++] = std::llround(c);
  return {number_of(q.bed.part_of(q.a).form), number_of(q.bed.part_of(q.b).form), q.without_shank_of_a,
          where};
}

std::optional<PairResult> PairMemory::recall(const Question& question) {
  const std::scoped_lock one_at_a_time(lock_);
  const auto at = known_.find(key_of(question));
  if (at == known_.end()) return std::nullopt;
  return at->second;
}

void PairMemory::keep(const Question& question, const PairResult& result) {
  const std::scoped_lock one_at_a_time(lock_);
  if (known_.size() >= most_kept || forms_.size() >= most_kept) {
    known_.clear();
    numbers_.clear();
    forms_.clear();
  }
  known_.insert_or_assign(key_of(question), result);
}

}  // namespace bedwright
