// Turns a bolt as written into a BoltSize, and checks that its sizes agree.
#include "catalog/bolt_entry.h"

#include <fmt/format.h>

#include <algorithm>

namespace bedwright {
namespace {

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
  bolt.length_plus = entry.length_plus;
  bolt.length_minus = entry.length_minus;
  bolt.lengths = entry.lengths;
  bolt.tools = entry.tools;
  return bolt;
}

std::vector<Fault> faults(const BoltSize& bolt) {
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
  return found;
}

}  // namespace bedwright
