// The order: one customer's bed. Points at a kit, a frame and the catalogue.
// Each struct has a describe() that names its keys once; the loader and the
// JSON Schema both come from it (see yaml/describe.h).
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "units/units.h"
#include "yaml/mark.h"

namespace bedwright {

enum class Printing { inches, metric };
enum class Datum { front, middle, rear };
enum class EndBunks { outermost, inner };
enum class HeadLock { front, rear };
enum class FitBasis { worst_case, root_sum_square };

struct Heading {
  std::string number, customer, shop, date, revision = "A";
  Printing printing = Printing::inches;
  Mm tape = inch / 16;  // smallest mark the layout tape is read to
};

struct ClampPlace {
  int bunk = 1;         // counted from the front, 1 first
};

struct TrackOrder {
  Mm rail_length = 0, bunk_pitch = 0;
  int extension_count = 0;
  Datum datum = Datum::front;          // where the track is pinned to the frame
  EndBunks end_bunks = EndBunks::outermost;
  HeadLock head_lock = HeadLock::front;
  std::vector<ClampPlace> clamps;
  std::vector<int> log_stops;          // bunk numbers
};

struct AxlePlace {
  Mm position = 0;                     // centre of the axle group behind the front datum
};

// Bolt lengths named by the owner; chosen from stock where absent.
struct BoltLengths {
  std::optional<Mm> track, bunk, gusset, stop, jack, tongue_jack;
};

// A tab found out of place after welding, by its name (R7 is the seventh on the kerb side).
struct TabFound {
  Name tab;
  Mm x = 0, y = 0;                     // rearward and outward of where it was laid out
};

struct Tolerances {
  Mm weld_placement = inch / 16;       // a tab moves this much when tacked and welded
  Mm cut_position = 0.5;               // a cut or drilled hole from its place in the part
  Mm gauge = inch / 32;                // gauge spacer and fit-up, rail to rail
  Mm existing_tab = inch / 32;         // a measured tab hole on a frame that exists
};

struct Limits {
  FitBasis fit_basis = FitBasis::worst_case;
  Mm tip_clearance = inch / 16;
  double threads_past_nut = 1;         // full threads past the nut, shortest bolt in tolerance
  Mm most_past_nut = 3 * inch / 8;
  Mm moving_clearance = inch / 4;
  Mm joint_to_support = 8 * inch;      // rail joint to the nearest tab
};

struct Order {
  Heading order;
  std::string kit, frame;              // paths, relative to the order file
  std::vector<std::string> catalog;
  TrackOrder track;
  AxlePlace axle;
  std::vector<Mm> jacks;               // x of each pair
  BoltLengths bolts;
  std::vector<TabFound> tabs_found;
  Tolerances tolerances;
  Limits limits;
};

template <class V> void describe(V& v, Heading& h) {
  v.text("number", h.number, "Order number; names the output folder");
  v.text("customer", h.customer, "Who the bed is for");
  v.text("shop", h.shop, "The shop's name, printed on every sheet", v.optional);
  v.text("date", h.date, "Date of the order, year-month-day; printed and written into the files");
  v.text("revision", h.revision, "Revision letter", v.optional);
  v.choice("printing", h.printing, {{"inch", Printing::inches}, {"metric", Printing::metric}},
           "Units the sheets and lists are printed in", v.optional);
  v.length("tape", h.tape, {0.5, 5}, "Smallest mark the layout tape is read to (1/16 in, 1/32 in, 1 mm)", v.optional);
}
template <class V> void describe(V& v, ClampPlace& c) {
  v.count("bunk", c.bunk, 1, 500, "Bunk the clamp is set on, counted from the front");
}
template <class V> void describe(V& v, TrackOrder& t) {
  v.length("rail_length", t.rail_length, {12 * inch, 40 * foot}, "Length of one rail section");
  v.length("bunk_pitch", t.bunk_pitch, {6 * inch, 10 * foot}, "Distance from bunk to bunk along a section");
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
template <class V> void describe(V& v, AxlePlace& a) {
  v.length("position", a.position, {0, 25000}, "Centre of the axle group behind the front end of the track");
}
template <class V> void describe(V& v, BoltLengths& b) {
  const char* doc = "Length to use instead of the one chosen from stock";
  v.length("track", b.track, {5, 300}, doc, v.optional);
  v.length("bunk", b.bunk, {5, 300}, doc, v.optional);
  v.length("gusset", b.gusset, {5, 300}, doc, v.optional);
  v.length("stop", b.stop, {5, 300}, doc, v.optional);
  v.length("jack", b.jack, {5, 300}, doc, v.optional);
  v.length("tongue_jack", b.tongue_jack, {5, 300}, doc, v.optional);
}
template <class V> void describe(V& v, TabFound& t) {
  v.name("tab", t.tab, "Tab by name: L or R and its number from the front, as R7");
  v.length("x", t.x, {-100, 100}, "How far rearward of its place it was found (minus: forward)", v.optional);
  v.length("y", t.y, {-100, 100}, "How far outward of its place it was found (minus: inward)", v.optional);
}
template <class V> void describe(V& v, Tolerances& t) {
  v.length("weld_placement", t.weld_placement, {0, 25}, "How far a tab may move when welded", v.optional);
  v.length("cut_position", t.cut_position, {0, 10}, "How far a cut or drilled hole may be from its place", v.optional);
  v.length("gauge", t.gauge, {0, 10}, "How far the gauge may be out, rail to rail", v.optional);
  v.length("existing_tab", t.existing_tab, {0, 25}, "How far a measured tab hole of an existing frame may be out", v.optional);
}
template <class V> void describe(V& v, Limits& l) {
  v.choice("fit_basis", l.fit_basis,
           {{"worst_case", FitBasis::worst_case}, {"root_sum_square", FitBasis::root_sum_square}},
           "Which sum of the tolerances a hole must take before the bed is stopped", v.optional);
  v.length("tip_clearance", l.tip_clearance, {0, 50}, "Least room between a bolt's tip and what is below it", v.optional);
  v.number("threads_past_nut", l.threads_past_nut, {0, 10}, "Full threads that must stand past the nut", v.optional);
  v.length("most_past_nut", l.most_past_nut, {1, 100}, "Most a bolt may stand past its nut", v.optional);
  v.length("moving_clearance", l.moving_clearance, {0, 100}, "Least room around the moving head, clamps and wheels", v.optional);
  v.length("joint_to_support", l.joint_to_support, {10, 2000}, "Most a rail joint may be from the nearest tab", v.optional);
}
template <class V> void describe(V& v, Order& o) {
  v.object("order", o.order, "Heading");
  v.path("kit", o.kit, "Track kit file, relative to this file");
  v.path("frame", o.frame, "Frame file, relative to this file");
  v.paths("catalog", o.catalog, 20, "Catalogue files, relative to this file");
  v.object("track", o.track, "The track");
  v.object("axle", o.axle, "Where the axle sits");
  v.lengths("jacks", o.jacks, {0, 25000}, 20, "Each pair of levelling jacks, behind the front end of the track");
  v.object("bolts", o.bolts, "Bolt lengths named by the owner", v.optional);
  v.list("tabs_found", o.tabs_found, 200, "Tabs measured out of place on the welded frame", v.optional);
  v.object("tolerances", o.tolerances, "What the shop holds", v.optional);
  v.object("limits", o.limits, "Limits the checks use", v.optional);
}

}  // namespace bedwright
