// What every part of the layout needs: the job, the plan, the Bed so far, and
// the few ways of putting things into it.
#pragma once

#include <string>
#include <vector>

#include "bed/bed.h"
#include "layout/track_plan.h"
#include "params/job.h"

namespace bedwright {

enum class Side { left = -1, right = +1 };
inline constexpr Side both_sides[] = {Side::left, Side::right};
inline double outward(Side side) { return static_cast<double>(side); }
inline const char* letter(Side side) { return side == Side::left ? "L" : "R"; }

// Removes the noise of adding and subtracting, so that equal parts compare equal.
inline Mm tidy(Mm x) { return std::round(x * 1e6) / 1e6; }

// A ply found by where it is, not by counting: the hole of `item` whose axis
// passes through `at`.
struct BoltPlan {
  std::string name;
  Role role = Role::track;
  std::string size;
  std::optional<Mm> length;        // named by the owner
  Vec3 seat, direction;
  std::vector<int> items;          // plies in order from the head
  bool flat_under_nut = false;     // a slot under the lock washer needs a flat one first
  std::vector<Contribution> stack_up;
};

// A hole that comes in the part, at `at` on its face, a slot's long axis at `angle`.
inline Hole bought_hole(Vec2 at, const BoltHole& hole, Radians angle, const char* purpose) {
  return {{tidy(at.x), tidy(at.y)}, hole.diameter, hole.slot.value_or(hole.diameter), angle, Process::as_bought, purpose};
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

class Builder {
 public:
  Builder(const Job& job_in, Bed& bed_in);

  const Job& job;
  const Order& order;
  const Kit& kit;
  const FrameFile& frame;
  const TrackPlan plan;
  Bed& bed;
  std::vector<Problem> problems;

  // Heights and lines the rooms share.
  Mm standoff() const;
  Mm rail_seat() const { return standoff() + kit.rail.thickness; }   // top of the flat leg
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

  int add(const std::string& part_name, const std::string& material, Origin origin, Form form);
  int place(int part, const std::string& name, Placement placement);
  void join(int a, int b, const std::string& why) { bed.joined.push_back({a, b, why}); }
  // Steel at a weld: the thinner part's, and the edge the fillet runs along where
  // the parts lap (0 for a tee).
  struct WeldSteel {
    Mm thinner = 0, edge = 0;
  };
  void weld(int a, int b, Mm leg, Mm length, const std::string& note, WeldSteel steel) {
    bed.welds.push_back({a, b, leg, length, note, steel.thinner, steel.edge});
  }
  // Adds the bolt with its hardware. The length is the owner's or the shortest
  // in stock that stands far enough past the nut (the longest there is, when none does).
  void bolt(const BoltPlan& plan);
  // A hole with nothing under it: recorded, no hardware.
  void missing_bolt(const BoltPlan& plan);
  void problem(const std::string& key, const std::string& what, const std::string& would_do);

 private:
  Bolt assemble(const BoltPlan& plan);
};

// Each adds its share to the builder's Bed, in this order (later ones look up
// earlier items by name).
void lay_rails(Builder& b);
void lay_frame(Builder& b);
void lay_tabs(Builder& b);      // and the track bolts
void lay_bunks(Builder& b);     // bunks, gussets, track stops and their bolts
void lay_on_bunks(Builder& b);  // clamps and log stops
void lay_head(Builder& b);
void lay_running_gear(Builder& b);  // axle, wheels, jacks, coupler, tongue jack

}  // namespace bedwright
