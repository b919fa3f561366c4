// Does it tow, and does it stand: masses, balance and beams of a laid-out bed.
//
// run_loads() is pure: the same job and bed give the same result, with no files,
// no kernel and no clock, and fast enough to try thousands of variants. Findings
// are made from the result by load_findings() (rules/loads/rules.h).
//
// On the road: masses and centres are sums, and the tongue's load follows from moments
// about the axle group. The gear moves with the axle, so the ends of the axle's range
// have a closed form; of that range those marks of the tape are kept where the axle can
// stand (axle_place.cpp). The mains between coupler and hangers bend by balance alone.
//
// At work: each main is a beam of one section over its jacks (beam.h), and jacks only
// push. The head is placed at 41 places along the bed and the log at 5; what each does
// to the beam is worked out once and added. Rails are beams of their own, bolted down
// on their tabs. A log has crook and taper, is turned as it bends the bed most, and is the
// heaviest of its kind (log.h). At rest it counts for sag and lift; as it lands, with
// work.landing of its weight, for every stress, jack, tab and weld alike.
//
// Taken for granted: the two mains do not help each other (lever rule across the bed);
// rails and joints do not help the mains; jacks sink only in sunk_feet(); a log is stiff and
// the bunks under it are equal springs; the axles of a group share alike. What is left out,
// and which way that errs, is listed in `assumptions`; the loads page and the report
// print it. Factors that are common practice and no more (bump, rebound, tongue share,
// sag) stand in params/load_order.h, and the order can set each.
//
// A tab is judged by what loads it: at work by WELD-LOAD (its weld) and TAB-WORK (the
// tab), on the road by TAB-ROAD (both); the welds by one method, bed/tab_weld.h.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "loads/body.h"
#include "loads/details.h"
#include "params/job.h"

namespace bedwright {

// --- on the road -------------------------------------------------------------

struct TowCondition {
  TravelCase travel;    // printed by name() in loads/travel_name.h
  bool judged = false;  // the order travels this way; others are shown for comparison
  Kg mass = 0;
  Vec3 centre;
  Vec3 inertia;                      // roll, pitch, yaw about the centre, kg m2
  Kg tongue = 0;                     // load on the coupler
  double share = 0;                  // tongue over mass
  Kg axles = 0, axle = 0, tyre = 0;  // group, each axle, heaviest tyre
  Kg jack = 0;        // uncoupled, level, on wheels and tongue jack: what that holds; below 0 it tips back
  Mm above_road = 0;  // its centre of mass
  // Sideways pull in g, or rise over run of a side slope, at which it rolls over: coupled,
  // about ball and outer tyres; uncoupled, about the tongue jack's foot and outer tyres.
  // Springs and tyres taken as stiff.
  double rolls_at = 0, rolls_parked = 0;
  // Axle positions that keep the share within the order's limits; to the mains' end
  // where only the least counts.
  Mm axle_from = 0, axle_to = 0;
  // Mains: worst bending over a bump, each main its side's part.
  Mpa main_stress = 0;
  Mm main_stress_x = 0;
};

struct Tow {
  std::vector<TowCondition> conditions;   // judged ones first, in the order's order
  Mm ball_x = 0, axle_x = 0, jack_x = 0;  // of the tongue jack
  // Uncoupled on wheels and tongue jack, without cargo, it tips back with the head's
  // centre behind this; infinite for a head that weighs nothing.
  Mm tips_behind = std::numeric_limits<Mm>::infinity();
  bool tips_on_track() const { return tips_behind < head_to; }
  Mm head_to = 0;  // the head's rearmost place
  // Where the axle may stand so that every judged condition is within the limits;
  // empty (from > to) when no place does for all.
  Mm axle_from = 0, axle_to = 0;
  // Places in there on the tape's marks, best first: hangers clear of jacks and cross
  // members, wheels at full bump clear of clamps, bunks, jacks and all else.
  std::vector<Mm> axle_places;
  Mm width = 0, length = 0, height = 0;  // over all, standing on its tyres
  Mm ground_z = 0;
  Mm half_track = 0;  // middle of a tyre from the centre line
  Mm ball_above = 0;  // the ball's middle above the road, the bed level
};

struct TongueLoads {
  Newton coupler = 0;  // over a bump, the worst judged condition
  Mm arm = 0;          // ball to front member
  double moment = 0;   // N mm, both channels together, over a bump
  // Braking on level road, the tow vehicle alone: what the bed's nose dips onto the coupler
  // with, at rest load and all, and what pushes along the tongue.
  Newton braking_coupler = 0, braking_push = 0;
  Mpa bump_stress = 0, bump_weld = 0, braking_stress = 0, braking_weld = 0;
  bool braked = false;          // braking is worse than a bump
  Mpa stress = 0, allowed = 0;  // the worse of bump and braking
  Mpa weld = 0;                 // on the throat, worst point of the group
  // Of one channel: length of its lines, from their middle to the farthest point, and
  // second moment of the lines, mm3.
  Mm weld_length = 0, weld_leg = 0, weld_arm = 0, weld_far = 0;
  double weld_inertia = 0;
  Kg standing = 0;  // most on the tongue jack, uncoupled, in the judged conditions
};

// --- at work, on its jacks ---------------------------------------------------

struct JackLoad {
  Identity id;
  Mm x = 0;
  Newton least = 0, most = 0;  // least at rest, most as a log lands
  Newton drawn = 0;            // with head and log where a main sags most
  Mm lifts = 0;                // most the main stands clear of it
  Mm lifts_at = 0;             // head's place then
};

// Least and most of a figure at each station, over all places of the head and the log,
// and its value with head and log where the main sags most.
struct Envelope {
  std::vector<double> least, most, drawn;
  Envelope() = default;
  explicit Envelope(std::size_t stations)
      : least(stations, std::numeric_limits<double>::infinity()),
        most(stations, -std::numeric_limits<double>::infinity()) {}
  void take(const Eigen::VectorXd& values) {
    Eigen::Map<Eigen::ArrayXd> low(least.data(), values.size()), high(most.data(), values.size());
    low = low.min(values.array());
    high = high.max(values.array());
  }
};

// Places of head and log that are tried, from end to end.
inline constexpr int stand_head_places = 41, stand_log_places = 5;

// One main over its whole length. Signs as in BeamCurves (loads/beam.h).
struct MainCurve {
  std::vector<Mm> x;
  Envelope down;    // mm
  Envelope slope;   // mm per mm
  Envelope moment;  // N mm
  Envelope shear;   // N
};

struct BunkPush {
  Mm x = 0;
  Newton force = 0;
};

// What a rail puts on a tab: down through its bolt, and the part of it that the head's wheels,
// on the rail's upright leg, put further out.
struct TabPush {
  Newton load = 0;     // all of it
  Newton wheels = 0;   // the wheels' part
  double turning = 0;  // N mm that turns the tab outward, what the bunks hold taken off
  double held = 0;     // N mm that the bunks hold
};

struct Stand {
  bool jacks_enough = true;         // two pairs or more
  bool tips = false;                // the weight leaves the jacks' span somewhere
  Mm tips_at = 0;                   // head's place then
  bool log_lies = true;             // on two bunks or more, its middle between them
  Mm log_position = 0;              // of its weight, where it sags most; also drawn
  std::vector<BunkPush> log_drawn;  // on the bunks then
  Kg log_mass = 0;
  Mm log_y = 0;                            // centre from the centre line
  Newton bunk_load = 0;                    // most on one bunk, as the log lands
  int log_bunks = 0, log_bunks_least = 0;  // bunks that carry it at rest, over all places and turns

  Side side = Side::middle;  // the main that sags more; middle where none was worked out
  MainCurve curve;           // of that main
  Mm head_x = 0;             // head where it sags most
  Mm wheels_x = 0;           // its centre of mass then
  Mm sag_x = 0;
  Mm main_sag = 0, rail_sag = 0, sag = 0, sag_limit = 0;
  double slope = 0;        // mm per mm, steepest
  double main_moment = 0;  // N mm
  Mm main_moment_x = 0;
  Newton main_shear = 0;
  Mm main_unbraced = 0;  // the longest stretch of main that no cross member holds sideways
  Mpa main_stress = 0, main_allowed = 0;
  Mpa web_stress = 0, web_allowed = 0;  // main_shear over web_area
  double rail_moment = 0;
  Mpa rail_stress = 0, bunk_stress = 0, kit_allowed = 0;
  Mm rail_sag_x = 0;
  Newton tab_load = 0;          // most on one tab, as a log lands
  TabPush tab_push;             // the same, at the tab it bends most
  std::vector<JackLoad> jacks;  // left then right, front to rear
  // Sideways: what holds the bed over what tips it, about the jacks' feet.
  // Infinite where nothing tips it: no log, no push, or bunks that end within the feet.
  double push_factor = std::numeric_limits<double>::infinity(),
         roll_on_factor = std::numeric_limits<double>::infinity();
  Newton push = 0;
  Mm push_height = 0, foot_y = 0;
};

// One main with the foot of one jack let down: what it costs at work.
struct SunkFoot {
  Mm x = 0;         // of the jack
  Mm sinks = 0;     // an eighth of an inch
  Mm out = 0;       // the rails, from straight and level, log and head at their worst
  Newton most = 0;  // on the most loaded jack then, as a log lands
  Mm most_x = 0;    // that jack
  bool tips = false;
  // Most it may sink before rails or jacks pass what is allowed; 0 where they do already.
  Mm enough = 0;
};

// --- tabs and track bolts on the road -----------------------------------------

struct TabLoads {
  int section_bolts = 0;                // of one rail section, both sides, least of all sections
  Kg carried = 0;                       // head, cargo and one section of track
  Newton shear = 0, tension = 0;        // on one bolt, sideways or along the bed; along its axis
  Newton overturning = 0, lift = 0;     // parts of the tension: the head's overturning, the rebound
  bool sideways = true;                 // overturns across the bed rather than along it
  Mm above = 0, across = 0, along = 0;  // the head's centre above the bolts; between the rows; half a section
  Newton vertical = 0;                  // down on one tab, over a bump
  // A wheel stands on the rail's upright leg, further out than the bolt. Of that moment the
  // bunks hold a part through the rail's torsion; the rest turns the tab.
  Mm wheel_off = 0;    // from the bolt out to the upright leg's middle
  double held = 0;     // part the bunks hold at the worst tab
  double turning = 0;  // N mm, the rest at that tab, over a bump
  double turning_at_work = 0;
  Newton bunk_bolt = 0;  // what holds the rail's roll pulls a bunk's bolt with, over a bump
  Mpa rail_torsion = 0, rail_torsion_allowed = 0;
  Mpa bolt_shear = 0, bolt_tension = 0, bolt_tension_allowed = 0, bolt_shear_allowed = 0;
  Mpa tab_stress = 0;  // on the road
  // The worst tab weld on the road, N/mm, and what it may carry.
  double weld = 0, weld_allowed = 0;
  Mpa tab_stress_at_work = 0;                         // under Stand::tab_load
  double weld_at_work = 0, weld_at_work_allowed = 0;  // N/mm, likewise as a log lands
  Mpa tab_allowed = 0;
};

struct LoadsResult {
  BedWeights weights;
  Tow tow;
  TongueLoads tongue;
  Stand stand;
  TabLoads tabs;
  // Where jacks are enough and it does not tip.
  std::optional<JackSeat> jack_seat;
  std::optional<JackFoot> jack_foot;
  TongueSeat tongue_seat;
  Fatigue fatigue;
  std::vector<std::string> assumptions;
};

// Throws std::invalid_argument for sections that have no profile.
LoadsResult run_loads(const Job& job, const Bed& bed);

// What its parts do; run_loads calls them in this order.
Tow tow_loads(const Job& job, const Bed& bed, const BedWeights& weights);
TongueLoads tongue_loads(const Job& job, const Tow& tow);
Stand stand_loads(const Job& job, const Bed& bed, const BedWeights& weights);
TabLoads tab_loads(const Job& job, const Bed& bed, const BedWeights& weights, const Stand& stand);

// Each line of jacks with one foot sunk, front to rear: a table for the page, many times the
// work of stand_loads().
std::vector<SunkFoot> sunk_feet(const Job& job, const Bed& bed, const BedWeights& weights);

// What it must stand sideways before it rolls over, in g. It is worked as if stiff; springs
// and tyres give way and let it lean out, which takes about a fifth: common practice, no
// published source. (For comparison: 0.35 g for heavy trailers, New Zealand's rule on vehicle
// dimensions and mass; tan 23 degrees = 0.42 g for tank vehicles, UN ECE regulation 111; both
// from memory.)
inline double roll_limit(const Job& job) { return 1.25 * job.order.road.cornering; }

// The ways a bed travels whose order names none, and those this order travels.
std::vector<TravelCase> usual_travels(const Order& order);
std::vector<TravelCase> judged_travels(const Order& order);

// Where the axle may stand so that those of the judged ways are within the limits; empty
// (from > to) where no place is.
enum class Ways { all, laden, unladen };
struct AxleRange {
  Mm from = 0, to = 0;
};
AxleRange axle_range(const Job& job, const Bed& bed, const BedWeights& weights, Ways ways);

// Recommended places of the axle within tow.axle_from to axle_to, nearest to the middle
// first, at most five.
std::vector<Mm> axle_places(const Job& job, const Bed& bed, const Tow& tow);

// Shared by them.
Kg log_mass(const Job& job);    // the heaviest of its kind; 0 without a log
Mm main_start(const Job& job);  // front end of the mains
Mm main_end(const Job& job, const Bed& bed);
// The head's centre, locked at that end of the track. Throws std::invalid_argument for a
// head that is off.
Mm head_locked(const Job& job, const Bed& bed, HeadAt at);
Mm rail_seat(const Job& job, const Bed& bed);  // top of the rails' flat legs above the mains' tops
Mm rail_top(const Job& job, const Bed& bed);

}  // namespace bedwright
