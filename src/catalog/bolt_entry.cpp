// Turns a bolt as written into a BoltSize, and checks that its sizes agree.
#include "catalog/bolt_entry.h"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "units/parse.h"

namespace bedwright {
namespace {

// Longer than any bolt there is: of a tolerance that is the same at every length.
constexpr Mm any_length = 1000;

void check_washer(const BoltSize& bolt, const Washer& washer, const char* key, std::vector<Fault>& found) {
  if (washer.inside < bolt.diameter)
    found.push_back(
        {fmt::format("{}.inside", key),
         fmt::format("the washer's hole of {:.2f} mm does not go over the {} bolt", washer.inside, bolt.name),
         fmt::format("make it at least {:.2f} mm", bolt.diameter)});
  if (washer.outside <= washer.inside)
    found.push_back({fmt::format("{}.outside", key), "the washer's outside is no larger than its hole",
                     fmt::format("make it more than {:.2f} mm", washer.inside)});
}

void check_lengths(const BoltSize& bolt, std::vector<Fault>& found) {
  if (bolt.lengths.empty()) {
    found.push_back({"lengths", fmt::format("{} has no stock lengths", bolt.name), "list at least one"});
    return;
  }
  const auto out_of_order =
      std::adjacent_find(bolt.lengths.begin(), bolt.lengths.end(), [](Mm a, Mm b) { return b <= a; });
  if (out_of_order != bolt.lengths.end())
    found.push_back({"lengths",
                     fmt::format("{:.2f} mm stands before {:.2f} mm in the stock lengths", out_of_order[0],
                                 out_of_order[1]),
                     "list each length once, shortest first"});
}

// One tolerance for every length, or a row for each; the rows must reach the longest in stock.
void check_tolerances(const BoltEntry& entry, const BoltSize& bolt, std::vector<Fault>& found) {
  const auto& rows = entry.length_tolerances;
  const bool single = entry.length_plus && entry.length_minus,
             part = entry.length_plus.has_value() != entry.length_minus.has_value();
  if (part || single == !rows.empty()) {
    found.push_back({part           ? ""
                     : rows.empty() ? ""
                                    : "length_tolerances",
                     fmt::format("{} needs its length tolerance stated once", bolt.name),
                     "give length_plus and length_minus, or length_tolerances"});
    return;
  }
  for (std::size_t i = 1; i < rows.size(); ++i)
    if (rows[i].up_to <= rows[i - 1].up_to)
      found.push_back({fmt::format("length_tolerances[{}].up_to", i + 1),
                       "does not reach further than the row before it",
                       "list each length once, shortest first"});
  if (!rows.empty() && !bolt.lengths.empty() && rows.back().up_to < bolt.lengths.back() - same_place)
    found.push_back({"length_tolerances",
                     fmt::format("the last row is for bolts up to {:.2f} mm, and {:.2f} mm is in stock",
                                 rows.back().up_to, bolt.lengths.back()),
                     "add a row for the longer bolts"});
}

void check_holes(const BoltSize& bolt, std::vector<Fault>& found) {
  if (bolt.standard_hole <= bolt.diameter)
    found.push_back(
        {"standard_hole",
         fmt::format("a hole of {:.2f} mm leaves the {} bolt no clearance", bolt.standard_hole, bolt.name),
         fmt::format("make it more than {:.2f} mm", bolt.diameter)});
  if (bolt.oversize_hole < bolt.standard_hole)
    found.push_back(
        {"oversize_hole",
         fmt::format("the oversize hole of {:.2f} mm is under the standard hole", bolt.oversize_hole),
         fmt::format("make it at least {:.2f} mm", bolt.standard_hole)});
}

// What a size may be in bolt diameters. Wider by a little than the standards' own figures from
// 1/4 in to 1 in and M5 to M24: ASME B18.2.1, B18.2.2, B18.21.1, ISO 4014, 4032, 7089, 7093,
// DIN 127, AISC 360 tables J3.3 and J3.4. A nut half as high as its standard's, or a washer of
// another size's, is a slip of the pen, and no bolt chosen with it can be trusted.
struct Usual {
  const char* key;
  Mm size;
  double least, most;
};

void check_sizes(const BoltSize& b, std::vector<Fault>& found) {
  static const char* const pitch = "pitch";
  const Usual all[] = {
      {pitch, b.pitch, 0.05, 0.22},
      {"head_flats", b.head_flats, 1.4, 1.9},
      {"head_height", b.head_height, 0.55, 0.75},
      {"nut_flats", b.nut_flats, 1.4, 1.9},
      {"nut_height", b.nut_height, 0.8, 1.1},
      {"flat.inside", b.flat.inside, 1, 1.3},
      {"flat.outside", b.flat.outside, 1.7, 3.5},
      {"flat.thickness", b.flat.thickness, 0.1, 0.35},
      {"lock.inside", b.lock.inside, 1, 1.1},
      {"lock.outside", b.lock.outside, 1.5, 2.2},
      {"lock.thickness", b.lock.thickness, 0.12, 0.35},
      {"wrench", b.wrench, 1.4, 2},
      {"standard_hole", b.standard_hole, 1, 1.3},
      {"oversize_hole", b.oversize_hole, 1, 1.6},
      {"edge_minimum", b.edge_minimum, 1.2, 2.5},
      {"thread_length", b.thread_length, 1.5, 20},
  };
  for (const Usual& u : all) {
    const bool said = std::any_of(found.begin(), found.end(), [&](const Fault& f) { return f.key == u.key; });
    const bool usual =
        u.size >= u.least * b.diameter - same_place && u.size <= u.most * b.diameter + same_place;
    if (said || usual || u.size == 0) continue;  // no pitch at all is said already
    found.push_back({u.key == pitch && !b.metric ? "threads_per_inch" : u.key,
                     fmt::format("{:.2f} mm is no size of the standards for a {} bolt, {:.2f} mm thick",
                                 u.size, b.name, b.diameter),
                     fmt::format("look it up again: between {:.2f} and {:.2f} mm", u.least * b.diameter,
                                 u.most * b.diameter)});
  }
  // Head and nut lie on the plain washer with their whole face.
  const Mm flats = std::max(b.head_flats, b.nut_flats);
  if (b.flat.outside < flats - same_place && b.flat.outside >= 1.7 * b.diameter)
    found.push_back(
        {"flat.outside",
         fmt::format("the washer, {:.2f} mm across, is smaller than the head or nut on it, {:.2f} mm "
                     "across flats",
                     b.flat.outside, flats),
         fmt::format("make it at least {:.2f} mm", flats)});
}

// "M12" is 12 mm and "1/2 in" half an inch; other names say nothing of the size.
std::optional<Mm> diameter_named(const std::string& name) {
  const ParsedQuantity parsed =
      parse_quantity(Dimension::length, name.starts_with("M") ? name.substr(1) + " mm" : name);
  return parsed.value;
}

void check_name(const BoltSize& bolt, std::vector<Fault>& found) {
  const std::optional<Mm> named = diameter_named(bolt.name);
  if (!named || std::abs(*named - bolt.diameter) < same_place) return;
  found.push_back({"diameter",
                   fmt::format("{:.2f} mm is not the diameter of a {} bolt", bolt.diameter, bolt.name),
                   fmt::format("make it {:.2f} mm, or name the bolt otherwise", *named)});
}

}  // namespace

BoltSize to_bolt(const BoltEntry& entry) {
  const bool inch_thread = entry.threads_per_inch > 0, metric = entry.pitch > 0;
  BoltSize bolt;
  bolt.name = entry.name.text;
  bolt.metric = metric;
  bolt.diameter = entry.diameter;
  bolt.pitch = inch_thread == metric ? 0 : inch_thread ? inch / entry.threads_per_inch : entry.pitch;
  bolt.head_flats = entry.head_flats;
  bolt.head_height = entry.head_height;
  bolt.nut_flats = entry.nut_flats;
  bolt.nut_height = entry.nut_height;
  bolt.flat = entry.flat;
  bolt.lock = entry.lock;
  bolt.wrench = entry.wrench;
  bolt.standard_hole = entry.standard_hole;
  bolt.oversize_hole = entry.oversize_hole;
  bolt.edge_minimum = entry.edge_minimum;
  bolt.thread_length = entry.thread_length;
  bolt.tolerances = entry.length_tolerances;
  if (bolt.tolerances.empty() && entry.length_plus && entry.length_minus)
    bolt.tolerances = {{any_length, *entry.length_plus, *entry.length_minus}};
  bolt.lengths = entry.lengths;
  bolt.tools = entry.tools;
  return bolt;
}

std::vector<Fault> faults(const BoltEntry& entry, const BoltSize& bolt) {
  std::vector<Fault> found;
  if (bolt.pitch == 0)
    found.push_back({"", fmt::format("{} needs its thread stated once", bolt.name),
                     "give either threads_per_inch or pitch"});
  check_holes(bolt, found);
  check_washer(bolt, bolt.flat, "flat", found);
  check_washer(bolt, bolt.lock, "lock", found);
  const Mm flats = std::max(bolt.head_flats, bolt.nut_flats);
  if (bolt.wrench < flats)
    found.push_back(
        {"wrench", fmt::format("a wrench of {:.2f} mm does not go on flats of {:.2f} mm", bolt.wrench, flats),
         fmt::format("make it at least {:.2f} mm", flats)});
  check_lengths(bolt, found);
  check_tolerances(entry, bolt, found);
  check_name(bolt, found);
  check_sizes(bolt, found);
  return found;
}

}  // namespace bedwright
