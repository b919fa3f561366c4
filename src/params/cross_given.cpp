// Checks of what an order gives in one of several ways: places, overrides, free
// parameters.
#include <fmt/format.h>

#include <map>

#include "params/cross_check.h"
#include "params/vary.h"
#include "units/print.h"
#include "yaml/key_path.h"
#include "yaml/text.h"

namespace bedwright {

void CrossCheck::check_places() {
  if (sound(order_, {"axle"})) {
    const bool position = given(order_, "axle.position"), fraction = given(order_, "axle.fraction");
    if (position && fraction)
      problem(order_, "axle.fraction", "is given as well as axle.position", "keep one of the two");
    if (!position && !fraction)
      problem(order_, "axle", "has neither position nor fraction",
              "add position: 139 in (behind the front end of the track), or fraction: 0.58 (of its length)");
  }
  if (sound(order_, {"jacks_between", "jacks", "jacks_from_rear"}) && job_.order.jacks_between > 0 &&
      job_.order.jacks.size() + job_.order.jacks_from_rear.size() < 2)
    problem(order_, "jacks_between", "has no two pairs to lie between",
            "place a pair at each end, by jacks and jacks_from_rear");
  if (!sound(order_, {"jacks_from_rear", "track.rail_length", "track.extension_count"}) ||
      !sound(kit_, {"rail.base_sections", "rail.joint_gap"}))
    return;
  const Mm total = track_length(job_.order, job_.kit);
  for (std::size_t i = 0; i < job_.order.jacks_from_rear.size(); ++i) {
    if (job_.order.jacks_from_rear[i] <= total) continue;
    problem(order_, path_to("jacks_from_rear", i + 1),
            fmt::format("{} lies ahead of the track, which is {} long",
                        both_units(Dimension::length, job_.order.jacks_from_rear[i]),
                        both_units(Dimension::length, total)),
            "keep it within the track");
  }
}

void CrossCheck::check_overrides() {
  std::map<std::string, std::size_t> seen;
  for (std::size_t i = 0; i < job_.order.overrides.size(); ++i) {
    const std::string entry = path_to("overrides", i + 1);
    const std::string& key = job_.order.overrides[i].key.text;
    if (!sound(order_, {entry}) || key.empty()) continue;
    if (!key.starts_with(kit_.key_prefix) && !key.starts_with(frame_.key_prefix)) {
      problem(order_, entry + ".key", fmt::format("{} is no key of the kit or the frame file", quoted(key)),
              "write it as kit.rail.joint_gap or frame.tabs.slot_length; keys of the order are changed where "
              "they stand");
    } else if (!parse_key_path(key) || key.find('=') != std::string::npos) {
      problem(order_, entry + ".key", fmt::format("{} is no path to a key", quoted(key)),
              "write it as frame.key.key or kit.list[2].key, entries counted from 1");
    } else if (const auto [first, fresh] = seen.emplace(key, i + 1); !fresh) {
      problem(order_, entry + ".key", fmt::format("{} is already given by entry {}", key, first->second),
              "give each key once");
    }
  }
}

void CrossCheck::check_free() {
  std::map<std::string, std::size_t> seen;
  for (std::size_t i = 0; i < job_.order.free.size(); ++i) {
    const std::string entry = path_to("free", i + 1);
    const FreeParameter& f = job_.order.free[i];
    if (!sound(order_, {entry}) || f.key.text.empty()) continue;
    if (!parse_key_path(f.key.text) || f.key.text.find('=') != std::string::npos) {
      problem(order_, entry + ".key", fmt::format("{} is no path to a key", quoted(f.key.text)),
              "write it as key.key or list[2].key, entries counted from 1");
    } else if (const auto [first, fresh] = seen.emplace(f.key.text, i + 1); !fresh) {
      problem(order_, entry + ".key",
              fmt::format("{} is already given by entry {}", f.key.text, first->second),
              "give each key once");
    }
    const auto values = parse_values(f.values.text);
    if (const VaryFault* bad = std::get_if<VaryFault>(&values))
      problem(order_, entry + ".values", bad->what, bad->would_do);
  }
}

}  // namespace bedwright
