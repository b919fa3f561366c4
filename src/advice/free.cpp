// The usual list of values that may change, those an order names, and what each costs.
#include "advice/free.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "rules/standing_remedies.h"
#include "units/figures.h"
#include "units/print.h"
#include "yaml/key_path.h"

namespace bedwright {
namespace {

// What a shop changes readily comes first; what the customer ordered last.
enum Cost {
  a_setting = 0,
  on_the_bunks = 100,
  bolt_length = 200,
  on_the_mains = 300,
  a_slot = 400,
  a_tab = 500,
  a_standoff = 600,
  a_pitch = 800,
  a_rail = 900
};
// What only a rule proposes (another section, a higher rating): bought or made anew.
constexpr int only_proposed = 500;
constexpr int most_steps = 99;

class Usual {
 public:
  Usual(const Job& job, int bunks) : job_(job), bunks_(bunks), figures_(job.order.order.figures()) {}

  std::vector<FreeValue> all() {
    settings();
    clamps_and_stops();
    bolts();
    if (!stands(job_.frame)) places();
    if (!stands(job_.frame)) tabs();
    track();
    return std::move(all_);
  }

 private:
  void add(const std::string& key, const std::string& value, int kind, int step) {
    all_.push_back({{key, value}, kind + std::min(step, most_steps)});
  }

  // The value nearest to `now` first.
  void nearest_first(const std::string& key, Mm now, std::vector<std::pair<Mm, std::string>> values,
                     int kind) {
    std::stable_sort(values.begin(), values.end(), [&](const auto& a, const auto& b) {
      return std::abs(a.first - now) < std::abs(b.first - now);
    });
    int step = 0;
    for (const auto& [value, text] : values) add(key, text, kind, ++step);
  }

  void settings() {
    const TrackOrder& t = job_.order.track;
    int step = 0;
    for (const auto& [datum, word] :
         {std::pair{Datum::middle, "middle"}, {Datum::front, "front"}, {Datum::rear, "rear"}})
      if (datum != t.datum) add("track.datum", word, a_setting, ++step);
    add("track.end_bunks", t.end_bunks == EndBunks::inner ? "outermost" : "inner", a_setting, 1);
  }

  void bunks(const std::string& key, int now) {
    constexpr int furthest = 6;
    for (int away = 1; away <= furthest; ++away)
      for (const int bunk : {now + away, now - away})
        if (bunk >= 1 && bunk <= bunks_) add(key, std::to_string(bunk), on_the_bunks, away);
  }

  void clamps_and_stops() {
    const TrackOrder& t = job_.order.track;
    for (std::size_t i = 0; i < t.clamps.size(); ++i)
      bunks(fmt::format("track.clamps[{}].bunk", i + 1), t.clamps[i].bunk);
    for (std::size_t i = 0; i < t.log_stops.size(); ++i)
      bunks(fmt::format("track.log_stops[{}]", i + 1), t.log_stops[i]);
  }

  void bolts() {
    constexpr Mm longest = 6 * inch;
    for (const auto& [key, now, hole] : named_lengths(job_)) {
      const BoltSize& size = *job_.catalog.bolt(hole->bolt.text);
      std::vector<std::pair<Mm, std::string>> values;
      for (const Mm length : size.lengths)
        if (length <= longest && (!now || std::abs(length - *now) > same_place))
          values.push_back({length, bolt_length_text(size, length)});
      nearest_first(key, now.value_or(0), std::move(values), bolt_length);
    }
  }

  // `count` steps each way.
  void about(const std::string& key, Mm now, Mm step, int count, Mm least, int kind) {
    for (int i = 1; i <= count; ++i)
      for (const double way : {1.0, -1.0})
        if (const Mm value = now + way * i * step; value >= least) add(key, figures_.set(value), kind, i);
  }

  void places() {
    const Order& o = job_.order;
    const Mm step = figures_.coarse_step();
    const std::size_t from_front = jacks_listed(o);
    for (std::size_t i = 0; i < from_front; ++i)
      about(fmt::format("jacks[{}]", i + 1), o.jacks[i], step, 12, 0, on_the_mains);
    for (std::size_t i = 0; i < o.jacks_from_rear.size(); ++i)
      about(fmt::format("jacks_from_rear[{}]", i + 1), o.jacks_from_rear[i], step, 12, 0, on_the_mains);
    if (o.axle.fraction <= 0) return about("axle.position", o.axle.position, step, 24, 0, on_the_mains);
    for (int i = 1; i <= 10; ++i)
      for (const double way : {1.0, -1.0})
        if (const double to = o.axle.fraction + way * i / 100; to > 0 && to < 1)
          add("axle.fraction", plain_figure(to), on_the_mains, i);
  }

  void tabs() {
    const FrameTabs& t = job_.frame.tabs;
    const Mm slot_step = figures_.slot_step(), tab_step = figures_.tab_step();
    for (int i = 1; i <= 24; ++i)
      add("frame.tabs.slot_length", figures_.set(t.slot_length + i * slot_step), a_slot, i);
    for (int i = 1; i <= 12; ++i) add("frame.tabs.length", figures_.set(t.length + i * tab_step), a_tab, i);
    if (t.clip) return about("frame.tabs.clip.standoff", t.clip->standoff, slot_step, 16, 0, a_standoff);
    if (t.plate->pad_width <= 0) return;
    std::vector<std::pair<Mm, std::string>> pads;
    for (const Mm thickness : figures_.usual_plates())
      if (std::abs(thickness - t.plate->pad_thickness) > same_place)
        pads.push_back({thickness, figures_.set(thickness)});
    nearest_first("frame.tabs.plate.pad_thickness", t.plate->pad_thickness, std::move(pads), a_standoff);
  }

  void track() {
    const TrackOrder& t = job_.order.track;
    const Mm step = figures_.coarse_step();
    about("track.bunk_pitch", t.bunk_pitch, step / 2, 12, 6 * inch, a_pitch);
    about("track.rail_length", t.rail_length, step, 12, 12 * inch, a_rail);
  }

  const Job& job_;
  int bunks_;
  Figures figures_;
  std::vector<FreeValue> all_;
};

}  // namespace

std::vector<FreeValue> free_values(const Job& job, int bunks) {
  if (job.order.free.empty()) return Usual(job, bunks).all();
  std::vector<FreeValue> all;
  int kind = 0;
  for (const FreeParameter& parameter : job.order.free) {
    int step = 0;
    // Loading has refused an order whose lists do not parse.
    const auto values = std::get<std::vector<std::string>>(parse_values(parameter.values.text));
    for (const std::string& value : values)
      all.push_back({{parameter.key.text, value}, kind + std::min(++step, most_steps)});
    kind += 100;
  }
  return all;
}

bool ordered_or_measured(std::string_view key) {
  for (const std::string_view of : {"work", "tabs_found", "frame.tabs.existing"})
    if (is_within(key, of)) return true;
  return false;
}

std::vector<FreeValue> free_values(const Job& job, int bunks, const std::vector<Finding>& findings,
                                   const std::vector<Finding>& advised) {
  std::vector<FreeValue> all = free_values(job, bunks);
  if (!job.order.free.empty()) return all;
  std::map<std::string, int> kinds;  // the usual cost of a parameter, without its steps
  for (const FreeValue& f : all) kinds.try_emplace(f.change.key, f.cost / 100 * 100);
  const auto add = [&](const Finding& f, const Change& c, int step, std::set<int> proposed_by) {
    if (ordered_or_measured(c.key) || !can_be_done(job.frame, f.code, c)) return;
    const auto kind = kinds.find(c.key);
    all.push_back({{c.key, c.value},
                   (kind == kinds.end() ? only_proposed : kind->second) + std::min(step, most_steps),
                   std::move(proposed_by)});
  };
  int number = 0;
  for (const Finding& f : findings) {
    ++number;
    if (f.severity != Severity::stop) continue;
    std::map<std::string, int> steps;  // of each parameter, in the rule's own order
    for (const Change& c : f.changes) add(f, c, steps[c.key]++, {number});
  }
  // The usual step costs less, where it is one.
  for (const Finding& f : advised)
    if (f.severity == Severity::stop)
      for (const Change& c : f.changes) add(f, c, most_steps, {});
  return all;
}

}  // namespace bedwright
