// What every part of the layout needs: the job, the plan, the Bed so far, and
// the few ways of putting things into it.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "bed/bed.h"
#include "layout/track_plan.h"
#include "params/job.h"
#include "units/tape.h"

namespace bedwright {

// A hole of an item, by the index it was made with.
struct Through {
  int item = -1, hole = 0;
  std::vector<Contribution> own = {};  // what moves this hole alone
};

struct BoltPlan {
  Identity id;
  std::string size, grade, coating;  // of the hole it is for (see for_hole)
  std::optional<Mm> length;          // named by the owner
  Vec3 seat, direction;
  std::vector<Through> plies;          // in order from the head
  std::vector<Contribution> stack_up;  // first ply against the others
  bool finds_its_place = false;        // see Bolt
  std::optional<Mm> shim = {};         // see Bolt
};

// Size, grade and coating as the hole asks for them.
inline void for_hole(BoltPlan& plan, const BoltHole& hole) {
  plan.size = hole.bolt.text;
  plan.grade = hole.grade;
  plan.coating = hole.coating;
}

// How far a plate's edge is held in from the channel's under or over it, so that a
// fillet of that leg has a ledge to lie on.
inline constexpr Mm least_ledge = 6;
inline Mm plate_ledge(Mm leg) { return std::max(least_ledge, leg + 1); }

// Of a flange or a tube's wall, as welds on it count it: a rolled flange in its middle.
inline Mm flange_steel(const Section& s) { return is_closed(s) ? s.web : s.flange_thickness; }

// A hole that comes in the part, at `at` on its face, a slot's long axis at `angle`.
inline Hole bought_hole(Vec2 at, const BoltHole& hole, Radians angle, Kind purpose) {
  return {{tidy(at.x), tidy(at.y)}, hole.diameter, hole.slot.value_or(hole.diameter), angle,
          Process::as_bought,       purpose};
}

// The kit's own angles: rail and bunk state the same four sizes.
template <class KitAngle>
Section kit_angle(const char* name, const KitAngle& k) {
  Section s;
  s.name = name;
  s.shape = Shape::angle;
  s.flange = k.flat_leg;
  s.depth = k.standing_leg;
  s.web = k.thickness;
  s.root_radius = k.root_radius;
  return s;
}

// A tolerance that is the same either way.
inline Contribution either_way(const char* what, Mm x, Mm y, Mm z = 0) { return {what, x, x, y, y, z, z}; }

// Where in a rail section's list of holes each one is, by what it is for.
struct RailHoles {
  struct OneRail {
    std::vector<int> mounting, bunk_sets;    // as SectionHoles lists them
    std::array<int, 2> stop{};               // front end, rear end
    std::vector<std::array<int, 2>> gusset;  // a gusset bolt from a joint: at the front end, at the rear end
  };
  std::vector<OneRail> left, right;  // by section
  const OneRail& of(Side side, int section) const {
    return (side == Side::left ? left : right).at(static_cast<std::size_t>(section));
  }
};

class Builder {
 public:
  Builder(const Job& job_in, Bed& bed_in);

  const Job& job;
  const Order& order;
  const Kit& kit;
  const FrameFile& frame;
  Bed& bed;
  const Track& track() const { return bed.track; }
  RailHoles rail_holes;
  std::vector<std::array<int, 4>>
      main_jack_holes;  // by jack: of each main's holes, those by dx, then dz (see main_holes)
  std::vector<Problem> problems;

  // Heights and lines that all of the layout shares.
  Mm standoff() const { return bed.track.standoff; }
  Mm rail_seat() const { return standoff() + kit.rail.thickness; }  // top of the flat leg
  Mm rail_top() const { return standoff() + kit.rail.standing_leg; }
  Mm heel(Side side) const { return outward(side) * kit.gauge / 2; }
  // y of a line measured inward from the rail's heel.
  Mm line(Side side, Mm from_heel) const { return outward(side) * (kit.gauge / 2 - from_heel); }
  Mm web_back(Side side) const { return outward(side) * frame.main.spacing / 2; }
  Mm main_start() const { return -frame.main.front_overhang; }
  Mm main_end() const { return main_start() + main_length(); }
  Mm main_length() const;
  const Section& section(const Name& name) const { return *job.catalog.section(name.text); }
  const Section& main_section() const { return section(frame.main.section); }

  int main(Side side) const { return bed.item({Kind::main, side}); }

  // What the shop makes or buys of a frame that stands is there already.
  int add(const Identity& id, const std::string& material, Origin origin, Form form);
  // Made for this order even where the frame stands.
  int add_new(const Identity& id, const std::string& material, Origin origin, Form form);
  int place(int part, const Identity& id, Placement placement);
  void join(int a, int b, const char* why) { bed.joined.push_back({a, b, why}); }
  // Steel at a weld: the thinner part's, and the edge the fillet runs along where
  // the parts lap (0 for a tee).
  struct WeldSteel {
    Mm thinner = 0, edge = 0;
  };
  void weld(int a, int b, Mm leg, WeldLine line, WeldSteel steel, std::vector<WeldRun> runs);
  // Adds the bolt with its hardware. The length is the owner's or the shortest
  // in stock that stands far enough past the nut (the longest there is, when none does).
  void bolt(const BoltPlan& plan);
  // A hole with nothing under it: recorded, no hardware.
  void missing_bolt(const BoltPlan& plan);
  void problem(const std::string& key, const std::string& what, const std::string& would_do);

 private:
  Bolt assemble(const BoltPlan& plan);
  Mm smaller(const Hole& hole) const;
};

// Each adds its share to the builder's Bed, in this order (later ones look up
// earlier items by identity).
void lay_rails(Builder& b);
void lay_frame(Builder& b);  // and the tongue, by lay_tongue
void lay_tongue(Builder& b);
void lay_tabs(Builder& b);      // and the track bolts
void lay_bunks(Builder& b);     // bunks, gussets, track stops and their bolts
void lay_on_bunks(Builder& b);  // clamps and log stops
void lay_head(Builder& b);
void lay_running_gear(Builder& b);  // axle, wheels, jacks, coupler, tongue jack

}  // namespace bedwright
