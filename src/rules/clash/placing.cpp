// Gathers what holds what, and adds up the least chain between two things.
#include "rules/clash/placing.h"

#include <queue>

#include "rules/fit/hole_fit.h"

namespace bedwright {
namespace {

// Without an order: what the shop holds unless told otherwise.
Tolerances tolerances_of(const Scene& scene) {
  return scene.input.job ? scene.input.job->order.tolerances : Tolerances{};
}

// The most a bolt's stack-up may shift it either way along the axis.
Mm most_shift(const Bolt& bolt, Vec3 axis) {
  Mm sum = 0;
  const auto add = [&](const std::vector<Contribution>& all) {
    for (const Contribution& c : all)
      sum += std::abs(axis.x) * std::max(c.x_plus, c.x_minus) +
             std::abs(axis.y) * std::max(c.y_plus, c.y_minus) +
             std::abs(axis.z) * std::max(c.z_plus, c.z_minus);
  };
  add(bolt.stack_up);
  for (const Ply& ply : bolt.plies) add(ply.own);
  return sum;
}

Vec3 along(Vec3 axis, Mm out) {
  return {std::abs(axis.x) * out, std::abs(axis.y) * out, std::abs(axis.z) * out};
}

Mm washer_play(const Scene& scene, int item) {
  const auto& hardware = std::get<Hardware>(scene.bed.part_of(item).form);
  const Washer* washer = hardware.kind == HardwareKind::flat_washer   ? &hardware.size.flat
                         : hardware.kind == HardwareKind::lock_washer ? &hardware.size.lock
                                                                      : nullptr;
  return washer ? std::max(0.0, (washer->inside - hardware.size.diameter) / 2) : 0;
}

}  // namespace

Placing::Placing(const Scene& scene)
    : root_sum_square_(scene.limits.fit_basis == FitBasis::root_sum_square),
      items_(static_cast<int>(scene.bed.items.size())),
      holds_(scene.bed.items.size() + scene.bed.bolts.size()),
      bolts_(scene.bed.items.size()),
      welded_(scene.bed.items.size(), false) {
  add_bolts(scene);
  add_welds(scene);
  add_rails(scene);
}

void Placing::hold(int a, int b, Vec3 out) {
  if (root_sum_square_) out = {out.x * out.x, out.y * out.y, out.z * out.z};
  holds_[a].push_back({b, out});
  holds_[b].push_back({a, out});
}

void Placing::add_bolts(const Scene& scene) {
  const Bed& bed = scene.bed;
  const Tolerances shop = tolerances_of(scene);
  const Mm maker = scene.input.job ? scene.input.job->kit.rail.hole_tolerance : shop.cut_position;
  for (int i = 0; i < static_cast<int>(bed.bolts.size()); ++i) {
    const Bolt& bolt = bed.bolts[i];
    if (!bolt.in_place) continue;
    const BoltAxes axes = axes_of(bolt.direction);
    for (const Ply& ply : bolt.plies) {
      if (ply.item < 0) continue;
      const Clearance play = clearance_of(hole_in_world(bed, ply), bolt.size.diameter, axes);
      const Mm hole = bed.part_of(ply.item).origin == Origin::kit ? maker : shop.cut_position;
      const auto out = [&](Vec3 axis, int k) {
        return along(axis,
                     hole + std::min(std::max(0.0, play.radius) + play.travel[k], most_shift(bolt, axis)));
      };
      hold(ply.item, items_ + i, out(axes.u, 0) + out(axes.v, 1));
      bolts_[ply.item].push_back(i);
    }
  }
  for (int item = 0; item < items_; ++item) {
    const int bolt = bed.items[item].bolt;
    if (bolt < 0) continue;
    const BoltAxes axes = axes_of(bed.bolts[bolt].direction);
    const Mm play = washer_play(scene, item);
    hold(item, items_ + bolt, along(axes.u, play) + along(axes.v, play));
    bolts_[item].push_back(bolt);
  }
}

void Placing::add_welds(const Scene& scene) {
  const Job* job = scene.input.job;
  const Tolerances shop = tolerances_of(scene);
  const bool standing = job && stands(job->frame);
  const Mm measured = shop.existing_tab,
           made = shop.weld_placement + (job ? job->order.order.tape : inch / 16) / 2;
  for (const Weld& weld : scene.bed.welds) {
    // What is new on a frame that stands is placed as anything new is.
    const Mm set = standing && stands(scene.bed, weld) ? measured : made;
    welded_[weld.a] = welded_[weld.b] = true;
    // Flat on the other part it is not out; that way is along the leg on itself.
    const Vec3 off = weld.runs.empty() ? Vec3{} : weld.runs.front().on_a;
    hold(weld.a, weld.b,
         {set * (1 - std::abs(off.x)), set * (1 - std::abs(off.y)), set * (1 - std::abs(off.z))});
  }
  // Clamped, slid or turning on: set by hand like a weld.
  const Mm set = standing ? measured : made;
  for (const Joined& joint : scene.bed.joined) hold(joint.a, joint.b, {set, set, set});
}

void Placing::add_rails(const Scene& scene) {
  const Mm gauge = tolerances_of(scene).gauge;
  const Mm far = std::numeric_limits<Mm>::infinity();
  const std::vector<int> rails = scene.bed.items_of(Kind::rail);
  for (const int a : rails)
    for (const int b : rails)
      if (scene.bed.items[a].id.side == Side::left && scene.bed.items[b].id.side == Side::right &&
          scene.bed.items[a].id.number == scene.bed.items[b].id.number)
        hold(a, b, {far, gauge, far});
}

int Placing::common_bolt(int a, int b) const {
  for (const int i : bolts_[a])
    if (std::find(bolts_[b].begin(), bolts_[b].end(), i) != bolts_[b].end()) return i;
  return -1;
}

// Dijkstra's search, of the sum or the sum of squares; chains are short.
Mm Placing::least(int a, int b, Mm Vec3::*axis) const {
  const Mm far = std::numeric_limits<Mm>::infinity();
  std::vector<Mm> out(holds_.size(), far);
  using Step = std::pair<Mm, int>;
  std::priority_queue<Step, std::vector<Step>, std::greater<>> next;
  out[a] = 0;
  next.push({0, a});
  while (!next.empty()) {
    const auto [so_far, at] = next.top();
    next.pop();
    if (at == b) return so_far;
    if (so_far > out[at]) continue;
    for (const Hold& h : holds_[at]) {
      const Mm sum = so_far + h.out.*axis;
      if (sum >= out[h.other]) continue;
      out[h.other] = sum;
      next.push({sum, h.other});
    }
  }
  return far;
}

Placing::Root Placing::root_of(int item) const {
  const std::vector<Hold>& holds = holds_[item];
  if (holds.size() == 1 && holds.front().other >= items_) return {holds.front().other, holds.front().out};
  return {item, {}};
}

Vec3 Placing::between(int a, int b) const {
  const Root from = root_of(a), to = root_of(b);
  const auto [at, fresh] = known_.try_emplace(std::minmax(from.node, to.node));
  if (fresh) {
    const auto [p, q] = at->first;
    at->second = {least(p, q, &Vec3::x), least(p, q, &Vec3::y), least(p, q, &Vec3::z)};
  }
  const Vec3 sum = from.out + at->second + to.out;
  return root_sum_square_ ? Vec3{std::sqrt(sum.x), std::sqrt(sum.y), std::sqrt(sum.z)} : sum;
}

}  // namespace bedwright
