// Whether two things share space, or nearly touch that were not laid on each other.
#pragma once

#include <algorithm>
#include <numeric>
#include <set>

#include "sweep/rejects.h"

namespace bedwright::sweep {

// Two faces laid on each other may press this far in: the depth of a film of paint.
inline constexpr Mm film = 0.05;

// Two pairs of items that solids alone did not settle; for a kernel to say.
struct Undecided {
  int a = -1, b = -1;
};

// A point deep in both, looked for on a grid over where their boxes meet.
inline bool common_steel(const Body& a, const Hull& p, const Body& b, const Hull& q) {
  constexpr int steps = 10;
  const Vec3 low{std::max(p.box.low.x, q.box.low.x), std::max(p.box.low.y, q.box.low.y),
                 std::max(p.box.low.z, q.box.low.z)};
  const Vec3 high{std::min(p.box.high.x, q.box.high.x), std::min(p.box.high.y, q.box.high.y),
                  std::min(p.box.high.z, q.box.high.z)};
  for (int i = 0; i < steps; ++i)
    for (int j = 0; j < steps; ++j)
      for (int k = 0; k < steps; ++k) {
        const auto at = [](Mm from, Mm to, int step) { return from + (to - from) * (step + 0.5) / steps; };
        const Vec3 v{at(low.x, high.x, i), at(low.y, high.y, j), at(low.z, high.z, k)};
        if (holds(p, v) && holds(q, v) && !in_hole(a, v) && !in_hole(b, v)) return true;
      }
  return false;
}

class PairWalk {
 public:
  PairWalk(Inspected& in, std::vector<Undecided>& undecided) : in_(in), undecided_(undecided) {
    for (const Joined& j : in.bed.joined) joined_.insert(std::minmax(j.a, j.b));
    for (const Weld& w : in.bed.welds) laid_on_.insert(std::minmax(w.a, w.b));
    for (const Bolt& b : in.bed.bolts)
      for (std::size_t i = 0; b.in_place && i < b.plies.size(); ++i)
        for (std::size_t k = i + 1; k < b.plies.size(); ++k)
          laid_on_.insert(std::minmax(b.plies[i].item, b.plies[k].item));
  }

  // Along x, each with those whose boxes it may meet.
  void walk() {
    std::vector<int> order(in_.bodies.size());
    std::iota(order.begin(), order.end(), 0);
    std::sort(order.begin(), order.end(),
              [&](int p, int q) { return body(p).box.low.x < body(q).box.low.x; });
    const Mm near = in_.job.order.tolerances.cut_position;
    for (std::size_t i = 0; i < order.size(); ++i)
      for (std::size_t k = i + 1; k < order.size(); ++k) {
        if (body(order[k]).box.low.x > body(order[i]).box.high.x + near) break;
        if (body(order[i]).box.overlaps(body(order[k]).box, near)) meet(order[i], order[k], near);
      }
  }

 private:
  const Body& body(int i) const { return in_.bodies[static_cast<std::size_t>(i)]; }
  const Item& item(int i) const { return in_.bed.items[static_cast<std::size_t>(i)]; }

  bool goes_through(int hardware, int other) const {
    const int bolt = item(hardware).bolt;
    if (bolt < 0) return false;
    const auto& plies = in_.bed.bolts[static_cast<std::size_t>(bolt)].plies;
    return std::any_of(plies.begin(), plies.end(), [&](const Ply& p) { return p.item == other; });
  }

  void meet(int a, int b, Mm near) {
    if (is_same_thing(item(a).id, item(b).id) || joined_.contains(std::minmax(a, b))) return;
    if (item(a).bolt >= 0 && item(a).bolt == item(b).bolt) return;
    const bool own = goes_through(a, b) || goes_through(b, a);
    Mm nearest = 1e30;
    bool open = false;
    for (const Hull& p : body(a).hulls)
      for (const Hull& q : body(b).hulls) {
        if ((p.shank || q.shank) && own) continue;
        if (!p.box.overlaps(q.box, near)) continue;
        const Mm gap = apart(p, q, near);
        nearest = std::min(nearest, gap);
        if (gap > -film) continue;
        if (common_steel(body(a), p, body(b), q)) {
          in_.reject("two things in one place",
                     fmt::format("{} and {}, {:.2f} mm deep", in_.called(a), in_.called(b), -gap));
          return;
        }
        open = true;
      }
    if (open) {
      undecided_.push_back({a, b});
      return;
    }
    const bool rails = item(a).id.kind == Kind::rail && item(b).id.kind == Kind::rail;
    if (nearest > 0.01 && nearest < near && !own && !rails && !laid_on_.contains(std::minmax(a, b)))
      in_.reject("nearer than a cut is true",
                 fmt::format("{} and {}: {:.2f} mm", in_.called(a), in_.called(b), nearest));
  }

  Inspected& in_;
  std::vector<Undecided>& undecided_;
  std::set<std::pair<int, int>> joined_, laid_on_;
};

}  // namespace bedwright::sweep
