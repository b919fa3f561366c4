#include "advice/free.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "checks/figures.h"
#include "units/print.h"

namespace bedwright {
namespace {

// What a shop changes readily comes first; what the customer ordered last.
enum Kind { a_setting = 0, on_the_bunks = 100, bolt_length = 200, on_the_mains = 300, a_slot = 400, a_tab = 500, a_standoff = 600, a_pitch = 800, a_rail = 900 };

class Usual {
 public:
  Usual(const Job& job, int bunks)
      : job_(job), bunks_(bunks), figures_{job.order.order.printing, job.order.order.tape},
        metric_(job.order.order.printing == Printing::metric) {}

  std::vector<FreeValue> all() {
    settings();
    clamps_and_stops();
    bolts();
    places();
    if (job_.frame.tabs.existing.empty()) tabs();
    track();
    return std::move(all_);
  }

 private:
  void add(const std::string& key, const std::string& value, int kind, int step) { all_.push_back({{key, value}, kind + std::min(step, 99)}); }

  void settings() {
    const TrackOrder& t = job_.order.track;
    int step = 0;
    for (const auto& [datum, word] : {std::pair{Datum::middle, "middle"}, {Datum::front, "front"}, {Datum::rear, "rear"}})
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
    for (std::size_t i = 0; i < t.clamps.size(); ++i) bunks(fmt::format("track.clamps[{}].bunk", i + 1), t.clamps[i].bunk);
    for (std::size_t i = 0; i < t.log_stops.size(); ++i) bunks(fmt::format("track.log_stops[{}]", i + 1), t.log_stops[i]);
  }

  void bolts() {
    const Kit& k = job_.kit;
    const FrameFile& f = job_.frame;
    const std::pair<const char*, const BoltHole*> kinds[] = {
        {"bolts.track", &k.mounting.hole}, {"bolts.bunk", &k.bunk.hole}, {"bolts.gusset", &k.gusset.hole},
        {"bolts.stop", &k.track_stop.hole}, {"bolts.jack", &f.jack.hole}, {"bolts.tongue_jack", &f.tongue_jack.hole}};
    constexpr Mm longest = 6 * inch;
    for (const auto& [key, hole] : kinds) {
      const BoltSize& size = *job_.catalog.bolt(hole->bolt.text);
      int step = 0;
      for (const Mm length : size.lengths)
        if (length <= longest) add(key, bolt_length_text(size, length), bolt_length, ++step);
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
    const Mm step = metric_ ? 25 : inch;
    const std::size_t from_front = jacks_listed(o);
    for (std::size_t i = 0; i < from_front; ++i) about(fmt::format("jacks[{}]", i + 1), o.jacks[i], step, 12, 0, on_the_mains);
    for (std::size_t i = 0; i < o.jacks_from_rear.size(); ++i)
      about(fmt::format("jacks_from_rear[{}]", i + 1), o.jacks_from_rear[i], step, 12, 0, on_the_mains);
    if (o.axle.fraction <= 0) return about("axle.position", o.axle.position, step, 24, 0, on_the_mains);
    for (int i = 1; i <= 10; ++i)
      for (const double way : {1.0, -1.0})
        if (const double to = o.axle.fraction + way * i / 100; to > 0 && to < 1) add("axle.fraction", plain_figure(to), on_the_mains, i);
  }

  void tabs() {
    const FrameTabs& t = job_.frame.tabs;
    const Mm slot_step = metric_ ? 2 : inch / 16, tab_step = metric_ ? 10 : inch / 4;
    for (int i = 1; i <= 24; ++i) add("frame.tabs.slot_length", figures_.set(t.slot_length + i * slot_step), a_slot, i);
    for (int i = 1; i <= 12; ++i) add("frame.tabs.length", figures_.set(t.length + i * tab_step), a_tab, i);
    if (t.clip) return about("frame.tabs.clip.standoff", t.clip->standoff, slot_step, 16, 0, a_standoff);
    constexpr std::array inch_plates{0.25, 0.3125, 0.375, 0.5, 0.625, 0.75, 1.0};
    constexpr std::array metric_plates{6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 25.0};
    for (std::size_t i = 0; i < inch_plates.size(); ++i) {
      const Mm thickness = metric_ ? metric_plates[i] : inch_plates[i] * inch;
      if (std::abs(thickness - t.plate->pad_thickness) > same_place && t.plate->pad_width > 0)
        add("frame.tabs.plate.pad_thickness", figures_.set(thickness), a_standoff, static_cast<int>(i) + 1);
    }
  }

  void track() {
    const TrackOrder& t = job_.order.track;
    const Mm step = metric_ ? 25 : inch;
    about("track.bunk_pitch", t.bunk_pitch, step / 2, 12, 6 * inch, a_pitch);
    about("track.rail_length", t.rail_length, step, 12, 12 * inch, a_rail);
  }

  const Job& job_;
  int bunks_;
  Figures figures_;
  bool metric_;
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
      all.push_back({{parameter.key.text, value}, kind + std::min(++step, 99)});
    kind += 100;
  }
  return all;
}

}  // namespace bedwright
