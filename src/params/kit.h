// The track kit: what the track maker's sheet states.
//
// Distances across the bed are measured inward from a rail's heel, the outer
// face of its standing leg; distances along a section from its nearer end.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "units/units.h"
#include "yaml/mark.h"

namespace bedwright {

enum class SlotAlong { none, length, width };

struct BoltHole {
  Name bolt;                             // catalogue size
  Mm diameter = 0;                       // width of a slot
  std::optional<Mm> slot;                // overall length; absent for a round hole
  std::string grade = {}, coating = {};  // of the bolt with its nut and washers; empty: not said
};

struct KitRail {
  Mm flat_leg = 0, standing_leg = 0, thickness = 0, root_radius = 0;
  Mm length_tolerance = 0, hole_tolerance = 0;
  Mm height_tolerance = 0.01 * inch;  // of the standing leg, either way
  Mm joint_gap = 0, joint_gap_plus = 0;
  int base_sections = 2;
  bool turned = false;  // one rail serves both sides, turned end for end
};

struct KitMounting {
  BoltHole hole;
  SlotAlong slot_along = SlotAlong::width;
  Mm line = 0;  // from the heel
  Mm end_offset = 0;
  std::optional<Mm> max_pitch;  // evenly divided, or
  std::vector<Mm> positions;    // listed from the section's front end
};

struct KitBunk {
  Mm flat_leg = 0, standing_leg = 0, thickness = 0, root_radius = 0;
  Mm end_clearance = 0;  // from each standing leg's inner face
  BoltHole hole;
  Mm line = 0;                      // from the heel
  Mm outer_set = 0, inner_set = 0;  // and a set at each bunk pitch, or
  std::vector<Mm> positions;        // listed from the section's front end: a bunk at each
};

struct KitGusset {
  BoltHole hole;
  Mm length = 0, height = 0, thickness = 0;
  Mm bottom = 0;          // above the rail's underside
  std::vector<Mm> bolts;  // each side of the joint, from the joint
};

struct KitStop {
  BoltHole hole;
  Mm from_end = 0, line = 0;  // hole in the rail
  Mm foot_length = 0, foot_width = 0, foot_thickness = 0;
  Mm face_thickness = 0, height = 0;  // upright face, above the rail's flat leg
  Kg mass = 0;
};

struct KitLogStop {
  Mm from_centre = 0;                       // middle of the post, from the centre line, road side
  Mm width = 0, thickness = 0, height = 0;  // across, along, above the bunk's flat leg
  Kg mass = 0;
};

struct KitClamp {
  Mm travel_from = 0, travel_to = 0;  // middle of the base from the centre line, kerb side
  Mm base_width = 0, base_length = 0, base_height = 0;
  Mm arm_width = 0, arm_thickness = 0, arm_height = 0;
  Radians lean_in = 0, lean_out = 0;
  Kg mass = 0;
};

enum class HeadWhen { running, locked, both };
enum class Sides { centre, pair };

// A box of the head, from its centre along x, from the centre line along y,
// above the rails' tops along z. A pair has a mirror image on the road side.
struct HeadBox {
  std::string name;
  HeadWhen when = HeadWhen::both;
  Sides sides = Sides::centre;
  Mm x_from = 0, x_to = 0, y_from = 0, y_to = 0, z_from = 0, z_to = 0;
};

struct KitHead {
  Mm lock_offset = 0;  // centre of the head from the end of the track it is locked at
  Mm wheel_base = 0;   // front wheel to rear wheel on one rail; 0: one wheel each side
  Kg mass = 0;
  Mm mass_x = 0, mass_y = 0, mass_z = 0;  // centre of mass, in the boxes' frame
  std::vector<HeadBox> boxes;
};

struct KitBox {
  Name bolt;
  Mm length = 0;
  int quantity = 0;
  std::string grade = {}, coating = {};  // as in BoltHole
};

struct Kit {
  std::string name, sheet;
  Mm gauge = 0;  // heel to heel
  KitRail rail;
  KitMounting mounting;
  KitBunk bunk;
  KitGusset gusset;
  KitStop track_stop;
  KitLogStop log_stop;
  KitClamp clamp;
  KitHead head;
  std::vector<KitBox> box;  // bolts the maker packs
};

template <class V>
void describe(V& v, BoltHole& h) {
  v.name("bolt", h.bolt, "Bolt size, as the catalogue names it");
  v.length("diameter", h.diameter, {3, 60}, "Diameter of the hole, or width of the slot");
  v.length("slot", h.slot, {3, 150}, "Overall length of the slot; leave out for a round hole", v.optional);
  v.text("grade", h.grade, "Grade of the bolt and its nut, printed on the hardware list: Grade 5, 8.8",
         v.optional);
  v.text("coating", h.coating, "Coating of bolt, nut and washers, printed on the hardware list: zinc",
         v.optional);
}
template <class V>
void describe(V& v, KitRail& r) {
  v.length("flat_leg", r.flat_leg, {20, 300}, "Width of the leg that lies on the tabs");
  v.length("standing_leg", r.standing_leg, {20, 300}, "Height of the leg that carries the wheels");
  v.length("thickness", r.thickness, {2, 30}, "Thickness of both legs");
  v.length("root_radius", r.root_radius, {0, 30}, "Fillet inside the corner", v.optional);
  v.length("length_tolerance", r.length_tolerance, {0, 10}, "Section length, plus or minus");
  v.length("hole_tolerance", r.hole_tolerance, {0, 10}, "Hole from its place in the section, plus or minus");
  v.length("height_tolerance", r.height_tolerance, {0, 5},
           "How far the standing leg's height may be out, either way", v.optional);
  v.length("joint_gap", r.joint_gap, {0, 20}, "Gap left at each joint", v.optional);
  v.length("joint_gap_plus", r.joint_gap_plus, {0, 20}, "How much wider a joint's gap may come out",
           v.optional);
  v.count("base_sections", r.base_sections, 1, 12, "Sections in the kit before any extension");
  v.flag(
      "turned", r.turned,
      "true: one rail serves both sides, turned end for end, so that its holes run from the rear end on the "
      "kerb side; left out, the two sides' rails are each other's mirror image",
      v.optional);
}
template <class V>
void describe(V& v, KitMounting& m) {
  v.object("hole", m.hole, "Mounting hole and its bolt");
  v.choice("slot_along", m.slot_along,
           {{"none", SlotAlong::none}, {"length", SlotAlong::length}, {"width", SlotAlong::width}},
           "Way a slotted mounting hole runs: along the rail's length or across its width", v.optional);
  v.length("line", m.line, {5, 300}, "Hole line from the heel");
  v.length("end_offset", m.end_offset, {10, 1000}, "First hole from the section's end", v.optional);
  v.length("max_pitch", m.max_pitch, {50, 3000}, "Holes divide the rest evenly, no further apart than this",
           v.optional);
  v.lengths("positions", m.positions, {0, 15000}, 100,
            "Holes listed from the section's front end, instead of end_offset and max_pitch", v.optional);
}
template <class V>
void describe(V& v, KitBunk& b) {
  v.length("flat_leg", b.flat_leg, {20, 200}, "Width of the leg on the rails");
  v.length("standing_leg", b.standing_leg, {20, 200}, "Height of the leg that carries the log");
  v.length("thickness", b.thickness, {2, 20}, "Thickness of both legs");
  v.length("root_radius", b.root_radius, {0, 30}, "Fillet inside the corner", v.optional);
  v.length("end_clearance", b.end_clearance, {0, 100},
           "Room between the bunk's end and the rail's standing leg");
  v.object("hole", b.hole, "Bunk hole and its bolt, the same in the rail");
  v.length("line", b.line, {5, 300}, "Hole line from the rail's heel");
  v.length("outer_set", b.outer_set, {10, 500}, "Outermost hole set from a section's end", v.optional);
  v.length("inner_set", b.inner_set, {10, 1000}, "Next hole set in from a section's end", v.optional);
  v.lengths("positions", b.positions, {0, 15000}, 100,
            "Bunk holes listed from the section's front end, a bunk at each, instead of outer_set, inner_set "
            "and the order's track.bunk_pitch",
            v.optional);
}
template <class V>
void describe(V& v, KitGusset& g) {
  v.object("hole", g.hole, "Gusset hole and its bolt, the same in the rail");
  v.length("length", g.length, {50, 1000}, "Length along the rail");
  v.length("height", g.height, {10, 200}, "Height");
  v.length("thickness", g.thickness, {2, 30}, "Thickness");
  v.length("bottom", g.bottom, {0, 200}, "Lower edge above the rail's underside");
  v.lengths("bolts", g.bolts, {5, 500}, 10, "Bolts each side of the joint, from the joint");
}
template <class V>
void describe(V& v, KitStop& s) {
  v.object("hole", s.hole, "Track stop hole and its bolt");
  v.length("from_end", s.from_end, {10, 1000}, "Hole in the rail from the section's end");
  v.length("line", s.line, {5, 300}, "Hole line from the heel");
  v.length("foot_length", s.foot_length, {10, 300}, "Foot along the rail");
  v.length("foot_width", s.foot_width, {10, 300}, "Foot across the rail");
  v.length("foot_thickness", s.foot_thickness, {2, 50}, "Foot thickness");
  v.length("face_thickness", s.face_thickness, {2, 100}, "Upright face, along the rail");
  v.length("height", s.height, {10, 500}, "Top above the rail's flat leg");
  v.mass("mass", s.mass, {0, 100}, "Mass of one stop");
}
template <class V>
void describe(V& v, KitLogStop& s) {
  v.length("from_centre", s.from_centre, {0, 2000},
           "Middle of the post from the centre line, on the road side");
  v.length("width", s.width, {5, 300}, "Width across the bed");
  v.length("thickness", s.thickness, {2, 300}, "Thickness along the bed");
  v.length("height", s.height, {10, 1500}, "Top above the bunk's flat leg");
  v.mass("mass", s.mass, {0, 100}, "Mass of one log stop");
}
template <class V>
void describe(V& v, KitClamp& c) {
  v.length("travel_from", c.travel_from, {-2000, 2000},
           "Inner end of the base's travel from the centre line, on the kerb side");
  v.length("travel_to", c.travel_to, {-2000, 2000}, "Outer end of the base's travel");
  v.length("base_width", c.base_width, {5, 500}, "Base across the bed");
  v.length("base_length", c.base_length, {5, 500}, "Base along the bed");
  v.length("base_height", c.base_height, {5, 500}, "Base above the rails' flat legs");
  v.length("arm_width", c.arm_width, {5, 300}, "Arm across the bed");
  v.length("arm_thickness", c.arm_thickness, {2, 300}, "Arm along the bed");
  v.length("arm_height", c.arm_height, {10, 1500}, "Arm above its base");
  v.angle("lean_in", c.lean_in, {0, 80}, "How far the arm leans toward the log", v.optional);
  v.angle("lean_out", c.lean_out, {0, 80}, "How far the arm leans back", v.optional);
  v.mass("mass", c.mass, {0, 200}, "Mass of one clamp");
}
template <class V>
void describe(V& v, HeadBox& b) {
  v.text("name", b.name, "What the box holds");
  v.choice("when", b.when,
           {{"running", HeadWhen::running}, {"locked", HeadWhen::locked}, {"both", HeadWhen::both}},
           "Whether the box is there while sawing, while locked for the road, or both", v.optional);
  v.choice("sides", b.sides, {{"centre", Sides::centre}, {"pair", Sides::pair}},
           "One box as given, or a pair with a mirror image on the road side", v.optional);
  v.length("x_from", b.x_from, {-5000, 5000}, "Front face from the head's centre");
  v.length("x_to", b.x_to, {-5000, 5000}, "Rear face from the head's centre");
  v.length("y_from", b.y_from, {-3000, 3000}, "From the centre line");
  v.length("y_to", b.y_to, {-3000, 3000}, "From the centre line");
  v.length("z_from", b.z_from, {-500, 4000}, "Underside above the rails' tops");
  v.length("z_to", b.z_to, {-500, 4000}, "Top above the rails' tops");
}
template <class V>
void describe(V& v, KitHead& h) {
  v.length("lock_offset", h.lock_offset, {0, 25000}, "Centre of the locked head from the end of the track");
  v.length("wheel_base", h.wheel_base, {0, 5000},
           "Front wheel to rear wheel on one rail; leave out for one wheel each side", v.optional);
  v.mass("mass", h.mass, {0, 5000}, "Mass of the head");
  v.length("mass_x", h.mass_x, {-2000, 2000}, "Centre of mass behind the head's centre", v.optional);
  v.length("mass_y", h.mass_y, {-2000, 2000}, "Centre of mass to the kerb side of the centre line",
           v.optional);
  v.length("mass_z", h.mass_z, {-500, 3000}, "Centre of mass above the rails' tops");
  v.list("boxes", h.boxes, 40, "Boxes that hold the head");
}
template <class V>
void describe(V& v, KitBox& b) {
  v.name("bolt", b.bolt, "Bolt size, as the catalogue names it");
  v.length("length", b.length, {5, 300}, "Length under the head");
  v.count("quantity", b.quantity, 1, 1000, "How many come in the box");
  v.text("grade", b.grade, "Grade, as the hole they are for names it", v.optional);
  v.text("coating", b.coating, "Coating, as the hole they are for names it", v.optional);
}
template <class V>
void describe(V& v, Kit& k) {
  v.text("name", k.name, "Name of the kit");
  v.text("sheet", k.sheet, "The maker's sheet the figures come from", v.optional);
  v.length("gauge", k.gauge, {300, 3000}, "Heel to heel of the rails");
  v.object("rail", k.rail, "Rail section");
  v.object("mounting", k.mounting, "Mounting holes, rail to tab");
  v.object("bunk", k.bunk, "Bunk and its bolts");
  v.object("gusset", k.gusset, "Joint gusset");
  v.object("track_stop", k.track_stop, "Stop at each end of each rail");
  v.object("log_stop", k.log_stop, "Post the log is turned against");
  v.object("clamp", k.clamp, "Clamp that holds the log to the stops");
  v.object("head", k.head, "Machine head");
  v.list("box", k.box, 40, "Bolts that come in the kit's own box", v.optional);
}

}  // namespace bedwright
