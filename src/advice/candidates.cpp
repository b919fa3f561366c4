// What could be changed about an order, by what a finding names.
#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "advice/advice.h"
#include "units/print.h"

namespace bedwright {
namespace {

// Other bunks, nearest to `now` first, the rearward one of two equally near.
void other_bunks(const std::string& key, int now, int bunks, const std::vector<int>& taken,
                 std::vector<Change>& all) {
  for (int away = 1; away < bunks; ++away)
    for (int bunk : {now + away, now - away})
      if (bunk >= 1 && bunk <= bunks && std::find(taken.begin(), taken.end(), bunk) == taken.end())
        all.push_back({key, std::to_string(bunk)});
}

// Either way along the bed in whole steps a tape shows.
void nearby(const Job& job, const std::string& key, Mm now, int steps, std::vector<Change>& all) {
  const Figures figures = job.order.order.figures();
  const Mm step = figures.coarse_step();
  for (int i = 1; i <= steps; ++i)
    for (double way : {1.0, -1.0}) {
      const Mm place = now + way * i * step;
      if (place >= 0) all.push_back({key, figures.set_decimal(place)});
    }
}

void for_clamp(const Job& job, int bunks, int clamp, std::vector<Change>& all) {
  const auto& clamps = job.order.track.clamps;
  if (clamp < 1 || clamp > static_cast<int>(clamps.size())) return;
  std::vector<int> taken;
  for (const ClampPlace& c : clamps) taken.push_back(c.bunk);
  other_bunks(fmt::format("track.clamps[{}].bunk", clamp), clamps[clamp - 1].bunk, bunks, taken, all);
}

void for_log_stop(const Job& job, int bunks, int stop, std::vector<Change>& all) {
  const auto& stops = job.order.track.log_stops;
  if (stop < 1 || stop > static_cast<int>(stops.size())) return;
  other_bunks(fmt::format("track.log_stops[{}]", stop), stops[stop - 1], bunks, stops, all);
}

// Jacks placed from the rear stand behind those listed in Order::jacks; those
// evenly between have no place of their own to change.
void move_jack(const Job& job, int jack, int steps, std::vector<Change>& all) {
  const Order& order = job.order;
  const int from_front = static_cast<int>(jacks_listed(order)),
            from_rear = static_cast<int>(order.jacks_from_rear.size());
  if (jack <= from_front)
    nearby(job, fmt::format("jacks[{}]", jack), order.jacks[jack - 1], steps, all);
  else if (jack <= from_front + from_rear)
    nearby(job, fmt::format("jacks_from_rear[{}]", jack - from_front),
           order.jacks_from_rear[jack - from_front - 1], steps, all);
}

void for_jack(const Job& job, int jack, std::vector<Change>& all) {
  if (jack >= 1 && jack <= static_cast<int>(job.order.jacks.size())) move_jack(job, jack, 18, all);
}

// A place given as a part of the length moves by hundredths of it.
void move_axle(const Job& job, int steps, std::vector<Change>& all) {
  const double now = job.order.axle.fraction;
  if (now <= 0) return nearby(job, "axle.position", job.order.axle.position, steps, all);
  for (int i = 1; i <= 10; ++i)
    for (double way : {1.0, -1.0})
      if (const double to = now + way * i / 100; to > 0 && to <= 1)
        all.push_back({"axle.fraction", plain_figure(to)});
}

void for_datum(const Job& job, std::vector<Change>& all) {
  const std::pair<Datum, const char*> datums[] = {
      {Datum::middle, "middle"}, {Datum::front, "front"}, {Datum::rear, "rear"}};
  for (const auto& [datum, word] : datums)
    if (datum != job.order.track.datum) all.push_back({"track.datum", word});
}

}  // namespace

std::vector<Change> candidates(const Job& job, int bunks, const Finding& finding) {
  std::vector<Change> all;
  if (finding.code == "HOLE-FIT") for_datum(job, all);
  if (!is_about_clashes(finding.code)) return all;
  const auto is_about = [&](std::initializer_list<Kind> kinds) {
    return std::any_of(finding.subjects.begin(), finding.subjects.end(), [&](const Subject& s) {
      return std::find(kinds.begin(), kinds.end(), s.id.kind) != kinds.end();
    });
  };
  for (const Subject& subject : finding.subjects) {
    const Identity& id = subject.id;
    if (id.kind == Kind::clamp) for_clamp(job, bunks, id.number, all);
    if (id.kind == Kind::log_stop) for_log_stop(job, bunks, id.number, all);
    if (id.kind == Kind::jack || id.kind == Kind::jack_plate || id.kind == Kind::jack_bolt)
      for_jack(job, id.number, all);
  }
  if (is_about({Kind::bunk, Kind::bunk_bolt}) && is_about({Kind::track_stop, Kind::stop_bolt}) &&
      job.order.track.end_bunks == EndBunks::inner)
    all.push_back({"track.end_bunks", "outermost"});
  if (is_about({Kind::axle, Kind::wheel})) move_axle(job, 24, all);
  return all;
}

}  // namespace bedwright
