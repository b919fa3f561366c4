// One entry for each figure the words may name.
#include "sheets/assembly/assembly_figures.h"

#include <fmt/format.h>

#include <algorithm>

#include "bed/names.h"
#include "sheets/aids/aids.h"
#include "sheets/bolts/bolt_kinds.h"

namespace bedwright {
namespace {

Kg heaviest_rail(const Bed& bed) {
  Kg most = 0;
  for (const int rail : bed.items_of(Kind::rail)) most = std::max(most, mass(bed.part_of(rail)));
  return most;
}

std::string count_words(std::size_t count) { return count == 0 ? "" : fmt::format("{}", count); }

std::string place_words(const std::vector<Mm>& places, const Figures& figures) {
  std::vector<std::string> words;
  for (const Mm x : places) words.push_back(figures.customer(x));
  return listed_words(words);
}

// Letters of the kinds that serve as such bolts, with size and length: "A (1/2 in x 1-1/4 in)".
std::string kinds_for(const std::vector<BoltKind>& kinds, Kind use) {
  std::vector<std::string> words;
  for (const BoltKind& k : kinds)
    if (std::find(k.uses.begin(), k.uses.end(), use) != k.uses.end())
      words.push_back(fmt::format("{} ({} x {})", k.letter, k.size.name, bolt_length_text(k.size, k.length)));
  return listed_words(words);
}

std::string bolts_of(const Bed& bed, Kind use) {
  return count_words(static_cast<std::size_t>(std::count_if(
      bed.bolts.begin(), bed.bolts.end(), [&](const Bolt& b) { return b.id.kind == use && b.in_place; })));
}

std::string wrenches(const std::vector<BoltKind>& kinds, const Figures& figures) {
  std::vector<Mm> sizes;
  for (const BoltKind& k : kinds) sizes.push_back(k.size.wrench);
  std::sort(sizes.begin(), sizes.end());
  sizes.erase(
      std::unique(sizes.begin(), sizes.end(), [](Mm a, Mm b) { return std::abs(a - b) < same_place; }),
      sizes.end());
  return place_words(sizes, figures);
}

std::string section_order(int sections) {
  std::vector<std::string> words;
  for (int s = 1; s <= sections; ++s)
    words.push_back(fmt::format("L{0} and R{0}{1}", s, s == 1 ? " (front)" : s == sections ? " (rear)" : ""));
  std::string all;
  for (const std::string& w : words) all += (all.empty() ? "" : ", then ") + w;
  return all;
}

std::string numbers(const std::vector<int>& all) {
  std::vector<std::string> words;
  for (const int n : all) words.push_back(fmt::format("{}", n));
  return listed_words(words);
}

Mm diagonal(const SheetInput& in) { return std::hypot(in.bed.track.total_length, in.job.kit.gauge); }

}  // namespace

std::string listed_words(const std::vector<std::string>& words) {
  std::string all;
  for (std::size_t i = 0; i < words.size(); ++i)
    all += (i == 0 ? "" : i + 1 == words.size() ? " and " : ", ") + words[i];
  return all;
}

TemplateFigures assembly_figures(const SheetInput& in) {
  const Order& order = in.job.order;
  const Heading& h = order.order;
  const Figures figures = h.figures();
  const Track& track = in.bed.track;
  const std::vector<BoltKind> kinds = track_bolt_kinds(in);
  const GaugeSpacer spacer = gauge_spacer(in);
  const auto length = [&](Mm x) { return figures.customer(x); };
  const bool joints = !track.joints.empty();
  std::vector<int> clamps;
  for (const ClampPlace& c : order.track.clamps) clamps.push_back(c.bunk);
  std::sort(clamps.begin(), clamps.end());
  std::vector<int> stops = order.track.log_stops;
  std::sort(stops.begin(), stops.end());
  std::vector<Mm> jacks = order.jacks;
  std::sort(jacks.begin(), jacks.end());
  const Datum datum = order.track.datum;
  const Mm opening = in.job.kit.gauge + figures.hand_width();
  return {
      {"order", h.number},
      {"revision", h.revision},
      {"date", h.date},
      {"customer", h.customer},
      {"shop", h.shop},
      {"kit", in.job.kit.name},
      {"sections", count_words(static_cast<std::size_t>(track.sections))},
      {"rails", count_words(2 * static_cast<std::size_t>(track.sections))},
      {"rail_length", rail_lengths(track, length)},
      {"rail_mass", figures.mass(heaviest_rail(in.bed))},
      {"track_length", length(track.total_length)},
      {"section_order", section_order(track.sections)},
      {"joints", count_words(track.joints.size())},
      {"joint_gap", !joints                                  ? ""
                    : in.job.kit.rail.joint_gap < same_place ? "closed"
                                                             : length(in.job.kit.rail.joint_gap)},
      {"joint_gap_most", joints ? length(order.limits.joint_gap) : ""},
      {"joint_step_most", joints ? length(order.limits.joint_step) : ""},
      {"gauge", length(in.job.kit.gauge)},
      {"gauge_tolerance", length(order.tolerances.gauge)},
      {"spacers", count_words(spacer_places(in).size())},
      {"spacer_length", length(spacer.length)},
      {"clamp_opening", length(opening)},
      {"track_bolts", kinds_for(kinds, Kind::track_bolt)},
      {"track_bolt_count", bolts_of(in.bed, Kind::track_bolt)},
      {"bunk_bolts", kinds_for(kinds, Kind::bunk_bolt)},
      {"bunk_bolt_count", bolts_of(in.bed, Kind::bunk_bolt)},
      {"gusset_bolts", kinds_for(kinds, Kind::gusset_bolt)},
      {"gusset_bolt_count", bolts_of(in.bed, Kind::gusset_bolt)},
      {"stop_bolts", kinds_for(kinds, Kind::stop_bolt)},
      {"stop_bolt_count", bolts_of(in.bed, Kind::stop_bolt)},
      {"wrenches", wrenches(kinds, figures)},
      {"start", datum == Datum::front  ? "the front end"
                : datum == Datum::rear ? "the rear end"
                                       : "the middle"},
      {"bunks", count_words(track.bunks.size())},
      {"bunk_pitch", length(track.bunk_spacing())},
      {"clamp_bunks", numbers(clamps)},
      {"log_stop_bunks", numbers(stops)},
      {"head_lock", order.track.head_lock == HeadLock::front ? "front" : "rear"},
      {"head_lock_place", length(track.head_lock)},
      {"tips_behind", in.examined.loads.tow.tips_on_track()
                          ? length(figures.whole_down(in.examined.loads.tow.tips_behind))
                          : ""},
      {"head_mass", in.job.kit.head.mass > 0 ? figures.mass(in.job.kit.head.mass) : ""},
      {"jacks", count_words(2 * jacks.size())},
      {"jack_pairs", count_words(jacks.size())},
      {"jack_places", place_words(jacks, figures)},
      {"straight", length(order.work.sag_limit)},
      {"straight_across", length(order.tolerances.gauge)},
      {"diagonal", length(diagonal(in))},
      {"diagonal_difference", length(2 * h.tape)},
      {"length_tolerance", length(order.limits.track_length_error)},
      {"threads", fmt::format("{:g}", order.limits.threads_past_nut)},
      {"most_past_nut", length(order.limits.most_past_nut)},
  };
}

Table2d check_table(const SheetInput& in) {
  const Figures figures = in.figures();
  const Limits& limits = in.job.order.limits;
  const Track& track = in.bed.track;
  const auto length = [&](Mm x) { return figures.customer(x); };
  Table2d table{{"CHECK", "SHOULD BE", "LIMIT", "MEASURED   "}, {}};
  const auto row = [&](const std::string& what, const std::string& wanted, const std::string& limit) {
    table.rows.push_back({what, wanted, limit, ""});
  };
  row("Gauge at every spacer's place", length(in.job.kit.gauge),
      "+/- " + length(in.job.order.tolerances.gauge));
  for (const char* side : {"left", "right"})
    row(fmt::format("Track, {} rail, end to end", side), length(track.total_length),
        "+/- " + length(limits.track_length_error));
  for (const char* which : {"Diagonal, front left to rear right", "Diagonal, front right to rear left"})
    row(which, length(diagonal(in)), "both within " + length(2 * figures.mark));
  if (!track.joints.empty()) {
    row("Widest joint gap",
        in.job.kit.rail.joint_gap < same_place ? "closed" : length(in.job.kit.rail.joint_gap),
        "at most " + length(limits.joint_gap));
    row("Highest step at a joint", "none", "at most " + length(limits.joint_step));
  }
  row("Rails off the string, up and down", "none", "at most " + length(in.job.order.work.sag_limit));
  row("Rails off the string, sideways", "none", "at most " + length(in.job.order.tolerances.gauge));
  row("Bolt past its nut", fmt::format("{:g} full thread or more", limits.threads_past_nut),
      "at most " + length(limits.most_past_nut));
  row("Head rolled over the whole track", "touches nothing", "-");
  row("Jacks that carry", fmt::format("{}", 2 * in.job.order.jacks.size()), "all");
  return table;
}

}  // namespace bedwright
