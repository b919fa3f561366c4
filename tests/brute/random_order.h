// Random orders with random faults, as an order and the --set that spoil it.
#pragma once

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <random>
#include <string>
#include <utility>
#include <vector>

namespace bedwright::testing {

// An order to spoil.
struct BaseOrder {
  std::string name;
  bool metric = false, clip = false;  // its lengths, and its frame's kind of tab
};

inline const std::vector<BaseOrder> good_bases = {{"base", false, false},
                                                  {"one_extension", false, true},
                                                  {"metric", true, true},
                                                  {"lot_frame", false, false}};

// The rest of the demo orders, and what `new` starts from (support/shipped.h).
inline const std::vector<BaseOrder> every_base = [] {
  std::vector<BaseOrder> all = good_bases;
  all.insert(all.end(), {{"sizes", false, true},
                         {"wrong", false, false},
                         {"starter_inch", false, false},
                         {"starter_metric", true, true}});
  return all;
}();

struct RandomOrder {
  std::string name;  // of the order spoilt
  std::vector<std::string> sets;
};

class OrderMaker {
 public:
  explicit OrderMaker(unsigned seed, std::vector<BaseOrder> bases = good_bases)
      : random_(seed), bases_(std::move(bases)) {}

  RandomOrder make() {
    const BaseOrder& base = bases_[static_cast<std::size_t>(pick(0, static_cast<int>(bases_.size()) - 1))];
    RandomOrder order{base.name, {}};
    metric_ = base.metric;
    clip_ = base.clip;
    const int faults = pick(1, 3);
    std::vector<int> kinds;
    while (static_cast<int>(kinds.size()) < faults) {
      const int kind = pick(0, 21);
      if (std::find(kinds.begin(), kinds.end(), kind) == kinds.end()) kinds.push_back(kind);
    }
    for (const int kind : kinds) order.sets.push_back(fault(kind));
    return order;
  }

 private:
  // Not the standard distributions: those may differ between libraries.
  int pick(int low, int high) {
    return low + static_cast<int>(random_() % static_cast<unsigned>(high - low + 1));
  }
  const char* one_of(std::initializer_list<const char*> all) {
    return *(all.begin() + pick(0, static_cast<int>(all.size()) - 1));
  }

  // Sixteenths of an inch, or as many millimetres as come near.
  std::string length(int sixteenths) {
    return metric_ ? fmt::format("{} mm", std::lround(sixteenths * 1.5875))
                   : fmt::format("{} in", sixteenths / 16.0);
  }
  std::string between(int low, int high) { return length(pick(low, high)); }

  // What a shop gets wrong, and what a kit or frame file may say; the sizes reach
  // from well within to far beyond what goes together.
  std::string fault(int kind) {
    switch (kind) {
      case 0:
        return fmt::format("bolts.{}={}", one_of({"track", "bunk", "gusset", "stop", "jack"}),
                           metric_ ? one_of({"25 mm", "30 mm", "40 mm", "50 mm", "60 mm"})
                                   : one_of({"1 in", "1-1/4 in", "1-1/2 in", "2 in", "2-1/2 in"}));
      case 1:
        return fmt::format("track.clamps[{}].bunk={}", pick(1, 2), pick(1, 12));
      case 2:
        return fmt::format("track.log_stops[{}]={}", pick(1, 3), pick(1, 12));
      case 3:
        return "track.end_bunks=inner";
      case 4:
        return fmt::format("jacks[{}]={}", pick(1, 2), between(8 * 16, 220 * 16));
      case 5:
        return "axle.position=" + between(40 * 16, 200 * 16);
      case 6:
        return fmt::format("tabs_found=[{{tab: {}{}, x: {}, y: {}}}]", one_of({"L", "R"}), pick(1, 9),
                           between(-24, 24), between(-10, 10));
      case 7:
        return "frame.tabs.slot_length=" + between(14, 24);
      case 8:
        return "frame.tabs.length=" + between(28, 80);
      case 9:
        return (clip_ ? "frame.tabs.clip.standoff=" : "frame.tabs.plate.pad_thickness=") + between(2, 20);
      case 10:
        return std::string("track.datum=") + one_of({"front", "middle", "rear"});
      case 11:
        return "track.bunk_pitch=" + between(14 * 16, 30 * 16);
      case 12:
        return "track.rail_length=" + between(60 * 16, 100 * 16);
      case 13:
        return fmt::format("kit.head.boxes[{}].z_from={}", pick(2, 3), between(-8, 40));
      case 14:
        return "kit.clamp.arm_height=" + between(48, 240);
      case 15:
        return "kit.clamp.travel_to=" + between(120, 360);
      case 16:
        return fmt::format("kit.clamp.{}={} deg", one_of({"lean_in", "lean_out"}), pick(0, 40));
      case 17:
        return "kit.track_stop.from_end=" + between(80, 240);
      case 18:
        return "kit.log_stop.from_centre=" + between(40, 340);
      case 19:
        return "frame.axle.tyre_inside=" + between(40 * 16, 62 * 16);
      case 20:
        return "frame.jack.post_top=" + between(-60, 80);
      default:
        return "kit.bunk.line=" + between(28, 90);
    }
  }

  std::mt19937 random_;
  std::vector<BaseOrder> bases_;
  bool metric_ = false, clip_ = false;
};

}  // namespace bedwright::testing
