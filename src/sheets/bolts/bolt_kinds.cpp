// Groups the track's bolts by size, length and what they pass through.
#include "sheets/bolts/bolt_kinds.h"

#include <algorithm>
#include <array>
#include <set>

#include "rules/scene.h"

namespace bedwright {
namespace {

constexpr std::array on_track{Kind::track_bolt, Kind::bunk_bolt, Kind::gusset_bolt, Kind::stop_bolt};

std::string washers(const std::vector<Washer>& all, const BoltSize& size) {
  std::string words;
  for (const Washer& w : all)
    words += (words.empty() ? "" : " + ") + std::string(w == size.flat   ? "flat"
                                                        : w == size.lock ? "lock"
                                                                         : "special");
  return words.empty() ? "none" : words;
}

// Lengths of each size that lie about when the track is bolted.
std::set<Mm> at_hand(const SheetInput& in, const std::string& size) {
  std::set<Mm> lengths;
  for (const Bolt& b : in.bed.bolts)
    if (b.in_place && b.size.name == size) lengths.insert(b.length);
  for (const KitBox& b : in.job.kit.box)
    if (b.bolt.text == size) lengths.insert(b.length);
  return lengths;
}

void find_too_long(const SheetInput& in, std::vector<BoltKind>& kinds) {
  const Scene& scene = in.examined.scene;
  for (BoltKind& kind : kinds) {
    for (const Mm length : at_hand(in, kind.size.name)) {
      if (length <= kind.length + same_place) continue;
      const bool meets_something = std::any_of(kind.bolts.begin(), kind.bolts.end(), [&](int i) {
        const Beyond& beyond = scene.beyond[i];
        return beyond.item >= 0 && tip_clearance(scene.stacks[i], in.bed.bolts[i], length, beyond.distance) <
                                       scene.limits.tip_clearance;
      });
      if (meets_something) kind.too_long.push_back(length);
    }
  }
}

}  // namespace

std::vector<BoltKind> track_bolt_kinds(const SheetInput& in) {
  std::vector<BoltKind> kinds;
  for (const Kind use : on_track)
    for (std::size_t i = 0; i < in.bed.bolts.size(); ++i) {
      const Bolt& b = in.bed.bolts[i];
      if (b.id.kind != use || !b.in_place) continue;
      auto kind = std::find_if(kinds.begin(), kinds.end(), [&](const BoltKind& k) {
        const Bolt& other = in.bed.bolts[k.bolts.front()];
        return k.size == b.size && std::abs(k.length - b.length) < same_place &&
               other.under_head == b.under_head && other.under_nut == b.under_nut;
      });
      if (kind == kinds.end()) {
        BoltKind fresh;
        fresh.letter = static_cast<char>('A' + static_cast<char>(kinds.size()));
        fresh.size = b.size;
        fresh.length = b.length;
        fresh.under_head = washers(b.under_head, b.size);
        fresh.under_nut = washers(b.under_nut, b.size);
        kinds.push_back(fresh);
        kind = kinds.end() - 1;
      }
      if (std::find(kind->uses.begin(), kind->uses.end(), use) == kind->uses.end()) kind->uses.push_back(use);
      kind->bolts.push_back(static_cast<int>(i));
    }
  find_too_long(in, kinds);
  return kinds;
}

}  // namespace bedwright
