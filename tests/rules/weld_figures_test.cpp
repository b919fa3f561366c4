// Every fillet of the demo beds against figures worked out by hand: the frame files'
// own lengths, and the sections as AISC Manual table 1-5 has them (they are typed in
// here, not read from the catalogue).
#include <fmt/format.h>
#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

#include "bed/names.h"
#include "support/demo.h"

namespace bedwright {
namespace {

using testing::demo_bed;
using testing::good_orders;

// In inches: C6x8.2 is 6 deep, 1.92 wide, web 0.200, flange 0.343 at its middle; C5x6.7
// 1.75, 0.190, 0.320; C4x5.4 4 deep, web 0.184, flange 0.296. A flange falls by a sixth
// of the way from its middle to its toe. L3x3x1/4.
constexpr Mm main_flange = 1.92 * inch, main_web = 0.200 * inch, main_thick = 0.343 * inch;
constexpr Mm tongue_flange = 1.75 * inch, tongue_thick = 0.320 * inch,
             tongue_toe = (0.320 - (1.75 - 0.190) / 2 / 6) * inch;
constexpr Mm cross_web = 0.184 * inch;

// One line of weld, or several alike, of each item of kind `a`.
struct Fillet {
  Kind a, b;
  WeldLine line;
  int each;
  Mm leg, thinner, edge, length;
};

struct FrameSizes {
  Mm spacing, ahead, back;  // mains web to web; tongue ahead of them and under them
  Mm gusset, gusset_thick;  // leg, plate
  Mm tongue_plate, tongue_plate_thick;
  Mm coupler, ball_ahead;
};

// A tongue at 25 degrees. 3 mm are left between its toes at the ball; its web's outer
// face gains tan 25 across for each length along. The mains' toes stand a flange inside
// their webs, and both square ends of the channels lie between toe and web. Where an edge
// crosses the front member askew, the fillet stops short by what its leg would hang over.
void add_tongue(std::vector<Fillet>& all, const FrameSizes& f, Mm leg) {
  const double tan = std::tan(25 * degree), cos = std::cos(25 * degree);
  const Mm web_at_mains = tongue_flange / cos + 3 + f.ahead * tan, toe_line = f.spacing / 2 - main_flange;
  const Mm outer_from =
      (toe_line - web_at_mains) / tan;  // along, where the outer edge comes under the flange
  const Mm web_at_rear = web_at_mains + f.back * tan;
  // The leg lies square to the edge, and the main's flange ends at its web's back.
  const Mm outer_to = std::min(f.back, (f.spacing / 2 - leg * cos - web_at_mains) / tan);
  all.push_back({Kind::tongue, Kind::main, WeldLine::lap_outer, 1, leg, tongue_toe, tongue_toe,
                 (outer_to - outer_from) / cos});
  all.push_back(
      {Kind::tongue, Kind::main, WeldLine::lap_rear, 1, leg, tongue_toe, tongue_toe, web_at_rear - toe_line});
  all.push_back({Kind::tongue, Kind::front_member, WeldLine::flange_edges, 1, leg, tongue_toe, tongue_toe,
                 2 * (main_flange - leg * std::sin(25 * degree)) / cos});
  all.push_back({Kind::tongue_plate, Kind::tongue, WeldLine::outer_edge, 2, leg,
                 std::min(tongue_thick, f.tongue_plate_thick), f.tongue_plate_thick, f.tongue_plate / cos});
}

std::vector<Fillet> frame_fillets(const FrameSizes& f) {
  constexpr Mm leg = 3 * inch / 16;  // what a frame has that names none
  constexpr Mm ledge = 6;            // the gusset stands in from web and toes by that, for the fillet
  std::vector<Fillet> all{
      {Kind::cross_member, Kind::main, WeldLine::web_sides, 2, leg, cross_web, 0, 2 * (4 - 2 * 0.296) * inch},
      {Kind::corner_gusset, Kind::main, WeldLine::edge_under_main, 1, leg, f.gusset_thick, f.gusset_thick,
       f.gusset + ledge - main_flange},
      {Kind::corner_gusset, Kind::rear_member, WeldLine::edge_under_rear, 1, leg, f.gusset_thick,
       f.gusset_thick, f.gusset},
  };
  // Round the main's inside: its flanges are 0.343 thick in the middle of what stands out from
  // the web, and their inner faces rise 2 in 12 from there to the web.
  const Mm out = (1.92 - 0.200) * inch, at_web = 0.343 * inch + out / 2 / 6;
  for (const Kind end : {Kind::front_member, Kind::rear_member})
    all.push_back({end, Kind::main, WeldLine::inside_end, 2, leg, main_web, 0,
                   6 * inch - 2 * at_web + 2 * out * std::hypot(1, 1.0 / 6)});
  add_tongue(all, f, leg);
  // The coupler's plate, 1/4 in thick, on the tongue's top: its nose is 2 in ahead of the
  // ball; the fillet begins where its leg, square to the edge, has flange under it.
  all.push_back(
      {Kind::coupler, Kind::tongue, WeldLine::outer_edge, 2, leg, inch / 4, inch / 4,
       (f.coupler - f.ball_ahead - 2 * inch - leg * std::sin(25 * degree)) / std::cos(25 * degree)});
  return all;
}

constexpr FrameSizes six_inch{44 * inch, 38 * inch,    4.75 * inch, 8 * inch, inch / 4,
                              8 * inch,  3 * inch / 8, 10 * inch,   3 * inch};
constexpr FrameSizes metric{1122, 970, 120, 200, 6, 200, 10, 250, 75};

std::vector<Fillet> fillets_of(const std::string& order) {
  std::vector<Fillet> all = frame_fillets(order == "metric" ? metric : six_inch);
  if (order == "base" || order == "lot_frame") {
    // A plate 1/2 in thick reaches 1-3/4 in over the flange; on it a pad of 3/8 in, 3 in long.
    all.push_back(
        {Kind::tab, Kind::main, WeldLine::across_flange, 1, inch / 4, main_thick, inch / 2, 2 * 1.75 * inch});
    all.push_back({Kind::tab_pad, Kind::tab, WeldLine::pad_edges, 1, inch / 4, 3 * inch / 8, 3 * inch / 8,
                   2 * 3 * inch});
  } else {
    // A clip of 3 in, down the web from its standoff.
    const Mm standoff = order == "metric" ? 20 : 7 * inch / 8, leg = order == "metric" ? 4.5 : 3 * inch / 16;
    all.push_back(
        {Kind::tab, Kind::main, WeldLine::clip_ends, 1, leg, main_web, inch / 4, 2 * (3 * inch - standoff)});
  }
  return all;
}

bool same(Mm p, Mm q) { return std::abs(p - q) < 1e-3; }

// What of the bed's fillets is not as expected; empty when all are.
std::string first_wrong(const Bed& bed, const std::vector<Fillet>& expected) {
  std::vector<int> met(expected.size(), 0);
  for (const Weld& w : bed.welds) {
    if (w.line == WeldLine::hangers) continue;  // bought: welded as its maker says
    const Kind a = bed.items[w.a].id.kind, b = bed.items[w.b].id.kind;
    const std::string what =
        fmt::format("{} to {}, {}", name(bed.items[w.a]), name(bed.items[w.b]), words_of(w.line));
    const auto at = std::find_if(expected.begin(), expected.end(),
                                 [&](const Fillet& f) { return f.a == a && f.b == b && f.line == w.line; });
    if (at == expected.end()) return what + " is not expected";
    if (!same(w.leg, at->leg) || !same(w.thinner, at->thinner) || !same(w.edge, at->edge) ||
        !same(w.length, at->length))
      return fmt::format("{}: leg {}, thinner {}, edge {}, length {}; expected {}, {}, {}, {}", what, w.leg,
                         w.thinner, w.edge, w.length, at->leg, at->thinner, at->edge, at->length);
    ++met[static_cast<std::size_t>(at - expected.begin())];
  }
  for (std::size_t i = 0; i < expected.size(); ++i)
    if (const int wanted = expected[i].each * static_cast<int>(bed.items_of(expected[i].a).size());
        met[i] != wanted || wanted == 0)
      return fmt::format("{}, {}: {} of {}", word(expected[i].a), words_of(expected[i].line), met[i], wanted);
  return {};
}

TEST(Weld, EveryFilletOfTheDemosIsAsFrameAndSectionsSay) {
  for (const std::string& order : good_orders)
    EXPECT_EQ(first_wrong(demo_bed(order), fillets_of(order)), "") << order;
}

TEST(Weld, EveryFilletHalvedOrLeftOutIsTold) {
  for (const std::string& order : good_orders) {
    const Bed bed = demo_bed(order);
    const std::vector<Fillet> expected = fillets_of(order);
    for (std::size_t w = 0; w < bed.welds.size(); ++w) {
      if (bed.welds[w].leg <= 0) continue;
      for (Mm Weld::*figure : {&Weld::leg, &Weld::thinner, &Weld::edge, &Weld::length}) {
        Bed halved = bed;
        halved.welds[w].*figure /= 2;
        const bool changed = bed.welds[w].*figure > 0;
        EXPECT_NE(first_wrong(halved, expected).empty(), changed) << order << ", weld " << w;
      }
      Bed less = bed;
      less.welds.erase(less.welds.begin() + static_cast<std::ptrdiff_t>(w));
      EXPECT_FALSE(first_wrong(less, expected).empty()) << order << ", weld " << w;
    }
  }
}

}  // namespace
}  // namespace bedwright
