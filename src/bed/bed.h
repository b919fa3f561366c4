// The Bed: one finished trailer bed as plain data. Layout makes it; rules,
// loads, the kernel, flat patterns, drawings and lists read it and nothing else.
//
// Invariants
//  * A hole exists once, in the part that carries it. A ply of a bolt points at
//    it; STEP, DXF, drill list and checks all read the same hole.
//  * A thing is known by its Identity. Its printed name is worked out from that
//    (bed/names.h) and compared with nothing.
//  * Parts are distinct shapes; an Item is one placed copy. Equal shapes share
//    one part (Bed::add_part), so counts in the lists are counts of items.
//  * Placements are proper rotations. A mirrored part is its own part.
//  * No geometry kernel here.
#pragma once

#include <cstdint>
#include <optional>
#include <stdexcept>
#include <string>
#include <variant>
#include <vector>

#include "bed/identity.h"
#include "bed/track.h"
#include "catalog/fastener.h"
#include "catalog/section.h"
#include "geometry/outline.h"
#include "geometry/vectors.h"

namespace bedwright {

// --- holes -----------------------------------------------------------------

enum class Process {
  as_bought,  // in the part when it arrives, or in the frame that stands
  cut,        // by the plasma table, with the outline
  drilled,    // on the drill press or by magnetic drill, from a drill sheet
  in_place,   // drilled through the hole of what is bolted there, held in its place
  on_site,    // by hand in steel that stands, from the sheet of its changes; never from a file
};

// A hole straight through one face of a part. `at` is in the face's own
// coordinates (see Face). A slot has length > diameter, its long axis at
// `angle` from the face's first axis; length is overall, end to end.
struct Hole {
  Vec2 at;
  Mm diameter = 0;
  Mm length = 0;  // equals diameter for a round hole
  Radians angle = 0;
  Process process = Process::cut;
  Kind purpose = Kind::none;  // the bolt it is for; printed in hole schedules
  bool slotted() const { return length > diameter + same_place; }
  friend bool operator==(const Hole&, const Hole&) = default;
};

// --- parts -----------------------------------------------------------------

// Local frame: outline in XY, thickness from Z = 0 to Z = thickness. Holes run
// along Z.
struct Plate {
  Outline outline;
  Mm thickness = 0;
  std::vector<Hole> holes;
  friend bool operator==(const Plate&, const Plate&) = default;
};

// Faces of a member, with their coordinates (first, second) and the axis the
// hole runs along. Channel: `web` (x, z) along y; `top_flange` and
// `bottom_flange` (x, y) along z, at z = +depth/2 and -depth/2. Tube: the same three,
// `web` its outer side; a hole goes through that one wall.
// Angle: `flat_leg` (x, y) along z, through the leg that lies along +y;
// `standing_leg` (x, z) along y, through the leg that lies along +z.
enum class Face { web, top_flange, bottom_flange, flat_leg, standing_leg };

struct FaceHole {
  Face face = Face::web;
  Hole hole;
  friend bool operator==(const FaceHole&, const FaceHole&) = default;
};

// A length of section. Local frame: X along the member from its front (or
// first) end at 0 to `length`; Y and Z as in Section's profile frame.
// End cuts are planes square to the XY plane: the start runs x = y tan(start_mitre),
// the end x = length + y tan(end_mitre), so `length` is measured along y = 0
// (a channel's web back, an angle's heel).
struct Member {
  Section section;
  Mm length = 0;
  Radians start_mitre = 0, end_mitre = 0;
  std::vector<FaceHole> holes;
  friend bool operator==(const Member&, const Member&) = default;
};

// One convex block of a bought item's envelope: a box from `low` to `high` in
// its own frame; a cylinder of `radius` along that frame's Z from low.z to
// high.z (low.x, low.y, high.x, high.y unused); or, for the space a moving part
// sweeps, a prism on `base` from low.z to high.z, the box then being the one
// around it (prism_block).
struct Block {
  Placement frame;
  Vec3 low, high;
  Mm radius = 0;                // > 0 makes it a cylinder
  std::vector<Vec2> base = {};  // three and more make it a prism: convex, counter-clockwise
  friend bool operator==(const Block&, const Block&) = default;
};

// On the hull of the points, from z = `from` to `to` in the frame.
Block prism_block(const Placement& frame, std::vector<Vec2> points, Mm from, Mm to);

// A flat lug of a bought item that a bolt goes through: centre on the face
// nearest the bolt's head, in the item's local frame, with the bolt's direction.
struct Lug {
  Vec3 at;
  Vec3 direction{0, 0, -1};
  Mm thickness = 0;
  Hole hole;  // `at` unused; slots measure their angle from the item's local X
  friend bool operator==(const Lug&, const Lug&) = default;
};

struct Bought {
  std::vector<Block> envelope;
  std::vector<Lug> lugs;
  Kg mass = 0;
  Vec3 centre_of_mass;  // local
  friend bool operator==(const Bought&, const Bought&) = default;
};

// Bolt hardware. Local frames: all along local Z, bearing face at Z = 0.
//  bolt:   head from 0 up to +head_height, shank from 0 down to -length
//  nut:    from 0 down to -height;  washers: from 0 down to -thickness
enum class HardwareKind { bolt, nut, flat_washer, lock_washer };
struct Hardware {
  HardwareKind kind = HardwareKind::bolt;
  BoltSize size;
  Mm length = 0;                         // bolt only, under the head
  std::string grade = {}, coating = {};  // as the bolt's owner asks for it; empty: not said
  friend bool operator==(const Hardware&, const Hardware&) = default;
};

using Form = std::variant<Plate, Member, Bought, Hardware>;

enum class Origin {
  made,      // by the shop
  bought,    // by the shop's buyer
  kit,       // in the track maker's box
  standing,  // part of a frame that stands: measured, never made, bought or worked again
};

struct Part {
  // Kind, hand and pose. No two parts of a bed share one, except hardware, whose form
  // tells it apart.
  Identity id;
  std::string material;  // "A36", "kit steel"; empty for bought items
  Origin origin = Origin::made;
  Form form;
};

// Plates and sections of the shop's own frame, whether to be made or standing.
inline bool is_frame_steel(const Part& part) {
  return part.origin == Origin::made ||
         (part.origin == Origin::standing && !std::holds_alternative<Bought>(part.form));
}

// --- items -----------------------------------------------------------------

// Items of one identity but for its pose are one thing in different states, and never
// tested against each other.
struct Item {
  int part = 0;
  Placement placement;
  Identity id;          // unique
  bool shown = true;    // false: a state for checks only, left out of model and lists
  int bolt = -1;        // hardware: the bolt it belongs to
  bool moving = false;  // swept or posed envelope, checked with a moving clearance
};

// --- joints ----------------------------------------------------------------

// What may move one ply's hole from its place. Ranges along world x, y and z,
// each as plus and minus (both >= 0), in the order they add up.
struct Contribution {
  std::string what;  // for a reader: "section length, 2 of them"
  Mm x_plus = 0, x_minus = 0;
  Mm y_plus = 0, y_minus = 0;
  Mm z_plus = 0, z_minus = 0;
  bool from_datum = false;  // adds up along the track from where it is pinned
};

// One thing the bolt passes through, in order from the head. Either a hole in
// an item or a washer.
struct Ply {
  int item = -1;
  int hole = -1;  // index into the plate's, member's or bought item's holes
  Mm thickness = 0;
  // Angle of the face the washer or nut seats on to the bolt's square, 0 where flat.
  Radians slope = 0;
  // How much narrower than stated the hole may come out, what is painted on its walls included.
  Mm smaller = 0;
  std::vector<Contribution> own = {};  // what moves this hole alone, beside the bolt's stack_up
};

struct Bolt {
  Identity id;  // unique
  BoltSize size;
  Mm length = 0;
  Vec3 seat;                                  // centre under the head's washer, on the first ply
  Vec3 direction;                             // from head to tip
  std::vector<Washer> under_head, under_nut;  // in order from the head
  std::vector<Ply> plies;
  std::vector<Contribution> stack_up;  // first ply against the others
  // The first part is laid on loose: it shifts and turns along the bed until its holes are over
  // the others', so nothing of the stack-up along the bed is left for the bolt to take.
  bool finds_its_place = false;
  // Pack of shims under the first part, where the heights of what it lies on were measured. The
  // model shows it at one height and has no shims: what is below lies so much lower.
  std::optional<Mm> shim;
  bool in_place = true;  // false: a hole with nothing under it; no hardware placed
};

// Where on its two items a weld runs; words in bed/names.h.
enum class WeldLine : std::uint8_t {
  none,
  web_sides,   // of a cross member
  tube_sides,  // of a cross member that is a tube
  inside_end,  // an end member inside the main's end
  inner_side,  // an end member against the end of a main that is a tube
  plate_ends,  // a jack's plate on the side of a main that is a tube
  outer_edge,  // of the tongue plate, and of the coupler's
  lap_outer,
  lap_inner,
  lap_rear,
  under_main,    // the tongue under a main; under_main where no run is long enough
  flange_edges,  // the tongue under the front member
  edge_under_main,
  edge_under_rear,  // a corner gusset
  across_flange,
  pad_edges,
  clip_ends,  // tabs
  hangers,    // bought: as the axle's maker says
};
inline constexpr int weld_line_count = static_cast<int>(WeldLine::hangers) + 1;

// A straight run of fillet, in world coordinates: its root, which lies on `b`'s face, and
// the unit vectors along which its legs lie on the two items, away from the root.
struct WeldRun {
  Vec3 from, to;
  Vec3 on_a, on_b;
  Mm length() const { return norm(to - from); }
  friend bool operator==(const WeldRun&, const WeldRun&) = default;
};

// Two items fixed to each other by fillet weld.
struct Weld {
  int a = -1, b = -1;
  Mm leg = 0;     // fillet leg; 0 for a bought joint (hanger)
  Mm length = 0;  // total
  WeldLine line = WeldLine::none;
  Mm thinner = 0;                  // steel of the thinner part at the weld
  Mm edge = 0;                     // lapped: the edge the fillet runs along, its thickness; 0 for a tee
  std::vector<WeldRun> runs = {};  // `length` in all; none for a bought joint
};

// Two items that share space by design (a wheel about its axle's end).
struct Joined {
  int a = -1, b = -1;
  const char* why = "";  // for whoever reads the code
};

// Thrown when a bed is asked for a thing it does not have.
struct NotInBed : std::out_of_range {
  using std::out_of_range::out_of_range;
};

// --- the whole ----------------------------------------------------------------

struct Bed {
  std::vector<Part> parts;
  std::vector<Item> items;
  std::vector<Bolt> bolts;
  std::vector<Weld> welds;
  std::vector<Joined> joined;
  Track track;

  // Index of an equal part if there is one (same origin, material and form, whatever
  // its identity), else of `part`, added. Throws std::logic_error when a different
  // part already has the identity.
  int add_part(Part part);
  int add_item(const Item& item);
  const Part& part_of(int item) const { return parts[items[item].part]; }
  // Index of the one item, part or bolt meant. Throws NotInBed, naming it, when there
  // is none.
  int item(const Identity& id) const;
  int part(const Identity& id) const;
  int bolt(const Identity& id) const;
  // Where there need not be one (a pad, on a clip tab).
  std::optional<int> find_item(const Identity& id) const;
  std::optional<int> find_part(const Identity& id) const;
  // All items of the kind, in the Bed's order; hardware is of no item's kind.
  std::vector<int> items_of(Kind kind) const;
  // How many shown items use the part.
  int count(int part) const;
};

// --- reading it --------------------------------------------------------------

// The hole a ply points at, with a point on its axis in world coordinates and
// the unit vector along a slot.
struct HoleInWorld {
  Hole hole;
  Vec3 centre;
  Vec3 slot_axis;
};
HoleInWorld hole_in_world(const Bed& bed, const Ply& ply);

// A ply through the item's hole of that index: its thickness there, and the slope of
// the face under washer or nut. Throws std::out_of_range when there is no such hole.
Ply ply_through(const Bed& bed, int item, int hole);
// Whether both of its items stand, so that it is welded already.
bool stands(const Bed& bed, const Weld& weld);
// Whether all it passes through stands, so that it is in its place already.
bool stands(const Bed& bed, const Bolt& bolt);
// How many holes (a bought item: lugs) the part has.
int hole_count(const Part& part);

// Local centre (on the face's outer side), direction out of the steel and slot
// axis of a member's hole.
struct HoleFrame {
  Vec3 centre, outward, slot_axis;
  Mm thickness = 0;  // of steel at the centre (a tapered flange varies)
};
HoleFrame hole_frame(const Section& section, const FaceHole& hole);

// Closed form: area times thickness for plates, profile area times length at
// the centroid for members, less holes. Bought items: volume of the envelope's
// blocks taken one by one. Hardware: hexagon, shank and rings; no threads.
Mm3 volume(const Part& part);
// Local centroid of that volume.
Vec3 centroid(const Part& part);
// Steel at 7850 kg/m3 for made and kit parts and hardware; bought items as stated.
Kg mass(const Part& part);
Box3 local_bounds(const Part& part);
Box3 bounds(const Bed& bed, int item);
// Around each block of a bought item's envelope. Throws std::bad_variant_access for
// what is not bought.
std::vector<Box3> block_bounds(const Bed& bed, int item);

}  // namespace bedwright
