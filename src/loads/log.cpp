// The log's weight shared among its bunks, and the head's among its wheels.
#include "loads/log.h"

#include <algorithm>
#include <cmath>
#include <numbers>
#include <numeric>
#include <stdexcept>

#include "loads/loads.h"

namespace bedwright {

Kg log_mass(const Job& job) {
  if (!job.order.work.log) return 0;
  const LogOrder& log = *job.order.work.log;
  const Species* species = job.catalog.species_named(log.species.text);
  if (!species) throw std::invalid_argument("the catalogue has no wood called " + log.species.text);
  const Mm3 volume = std::numbers::pi / 4 * log.diameter * log.diameter * log.length;
  return volume * 1e-9 * species->green_kg_per_m3;
}

LogOnBunks::LogOnBunks(const Job& job, const Bed& bed) : job_(job), bed_(bed), mass_(log_mass(job)) {
  if (!job.order.work.log || job.order.track.log_stops.empty()) return;
  const KitLogStop& stop = job.kit.log_stop;
  y_ = -stop.from_centre + stop.width / 2 + job.order.work.log->diameter / 2;
}

std::optional<std::vector<BeamLoad>> LogOnBunks::at(Mm centre) const {
  const Mm half = job_.order.work.log->length / 2;
  std::vector<Mm> under;
  for (const BunkPlace& bunk : bed_.track.bunks)
    if (std::abs(bunk.x - centre) <= half + same_place) under.push_back(bunk.x);
  if (under.size() < 2 || centre < under.front() - same_place || centre > under.back() + same_place)
    return std::nullopt;
  std::vector<BeamLoad> loads;
  while (true) {
    const double n = static_cast<double>(under.size()),
                 middle = std::accumulate(under.begin(), under.end(), 0.0) / n;
    double spread = 0;
    for (Mm x : under) spread += (x - middle) * (x - middle);
    loads.clear();
    for (Mm x : under)
      loads.push_back({x, x, mass_ * gravity * (1 / n + (centre - middle) * (x - middle) / spread)});
    // A bunk that would have to hold the log down lets go of it.
    const auto pulls = [](const BeamLoad& bunk) { return bunk.force < 0; };
    if (under.size() == 2 || std::none_of(loads.begin(), loads.end(), pulls)) return loads;
    under.erase(std::min_element(loads.begin(), loads.end(),
                                 [](const BeamLoad& a, const BeamLoad& b) { return a.force < b.force; }) -
                loads.begin() + under.begin());
  }
}

std::vector<std::vector<BeamLoad>> LogOnBunks::places(int count) const {
  if (mass_ <= 0 || bed_.track.bunks.empty()) return {{}};
  const LogOrder& log = *job_.order.work.log;
  const std::vector<BunkPlace>& bunks = bed_.track.bunks;
  const Mm first = bunks.front().x, last = bunks.back().x;
  std::vector<Mm> centres;
  if (log.position) {
    centres = {*log.position};
  } else if (last - first <= log.length) {
    centres = {(first + last) / 2};
  } else {
    for (int i = 0; i < count; ++i)
      centres.push_back(first + log.length / 2 + i * (last - first - log.length) / (count - 1));
    // One so short that some of these leave it off its bunks lies on two neighbours.
    if (log.length < 2 * bed_.track.bunk_spacing())
      for (std::size_t i = 1; i < bunks.size();
           i += std::max<std::size_t>(1, bunks.size() / static_cast<std::size_t>(count)))
        centres.push_back((bunks[i - 1].x + bunks[i].x) / 2);
  }
  std::vector<std::vector<BeamLoad>> all;
  for (Mm centre : centres)
    if (auto loads = at(centre)) all.push_back(std::move(*loads));
  return all;
}

Newton LogOnBunks::heaviest_bunk() const {
  Newton most = 0;
  for (const auto& place : places(9))
    for (const BeamLoad& bunk : place) most = std::max(most, bunk.force);
  return most;
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
