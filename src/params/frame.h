// The frame: what the shop makes, and the bought items it carries.
#pragma once

#include <algorithm>
#include <cmath>
#include <optional>
#include <string>
#include <vector>

#include "params/frame_tabs.h"
#include "params/kit.h"
#include "units/units.h"
#include "yaml/mark.h"

namespace bedwright {

struct FrameMain {
  Name section;
  Mm spacing = 0;  // web back to web back
  Mm front_overhang = 0, rear_overhang = 0;
  std::optional<Mm> length;  // a frame that exists; else from the track
};

struct FrameCross {
  Name section;
  Mm max_spacing = 0;
  std::vector<Mm> existing;  // rear faces of their webs on a frame that exists, behind the mains' front end
};

struct FrameEnd {
  Name section;
};

struct FrameTongue {
  Name section;
  Mm length = 0;      // front end of the mains to the tongue's front cut
  Radians angle = 0;  // each channel to the centre line
  Mm back = 0;        // how far the channels run behind the mains' front end
};

struct FrameCornerGusset {
  Mm leg = 0, thickness = 0, corner_cut = 0;
};

enum class CrankTurns { over_the_top, at_the_side };

// A side jack's crank: the room its handle takes through a whole turn.
struct JackCrank {
  CrankTurns turns = CrankTurns::over_the_top;
  Mm radius = 0;  // from its axle to the outside of the grip
  Mm axle = 0;    // above the post's top (minus: below), of the circle's underside or of the axle
  Mm depth = 0;   // of crank and grip together, along the axle
};

// A pair of jacks of a frame that stands, still to be unbolted and bolted up elsewhere.
struct JackMoved {
  Mm from = 0, to = 0;  // middles of their plates, behind the mains' front end
};

struct FrameJack {
  BoltHole hole;
  bool drilled_in_place = false;  // plate and web through the jack's own holes, together
  std::optional<JackCrank> crank;
  Mm bolt_x = 0, bolt_z = 0;  // spacing of the four bolts along and up
  std::optional<Mm> below;    // middle of the bolts below the mains' tops; else half the mains' depth
  Mm plate_length = 0, plate_height = 0, plate_thickness = 0;
  Mm flange_thickness = 0;
  Mm post_width = 0, post_top = 0, post_bottom = 0;  // square post; z above (+) or below (-) the mains' tops
  Mm travel = 12 * inch;                             // foot down from post_bottom, fully extended
  std::optional<Mm> foot;                            // side of its square foot plate; else the post's width
  std::vector<Mm>
      existing;  // on a frame that stands: middles of its jacks' plates, behind the mains' front end
  std::vector<Mm> old_holes;       // where jacks were bolted once: their holes are still in the webs
  std::vector<JackMoved> to_move;  // their holes drilled in place
  std::vector<Mm> to_add;          // further pairs, bought, their holes drilled in place
  Kg mass = 0;
  Kg rating = 0;
};

struct FrameTongueJack {
  BoltHole hole;
  Mm bolt_circle = 0;   // diameter of the three-bolt circle
  Mm centre_hole = 0;   // for the tube
  Mm behind_front = 0;  // middle of the jack behind the tongue's front cut
  Mm plate_length = 0, plate_thickness = 0;
  Mm flange_thickness = 0, tube_diameter = 0, above = 0, below = 0;
  Mm travel = 15 * inch;        // foot down from `below`, fully extended
  Mm handle_radius = 6 * inch;  // of the crank's turn, about the tube
  Mm handle_height = 4 * inch;  // crank and grip above the jack's top
  Kg mass = 0;
  Kg rating = 0;  // 0: not stated
};

// A body ahead of the tongue, its plate running back on the tongue's top flanges.
struct FrameCoupler {
  Mm length = 0, width = 0, height = 0;  // over all; across at the tongue's front cut; under the plate's top
  Mm ball_ahead = 0;
  Mm plate_thickness = inch / 4;
  Radians angle = 25 * degree;  // of the plate's edges to the centre line, each: usual for such couplers
  Kg mass = 0;
  Kg rating = 0;
};

struct FrameAxle {
  int count = 1;
  Mm spread = 0;  // between tandem axles
  Mm below = 0;   // axle centre below the mains' underside
  Mm tube_diameter = 0;
  Mm spring_length = 0, spring_width = 0;
  Mm tyre_diameter = 0, tyre_width = 0;
  Mm tyre_inside = 0;  // inner faces apart
  Mm bump = 0;
  Kg mass = 0, wheel_mass = 0;  // one axle with hubs and springs; one wheel and tyre
  Kg axle_rating = 0, tyre_rating = 0;
  bool brakes = false;  // on every wheel
  // On a frame that stands: middle of its axle or group, behind the mains' front end.
  std::optional<Mm> existing;
};

// Frame members to each other; tabs have a leg of their own. Each joint may have its own.
struct FrameWelds {
  Mm leg = 3 * inch / 16;
  std::optional<Mm> cross_member, end_member, tongue, tongue_plate, coupler, corner_gusset, jack_plate;
  Mm of(const std::optional<Mm>& own) const { return own.value_or(leg); }
};

struct FrameFile {
  std::string name;
  std::optional<bool> standing;  // see stands()
  std::string grade;
  Mpa yield_strength = 0;  // 0: by the grade's name
  FrameMain main;
  FrameCross cross_member;
  FrameEnd front_member, rear_member;
  FrameTongue tongue;
  FrameTabs tabs;
  FrameCornerGusset corner_gusset;
  FrameJack jack;
  FrameTongueJack tongue_jack;
  FrameCoupler coupler;
  FrameAxle axle;
  FrameWelds welds;
  Mm drain_hole = 0;  // in the underside of each closed member, by both its ends; 0: none
};

// Whether the frame is welded already, so that nothing of it is made again. A frame whose
// tab holes are listed is taken to stand unless its file says that it does not (a drawing
// whose tabs have fixed places): the side on which no good steel is cut twice.
inline bool stands(const FrameFile& frame) { return frame.standing.value_or(!frame.tabs.existing.empty()); }

// Whether something is still to be done to a frame that stands.
inline bool is_to_be_changed(const FrameFile& frame) {
  return is_to_be_changed(frame.tabs) || !frame.jack.to_move.empty() || !frame.jack.to_add.empty();
}

// Where jacks of a frame that stands are when the work on it is done.
inline std::vector<Mm> places_of_jacks(const FrameJack& jack) {
  std::vector<Mm> places = jack.existing;
  for (Mm& at : places)
    for (const JackMoved& m : jack.to_move)
      if (std::abs(m.from - at) < same_place) at = m.to;
  places.insert(places.end(), jack.to_add.begin(), jack.to_add.end());
  std::sort(places.begin(), places.end());
  return places;
}
// Where their holes were and nothing is bolted up any more.
inline std::vector<Mm> places_left_by_jacks(const FrameJack& jack) {
  std::vector<Mm> places = jack.old_holes;
  for (const JackMoved& m : jack.to_move) places.push_back(m.from);
  return places;
}
// Whether jacks are to be bolted up there whose holes are still to be drilled.
inline bool is_new_place(const FrameJack& jack, Mm at) {
  const auto there = [&](Mm x) { return std::abs(x - at) < same_place; };
  return std::any_of(jack.to_add.begin(), jack.to_add.end(), there) ||
         std::any_of(jack.to_move.begin(), jack.to_move.end(),
                     [&](const JackMoved& m) { return there(m.to); });
}

template <class V>
void describe(V& v, FrameMain& m) {
  v.name("section", m.section, "Channel or tube, as the catalogue names it");
  v.length("spacing", m.spacing, {300, 3000}, "Web back to web back; of tubes, outer side to outer side");
  v.length("front_overhang", m.front_overhang, {-2000, 2000}, "How far the mains run ahead of the track",
           v.optional);
  v.length("rear_overhang", m.rear_overhang, {-2000, 2000}, "How far the mains run behind the track",
           v.optional);
  v.length("length", m.length, {500, 25000},
           "Length of the mains of a frame that exists; leave out to follow the track", v.optional);
}
template <class V>
void describe(V& v, FrameCross& c) {
  v.name("section", c.section,
         "Channel or tube, as the catalogue names it; must fit between the mains' flanges");
  v.length("max_spacing", c.max_spacing, {100, 3000}, "Most from one to the next");
  v.lengths("existing", c.existing, {0, 25000}, 100,
            "Cross members of a frame that exists, the rear faces of their webs behind the mains' front end; "
            "leave out to have them placed",
            v.optional);
}
template <class V>
void describe(V& v, FrameEnd& e) {
  v.name("section", e.section, "Channel, as the catalogue names it; on mains that are tubes, a tube too");
}
template <class V>
void describe(V& v, FrameTongue& t) {
  v.name("section", t.section, "Channel, as the catalogue names it");
  v.length("length", t.length, {300, 4000}, "Tongue's front cut ahead of the mains' front end");
  v.angle("angle", t.angle, {5, 45}, "Each channel to the centre line");
  v.length("back", t.back, {50, 2000}, "How far the channels run behind the mains' front end");
}
template <class V>
void describe(V& v, FrameCornerGusset& g) {
  v.length("leg", g.leg, {50, 600}, "Each leg of the triangle");
  v.length("thickness", g.thickness, {3, 30}, "Thickness");
  v.length("corner_cut", g.corner_cut, {0, 200}, "Cut off at each sharp end, along the leg");
}
template <class V>
void describe(V& v, JackCrank& c) {
  v.choice("turns", c.turns, {{"top", CrankTurns::over_the_top}, {"side", CrankTurns::at_the_side}},
           "top: in a level circle about the post; side: in an upright one, outside of it");
  v.length("radius", c.radius, {20, 1000}, "From its axle to the outside of the grip");
  v.length("axle", c.axle, {-1000, 500},
           "top: underside of the crank above the post's top; side: its axle above the post's "
           "top (minus: below)");
  v.length("depth", c.depth, {5, 500}, "Crank and grip together, along the axle");
}
template <class V>
void describe(V& v, JackMoved& j) {
  v.length("from", j.from, {0, 25000}, "The middle of their plates as jack.existing lists it");
  v.length("to", j.to, {0, 25000}, "The middle of their plates once moved, behind the mains' front end");
}
template <class V>
void describe(V& v, FrameJack& j) {
  v.object("hole", j.hole, "Hole and bolt, the same in jack, plate and web");
  v.flag("drilled_in_place", j.drilled_in_place,
         "true: plate and web are drilled together in place, through the jack's own holes", v.optional);
  v.object("crank", j.crank, "Its crank, and the room that takes through a turn; leave out for none",
           v.optional);
  v.length("bolt_x", j.bolt_x, {20, 400}, "Bolts apart along the main");
  v.length("bolt_z", j.bolt_z, {20, 300}, "Bolts apart up and down");
  v.length(
      "below", j.below, {20, 800},
      "Middle of the bolts below the mains' tops, on mains that are tubes: the plate is welded to the main "
      "and hangs below it; left out, half the mains' depth",
      v.optional);
  v.length("plate_length", j.plate_length, {40, 600}, "Backing plate along the main");
  v.length("plate_height", j.plate_height, {40, 400}, "Backing plate up and down");
  v.length("plate_thickness", j.plate_thickness, {3, 30}, "Backing plate thickness");
  v.length("flange_thickness", j.flange_thickness, {3, 30}, "Jack's own flange");
  v.length("post_width", j.post_width, {20, 200}, "Jack's post, square");
  v.length("post_top", j.post_top, {-500, 1000}, "Top of the post above the mains' tops");
  v.length("post_bottom", j.post_bottom, {-1500, 0},
           "Foot of the retracted post above the mains' tops (minus: below)");
  v.length("travel", j.travel, {0, 1500}, "How far the foot runs down from there", v.optional);
  v.length("foot", j.foot, {20, 1000},
           "Side of its square foot plate; leave out where it stands on the post's end", v.optional);
  v.mass("mass", j.mass, {0, 200}, "Mass of one jack");
  v.mass("rating", j.rating, {0, 20000}, "Load one jack may carry");
  v.lengths("existing", j.existing, {0, 25000}, 20,
            "Jacks of a frame that stands: the middle of each pair's plates, behind the mains' front end, as "
            "measured",
            v.optional);
  v.lengths("old_holes", j.old_holes, {0, 25000}, 20,
            "Where jacks of a frame that stands were bolted once and their holes are still in the webs: the "
            "middle between them, behind the mains' front end",
            v.optional);
  v.list("to_move", j.to_move, 20,
         "Pairs of jacks still to be unbolted and bolted up elsewhere, their holes drilled in place",
         v.optional);
  v.lengths("to_add", j.to_add, {0, 25000}, 20,
            "Further pairs of jacks still to be bolted on, their holes drilled in place: the middle of their "
            "plates, behind the mains' front end",
            v.optional);
}
template <class V>
void describe(V& v, FrameTongueJack& j) {
  v.object("hole", j.hole, "Hole and bolt, the same in jack and plate");
  v.length("bolt_circle", j.bolt_circle, {30, 300}, "Diameter of the three-bolt circle");
  v.length("centre_hole", j.centre_hole, {10, 200}, "Hole in the plate for the jack's tube");
  v.length("behind_front", j.behind_front, {50, 2000}, "Middle of the jack behind the tongue's front cut");
  v.length("plate_length", j.plate_length, {50, 800}, "Plate along the tongue");
  v.length("plate_thickness", j.plate_thickness, {3, 30}, "Plate thickness");
  v.length("flange_thickness", j.flange_thickness, {3, 30}, "Jack's own flange");
  v.length("tube_diameter", j.tube_diameter, {10, 200}, "Jack's tube");
  v.length("above", j.above, {10, 1500}, "Top of the jack above its flange");
  v.length("below", j.below, {0, 1500}, "Foot of the retracted jack below its flange");
  v.length("travel", j.travel, {0, 1500}, "How far the foot runs down from there", v.optional);
  v.length("handle_radius", j.handle_radius, {0, 1000}, "Radius the crank sweeps about the tube; 0 for none",
           v.optional);
  v.length("handle_height", j.handle_height, {0, 500}, "Crank and grip above the top of the jack",
           v.optional);
  v.mass("mass", j.mass, {0, 100}, "Mass of the jack");
  v.mass("rating", j.rating, {0, 20000}, "Load the jack may carry", v.optional);
}
template <class V>
void describe(V& v, FrameCoupler& c) {
  v.length("length", c.length, {50, 800}, "Length, from its nose to the rear end of its plate");
  v.length("width", c.width, {20, 400}, "Width at the tongue's front cut");
  v.length("height", c.height, {20, 300}, "Height of its body, from the top of its plate down");
  v.length("ball_ahead", c.ball_ahead, {0, 500}, "Ball's centre ahead of the tongue's front cut");
  v.length("plate_thickness", c.plate_thickness, {3, 30}, "Plate that lies on the tongue's top flanges",
           v.optional);
  v.angle("angle", c.angle, {0, 45}, "Each edge of its plate to the centre line", v.optional);
  v.mass("mass", c.mass, {0, 100}, "Mass");
  v.mass("rating", c.rating, {0, 20000}, "Trailer mass it is rated for");
}
template <class V>
void describe(V& v, FrameAxle& a) {
  v.count("count", a.count, 1, 3, "Axles");
  v.length("spread", a.spread, {0, 3000}, "Between neighbouring axles of a group", v.optional);
  v.length("below", a.below, {0, 800}, "Axle's centre below the mains' undersides");
  v.length("tube_diameter", a.tube_diameter, {20, 200}, "Axle tube");
  v.length("spring_length", a.spring_length, {100, 1500}, "Spring, hanger to hanger");
  v.length("spring_width", a.spring_width, {20, 150}, "Spring across");
  v.length("tyre_diameter", a.tyre_diameter, {200, 1200}, "Outside diameter, tyre at its pressure");
  v.length("tyre_width", a.tyre_width, {50, 500}, "Section width");
  v.length("tyre_inside", a.tyre_inside, {500, 3000}, "Inner faces of the tyres apart");
  v.length("bump", a.bump, {0, 300}, "Travel of the wheel up to the bump stop");
  v.mass("mass", a.mass, {0, 1000}, "One axle with hubs and springs");
  v.mass("wheel_mass", a.wheel_mass, {0, 200}, "One wheel and tyre");
  v.mass("axle_rating", a.axle_rating, {0, 20000}, "Load one axle may carry");
  v.mass("tyre_rating", a.tyre_rating, {0, 10000}, "Load one tyre may carry");
  v.flag("brakes", a.brakes, "Whether every wheel has a brake", v.optional);
  v.length("existing", a.existing, {0, 25000},
           "Axle of a frame that stands (the middle of a group), behind the mains' front end, as measured",
           v.optional);
}
template <class V>
void describe(V& v, FrameWelds& w) {
  v.length("leg", w.leg, {2, 20}, "Fillet weld, frame members to each other", v.optional);
  v.length("cross_member", w.cross_member, {2, 20}, "Cross members to the mains, where not leg", v.optional);
  v.length("end_member", w.end_member, {2, 20}, "Front and rear member to the mains, where not leg",
           v.optional);
  v.length("tongue", w.tongue, {2, 20}, "Tongue to mains and front member, where not leg", v.optional);
  v.length("tongue_plate", w.tongue_plate, {2, 20}, "The jack's plate to the tongue, where not leg",
           v.optional);
  v.length("coupler", w.coupler, {2, 20}, "Coupler to the tongue, where not leg", v.optional);
  v.length("corner_gusset", w.corner_gusset, {2, 20},
           "Corner gussets to mains and rear member, where not leg", v.optional);
  v.length("jack_plate", w.jack_plate, {2, 20}, "Jack plates to mains that are tubes, where not leg",
           v.optional);
}
template <class V>
void describe(V& v, FrameFile& f) {
  v.text("name", f.name, "Name of the frame, or its serial number");
  v.flag("standing", f.standing,
         "true: the frame is welded already, and nothing of it is cut, drilled or welded again; left out, a "
         "frame whose tabs.existing is listed stands",
         v.optional);
  v.text("grade", f.grade, "Steel grade of the made parts");
  v.stress("yield_strength", f.yield_strength, {100, 1500},
           "Yield strength of the made parts; leave out for a grade whose name says it", v.optional);
  v.object("main", f.main, "Main frame members");
  v.object("cross_member", f.cross_member, "Cross members between the mains");
  v.object("front_member", f.front_member, "Member across the mains' front ends");
  v.object("rear_member", f.rear_member, "Member across the mains' rear ends");
  v.object("tongue", f.tongue, "Tongue");
  v.object("tabs", f.tabs, "Mounting tabs");
  v.object("corner_gusset", f.corner_gusset, "Triangle under each rear corner");
  v.object("jack", f.jack, "Levelling jack");
  v.object("tongue_jack", f.tongue_jack, "Jack on the tongue");
  v.object("coupler", f.coupler, "Coupler");
  v.object("axle", f.axle, "Axle, wheels and springs");
  v.object("welds", f.welds, "Welds of the frame's members", v.optional);
  v.length(
      "drain_hole", f.drain_hole, {6, 30},
      "Hole drilled in the underside of each member that is a tube, near both its ends, so that water and "
      "hot air get out; asked for where a member is a tube",
      v.optional);
}

}  // namespace bedwright
