// Clashes found the slow way, to hold the rules to: the exact kernel on every pair
// of things whose bounding boxes meet. No convex pieces, no separating axes, no
// sweeps (posed.h).
#pragma once

#include <algorithm>
#include <array>
#include <map>
#include <vector>

#include "brute/posed.h"
#include "kernel/exact_distance.h"

namespace bedwright::testing {

struct FoundClash {
  Identity a, b;  // whole things, the lesser first
  Mm3 volume = 0;
};

class BruteForce {
 public:
  static constexpr Mm3 least_volume = 1.0;  // as the rules state their limit
  static constexpr Mm least_depth = 0.06;   // a hair over the rules' 0.05 mm

  long pairs = 0, measured = 0;  // looked at; measured by the kernel (equal pairs once)

  // Pairs that share more than least_volume, which a step of least_depth along no
  // axis of the world ends: a film between faces that lie on each other is none.
  std::vector<FoundClash> clashes(const Job& job, const Bed& laid_out) {
    const Posed posed(job, laid_out);
    std::vector<int> whole;  // by item: the posed bed's item it is a block of
    const Bed bed = in_blocks(posed.bed, posed.replaced, whole);
    const auto passes = [&](int hardware, int item) {
      const int bolt = bed.items[hardware].bolt;
      return bolt >= 0 && std::any_of(bed.bolts[bolt].plies.begin(), bed.bolts[bolt].plies.end(),
                                      [&](const Ply& p) { return p.item == whole[item]; });
    };
    std::vector<int> ids;
    for (const Part& part : bed.parts) ids.push_back(id_of(part.form));
    std::set<std::pair<int, int>> joined;
    for (const Joined& j : bed.joined) joined.insert(std::minmax(j.a, j.b));
    std::vector<Box3> boxes;
    for (std::size_t i = 0; i < bed.items.size(); ++i) boxes.push_back(bounds(bed, static_cast<int>(i)));
    ExactPairs exact(bed);
    std::map<std::pair<Identity, Identity>, FoundClash> found;
    const int count = static_cast<int>(bed.items.size());
    for (int a = 0; a < count; ++a)
      for (int b = a + 1; b < count; ++b) {
        ++pairs;
        const Item &x = bed.items[a], &y = bed.items[b];
        if (is_same_thing(x.id, y.id) || !boxes[a].overlaps(boxes[b], -least_depth) ||
            joined.contains({a, b}))
          continue;
        const bool swap = passes(b, a), shank = swap || passes(a, b);
        const Mm3 volume = common(bed, exact, ids, swap ? b : a, swap ? a : b, shank);
        if (volume <= least_volume) continue;
        const Identity p = whole_thing(x.id), q = whole_thing(y.id);
        const std::pair<Identity, Identity> both = std::minmax(p, q);
        FoundClash& clash = found[both];
        if (volume > clash.volume) clash = {both.first, both.second, volume};
      }
    std::vector<FoundClash> all;
    for (const auto& [both, clash] : found) all.push_back(clash);
    return all;
  }

 private:
  // Each block of a bought thing as an item of its own, so that boxes about them say
  // more; items in `left_out` are not taken over. Bolts' plies stay as they are.
  static Bed in_blocks(const Bed& bed, const std::set<int>& left_out, std::vector<int>& whole) {
    Bed out;
    out.bolts = bed.bolts;
    std::vector<std::vector<int>> now(bed.items.size());  // items of `out`, by item of `bed`
    for (int i = 0; i < static_cast<int>(bed.items.size()); ++i) {
      if (left_out.contains(i)) continue;
      const Part& part = bed.part_of(i);
      const auto put = [&](const Form& form) {
        out.parts.push_back({part.id, part.material, part.origin, form});
        Item item = bed.items[i];
        item.part = static_cast<int>(out.parts.size()) - 1;
        now[i].push_back(static_cast<int>(out.items.size()));
        out.items.push_back(std::move(item));
        whole.push_back(i);
      };
      const auto* bought = std::get_if<Bought>(&part.form);
      if (!bought)
        put(part.form);
      else
        for (const Block& block : bought->envelope) put(Bought{{block}, {}, 0, {}});
    }
    for (const Joined& j : bed.joined)
      for (const int a : now[j.a])
        for (const int b : now[j.b]) out.joined.push_back({a, b, j.why});
    return out;
  }

  // Where b is from a, to 1e-4 mm.
  using Relative = std::array<long long, 9>;
  static Relative relative(const Placement& a, const Placement& b) {
    Relative r{};
    int i = 0;
    for (const Vec3& v : {1e4 * a.local_point(b.origin), 1e6 * a.local_direction(b.x_axis),
                          1e6 * a.local_direction(b.y_axis)})
      for (const double c : {v.x, v.y, v.z}) r[i++] = std::llround(c);
    return r;
  }

  int id_of(const Form& form) {
    for (std::size_t i = 0; i < forms_.size(); ++i)
      if (forms_[i] == form) return static_cast<int>(i);
    forms_.push_back(form);
    return static_cast<int>(forms_.size()) - 1;
  }

  Mm3 common(const Bed& bed, ExactPairs& exact, const std::vector<int>& ids, int a, int b,
             bool without_shank) {
    const Item &x = bed.items[a], &y = bed.items[b];
    const auto [at, fresh] =
        known_.try_emplace({ids[x.part], ids[y.part], without_shank, relative(x.placement, y.placement)}, 0);
    if (!fresh) return at->second;
    ++measured;
    const Extent extent = without_shank ? Extent::without_shank : Extent::whole;
    const Mm3 volume = exact.shared(a, b, extent);
    if (volume > least_volume && is_deep(bed, a, b, extent, volume)) at->second = volume;
    return at->second;
  }

  // A step of d along an axis takes at most d times what is shared as seen along that
  // axis out of it, each line of sight counted as often as it leaves the steel. Few do
  // more than `most_layers` times; a volume over that is no film.
  static bool is_deep_by_volume(const Bed& bed, int a, int b, Mm3 volume) {
    constexpr double most_layers = 8;
    const Box3 p = bounds(bed, a), q = bounds(bed, b);
    const Mm x = std::min(p.high.x, q.high.x) - std::max(p.low.x, q.low.x),
             y = std::min(p.high.y, q.high.y) - std::max(p.low.y, q.low.y),
             z = std::min(p.high.z, q.high.z) - std::max(p.low.z, q.low.z);
    return volume > most_layers * least_depth * std::max({x * y, y * z, z * x});
  }

  // Item 0 is a; the others are b moved one step each way.
  static bool is_deep(const Bed& bed, int a, int b, Extent extent, Mm3 volume) {
    if (is_deep_by_volume(bed, a, b, volume)) return true;
    Bed few;
    few.parts = {bed.part_of(a), bed.part_of(b)};
    few.items = {bed.items[a]};
    few.items[0].part = 0;
    for (const Vec3 way : {Vec3{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}}) {
      few.items.push_back(bed.items[b]);
      few.items.back().part = 1;
      few.items.back().placement.origin = few.items.back().placement.origin + least_depth * way;
    }
    ExactPairs exact(few);
    for (int i = 1; i < static_cast<int>(few.items.size()); ++i)
      if (exact.shared(0, i, extent) < 1e-3) return false;
    return true;
  }

  std::vector<Form> forms_;
  std::map<std::tuple<int, int, bool, Relative>, Mm3> known_;
};

}  // namespace bedwright::testing
