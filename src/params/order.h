// The order: one customer's bed. Points at a kit, a frame and the catalogue.
// Each struct has a describe() that names its keys once; the loader and the
// JSON Schema both come from it (see yaml/describe.h).
#pragma once

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

#include "params/load_order.h"
#include "params/task_times.h"
#include "units/figures.h"
#include "yaml/mark.h"

namespace bedwright {

enum class Datum { front, middle, rear };
enum class EndBunks { outermost, inner };
enum class HeadLock { front, rear };
enum class FitBasis { worst_case, root_sum_square };

// Paper of the sheets. by_units: ANSI B for inches, ISO A3 for metric.
enum class SheetSize { by_units, ansi_b, ansi_d, iso_a3, iso_a1 };

struct Heading {
  std::string number, customer, shop, date, revision = "A";
  Printing printing = Printing::inches;
  Mm tape = inch / 16;  // smallest mark the layout tape is read to
  SheetSize sheet = SheetSize::by_units;
  Name assembly_template;  // folder of the shop's own words for the assembly sheets, beside the order; empty:
                           // the ones shipped

  Figures figures() const { return {printing, tape}; }
};

// One line of the revision table.
struct Revision {
  std::string revision, date, by, what;
};

struct ClampPlace {
  int bunk = 1;  // counted from the front, 1 first
};

struct TrackOrder {
  Mm rail_length = 0, bunk_pitch = 0;
  std::vector<Mm> rail_lengths;  // of each section from the front, where they are not alike
  int extension_count = 0;
  Datum datum = Datum::front;  // where the track is pinned to the frame
  EndBunks end_bunks = EndBunks::outermost;
  HeadLock head_lock = HeadLock::front;
  std::vector<ClampPlace> clamps;
  std::vector<int> log_stops;  // bunk numbers
};

struct AxlePlace {
  Mm position = 0;      // centre of the axle group behind the front datum
  double fraction = 0;  // of the track's length, where given instead; position is then worked out
};

// Bolt lengths named by the owner; chosen from stock where absent.
struct BoltLengths {
  std::optional<Mm> track, bunk, gusset, stop, jack, tongue_jack;
};

// A tab found out of place after welding, by its name (R7 is the seventh on the kerb side).
struct TabFound {
  Name tab;
  Mm x = 0, y = 0;  // rearward and outward of where it was laid out
};

struct Tolerances {
  Mm weld_placement = inch / 16;  // a tab moves this much when tacked and welded
  Mm cut_position = 0.5;          // a cut or drilled hole from its place in the part
  Mm gauge = inch / 32;           // gauge spacer and fit-up, rail to rail
  Mm existing_tab = inch / 32;    // a measured tab hole on a frame that exists
  Mm pad_placement = inch / 32;   // a tab's pad, tacked with a bolt drawn up through pad and plate
  Mm cut_size = 0.01 * inch;      // a hole off the table, smaller than drawn
  Mm hole_size = 0.1;             // a drilled or bought hole, smaller than stated
  Mm finish = 0;                  // paint or zinc on the wall of a hole
  // Heights. Plate: ASTM A6, table 1; camber of channels: ASTM A6, table 18, 1/8 in for
  // each 5 ft of length (both from memory). The others: common practice, no published
  // source.
  Mm plate_over = 0.03 * inch, plate_under = 0.01 * inch;  // a plate's thickness from its nominal one
  Mm main_camber = inch / 8;                               // a main's bow, for each 5 ft of its length
  Mm weld_pull = inch / 32;                                // a tab's top is pulled up or down by its weld
  Mm clip_height = inch / 32;                              // a clip's top from its height when tacked
};

struct Limits {
  FitBasis fit_basis = FitBasis::worst_case;
  Mm tip_clearance = inch / 16;
  double threads_past_nut = 1;  // full threads past the nut, shortest bolt in tolerance
  Mm most_past_nut = 3 * inch / 8;
  Mm moving_clearance = inch / 4;
  Mm joint_to_support = 8 * inch;    // rail joint to the nearest tab
  Mm joint_to_clamp = 2 * inch;      // rail joint to where a clamp slides
  Mm joint_gap = inch / 8;           // most a rail joint may stand open
  Mm joint_step = inch / 32;         // most one rail's top may stand above the next at a joint
  int gusset_bolts = 2;              // least gusset bolts each side of a joint
  Mm track_length_error = inch / 4;  // most the whole track may be out in length
  double table_hole = 1;             // smallest hole the table cuts, in plate thicknesses
  double table_web = 1;              // least steel between cut edges, in plate thicknesses
  Mm stock_length = 96 * inch, stock_width = 48 * inch;  // plate the shop buys
  Mm letter_height = 4;                                  // smallest scribed letters that are read
  Kg tab_load = 0;                   // each tab's weld must carry it; 0: from head and log
  Mm torch_diameter = 3 * inch / 4;  // outside of the welding torch's nozzle
  Mm wheel_to_end = inch;            // least of rail beyond a wheel of the head
  Mm stop_overlap = inch / 2;        // least of a track stop that the head meets, up and across
  Mm jack_travel_left = 2 * inch;    // of a jack whose foot stands on level ground
  // Of a road that rises behind the wheels: a grade of 9 %, the most a drive's foot may turn up
  // by (ITE's guide to driveways, from memory).
  Radians departure = 5.14 * degree;
  Mm road_clearance = inch;     // under what hangs low, the springs at their bump stops
  Mm most_shim = 3 * inch / 8;  // under a rail at one tab
};

// How cut files are written. A table that takes the kerf off itself wants none.
struct CutOrder {
  Mm kerf = 0;  // width of the cut the files allow for, half on each side of the path
};

// What is packed beyond what is needed, of each bolt, nut and washer.
struct Spares {
  double percent = 5;
  int least = 1;
};

// A parameter --suggest may change, with the values it may take (params/vary.h).
struct FreeParameter {
  Name key, values;
};

// Another value for a key of the kit or the frame file, for this order alone.
struct OrderOverride {
  Name key, value;
};

struct Order {
  Heading order;
  std::vector<Revision> revisions;  // oldest first
  std::string kit, frame;           // paths, relative to the order file
  std::vector<std::string> catalog;
  TrackOrder track;
  AxlePlace axle;
  // x of each pair: those listed, then, worked out when loaded, those from the rear and those between.
  std::vector<Mm> jacks;
  std::vector<Mm> jacks_from_rear;  // each pair ahead of the track's rear end
  int jacks_between = 0;            // further pairs, evenly between the first and the last
  BoltLengths bolts;
  std::vector<TabFound> tabs_found;
  Tolerances tolerances;
  Limits limits;
  RoadOrder road;
  WorkOrder work;
  CutOrder cut;
  Spares spares;
  TaskTimes times;
  std::vector<FreeParameter> free;
  std::vector<OrderOverride> overrides;
};

// How many of the jacks the order lists itself, once loaded.
inline std::size_t jacks_listed(const Order& order) {
  const std::size_t worked_out = order.jacks_from_rear.size() + static_cast<std::size_t>(order.jacks_between);
  return order.jacks.size() - std::min(order.jacks.size(), worked_out);
}

template <class V>
void describe(V& v, Heading& h) {
  v.text("number", h.number, "Order number; names the output folder");
  v.text("customer", h.customer, "Who the bed is for");
  v.text("shop", h.shop, "The shop's name, printed on every sheet", v.optional);
  v.text("date", h.date, "Date of the order, year-month-day; printed and written into the files");
  v.text("revision", h.revision, "Revision letter", v.optional);
  v.choice("printing", h.printing, {{"inch", Printing::inches}, {"metric", Printing::metric}},
           "Units the sheets and lists are printed in", v.optional);
  v.length("tape", h.tape, {0.5, 5}, "Smallest mark the layout tape is read to (1/16 in, 1/32 in, 1 mm)",
           v.optional);
  v.choice("sheet", h.sheet,
           {{"by_units", SheetSize::by_units},
            {"B", SheetSize::ansi_b},
            {"D", SheetSize::ansi_d},
            {"A3", SheetSize::iso_a3},
            {"A1", SheetSize::iso_a1}},
           "Paper of the sheets: ANSI B or D, ISO A3 or A1; left out, B for inches and A3 for metric",
           v.optional);
  v.name("assembly_template", h.assembly_template,
         "Folder of your own words for the customer's assembly sheets, relative to this file; left out, the "
         "ones in templates/assembly",
         v.optional);
}
template <class V>
void describe(V& v, Revision& r) {
  v.text("revision", r.revision, "Revision letter");
  v.text("date", r.date, "Date of the change, year-month-day");
  v.text("by", r.by, "Who made it", v.optional);
  v.text("what", r.what, "What changed, in a few words");
}
template <class V>
void describe(V& v, ClampPlace& c) {
  v.count("bunk", c.bunk, 1, 500, "Bunk the clamp is set on, counted from the front");
}
template <class V>
void describe(V& v, TrackOrder& t) {
  v.length("rail_length", t.rail_length, {12 * inch, 40 * foot}, "Length of one rail section");
  v.lengths(
      "rail_lengths", t.rail_lengths, {12 * inch, 40 * foot}, 24,
      "Length of each section from the front, where they are not alike; rail_length is then one of them",
      v.optional);
  v.length("bunk_pitch", t.bunk_pitch, {6 * inch, 10 * foot},
           "Distance from bunk to bunk along a section; leave out where the kit lists its bunk holes",
           v.optional);
  v.count("extension_count", t.extension_count, 0, 12, "Rail sections added to the kit's own");
  v.choice("datum", t.datum, {{"front", Datum::front}, {"middle", Datum::middle}, {"rear", Datum::rear}},
           "Where the track is pinned to the frame first; errors add up away from there", v.optional);
  v.choice("end_bunks", t.end_bunks, {{"outermost", EndBunks::outermost}, {"inner", EndBunks::inner}},
           "Which hole set of the end sections the first and last bunk use", v.optional);
  v.choice("head_lock", t.head_lock, {{"front", HeadLock::front}, {"rear", HeadLock::rear}},
           "End of the track where the head is locked for the road", v.optional);
  v.list("clamps", t.clamps, 100, "Clamps, by the bunk they sit on", v.optional);
  v.counts("log_stops", t.log_stops, 1, 500, 100, "Bunk numbers that carry a log stop", v.optional);
}
template <class V>
void describe(V& v, AxlePlace& a) {
  v.length("position", a.position, {0, 25000},
           "Centre of the axle group behind the front end of the track; or give fraction", v.optional);
  v.number("fraction", a.fraction, {0, 1},
           "Centre of the axle group as a part of the track's length from the front, to the tape's nearest "
           "mark; or give position",
           v.optional);
}
template <class V>
void describe(V& v, BoltLengths& b) {
  const char* doc = "Length to use instead of the one chosen from stock";
  v.length("track", b.track, {5, 300}, doc, v.optional);
  v.length("bunk", b.bunk, {5, 300}, doc, v.optional);
  v.length("gusset", b.gusset, {5, 300}, doc, v.optional);
  v.length("stop", b.stop, {5, 300}, doc, v.optional);
  v.length("jack", b.jack, {5, 300}, doc, v.optional);
  v.length("tongue_jack", b.tongue_jack, {5, 300}, doc, v.optional);
}
template <class V>
void describe(V& v, TabFound& t) {
  v.name("tab", t.tab, "Tab by name: L or R and its number from the front, as R7");
  v.length("x", t.x, {-100, 100}, "How far rearward of its place it was found (minus: forward)", v.optional);
  v.length("y", t.y, {-100, 100}, "How far outward of its place it was found (minus: inward)", v.optional);
}
template <class V>
void describe(V& v, Tolerances& t) {
  v.length("weld_placement", t.weld_placement, {0, 25}, "How far a tab may move when welded", v.optional);
  v.length("cut_position", t.cut_position, {0, 10}, "How far a cut or drilled hole may be from its place",
           v.optional);
  v.length("gauge", t.gauge, {0, 10}, "How far the gauge may be out, rail to rail", v.optional);
  v.length("existing_tab", t.existing_tab, {0, 25},
           "How far a measured tab hole of an existing frame may be out", v.optional);
  v.length("pad_placement", t.pad_placement, {0, 25},
           "How far a tab's pad may be from its place on the plate when welded, tacked with a bolt drawn up "
           "through both",
           v.optional);
  v.length("cut_size", t.cut_size, {0, 5}, "How much smaller than drawn a hole may come off the table",
           v.optional);
  v.length("hole_size", t.hole_size, {0, 5}, "How much smaller than stated a drilled or bought hole may be",
           v.optional);
  v.length("finish", t.finish, {0, 2},
           "Thickness of paint or zinc on the walls of holes when the bolts go in; 0 when they are masked or "
           "reamed",
           v.optional);
  v.length("plate_over", t.plate_over, {0, 10}, "How much thicker than its name a plate may come",
           v.optional);
  v.length("plate_under", t.plate_under, {0, 10}, "How much thinner than its name a plate may come",
           v.optional);
  v.length("main_camber", t.main_camber, {0, 25}, "How far a main may be bowed for each 5 ft of its length",
           v.optional);
  v.length("weld_pull", t.weld_pull, {0, 10}, "How far its weld may pull a tab's top up or down", v.optional);
  v.length("clip_height", t.clip_height, {0, 10},
           "How far the top of a clip tab may be from its height when tacked", v.optional);
}
template <class V>
void describe(V& v, Limits& l) {
  v.choice("fit_basis", l.fit_basis,
           {{"worst_case", FitBasis::worst_case}, {"root_sum_square", FitBasis::root_sum_square}},
           "Which sum of the tolerances a hole must take before the bed is stopped", v.optional);
  v.length("tip_clearance", l.tip_clearance, {0, 50}, "Least room between a bolt's tip and what is below it",
           v.optional);
  v.number("threads_past_nut", l.threads_past_nut, {0, 10}, "Full threads that must stand past the nut",
           v.optional);
  v.length("most_past_nut", l.most_past_nut, {1, 100}, "Most a bolt may stand past its nut", v.optional);
  v.length("moving_clearance", l.moving_clearance, {0, 100},
           "Least room around the moving head, clamps and wheels", v.optional);
  v.length("joint_to_support", l.joint_to_support, {10, 2000},
           "Most a rail joint may be from the nearest tab", v.optional);
  v.length("joint_to_clamp", l.joint_to_clamp, {0, 500},
           "Least from a rail joint to where a clamp slides, along the bed", v.optional);
  v.length("joint_gap", l.joint_gap, {0, 25}, "Most a rail joint may stand open", v.optional);
  v.length("joint_step", l.joint_step, {0, 10}, "Most one rail's top may stand above the next at a joint",
           v.optional);
  v.count("gusset_bolts", l.gusset_bolts, 0, 10, "Least gusset bolts each side of a rail joint", v.optional);
  v.length("track_length_error", l.track_length_error, {0, 100}, "Most the whole track may be out in length",
           v.optional);
  v.number("table_hole", l.table_hole, {0, 5},
           "Smallest hole the plasma table cuts, in plate thicknesses; a smaller round one becomes a centre "
           "mark for the drill",
           v.optional);
  v.number("table_web", l.table_web, {0, 5}, "Least steel between cut edges, in plate thicknesses",
           v.optional);
  v.length("stock_length", l.stock_length, {200, 15000}, "Length of the plate the shop buys", v.optional);
  v.length("stock_width", l.stock_width, {100, 5000}, "Width of the plate the shop buys", v.optional);
  v.length("letter_height", l.letter_height, {2, 50}, "Smallest scribed letters that are read", v.optional);
  v.mass("tab_load", l.tab_load, {0, 50000},
         "Load each mounting tab's weld must carry; 0 takes a quarter of head and log as it lands",
         v.optional);
  v.length("torch_diameter", l.torch_diameter, {5, 60}, "Outside of the welding torch's nozzle", v.optional);
  v.length("wheel_to_end", l.wheel_to_end, {0, 500},
           "Least of rail that is left beyond a wheel of the head, wherever it runs or is locked",
           v.optional);
  v.length("stop_overlap", l.stop_overlap, {0, 100},
           "Least of a track stop that the head meets, up and down and across", v.optional);
  v.length("jack_travel_left", l.jack_travel_left, {0, 1000},
           "Least travel a jack has left once its foot is on the ground, the bed level on its tyres",
           v.optional);
  v.length("road_clearance", l.road_clearance, {0, 1000},
           "Least room between the road and what hangs low, the springs at their bump stops", v.optional);
  v.angle("departure", l.departure, {0, 45},
          "Steepest rise of the road behind the wheels that what hangs there must clear", v.optional);
  v.length("most_shim", l.most_shim, {0, 50}, "Most shim that may be put under a rail at one tab",
           v.optional);
}
template <class V>
void describe(V& v, CutOrder& c) {
  v.length("kerf", c.kerf, {0, 10},
           "Width of the table's cut, allowed for in the cut files; leave out when the table allows for it, "
           "as most do",
           v.optional);
}
template <class V>
void describe(V& v, Spares& s) {
  v.number("percent", s.percent, {0, 100}, "Share of what is needed, packed beyond it", v.optional);
  v.count("least", s.least, 0, 100, "At least so many of each bolt, nut and washer", v.optional);
}
template <class V>
void describe(V& v, FreeParameter& f) {
  v.name("key", f.key, "Key as for --set: track.rail_length, frame.tabs.slot_length, track.clamps[1].bunk");
  v.name("values", f.values,
         "What it may be: 72..96in/1in (from, to, step), or one after another: front, middle, rear");
}
template <class V>
void describe(V& v, OrderOverride& o) {
  v.name("key", o.key, "Key of the kit or the frame file, as for --set: frame.tabs.slot_length");
  v.name("value", o.value, "Its value for this order");
}
template <class V>
void describe(V& v, Order& o) {
  v.object("order", o.order, "Heading");
  v.list("revisions", o.revisions, 100, "Revision table of the sheets, oldest first", v.optional);
  v.path("kit", o.kit, "Track kit file, relative to this file");
  v.path("frame", o.frame, "Frame file, relative to this file");
  v.paths("catalog", o.catalog, 20, "Catalogue files, relative to this file");
  v.object("track", o.track, "The track");
  v.object("axle", o.axle, "Where the axle sits");
  v.lengths("jacks", o.jacks, {0, 25000}, 20,
            "Each pair of levelling jacks, behind the front end of the track");
  v.lengths("jacks_from_rear", o.jacks_from_rear, {0, 25000}, 20,
            "Further pairs, ahead of the rear end of the track, that move with it", v.optional);
  v.count("jacks_between", o.jacks_between, 0, 10,
          "Further pairs, evenly between the first and the last, to the tape's nearest mark", v.optional);
  v.object("bolts", o.bolts, "Bolt lengths named by the owner", v.optional);
  v.list("tabs_found", o.tabs_found, 200, "Tabs measured out of place on the welded frame", v.optional);
  v.object("tolerances", o.tolerances, "What the shop holds", v.optional);
  v.object("limits", o.limits, "Limits the checks use", v.optional);
  v.object("road", o.road, "How the trailer is towed", v.optional);
  v.object("work", o.work, "The log it works on, and what it may do under it", v.optional);
  v.object("cut", o.cut, "How the cut files are written", v.optional);
  v.object("spares", o.spares, "Hardware packed beyond what is needed", v.optional);
  v.object("times", o.times, "Minutes of work on a frame that stands, by task, as the shop takes for them",
           v.optional);
  v.list("free", o.free, 100,
         "What --suggest may change, with the values each may take; leave out for the usual ones",
         v.optional);
  v.list("overrides", o.overrides, 100,
         "Other values for keys of the kit and the frame file, for this order alone", v.optional);
}

}  // namespace bedwright
