// The log's weight shared among its bunks, and the head's among its wheels.
#include "loads/log.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <stdexcept>

#include "loads/loads.h"
#include "loads/steel.h"

namespace bedwright {
namespace {

// A stiff body pressed on one-sided springs. However it tilts, it sinks until its springs carry
// its weight; their moment about its centre of mass rises with the tilt, in straight pieces, and
// is nought at the one tilt there is: by Newton's method, halved where that leaves the bracket.
class OnSprings {
 public:
  // `from`: of each spring from the centre of mass, ascending, on both sides of it; `gap`: from
  // the body to it, level.
  OnSprings(const std::vector<Mm>& from, const std::vector<Mm>& gap, double stiffness, Newton weight)
      : from_(from),
        gap_(gap),
        stiffness_(stiffness),
        weight_(weight),
        order_(from.size()),
        pushes_(from.size()) {}

  const std::vector<Newton>& forces() {
    const Mm reach = std::max(1.0, from_.back() - from_.front());
    double low = -1, high = 1;  // tilts between which the moment turns
    const double little = 1e-9 * weight_ * reach;
    while (press(low) > little) low *= 2;
    while (press(high) < -little) high *= 2;
    double tilt = 0;
    constexpr int most_turns = 200;
    for (int turn = 0; turn < most_turns; ++turn) {
      const double moment = press(tilt);
      if (std::abs(moment) <= little) return pushes_;
      (moment > 0 ? high : low) = tilt;
      const double next = steepness_ > 0 ? tilt - moment / steepness_ : high;
      tilt = next > low && next < high ? next : (low + high) / 2;
    }
    throw std::logic_error("how a log lies on its bunks was not found");
  }

 private:
  // Pushes of all springs at this tilt, and their moment; steepness_: its rise with the tilt.
  double press(double tilt) {
    const auto height = [&](std::size_t i) { return gap_[i] - tilt * from_[i]; };
    std::iota(order_.begin(), order_.end(), std::size_t{0});
    std::sort(order_.begin(), order_.end(),
              [&](std::size_t a, std::size_t b) { return height(a) < height(b); });
    // Nearest springs first, as long as the next is nearer than it sinks onto those before.
    double n = 0, heights = 0, sink = 0;
    for (const std::size_t i : order_) {
      if (n > 0 && height(i) >= sink) break;
      n += 1, heights += height(i);
      sink = (weight_ / stiffness_ + heights) / n;
    }
    double moment = 0, first = 0, second = 0;
    for (std::size_t i = 0; i < from_.size(); ++i) {
      const Mm pressed = sink - height(i);
      pushes_[i] = stiffness_ * std::max(0.0, pressed);
      if (pressed <= 0) continue;
      moment += pushes_[i] * from_[i];
      first += from_[i], second += from_[i] * from_[i];
    }
    steepness_ = stiffness_ * (second - first * first / n);
    return moment;
  }

  const std::vector<Mm>&from_, &gap_;
  double stiffness_;
  Newton weight_;
  std::vector<std::size_t> order_;
  std::vector<Newton> pushes_;
  double steepness_ = 0;
};

}  // namespace

Kg log_mass(const Job& job) {
  if (!job.order.work.log) return 0;
  const LogOrder& log = *job.order.work.log;
  const Species* species = job.catalog.species_named(log.species.text);
  if (!species) throw std::invalid_argument("the catalogue has no wood called " + log.species.text);
  const Mm3 volume = std::numbers::pi / 4 * log.diameter * log.diameter * log.length;
  return volume * 1e-9 * species->heaviest_kg_per_m3();
}

LogOnBunks::LogOnBunks(const Job& job, const Bed& bed) : job_(job), bed_(bed), mass_(log_mass(job)) {
  if (!job.order.work.log || bed.track.bunks.empty()) return;
  const LogOrder& log = *job.order.work.log;
  if (!job.order.track.log_stops.empty())
    y_ = -job.kit.log_stop.from_centre + job.kit.log_stop.width / 2 + log.diameter / 2;
  // Of a cone with mean diameter d and taper t: L d t / 6 / (d^2 + t^2 / 12).
  const Mm d = log.diameter, t = log.tapers();
  off_middle_ = log.length * d * t / 6 / (d * d + t * t / 12);
  const Member& bunk = std::get<Member>(bed.part_of(bed.item({Kind::bunk, Side::middle, 1})).form);
  const Mm half = job.kit.gauge / 2 - job.kit.bunk.line, y = std::clamp(y_, -0.9 * half, 0.9 * half);
  const Mm a = half + y, b = half - y;
  stiffness_ = 3 * steel_modulus * bending_of(bunk.section).inertia * 2 * half / (a * a * b * b);
}

// `butt`: +1 where that is its rear end, -1 its front end.
std::optional<std::vector<BeamLoad>> LogOnBunks::at(Mm middle, double butt, Turned turned,
                                                    double times) const {
  const LogOrder& log = *job_.order.work.log;
  const Mm half = log.length / 2, weight_at = middle + butt * off_middle_;
  std::vector<Mm> under, from, gap;
  for (const BunkPlace& bunk : bed_.track.bunks)
    if (std::abs(bunk.x - middle) <= half + same_place) under.push_back(bunk.x);
  if (under.size() < 2 || weight_at < under.front() - same_place || weight_at > under.back() + same_place)
    return std::nullopt;
  for (Mm x : under) {
    const double along = (x - middle) / half;
    from.push_back(x - weight_at);
    gap.push_back(log.stands_off() * (turned == Turned::belly_down ? along * along : 1 - along * along));
  }
  OnSprings springs(from, gap, stiffness_, times * mass_ * gravity);
  const std::vector<Newton>& forces = springs.forces();
  std::vector<BeamLoad> loads;
  for (std::size_t i = 0; i < under.size(); ++i)
    if (forces[i] > 0) loads.push_back({under[i], under[i], forces[i]});
  return loads;
}

std::vector<Mm> LogOnBunks::middles(int count) const {
  const LogOrder& log = *job_.order.work.log;
  const std::vector<BunkPlace>& bunks = bed_.track.bunks;
  const Mm first = bunks.front().x, last = bunks.back().x;
  if (log.position) return {*log.position};
  if (last - first <= log.length) return {(first + last) / 2};
  std::vector<Mm> all;
  for (int i = 0; i < count; ++i)
    all.push_back(first + log.length / 2 + i * (last - first - log.length) / (count - 1));
  // One so short that some of these leave it off its bunks lies on two neighbours.
  if (log.length < 2 * bed_.track.bunk_spacing())
    for (std::size_t i = 1; i < bunks.size();
         i += std::max<std::size_t>(1, bunks.size() / static_cast<std::size_t>(count)))
      all.push_back((bunks[i - 1].x + bunks[i].x) / 2);
  return all;
}

std::vector<std::vector<BeamLoad>> LogOnBunks::places(int count, double times) const {
  if (mass_ <= 0 || bed_.track.bunks.empty()) return {{}};
  const LogOrder& log = *job_.order.work.log;
  const std::vector<BunkPlace>& bunks = bed_.track.bunks;
  const Mm centre = (bunks.front().x + bunks.back().x) / 2;
  std::vector<std::vector<BeamLoad>> all;
  for (Mm middle : middles(count))
    for (double butt : {-1.0, 1.0}) {
      if (butt * (middle - centre) < -same_place) continue;
      if (butt > 0 && off_middle_ <= 0 && std::abs(middle - centre) <= same_place) continue;
      std::vector<Mm> down{middle};
      if (!log.position) {
        Mm over = bunks.front().x;  // the bunk nearest its weight
        for (const BunkPlace& bunk : bunks)
          if (std::abs(bunk.x - middle - butt * off_middle_) < std::abs(over - middle - butt * off_middle_))
            over = bunk.x;
        down.insert(down.begin(), over - butt * off_middle_);
      }
      for (Mm place : down)
        if (auto loads = at(place, butt, Turned::belly_down, times)) {
          all.push_back(std::move(*loads));
          break;
        }
      if (log.stands_off() <= 0 && log.position) continue;
      if (auto loads = at(middle, butt, Turned::belly_up, times)) all.push_back(std::move(*loads));
    }
  return all;
}

Newton LogOnBunks::heaviest_bunk(double times) const {
  Newton most = 0;
  for (const auto& place : places(9, times))
    for (const BeamLoad& bunk : place) most = std::max(most, bunk.force);
  return most;
}

int LogOnBunks::least_bunks() const {
  std::size_t least = bed_.track.bunks.size();
  for (const auto& place : places(9)) least = std::min(least, place.size());
  return static_cast<int>(least);
}

int LogOnBunks::most_bunks() const {
  std::size_t most = 0;
  for (const auto& place : places(9)) most = std::max(most, place.size());
  return static_cast<int>(most);
}

std::vector<BeamLoad> head_wheels(const Job& job, Mm x, Newton weight) {
  const KitHead& head = job.kit.head;
  const Mm centre = x + head.mass_x;
  if (head.wheel_base < 1) return {{centre, centre, weight}};
  const Mm front = x - head.wheel_base / 2, rear = x + head.wheel_base / 2;
  const double on_rear = (centre - front) / head.wheel_base;
  return {{front, front, weight * (1 - on_rear)}, {rear, rear, weight * on_rear}};
}

}  // namespace bedwright
