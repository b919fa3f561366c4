#include "layout/builder.h"

#include <fmt/format.h>

#include <cmath>
#include <stdexcept>

#include "layout/layout.h"

namespace bedwright {
namespace {

// Index of the hole of `item` whose axis passes through `at`, with the steel's
// thickness there.
struct FoundHole {
  int index = -1;
  Mm thickness = 0;
  Radians slope = 0;
};

// How far off its place a hole may be and still be the one meant, the nearest
// there is: beyond the most a tab can be reported out of place, 100 mm both ways.
constexpr Mm hole_search = 150;

FoundHole find_hole(const Bed& bed, int item, Vec3 at, Vec3 direction) {
  const Part& part = bed.part_of(item);
  FoundHole best;
  Mm nearest = hole_search;
  const auto consider = [&](int index, Mm thickness, Radians slope) {
    const Vec3 to = hole_in_world(bed, {item, index, thickness, slope}).centre - at;
    const Mm off = norm(to - dot(to, direction) * direction);
    if (off < nearest) {
      nearest = off;
      best = {index, thickness, slope};
    }
  };
  if (const Plate* p = std::get_if<Plate>(&part.form)) {
    for (std::size_t i = 0; i < p->holes.size(); ++i) consider(static_cast<int>(i), p->thickness, 0);
  } else if (const Member* m = std::get_if<Member>(&part.form)) {
    for (std::size_t i = 0; i < m->holes.size(); ++i) {
      const FaceHole& h = m->holes[i];
      const HoleFrame f = hole_frame(m->section, h);
      // Only holes that run the bolt's way: a gusset hole is no place for a bunk bolt.
      if (std::abs(dot(bed.items[item].placement.direction(f.outward), direction)) < 0.9) continue;
      const bool tapered = h.face == Face::top_flange || h.face == Face::bottom_flange;
      consider(static_cast<int>(i), f.thickness, tapered ? std::atan(channel_flange_slope) : 0);
    }
  } else if (const Bought* b = std::get_if<Bought>(&part.form)) {
    for (std::size_t i = 0; i < b->lugs.size(); ++i) consider(static_cast<int>(i), b->lugs[i].thickness, 0);
  }
  return best;
}

Mm stack_height(const Bolt& bolt) {
  Mm height = bolt.size.nut_height;
  for (const Washer& w : bolt.under_head) height += w.thickness;
  for (const Ply& p : bolt.plies) height += p.thickness;
  for (const Washer& w : bolt.under_nut) height += w.thickness;
  return height;
}

Mm choose_length(const Bolt& bolt, const Limits& limits) {
  const Mm least = stack_height(bolt) + limits.threads_past_nut * bolt.size.pitch + bolt.size.length_minus;
  for (Mm length : bolt.size.lengths)
    if (length >= least - same_place) return length;
  return bolt.size.lengths.back();
}

std::string hardware_name(const char* what, const BoltSize& size) { return fmt::format("{} {}", what, size.name); }

std::string length_name(Mm length, Printing printing) {
  if (printing == Printing::metric) return fmt::format("{:g} mm", tidy(length));
  return fmt::format("{:g} in", tidy(length / inch));
}

// Any two directions square to the bolt do for its hardware, so long as the same
// bolt always gets the same ones.
Placement hardware_frame(Vec3 origin, Vec3 up) {
  const Vec3 side = std::abs(up.x) < 0.9 ? Vec3{1, 0, 0} : Vec3{0, 1, 0};
  const Vec3 x = unit(side - dot(side, up) * up);
  return {origin, x, cross(up, x)};
}

}  // namespace

Builder::Builder(const Job& job_in, Bed& bed_in)
    : job(job_in), order(job_in.order), kit(job_in.kit), frame(job_in.frame), plan(plan_track(job_in.order, job_in.kit)), bed(bed_in) {}

Mm Builder::standoff() const {
  const FrameTabs& t = frame.tabs;
  return t.style == TabStyle::plate ? t.plate->plate_thickness + t.plate->pad_thickness : t.clip->standoff;
}

Mm Builder::main_length() const {
  return frame.main.length ? *frame.main.length : plan.total + frame.main.front_overhang + frame.main.rear_overhang;
}

int Builder::add(const std::string& part_name, const std::string& material, Origin origin, Form form) {
  if (Plate* plate = std::get_if<Plate>(&form); plate && origin == Origin::made) {
    // Too small for the table: it marks the centre and the drill makes the hole. A
    // slot is left to the table; a rule says whether it can cut it.
    for (Hole& hole : plate->holes)
      if (hole.process == Process::cut && !hole.slotted() && hole.diameter < order.limits.table_hole * plate->thickness - same_place)
        hole.process = Process::drilled;
  }
  return bed.add_part({part_name, material, origin, std::move(form)});
}

int Builder::place(int part, const std::string& name, Placement placement) {
  Item item;
  item.part = part;
  item.name = name;
  item.placement = placement;
  return bed.add_item(std::move(item));
}

void Builder::problem(const std::string& key, const std::string& what, const std::string& would_do) {
  Mark mark;
  mark.file = job.inputs.empty() ? "order" : job.inputs.front().path;
  mark.key = key;
  problems.push_back({mark, what, would_do});
}

Bolt Builder::assemble(const BoltPlan& p) {
  Bolt bolt;
  bolt.name = p.name;
  bolt.role = p.role;
  bolt.size = *job.catalog.bolt(p.size);
  bolt.seat = p.seat;
  bolt.direction = p.direction;
  bolt.stack_up = p.stack_up;
  bolt.under_head = {bolt.size.flat};
  if (p.flat_under_nut) bolt.under_nut.push_back(bolt.size.flat);
  bolt.under_nut.push_back(bolt.size.lock);
  for (int item : p.items) {
    const FoundHole hole = find_hole(bed, item, p.seat, p.direction);
    if (hole.index < 0) throw std::logic_error(p.name + ": no hole for it in " + bed.items[item].name);
    bolt.plies.push_back({item, hole.index, hole.thickness, hole.slope});
  }
  return bolt;
}

void Builder::bolt(const BoltPlan& p) {
  Bolt bolt = assemble(p);
  bolt.length = p.length ? *p.length : choose_length(bolt, order.limits);
  const int index = static_cast<int>(bed.bolts.size());
  const Vec3 up = -bolt.direction;
  Mm depth = 0;  // below the seat; the head's washers stand above it
  const auto put = [&](HardwareKind kind, Mm at, Mm length, const std::string& part_name, const std::string& name) {
    const int part = add(part_name, "", Origin::bought, Hardware{kind, bolt.size, length});
    const int item = place(part, name, hardware_frame(bolt.seat + at * bolt.direction, up));
    bed.items[item].bolt = index;
  };
  Mm above = 0;
  for (const Washer& w : bolt.under_head) {
    above += w.thickness;
    put(HardwareKind::flat_washer, -above, 0, hardware_name("flat washer", bolt.size), p.name + " flat washer");
  }
  put(HardwareKind::bolt, -above, bolt.length,
      fmt::format("bolt {} x {}", bolt.size.name, length_name(bolt.length, order.order.printing)), p.name);
  for (const Ply& ply : bolt.plies) depth += ply.thickness;
  for (std::size_t i = 0; i < bolt.under_nut.size(); ++i) {
    const bool lock = i + 1 == bolt.under_nut.size();
    put(lock ? HardwareKind::lock_washer : HardwareKind::flat_washer, depth, 0,
        hardware_name(lock ? "lock washer" : "flat washer", bolt.size), p.name + (lock ? " lock washer" : " lower flat washer"));
    depth += bolt.under_nut[i].thickness;
  }
  put(HardwareKind::nut, depth, 0, hardware_name("nut", bolt.size), p.name + " nut");
  bed.bolts.push_back(std::move(bolt));
}

void Builder::missing_bolt(const BoltPlan& p) {
  Bolt bolt = assemble(p);
  bolt.in_place = false;
  bed.bolts.push_back(std::move(bolt));
}

namespace {

TrackAccount account(const Builder& b) {
  TrackAccount t;
  t.rail_length = b.plan.rail_length;
  t.bunk_pitch = b.plan.pitch;
  t.total_length = b.plan.total;
  t.sections = b.plan.sections;
  t.bunks = static_cast<int>(b.plan.bunks.size());
  t.remainder = b.plan.remainder;
  t.joints = b.plan.joints;
  for (const TrackPlan::Place& p : b.plan.bunks) t.bunk_positions.push_back(p.x);
  t.standoff = b.standoff();
  t.gauge = b.kit.gauge;
  return t;
}

}  // namespace

std::variant<Bed, std::vector<Problem>> lay_out(const Job& job) {
  Bed bed;
  Builder b(job, bed);
  bed.track = account(b);
  try {
    for (void (*stage)(Builder&) : {lay_rails, lay_frame, lay_tabs, lay_bunks, lay_on_bunks, lay_head, lay_running_gear}) {
      stage(b);
      if (!b.problems.empty()) return b.problems;
    }
  } catch (const std::invalid_argument& impossible) {  // a section or outline that cannot be made; says which
    b.problem("", impossible.what(), "correct its sizes in the kit, frame or catalogue file");
    return b.problems;
  }
  return bed;
}

}  // namespace bedwright
