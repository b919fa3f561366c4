// Finds the pairs of items that may meet, and asks the judge of those left open.
#include <set>

#include "rules/clash/clash.h"

namespace bedwright {
namespace {

using PairSet = std::set<std::pair<int, int>>;

PairSet joined_pairs(const Bed& bed) {
  PairSet pairs;
  for (const Joined& j : bed.joined) pairs.insert(std::minmax(j.a, j.b));
  return pairs;
}

// (bolt item, item the bolt passes through).
bool is_ply_of(const Bed& bed, int hardware, int item) {
  const int bolt = bed.items[hardware].bolt;
  if (bolt < 0) return false;
  const auto& plies = bed.bolts[bolt].plies;
  return std::any_of(plies.begin(), plies.end(), [&](const Ply& p) { return p.item == item; });
}

// The bolt's own tip rule has already stopped these two.
bool told_by_tip(const Scene& scene, int hardware, int item) {
  const int bolt = scene.bed.items[hardware].bolt;
  return bolt >= 0 && scene.beyond[bolt].item == item && tip_is_too_close(scene, bolt);
}

bool is_left_out(const Scene& scene, const PairSet& joined, int a, int b) {
  const Item& x = scene.bed.items[a];
  const Item& y = scene.bed.items[b];
  return told_by_tip(scene, a, b) || told_by_tip(scene, b, a) || is_same_thing(x.id, y.id) ||
         joined.contains(std::minmax(a, b));
}

struct Pieces {
  const Scene& scene;
  int a, b;
  bool skip_shank_a, skip_shank_b;

  // Calls use(piece of a, piece of b) for the pairs whose boxes are within `grow`.
  template <class Use>
  void for_each(Mm grow, Use use) const {
    for (const Convex& p : scene.pieces[a]) {
      if (skip_shank_a && p.shank) continue;
      for (const Convex& q : scene.pieces[b]) {
        if (skip_shank_b && q.shank) continue;
        if (p.bounds.overlaps(q.bounds, grow)) use(p, q);
      }
    }
  }
};

Vec3 middle_of_common(const Box3& p, const Box3& q) {
  const auto middle = [](Mm pl, Mm ph, Mm ql, Mm qh) { return (std::max(pl, ql) + std::min(ph, qh)) / 2; };
  return {middle(p.low.x, p.high.x, q.low.x, q.high.x), middle(p.low.y, p.high.y, q.low.y, q.high.y),
          middle(p.low.z, p.high.z, q.low.z, q.high.z)};
}

// By convex pieces alone. `undecided` where a piece that is not all steel is part of it.
Meeting cheap_answer(const Pieces& pieces, Mm clearance, bool moving) {
  Meeting m;
  m.a = pieces.a;
  m.b = pieces.b;
  Mm gap = std::numeric_limits<Mm>::infinity(), deepest = 0;
  bool certain = false;
  Vec3 near_place;
  pieces.for_each(clearance, [&](const Convex& p, const Convex& q) {
    const Mm apart = separation(p, q, moving ? clearance : -clash_depth);
    if (apart < gap) {
      gap = apart;
      near_place = middle_of_common(p.bounds, q.bounds);
    }
    if (apart >= -clash_depth) return;
    const bool exact = p.exact && q.exact;
    if ((exact && !certain) || (exact == certain && -apart > deepest)) {
      deepest = -apart;
      m.place = middle_of_common(p.bounds, q.bounds);
      certain = exact;
    }
  });
  m.depth = deepest;
  if (deepest > 0) {
    m.standing = certain ? Standing::overlap : Standing::undecided;
  } else if (moving && gap < clearance - same_place) {
    m.standing = Standing::near;
    m.gap = std::max(gap, 0.0);
    m.gap_is_bound = true;
    m.place = near_place;
  }
  return m;
}

void ask_judge(PairJudge& judge, Mm clearance, const Pieces& pieces, Meeting& m) {
  const bool swap = pieces.skip_shank_b;
  const std::optional<PairResult> result =
      judge.judge(swap ? m.b : m.a, swap ? m.a : m.b, pieces.skip_shank_a || pieces.skip_shank_b);
  if (!result) return;
  m.gap = result->gap;
  m.gap_is_bound = false;
  m.common_volume = result->common_volume;
  if (result->common_volume > clash_volume) {
    m.standing = Standing::overlap;
  } else {
    m.depth = 0;
    m.standing = result->gap < clearance - same_place ? Standing::near : Standing::clear;
  }
}

Meeting meet(const Scene& scene, int a, int b, Mm clearance, bool moving) {
  const Pieces pieces{scene, a, b, is_ply_of(scene.bed, a, b), is_ply_of(scene.bed, b, a)};
  Meeting m = cheap_answer(pieces, clearance, moving);
  const bool open = m.standing == Standing::undecided || m.standing == Standing::near;
  if (open && scene.input.judge) ask_judge(*scene.input.judge, clearance, pieces, m);
  return m;
}

}  // namespace

std::vector<Meeting> meetings(const Scene& scene, bool moving) {
  const Bed& bed = scene.bed;
  const PairSet joined = joined_pairs(bed);
  const Mm clearance = moving ? scene.limits.moving_clearance : 0;
  std::vector<Meeting> found;
  const auto try_pair = [&](int a, int b) {
    if ((bed.items[a].moving || bed.items[b].moving) != moving) return;
    if (is_left_out(scene, joined, a, b)) return;
    const Meeting m = meet(scene, a, b, clearance, moving);
    if (m.standing != Standing::clear) found.push_back(m);
  };
  for (int a = 0; a < static_cast<int>(bed.items.size()); ++a) {
    Box3 around = scene.boxes[a];
    around.low = around.low - Vec3{clearance, clearance, clearance};
    around.high = around.high + Vec3{clearance, clearance, clearance};
    scene.near.for_each(around, [&](int b) {
      if (b > a) try_pair(a, b);
    });
  }
  std::sort(found.begin(), found.end(),
            [](const Meeting& p, const Meeting& q) { return std::pair(p.a, p.b) < std::pair(q.a, q.b); });
  return found;
}

Vec3 least_shift(const Scene& scene, int a, int b, Mm clearance, bool only_along_bed) {
  const Pieces pieces{scene, a, b, is_ply_of(scene.bed, a, b), is_ply_of(scene.bed, b, a)};
  const Vec3 ways[] = {{1, 0, 0}, {-1, 0, 0}, {0, 1, 0}, {0, -1, 0}, {0, 0, 1}, {0, 0, -1}};
  Vec3 best;
  Mm least = std::numeric_limits<Mm>::infinity();
  for (int w = 0; w < (only_along_bed ? 2 : 6); ++w) {
    // Pieces not yet met may be met on the way: move and look again until clear.
    // Each pass frees at least one pair for good, so passes are bounded.
    Mm moved = 0;
    for (std::size_t pass = 0; pass <= scene.pieces[a].size() * scene.pieces[b].size(); ++pass) {
      Mm more = 0;
      for (const Convex& p : scene.pieces[a]) {
        if (pieces.skip_shank_a && p.shank) continue;
        const Convex at = placed(p, Placement{moved * ways[w]});
        for (const Convex& q : scene.pieces[b])
          if (!(pieces.skip_shank_b && q.shank)) more = std::max(more, exit_distance(at, q, ways[w]));
      }
      if (more <= 1e-6) break;
      moved += more;
    }
    if (moved + clearance < least) {
      least = moved + clearance;
      best = least * ways[w];
    }
  }
  return best;
}

}  // namespace bedwright
