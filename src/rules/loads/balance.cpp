// Rules about the tongue: its share of the weight on the road, and whether the bed stays
// down on it uncoupled.
#include "loads/balance.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "loads/travel_name.h"
#include "rules/loads/judge.h"

namespace bedwright {
namespace {

// Of the weight, on the tongue jack: a person at the rear end then does not lift it.
// Common practice, no published source.
constexpr double least_on_jack = 0.05;

Change axle_change(const LoadJudge& j, Mm x) {
  if (j.job.order.axle.fraction > 0)
    return {"axle.fraction", fmt::format("{:.6f}", x / j.bed.track.total_length)};
  return {"axle.position", j.figures.set(x)};
}

std::string needs_of(const LoadJudge& j) {
  std::string text;
  for (const TowCondition& c : j.loads.tow.conditions)
    if (c.judged)
      text += fmt::format("{}{} needs {} {}", text.empty() ? "" : ", ", name(c.travel),
                          j.figures.place(c.axle_from),
                          c.travel.laden() ? "to " + j.figures.place(c.axle_to) : "or more");
  return text;
}

bool wrong_share(const RoadOrder& road, const TowCondition& c) {
  return c.share < road.share_low || (c.travel.laden() && c.share > road.share_high);
}

bool both_ends(const LoadJudge& j) {
  bool front = false, rear = false;
  for (const TowCondition& c : j.loads.tow.conditions) {
    front |= c.judged && c.travel.head == HeadAt::front;
    rear |= c.judged && c.travel.head == HeadAt::rear;
  }
  return front && rear;
}

// No place of the axle will do, or none that is free: what else is done, each with its figures.
void take_other_ways(const LoadJudge& j, const TowCondition& c, std::optional<BalanceWays>& known,
                     Finding& f) {
  const auto place = [&](Mm x) { return j.figures.place(x); };
  std::vector<std::string> ways;
  const auto take_axle = [&](Mm x) {
    const Change change = axle_change(j, x);
    const auto same = [&](const Change& other) {
      return other.key == change.key && other.value == change.value;
    };
    if (std::none_of(f.changes.begin(), f.changes.end(), same)) f.changes.push_back(change);
  };
  if (j.remedies) {
    if (!known) known = balance_ways(j.job, j.bed, j.loads);
    const BalanceWays& other = *known;
    if (other.lock) {
      ways.push_back(fmt::format(
          "lock the head {} from the {} end, the axle at {}", place(other.lock->offset),
          j.job.order.track.head_lock == HeadLock::front ? "front" : "rear", place(other.lock->axle)));
      f.changes.push_back({"kit.head.lock_offset", j.figures.set(other.lock->offset)});
      take_axle(other.lock->axle);
    }
    if (other.tongue) {
      ways.push_back(fmt::format("a tongue {} long at {:.1f} degrees, the axle at {}",
                                 place(other.tongue->length), other.tongue->angle / degree,
                                 place(other.tongue->axle)));
      f.changes.push_back({"frame.tongue.length", j.figures.set(other.tongue->length)});
      take_axle(other.tongue->axle);
    }
    if (other.hangers) {
      ways.push_back(fmt::format("two sets of hangers, the axle at {} with a load on and at {} without",
                                 place(other.hangers->laden), place(other.hangers->unladen)));
      take_axle(other.hangers->unladen);
    }
  }
  if (const auto load = ballast(j.job, j.bed, j.loads, c))
    ways.push_back(
        fmt::format("carry {} lashed down at {} whenever it is towed so (road.cargo, road.travels)",
                    j.figures.mass(load->mass), place(load->at)));
  if (both_ends(j)) ways.push_back("lock the head at one end only (road.travels)");
  const Tow& tow = j.loads.tow;
  f.remedy = tow.axle_from > tow.axle_to
                 ? fmt::format("no place of the axle suits every way it travels: {}", needs_of(j))
                 : fmt::format(
                       "the axle would have to stand from {} to {}, where jacks or cross members are "
                       "in the way of its hangers",
                       place(tow.axle_from), place(tow.axle_to));
  for (std::size_t i = 0; i < ways.size(); ++i) f.remedy += (i == 0 ? "; " : "; or ") + ways[i];
}

void judge_share(const LoadJudge& j, const TowCondition& c, std::optional<BalanceWays>& known) {
  const RoadOrder& road = j.job.order.road;
  const Tow& tow = j.loads.tow;
  if (!wrong_share(road, c)) return;
  const bool low = c.share < road.share_low;
  Finding& f = j.add("TOW-SHARE", Severity::stop, in_travel(Kind::tongue_load, c.travel), {tow.axle_x, 0, 0});
  f.measured = 100 * c.share;
  f.limit = 100 * (low ? road.share_low : road.share_high);
  f.margin = low ? f.measured - f.limit : f.limit - f.measured;
  f.unit = "%";
  const std::string asked = c.travel.laden()
                                ? fmt::format("{:g} to {:g} %", 100 * road.share_low, 100 * road.share_high)
                                : fmt::format("{:g} % at least", 100 * road.share_low);
  f.message =
      c.tongue < 0
          ? fmt::format(
                "the tongue lifts with {} of {}, {:.1f} %: {} the bed tips back; it should press "
                "down with {}",
                j.figures.mass(-c.tongue), j.figures.mass(c.mass), 100 * c.share, name(c.travel), asked)
          : fmt::format("{} of {} is on the coupler, {:.1f} %, and it should be {}", j.figures.mass(c.tongue),
                        j.figures.mass(c.mass), 100 * c.share, asked);
  if (tow.axle_places.empty()) return take_other_ways(j, c, known, f);
  const Mm best = tow.axle_places.front(), by = best - tow.axle_x;
  f.remedy = fmt::format("move the axle {} by {} to {}; from {} to {} every way it travels is within",
                         by > 0 ? "rearward" : "forward", j.figures.place(std::abs(by)),
                         j.figures.place(best), j.figures.place(tow.axle_from), j.figures.place(tow.axle_to));
  for (Mm x : tow.axle_places) f.changes.push_back(axle_change(j, x));
}

// Uncoupled, on wheels and tongue jack, in every way it may stand there: also in those
// the order does not tow it, since a head comes off in the yard.
void judge_hitching(const LoadJudge& j, const TowCondition& c) {
  const std::vector<TravelCase> usual = usual_travels(j.job.order);
  if (!c.judged && std::find(usual.begin(), usual.end(), c.travel) == usual.end()) return;
  if (c.jack >= least_on_jack * c.mass) return;
  if (c.judged && wrong_share(j.job.order.road, c)) return;  // one cause, told above
  const Subject subject = in_travel(Kind::tongue_jack, c.travel);
  Finding& f =
      j.add("HITCH-TIP", c.judged ? Severity::stop : Severity::warn, subject, {j.loads.tow.jack_x, 0, 0});
  f.measured = 100 * c.jack / c.mass;
  f.limit = 100 * least_on_jack;
  f.margin = f.measured - f.limit;
  f.unit = "%";
  f.message = c.jack < 0
                  ? fmt::format("uncoupled, {}, the bed tips back off its tongue jack: it lifts {} there",
                                name(c.travel), j.figures.mass(-c.jack))
                  : fmt::format(
                        "uncoupled, {}, {} of {} is on the tongue jack: a person at the rear end "
                        "tips the bed back",
                        name(c.travel), j.figures.mass(c.jack), j.figures.mass(c.mass));
  f.remedy = "run the rear jacks down until they carry before it is uncoupled so";
  const Mm base = j.loads.tow.axle_x - j.loads.tow.jack_x;
  // About the axle: the gear goes with it and has no moment there.
  const Kg carried = c.mass - j.loads.weights.gear.mass;
  const Mm by = (least_on_jack * c.mass - c.jack) * base / (carried - least_on_jack * c.mass);
  const Mm grid = j.figures.place_step();
  Mm to = std::ceil((j.loads.tow.axle_x + by) / grid) * grid;
  if (c.judged)
    for (int i = 0; i < 3; ++i, to += grid) f.changes.push_back(axle_change(j, to));
  f.remedy +=
      fmt::format(", or stand the axle at {} or more", j.figures.place(c.judged ? to - 3 * grid : to));
}

// The head runs along the bed while that stands on wheels and tongue jack alone.
void judge_head(const LoadJudge& j) {
  const Tow& tow = j.loads.tow;
  if (!tow.tips_on_track()) return;
  Finding& f = j.add("HEAD-TIP", Severity::note, Identity{Kind::head}, {tow.tips_behind, 0, 0});
  f.measured = tow.tips_behind;
  f.limit = tow.head_to;
  f.margin = tow.tips_behind - tow.head_to;
  f.unit = "mm";
  f.message = fmt::format(
      "on its wheels and tongue jack alone the bed tips back with the head more than {} behind the front "
      "end, "
      "and the head rolls to {}",
      j.figures.place(tow.tips_behind), j.figures.place(tow.head_to));
  f.remedy = fmt::format(
      "run the rear jacks down until they carry before the head is unlocked; lock it again at {} before they "
      "go up",
      j.figures.place(j.bed.track.head_lock));
}

}  // namespace

void judge_balance(const LoadJudge& j) {
  std::optional<BalanceWays> known;  // the same for every way it travels: sought once
  for (const TowCondition& c : j.loads.tow.conditions)
    if (c.judged) judge_share(j, c, known);
  for (const TowCondition& c : j.loads.tow.conditions) judge_hitching(j, c);
  judge_head(j);
}

}  // namespace bedwright
