// Searches lock, tongue, hangers and load by the moments of tow.cpp.
#include "loads/balance.h"

#include <algorithm>
#include <cmath>

namespace bedwright {
namespace {

bool holds(const AxleRange& range) { return range.from <= range.to; }

// The best place of the axle in the range; nothing where none is clear.
std::optional<Mm> best_place(const Job& job, const Bed& bed, const Tow& tow, const AxleRange& range) {
  if (!holds(range)) return std::nullopt;
  Tow other = tow;
  other.axle_from = range.from;
  other.axle_to = range.to;
  const std::vector<Mm> places = axle_places(job, bed, other);
  return places.empty() ? std::nullopt : std::optional(places.front());
}

// Whether the locked head, moved along the bed by that much, is clear of what is shown.
bool lock_is_clear(const Job& job, const Bed& bed, Mm by) {
  const auto head = bed.find_item({Kind::head, Side::middle, 0, 0, End::none, 0, Pose::locked});
  if (!head) return true;
  const Mm room = job.order.limits.moving_clearance;
  for (Box3 box : block_bounds(bed, *head)) {
    box.low.x += by;
    box.high.x += by;
    for (std::size_t i = 0; i < bed.items.size(); ++i) {
      const Kind kind = bed.items[i].id.kind;
      if (kind != Kind::clamp && kind != Kind::log_stop && kind != Kind::track_stop) continue;
      if (box.overlaps(bounds(bed, static_cast<int>(i)), room)) return false;
    }
  }
  return true;
}

std::optional<LockPlace> other_lock(const Job& job, const Bed& bed, const LoadsResult& loads) {
  const Mm grid = job.order.order.figures().place_step(), now = job.kit.head.lock_offset;
  const bool front = job.order.track.head_lock == HeadLock::front;
  const Track& t = bed.track;
  Job other = job;
  for (int step = 1; step * grid < t.total_length; ++step)
    for (const int way : {1, -1}) {
      const Mm offset = std::round(now / grid) * grid + way * step * grid;
      const Mm place = front ? offset : t.total_length - offset;
      if (place < t.head_from || place > t.head_to) continue;
      if (!lock_is_clear(job, bed, place - t.head_lock)) continue;
      other.kit.head.lock_offset = offset;
      const AxleRange range = axle_range(other, bed, loads.weights, Ways::all);
      // A range no wider than the tape's marks is no place to weld to.
      if (range.to - range.from < grid) continue;
      if (const auto axle = best_place(other, bed, loads.tow, range)) return LockPlace{offset, *axle};
    }
  return std::nullopt;
}

// The other tongue's steel in place of the one it has, and what moves with its front end.
BedWeights with_tongue(const Job& job, const BedWeights& weights, const FrameTongue& other) {
  const FrameFile& f = job.frame;
  const Section& channel = *job.catalog.section(f.tongue.section.text);
  const Kg per_mm = channel.published ? channel.published->kg_per_m / 1000 : 0;
  const auto channels = [&](const FrameTongue& t) {
    Body b;
    b.mass = 2 * per_mm * (t.length + t.back) / std::cos(t.angle);
    b.centre = {-f.main.front_overhang + (t.back - t.length) / 2, 0, weights.frame.centre.z};
    return b;
  };
  const Body now = channels(f.tongue), then = channels(other);
  BedWeights all = weights;
  Body& frame = all.frame;
  const double first = frame.mass * frame.centre.x + then.mass * then.centre.x - now.mass * now.centre.x -
                       (f.coupler.mass + f.tongue_jack.mass) * (other.length - f.tongue.length);
  frame.mass += then.mass - now.mass;
  frame.centre.x = first / frame.mass;
  return all;
}

std::optional<TongueReach> longer_tongue(const Job& job, const Bed& bed, const LoadsResult& loads) {
  if (!job.frame.tabs.existing.empty()) return std::nullopt;
  const FrameTongue& now = job.frame.tongue;
  const Mm grid = job.order.order.figures().place_step();
  constexpr int most = 120;
  Job other = job;
  FrameTongue& t = other.frame.tongue;
  // The tongue is weighed here, not laid out again: its plate and its cuts are left out, so a
  // little of the share is kept to spare.
  constexpr double spare = 0.004;
  other.order.road.share_low += spare;
  other.order.road.share_high -= spare;
  for (int i = 1; i <= most; ++i) {
    t.length = (std::floor(now.length / grid) + i) * grid;
    t.angle = std::atan(std::tan(now.angle) * (now.length + now.back) / (t.length + now.back));
    if (t.angle < 5 * degree) return std::nullopt;
    const AxleRange range = axle_range(other, bed, with_tongue(job, loads.weights, t), Ways::all);
    if (range.to - range.from < grid) continue;
    if (const auto axle = best_place(other, bed, loads.tow, range))
      return TongueReach{t.length, t.angle, *axle};
  }
  return std::nullopt;
}

std::optional<HangerPlaces> two_sets(const Job& job, const Bed& bed, const LoadsResult& loads) {
  const auto laden = best_place(job, bed, loads.tow, axle_range(job, bed, loads.weights, Ways::laden));
  AxleRange range = axle_range(job, bed, loads.weights, Ways::unladen);
  const Mm end = range.to, grid = job.order.order.figures().place_step();
  // No further back than need be: the coupler's load grows with it.
  for (Mm room = 6 * grid; laden && holds(range); room *= 2) {
    range.to = std::min(end, range.from + room);
    if (const auto unladen = best_place(job, bed, loads.tow, range)) return HangerPlaces{*laden, *unladen};
    if (range.to >= end) break;
  }
  return std::nullopt;
}

}  // namespace

BalanceWays balance_ways(const Job& job, const Bed& bed, const LoadsResult& loads) {
  return {other_lock(job, bed, loads), longer_tongue(job, bed, loads), two_sets(job, bed, loads)};
}

std::optional<Ballast> ballast(const Job& job, const Bed& bed, const LoadsResult& loads,
                               const TowCondition& c) {
  if (c.travel.laden() || c.travel.bare || job.order.road.cargo || bed.track.bunks.size() < 2)
    return std::nullopt;
  const Tow& tow = loads.tow;
  const AxleRange laden = axle_range(job, bed, loads.weights, Ways::laden);
  if (tow.axle_x < laden.from || tow.axle_x > laden.to) return std::nullopt;
  const Figures figures = job.order.order.figures();
  const Mm grid = figures.place_step();
  Ballast b;
  b.at = std::round(bed.track.bunks[1].x / grid) * grid;
  const double share = job.order.road.share_low,
               arm = (tow.axle_x - b.at) / (tow.axle_x - tow.ball_x) - share;
  if (arm <= 0) return std::nullopt;
  const Kg step = figures.rating_step();
  b.mass = std::ceil((share * c.mass - c.tongue) / arm / step) * step;
  // Tried: with it on, this way of travelling is as it should be.
  Job other = job;
  other.order.road.cargo = Cargo{b.mass, b.at, 0};
  other.order.road.travels = {{HeadAt::off, true, false}};
  const AxleRange tried = axle_range(other, bed, loads.weights, Ways::all);
  if (tow.axle_x < tried.from || tow.axle_x > tried.to) return std::nullopt;
  return b;
}

}  // namespace bedwright
