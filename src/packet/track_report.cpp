// The report's account of the track, its datum and its bolts.
#include "packet/track_report.h"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <map>

#include "bed/names.h"
#include "examine/findings_json.h"
#include "rules/fit/bolt_kinds.h"
#include "rules/fit/datum.h"
#include "rules/table.h"

namespace bedwright {
namespace {

using Json = nlohmann::ordered_json;

constexpr int width = 100, indent = 8;
constexpr std::array datums{Datum::front, Datum::middle, Datum::rear};

const DatumMargin& margin_at(const DatumMargins& margins, Datum datum) {
  return margins[static_cast<std::size_t>(datum)];
}

const BoltSize& size_of(const Bed& bed, const KindsOfSize& kinds) {
  return bed.bolts[kinds.holes.front().bolt].size;
}

// The holes of each kind of bolt by the length they take.
using ByLength = std::map<Mm, std::vector<Identity>>;
template <class LengthOf>
std::map<Kind, ByLength> takes(const Bed& bed, const KindsOfSize& kinds, LengthOf length_of) {
  std::map<Kind, ByLength> all;
  for (const HoleChoice& h : kinds.holes)
    if (const std::optional<Mm> length = length_of(h))
      all[bed.bolts[h.bolt].id.kind][*length].push_back(bed.bolts[h.bolt].id);
  return all;
}

std::string lengths_text(const BoltSize& size, const std::vector<Mm>& lengths) {
  std::string text;
  for (std::size_t i = 0; i < lengths.size(); ++i)
    text += (i == 0 ? "" : i + 1 == lengths.size() ? " and " : ", ") + bolt_length_text(size, lengths[i]);
  return text;
}

// "track bolts 24 of 1-3/4 in; bunk bolts 22 of 1-1/4 in and 4 of 1-1/2 in (L3, L4, R3, R4)".
std::string takes_text(const BoltSize& size, const std::map<Kind, ByLength>& all) {
  std::string text;
  for (const auto& [kind, by_length] : all) {
    text += (text.empty() ? "" : "; ") + word(kind) + "s ";
    // Where a kind takes more than one length, the holes of the rarer ones are named.
    std::size_t most = 0;
    for (const auto& [length, holes] : by_length) most = std::max(most, holes.size());
    bool first = true, named = false;
    for (const auto& [length, holes] : by_length) {
      text += fmt::format("{}{} of {}", first ? "" : " and ", holes.size(), bolt_length_text(size, length));
      first = false;
      if (by_length.size() < 2 || (holes.size() == most && !named)) {
        named = named || holes.size() == most;
        continue;
      }
      text += " (";
      for (std::size_t i = 0; i < holes.size(); ++i) text += (i ? ", " : "") + mark(holes[i]);
      text += ")";
    }
  }
  return text;
}

const auto as_laid_out = [](const Bed& bed) {
  return [&bed](const HoleChoice& h) { return std::optional(bed.bolts[h.bolt].length); };
};
const auto in_fewest = [](const HoleChoice& h) { return h.fewest; };
const auto from_kit = [](const HoleChoice& h) { return h.from_kit; };

// "none suits the 24 track bolts, 2 of the 26 bunk bolts".
std::string unserved_text(const Bed& bed, const KindsOfSize& kinds) {
  std::map<Kind, std::pair<int, int>> left;  // unserved, all
  for (const HoleChoice& h : kinds.holes) {
    const Kind kind = bed.bolts[h.bolt].id.kind;
    if (!comes_with_kit(kind)) continue;
    left[kind].first += !h.from_kit;
    ++left[kind].second;
  }
  std::string text;
  for (const auto& [kind, counts] : left) {
    const auto [unserved, all] = counts;
    if (unserved == 0) continue;
    text += text.empty() ? "none suits " : ", ";
    text += unserved == all ? fmt::format("the {} {}s", all, word(kind))
                            : fmt::format("{} of the {} {}s", unserved, all, word(kind));
  }
  return text;
}

// "16 of 1-1/4 in needed, 18 in the box".
std::string box_text(const Scene& scene, const Job& job, const KindsOfSize& kinds) {
  std::string text;
  for (const Mm length : kinds.in_kit) {
    int needed = 0, have = 0;
    for (const HoleChoice& h : kinds.holes)
      needed += h.from_kit && std::abs(*h.from_kit - length) < same_place;
    for (const KitBox& b : job.kit.box)
      if (b.bolt.text == kinds.size && std::abs(b.length - length) < same_place) have += b.quantity;
    text += fmt::format("{}{} of {} needed, {} in the box", text.empty() ? "" : "; ", needed,
                        bolt_length_text(size_of(scene.bed, kinds), length), have);
  }
  return text;
}

// What the kit's own lengths serve, and what is in its box against what that takes.
std::string kit_text(const Scene& scene, const Job& job, const KindsOfSize& kinds) {
  if (kinds.in_kit.empty()) return "";
  const BoltSize& size = size_of(scene.bed, kinds);
  const std::string own = fmt::format("The kit's own {}", lengths_text(size, kinds.in_kit)),
                    served = takes_text(size, takes(scene.bed, kinds, from_kit));
  const bool one = kinds.in_kit.size() == 1;
  if (served.empty()) return fmt::format(" {} serve{} none of its holes.", own, one ? "s" : "");
  if (kinds.kit_serves)
    return fmt::format(" {} serve{} every hole the kit has: {} ({}).", own, one ? "s" : "", served,
                       box_text(scene, job, kinds));
  return fmt::format(" {} serve{} some of the kit's holes: {} ({}); {}.", own, one ? "s" : "", served,
                     box_text(scene, job, kinds), unserved_text(scene.bed, kinds));
}

// Of one size: as laid out, the fewest lengths, the kit's own; a paragraph each.
std::string size_text(const Scene& scene, const Job& job, const KindsOfSize& k) {
  const BoltSize& size = size_of(scene.bed, k);
  const auto unserved =
      std::count_if(k.holes.begin(), k.holes.end(), [](const HoleChoice& h) { return !h.fewest; });
  std::string fewest;
  if (unserved > 0)
    fewest = fmt::format("No stock length suits {} of the holes.", unserved);
  else if (k.fewest.size() < k.now.size())
    fewest = fmt::format("The fewest lengths that serve every hole, solved exactly: {}; {}.",
                         lengths_text(size, k.fewest), takes_text(size, takes(scene.bed, k, in_fewest)));
  else
    fewest = fmt::format("{} length{}; no fewer can serve every hole (solved exactly).", k.now.size(),
                         k.now.size() == 1 ? "" : "s");
  std::string text = fmt::format("{:{}}{}\n", "", indent, k.size);
  const std::string as_is =
      fmt::format("As laid out: {}.", takes_text(size, takes(scene.bed, k, as_laid_out(scene.bed))));
  for (const std::string& paragraph : {as_is, fewest, kit_text(scene, job, k)})
    text += wrapped(paragraph, indent + 2, width);
  return text;
}

std::string bolts_text(const Scene& scene, const Job& job) {
  std::string text =
      "Bolts by length (every hole in lists/bolts.csv, what to pack and buy in lists/hardware.csv)\n\n";
  for (const KindsOfSize& k : kinds_of_bolts(scene)) text += size_text(scene, job, k);
  return text;
}

std::string datum_text(const Scene& scene, const Job& job) {
  const DatumMargins margins = datum_margins(scene, job);
  const Datum now = job.order.track.datum, best = recommended_datum(margins, now);
  if (margin_at(margins, now).bolt < 0) return "";
  std::string text = "Where to pin the track (room left at its tightest hole, worst case)\n\n";
  for (const Datum d : datums) {
    const DatumMargin& m = margin_at(margins, d);
    const std::string line =
        fmt::format("{:{}}{:<8}{:<24}  {:<22}{}{}", "", indent, datum_word(d), scene.figures.say(m.margin),
                    "at " + name(scene.bed.bolts[m.bolt]), d == now ? "as ordered" : "",
                    d == best ? (d == now ? ", and recommended" : "recommended") : "");
    text += line.substr(0, line.find_last_not_of(' ') + 1) + "\n";
  }
  return text + "\n";
}

}  // namespace

nlohmann::ordered_json datum_json(const Scene& scene, const Job& job) {
  const DatumMargins margins = datum_margins(scene, job);
  const Datum now = job.order.track.datum;
  Json json{{"pinned", datum_word(now)}, {"recommended", datum_word(recommended_datum(margins, now))}};
  for (const Datum d : datums) {
    const DatumMargin& m = margin_at(margins, d);
    // No bolt in place: nothing to say a margin of.
    json[datum_word(d)] =
        m.bolt < 0 ? Json{}
                   : Json{{"margin", to_a_millionth(m.margin)}, {"bolt", name(scene.bed.bolts[m.bolt])}};
  }
  return json;
}

nlohmann::ordered_json bolts_json(const Scene& scene) {
  const auto list = [](const std::vector<Mm>& lengths) {
    Json json = Json::array();
    for (const Mm l : lengths) json.push_back(to_a_millionth(l));
    return json;
  };
  Json all = Json::array();
  for (const KindsOfSize& k : kinds_of_bolts(scene)) {
    Json holes = Json::array();
    for (const HoleChoice& h : k.holes) {
      const Bolt& bolt = scene.bed.bolts[h.bolt];
      holes.push_back(Json{{"bolt", name(bolt)},
                           {"length", to_a_millionth(bolt.length)},
                           {"suits", list(h.suits)},
                           {"fewest", h.fewest ? Json(to_a_millionth(*h.fewest)) : Json{}},
                           {"from_kit", h.from_kit ? Json(to_a_millionth(*h.from_kit)) : Json{}}});
    }
    all.push_back(Json{{"size", k.size},
                       {"now", list(k.now)},
                       {"fewest", list(k.fewest)},
                       {"in_kit", list(k.in_kit)},
                       {"kit_serves", k.kit_serves},
                       {"holes", std::move(holes)}});
  }
  return all;
}

std::string track_choices_text(const Scene& scene, const Job& job) {
  return datum_text(scene, job) + bolts_text(scene, job);
}

}  // namespace bedwright
