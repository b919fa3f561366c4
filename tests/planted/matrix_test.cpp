// The planted-fault matrix: for every rule of the table one fault just past its
// limit and its twin just inside. Every fault must be found by its rule, and no
// twin. Printed as a table.
#include "planted/matrix.h"

#include <fmt/format.h>
#include <gtest/gtest.h>

#include <numbers>
#include <set>

#include "draw/scribe.h"
#include "rules/small_bed.h"

namespace bedwright {
namespace {

// --- small beds ----------------------------------------------------------------

// Two plates of 6, washers of 2.5, a nut of 11: a stack of 28.
constexpr Mm stack = 28;
SmallBed two_plates(Mm length, const BoltSize& size = half_inch(), Vec2 off = {}) {
  SmallBed s;
  const int under = s.plate(some(1), {0, 0, 0}, {100, 100}, 6, {round_hole(off, 9 * inch / 16)});
  const int top = s.plate(some(2), {0, 0, 6}, {100, 100}, 6, {round_hole({}, 9 * inch / 16)});
  s.bolt(bunk_bolt_r1, {top, under}, length, size);
  return s;
}

Findings bolt_thread(double past) {
  BoltSize size = half_inch();
  size.thread_length = 38 - 17 - past * hair;  // the grip is 17
  return two_plates(38, size).run();
}

Findings washer_flat(double past) {
  SmallBed s = two_plates(34);
  s.bed.bolts[0].plies.back().slope = (1 + past * hair) * degree;
  return s.run();
}

// The washer is 34.9 across: centred on a bolt at one side of its hole, it reaches
// the other side of one (34.9 + 12.7) / 2 wide.
Findings washer_cover(double past) {
  SmallBed s;
  const int p = s.plate(some(1), {}, {200, 200}, 6, {round_hole({}, (34.9 + inch / 2) / 2 + past * hair)});
  s.bolt(bunk_bolt_r1, {p}, 34);
  return s.run();
}

// A tab's fillet of 6 along its edge, the main's end 6 beyond it; a tenth is rounding.
Findings weld_steel(double past) {
  SmallBed s;
  const Mm edge = 500 + 0.1 - 6 + past * hair;
  const int main = s.plate(main_r, {0, 0, -10}, {1000, 100}, 10);
  const int tab = s.plate(tab_r1, {edge - 50, 0, 0}, {100, 100}, 10);
  s.bed.welds.push_back({tab,
                         main,
                         6,
                         80,
                         WeldLine::across_flange,
                         10,
                         10,
                         {{{edge, -40, 0}, {edge, 40, 0}, {0, 0, 1}, {1, 0, 0}}}});
  return s.run();
}

Findings weld_contact(double past) {
  SmallBed s;
  s.box(some(1), {0, 0, 0}, {10, 10, 10});
  s.box(some(2), {10 + inch / 16 + past * hair, 0, 0}, {30, 10, 10});
  s.bed.welds.push_back({0, 1, 5, 20, WeldLine::none, 5, 0});
  return s.run();
}

Findings tip(double past) {
  SmallBed s = two_plates(34);  // its tip stands 20 under the plates at its longest
  const Mm top = -(20 + inch / 16 - past * hair);
  s.box(main_r, {-500, -40, top - 150}, {500, 40, top});
  return s.run();
}

// Overlaps up to 0.05 mm are a touch.
Findings clash(double past) {
  SmallBed s;
  s.box(some(1), {0, 0, 0}, {10, 10, 10});
  s.box(some(2), {10 - 0.05 - past * hair, 0, 0}, {20, 10, 10});
  return s.run();
}

// The weld is out by 1/16 in and half a mark of the tape, each hole by 0.5.
Findings clearance(double past) {
  return post_beside_main(inch / 16 + inch / 32 + 0.5 + 0.5 - past * hair).run();
}

Findings clash_moving(double past) {
  SmallBed s;
  s.box({Kind::head}, {0, 0, 0}, {10, 10, 10}, true);
  s.box(some(1), {10 + inch / 4 - past * hair, 0, 0}, {40, 10, 10});
  return s.run();
}

Findings edge(double past) {
  SmallBed s;
  const int p = s.plate(some(1), {}, {2 * (0.75 * inch - past * hair), 200}, 6, {round_hole({}, 14)});
  s.bolt(bunk_bolt_r1, {p}, 34);
  return s.run();
}

// The rim at the plate's edge.
Findings hole_steel(double past) {
  SmallBed s;
  s.plate(some(1), {}, {2 * (7 - past * hair), 200}, 6, {round_hole({}, 14)});
  return s.run();
}

Findings spacing(double past) {
  SmallBed s;
  const Mm apart = 8.0 / 3 * inch / 2 - past * hair;
  const int p = s.plate(some(1), {}, {300, 200}, 6, {round_hole({}, 14), round_hole({apart, 0}, 14)});
  s.bolt(bunk_bolt_r1, {p}, 34);
  s.bolt({Kind::bunk_bolt, Side::right, 2}, {p}, 34);
  s.bed.bolts[1].plies[0].hole = 1;
  return s.run();
}

Findings rail_remainder(double past) {
  SmallBed s;
  s.bed.track.rail_length = 80 * inch;
  s.bed.track.bunk_pitch = 20 * inch;
  s.bed.track.remainder = same_place * (1 + past / 2);
  return s.run();
}

Findings joint_support(double past) {
  SmallBed s;
  s.bed.track.joints = {1000};
  s.bed.track.rail_length = 1000;
  s.bed.track.total_length = 2000;
  s.limits.gusset_bolts = 0;
  for (Side side : both_sides)
    s.plate({Kind::tab, side, 1}, {1000 + 8 * inch + past * hair, 500 * outward(side), 0}, {80, 80}, 6,
            {round_hole({}, 14)});
  return s.run();
}

// A head down a square well, its nut free: the socket just goes in, or does not.
Findings reach(double past) {
  SmallBed s = two_plates(34);
  const Mm r = usual_tools(half_inch()).socket_outside / 2 - past * hair;
  s.box(some(3), {r, -100, 12}, {r + 20, 100, 300});
  s.box(some(4), {-r - 20, -100, 12}, {-r, 100, 300});
  s.box(some(5), {-r, r, 12}, {r, r + 20, 300});
  s.box(some(6), {-r, -r - 20, 12}, {r, -r, 300});
  return s.run();
}

Findings cut_hole(double past) {
  SmallBed s;
  s.plate(some(1), {}, {200, 200}, 10, {slot({}, 10 - past * hair, 30, 0)});
  return s.run();
}

Findings cut_web(double past) {
  SmallBed s;
  s.plate(
      some(1), {}, {200, 200}, 10,
      {round_hole({-10 - (10 - past * hair) / 2, 0}, 20), round_hole({10 + (10 - past * hair) / 2, 0}, 20)});
  return s.run();
}

Findings stock_plate(double past) {
  SmallBed s;
  s.plate(some(1), {}, {2000, 48 * inch + past * hair}, 6);
  return s.run();
}

Findings welded(Mm leg, Mm thinner, Mm edge) {
  SmallBed s;
  s.box(some(1), {0, 0, 0}, {10, 10, 10});
  s.box(some(2), {10, 0, 0}, {20, 10, 10});
  s.bed.welds.push_back({0, 1, leg, 100, WeldLine::none, thinner, edge});
  return s.run();
}

// A tab on a main and a tall plate standing beyond the tab's end. Leaned 60
// degrees, the nozzle's far end reaches 114.3 cos 60 + 9.525 sin 60 past the root.
Findings torch(double past) {
  SmallBed s;
  const int main = s.plate(main_r, {0, 0, -10}, {1000, 100}, 10);
  const int tab = s.plate(tab_r1, {0, 40, 0}, {80, 120}, 12, {round_hole({0, 40}, 14)});
  const Mm gap = 114.3 * 0.5 + 9.525 * std::numbers::sqrt3 / 2 - past * hair;
  const int wall = s.plate(some(1), {40 + gap + 20, 0, 0}, {40, 400}, 250);
  s.bolt(track_bolt_r1, {tab}, 34);
  s.bed.welds.push_back({tab, main, 6, 140, WeldLine::none, 10, 12});
  s.bed.welds.push_back({wall, main, 6, 140, WeldLine::none, 10, 0});
  return s.run();
}

// Two stacks, 28 and 31: 1-1/2 in for both once 10.6 may stand past a nut.
Findings bolt_kinds(double past) {
  SmallBed s;
  const auto stack_of = [&](const Identity& bolt, int first, Mm x, Mm thickness, Mm length) {
    const int under = s.plate(some(first), {x, 0, 0}, {100, 100}, 6, {round_hole({}, 14)});
    const int top = s.plate(some(first + 1), {x, 0, 6}, {100, 100}, thickness, {round_hole({}, 14)});
    s.bolt(bolt, {top, under}, length);
  };
  stack_of(bunk_bolt_r1, 1, 0, 6, 1.25 * inch);
  stack_of(track_bolt_r1, 3, 400, 9, 1.5 * inch);
  s.limits.most_past_nut = 1.5 * inch + 0.5 - stack + past * hair;
  return s.run();
}

// --- whole beds ------------------------------------------------------------------

// Layout looks for a tab no further than 2 in from a hole.
Findings hole_no_tab(double past) {
  const Bed bed = testing::demo_bed("lot_frame");
  const Mm hole = bed.bolts[bed.bolt({Kind::track_bolt, Side::right, 9})].seat.x;
  return run_demo("lot_frame", [&](Job& job) {
    for (Mm& tab : job.frame.tabs.existing)
      if (std::abs(tab - job.frame.main.front_overhang - hole) < inch)
        tab = hole + job.frame.main.front_overhang - (2 * inch + past * hair);
  });
}

Findings track_length(double past) {
  return run_demo("base", [&](Job& job) {
    const KitRail& r = job.kit.rail;
    job.order.limits.track_length_error = 3 * r.length_tolerance + 2 * r.joint_gap_plus - past * hair;
  });
}

// The least height at which some plate's letters have no place, to a hair.
Findings letters(double past) {
  const Job job = testing::demo_job("base");
  const Bed bed = testing::bed_of(job);
  const auto all_fit = [&](Mm height) {
    return std::all_of(bed.parts.begin(), bed.parts.end(), [&](const Part& part) {
      const auto* plate = std::get_if<Plate>(&part.form);
      return !plate || part.origin != Origin::made ||
             letters_fit(*plate, scribe_words(part, job.order.order), height);
    });
  };
  Mm fits = 2, fails = 50;
  while (fails - fits > hair / 4) (all_fit((fits + fails) / 2) ? fits : fails) = (fits + fails) / 2;
  return run_demo("base", [&](Job& j) { j.order.limits.letter_height = (fits + fails) / 2 + past * hair; });
}

// By hand: two lines of 1-3/4 in, the bolt 1-1/4 in outboard of the web; 1/4 in
// of E70 carries 0.30 x 70 ksi x 0.7071 x 1/4 in = 3.7123 kip/in.
Findings weld_load(double past) {
  const double line = 1.75, off = 1.25 + line / 2;
  const double carries =
      0.30 * 70 * std::numbers::sqrt2 / 2 * 0.25 / (1 / (2 * line) + 3 * off / (line * line));  // kip
  return run_demo("base",
                  [&](Job& job) { job.order.limits.tab_load = 1000 * pound * carries * (1 + past * 1e-4); });
}

// Pinned at the front three rails' length errors reach the last holes, at the
// middle one and a half: 1.5 tolerances gained. From 0.01 in up it is worth telling.
// The tabs' slots are short, so that it is along the bed that the holes are tight.
Findings datum(double past) {
  return run_demo("base", [&](Job& job) {
    job.order.track.datum = Datum::front;
    job.frame.tabs.slot_length = 3 * inch / 4;
    job.kit.rail.joint_gap_plus = 0;
    job.kit.rail.length_tolerance = (0.01 * inch + past * hair) / 1.5;
  });
}

// A 1-1/4 in bolt under 3/16 in of bunk and 1/4 in of rail, 7/8 in over the main; plate and
// pad 0.01 in thin, tabs 23 in apart on mains bowed 1/2 in over 20 ft.
Findings tip_height(double past) {
  return run_demo("base", [&](Job& job) {
    const BoltSize& bolt = *job.catalog.bolt("1/2 in");
    const Mm drawn = (0.875 - 1.25 + 3.0 / 16 + 0.25) * inch - bolt.length_plus + bolt.flat.thickness;
    job.order.limits.tip_clearance = 0;
    job.order.limits.most_shim = inch;
    job.order.tolerances.weld_pull = drawn - (0.02 + 0.5 * (23.0 / 240) * (23.0 / 240)) * inch + past * hair;
  });
}

std::vector<Planted> bed_rows() {
  return {
      {"WELD-STEEL", "main's end a leg beyond the tab's fillet", weld_steel},
      // The tape's marks are 1/16 in apart: half of one is what it cannot tell.
      {"STANDING", "axle 1/32 in from where the frame has it",
       [](double past) {
         return run_demo("lot_frame",
                         [&](Job& j) { j.order.axle.position = 143 * inch + inch / 32 + past * hair; });
       }},
      {"CROSS-SPACING", "cross member 36 in from the front member",
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.frame.cross_member.existing = {
               36 * inch + past * hair, 70 * inch, 104 * inch, 138 * inch, 172 * inch, 206 * inch};
         });
       }},
      {"RAIL-REMAINDER", "remainder of a rail", rail_remainder},
      {"HOLE-NO-TAB", "tab 2 in from its hole", hole_no_tab},
      // A slot 7/8 x 9/16 in across and 9/16 in on 1/2 in bolts: 5/32 + 1/32 + 1/32 in.
      {"TAB-LINE", "kit's holes 7/32 in beside a standing tab's",
       [](double past) {
         return run_demo("lot_frame",
                         [&](Job& j) { j.kit.gauge = 49 * inch + 2 * (7 * inch / 32 + past * hair); });
       }},
      {"HOLE-FIT", "holes out of line by their clearance",
       [](double past) {
         return two_plates(34, half_inch(), {inch / 16 + past * hair, 0}).run();
       }},
      {"HOLE-PAINT", "said of every bed that fits bare", [](double) { return two_plates(34).run(); }, true},
      {"TAB-FOUND", "tab found out of its place by what counts as the same",
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.order.tabs_found = {{{"R7", {}}, same_place * (1 + 0.1 * past), 0}};
         });
       }},
      {"BOLT-SHORT", "one thread past the nut at the shortest",
       [](double past) {
         return two_plates(stack + half_inch().length_minus + half_inch().pitch - past * hair).run();
       }},
      {"BOLT-LONG", "3/8 in past the nut at the longest",
       [](double past) {
         return two_plates(stack + 3 * inch / 8 - half_inch().length_plus + past * hair).run();
       }},
      {"BOLT-THREAD", "plain shank as long as the grip", bolt_thread},
      {"WASHER-FLAT", "seat sloping 1 degree", washer_flat},
      {"WASHER-COVER", "hole as wide as the washer covers", washer_cover},
      {"TIP", "tip 1/16 in above the main", tip},
      {"CLASH", "two boxes 0.05 mm into each other", clash},
      {"CLEARANCE", "post as far from the main as weld and two holes may be out", clearance},
      {"CLASH-MOVING", "post 1/4 in from the head", clash_moving},
      {"HOLE-STEEL", "hole whose rim meets the plate's edge", hole_steel},
      {"EDGE", "bolt's least edge distance", edge},
      {"SPACING", "holes 2-2/3 diameters apart", spacing},
      {"JOINT-SUPPORT", "tab 8 in from the joint", joint_support},
      {"JOINT-CLAMP", "clamp on bunk 5, its foot 3-1/4 in from the joint",
       // Bunk 5's bolts are 2 in behind the joint, its heel 1-1/4 in behind them.
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.order.track.clamps = {{5}};
           j.order.track.log_stops = {};
           j.order.limits.joint_to_clamp = (2 + 1.25) * inch + past * hair;
         });
       }},
      {"JOINT-GAP", "joint 1/8 in open",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.kit.rail.joint_gap_plus = inch / 8 + past * hair; });
       }},
      {"JOINT-STEP", "rails 1/32 in apart in height",
       [](double past) {
         return run_demo("base",
                         [&](Job& j) { j.kit.rail.height_tolerance = (inch / 32 + past * hair) / 2; });
       }},
      {"GUSSET-BOLTS", "one gusset bolt a side, or two",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.kit.gusset.bolts.resize(past > 0 ? 1 : 2); });
       }},
      {"TRACK-LENGTH", "track out by what is allowed", track_length},
      {"HEAD-ON-RAILS", "wheel 1 in from the rail's end at the stop",
       // The head's centre stops 25 in from the end.
       [](double past) {
         return run_demo("base", [&](Job& j) { j.kit.head.wheel_base = 48 * inch + past * 2 * hair; });
       }},
      {"TRACK-STOP", "stop in the bumper's way by what is asked",
       // 1 in drawn; 1/64 gauge, 1/16 the bolt's play, 1/64 the hole.
       [](double past) {
         return run_demo("base",
                         [&](Job& j) { j.order.limits.stop_overlap = (1 - 6.0 / 64) * inch + past * hair; });
       }},
      {"HEAD-LOCK", "head locked where its stop lets it go",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.kit.head.lock_offset = 25 * inch - past * hair; });
       }},
      {"ON-BUNK", "log stop at its bunk's end",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.kit.log_stop.from_centre = 22.75 * inch + past * hair; });
       }},
      {"BUNK-ON-RAIL", "bunk at the rail's end, its holes out",
       [](double past) {
         return run_demo("base",
                         [&](Job& j) { j.kit.bunk.outer_set = (1.25 + 2.0 / 64) * inch - past * hair; });
       }},
      {"JACK-REACH", "tongue jack with its travel to spare",
       // Foot 28-5/8 in down, the ground 25-1/4 in; the corner jacks have more to spare.
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.frame.jack.travel = 15 * inch;
           j.order.limits.jack_travel_left = 3.375 * inch + past * hair;
         });
       }},
      {"ROAD-CLEAR", "rear jack over the road, springs at their stops",
       // 9-3/4 in at rest; 226 in back it comes down 267/178 of 3 in.
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.order.limits.road_clearance = (9.75 - 3 * 267.0 / 178) * inch + past * hair;
         });
       }},
      {"DEPARTURE", "rear jack over a drive that just clears it",
       // A tyre of 13-3/4 in, the jack's post 87 in behind its middle, 9-3/4 in up.
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.order.limits.departure = std::asin(13.75 / std::hypot(87, 4)) - std::atan2(4, 87) + past * 1e-6;
         });
       }},
      {"CREST", "front jack over a crest that just clears it",
       // Its post's front face 16 in back: 105 in behind the tow vehicle's wheels, its rear face 119 in ahead
       // of its own.
       [](double past) {
         const double at = turn(9, 1, [](double above) {
           return std::min(std::atan2(above, 105) + std::atan2(above, 121),
                           std::atan2(above, 107) + std::atan2(above, 119)) < std::atan(0.10);
         });
         return run_demo("base",
                         [&](Job& j) { j.frame.jack.post_bottom = (at - 25.25) * inch - past * hair; });
       }},
      {"TURN", "tongue so short that a bumper just meets the front corner",
       [](double past) {
         static const double at = turn(38 * inch, 16 * inch, [](double length) {
           const Findings found = run_demo("base", [&](Job& j) { j.frame.tongue.length = length; });
           return std::any_of(found.begin(), found.end(), [](const Finding& f) { return f.code == "TURN"; });
         });
         return run_demo("base", [&](Job& j) { j.frame.tongue.length = at - past * hair; });
       }},
      {"BALL-HEIGHT", "ball a degree above level",
       // Ball to axle 178 in; the coupler 4 in high, 1/4 in of it over the tongue's top, that 19-1/4 in up.
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.order.road.ball_height =
               (25.25 - 6 + 0.25 - 2) * inch + 178 * inch * std::tan(degree) + past * hair;
         });
       }},
      {"COUPLER-FIT", "ledge of the fillet's leg beside the coupler's plate",
       [](double past) {
         return run_demo("base", [&](Job& j) {
           j.frame.coupler.width =
               2 * (1.75 * inch / std::cos(25 * degree) + 3 - 3 * inch / 16) + past * hair;
         });
       }},
      {"SPRING-SEAT", "spring as wide as the flange of C6x8.2",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.frame.axle.spring_width = 1.92 * inch + past * hair; });
       }},
      {"TONGUE-END", "tongue 1 mm out past the mains",
       [](double past) {
         return run_demo("base", [&](Job& j) {
           const double slope = std::tan(25 * degree);
           j.frame.tongue.back =
               (22 * inch + 1 - 3 - 1.75 * inch / std::cos(25 * degree)) / slope - 38 * inch + past * hair;
         });
       }},
      {"RAIL-SHIM", "tabs out of one plane, no shims allowed",
       // Plate and pad over by a half each of what counts as nothing.
       [](double past) {
         return run_demo("base", [&](Job& j) {
           Tolerances& t = j.order.tolerances;
           t.plate_under = t.weld_pull = t.main_camber = 0;
           t.plate_over = same_place * (1 + past / 2) / 2;
           j.order.limits.most_shim = 0;
         });
       }},
      {"TIP-HEIGHT", "rail as low as the bunk bolts' tips let it", tip_height},
      {"REACH", "head in a well of a socket's width", reach},
      {"CUT-HOLE", "slot as wide as the plate is thick", cut_hole},
      {"CENTRE-MARK", "7/16 in hole in 3/8 in plate, the limit at that ratio",
       [](double past) {
         return run_demo("base", [&](Job& j) { j.order.limits.table_hole = 7.0 / 6 + past * 1e-3; });
       }},
      {"CUT-WEB", "steel of the plate's thickness between holes", cut_web},
      {"STOCK-PLATE", "plate 48 in wide", stock_plate},
      {"LETTERS", "letters as high as have a place", letters},
      {"WELD-CONTACT", "parts to be welded 1/16 in apart", weld_contact},
      {"WELD-LEAST", "3/16 in fillet on 3/8 in plate",
       [](double past) { return welded(3 * inch / 16 - past * hair, 3 * inch / 8, 0); }},
      {"WELD-MOST", "3/16 in fillet along a 1/4 in edge",
       [](double past) { return welded(3 * inch / 16 + past * hair, inch / 4, inch / 4); }},
      {"WELD-LOAD", "tab loaded to what its weld carries", weld_load},
      {"TORCH", "wall where the leaned nozzle ends", torch},
      {"BOLT-KINDS", "one length serves two stacks", bolt_kinds},
      {"DATUM", "0.01 in to gain by pinning the middle", datum},
  };
}

const std::vector<Planted>& matrix() {
  static const std::vector<Planted> all = [] {
    std::vector<Planted> rows = bed_rows();
    for (Planted& p : load_rows()) rows.push_back(std::move(p));
    for (Planted& p : load_rows_by_hand()) rows.push_back(std::move(p));
    return rows;
  }();
  return all;
}

TEST(Matrix, LeavesNoRuleOut) {
  std::set<std::string> planted, asked;
  for (const Planted& p : matrix()) EXPECT_TRUE(planted.insert(p.code).second) << p.code << " stands twice";
  for (const Rule& rule : all_rules()) asked.insert(rule.code);
  EXPECT_EQ(planted, asked);
}

int count(const Findings& findings, const std::string& code) {
  return static_cast<int>(
      std::count_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; }));
}

const Finding* first_of(const Findings& findings, const std::string& code) {
  const auto at =
      std::find_if(findings.begin(), findings.end(), [&](const Finding& f) { return f.code == code; });
  return at == findings.end() ? nullptr : &*at;
}

TEST(Matrix, FindsEachFaultAndNoTwin) {
  fmt::print("{:<15} {:<62} {:>6} {:>6}  {:>10} {:>10} {}\n", "rule", "planted at the limit", "fault", "twin",
             "measured", "limit", "unit");
  int found = 0, twins = 0, false_alarms = 0;
  for (const Planted& p : matrix()) {
    const Findings fault = p.run(+1), twin = p.run(-1);
    const Finding* at = first_of(fault, p.code);
    const int alarm = count(twin, p.code);
    fmt::print("{:<15} {:<62} {:>6} {:>6}", p.code, p.fault, at ? "found" : "MISSED",
               p.always ? "none"
               : alarm  ? "ALARM"
                        : "quiet");
    if (at) fmt::print("  {:>10.6g} {:>10.6g} {}", at->measured, at->limit, at->unit);
    fmt::print("\n");
    EXPECT_NE(at, nullptr) << p.code << " missed its fault";
    found += at != nullptr;
    if (at) {
      EXPECT_FALSE(at->subjects.empty()) << p.code;
      EXPECT_FALSE(at->message.empty()) << p.code;
      EXPECT_FALSE(at->remedy.empty()) << p.code;
    }
    if (p.always) continue;
    ++twins;
    false_alarms += alarm > 0;
    EXPECT_EQ(alarm, 0) << p.code << " calls the twin a fault";
    if (at) {
      EXPECT_LE(at->margin, 0) << p.code;
    }
  }
  fmt::print("{} of {} faults found, {} of {} twins called one\n", found, matrix().size(), false_alarms,
             twins);
}

}  // namespace
}  // namespace bedwright
