// Puts parts, items and bolts into the Bed, each bolt with a length from stock.
#include "layout/builder.h"

#include <fmt/format.h>

#include <cmath>
#include <stdexcept>

#include "layout/layout.h"

namespace bedwright {
namespace {

Mm stack_height(const Bolt& bolt) {
  Mm height = bolt.size.nut_height + bolt.shim.value_or(0);
  for (const Washer& w : bolt.under_head) height += w.thickness;
  for (const Ply& p : bolt.plies) height += p.thickness;
  for (const Washer& w : bolt.under_nut) height += w.thickness;
  return height;
}

bool is_washer(HardwareKind kind) {
  return kind == HardwareKind::flat_washer || kind == HardwareKind::lock_washer;
}

Mm choose_length(const Bolt& bolt, const Limits& limits) {
  const Mm least = stack_height(bolt) + limits.threads_past_nut * bolt.size.pitch;
  for (Mm length : bolt.size.lengths)
    if (length - bolt.size.tolerance(length).minus >= least - same_place) return length;
  return bolt.size.lengths.back();
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
    : job(job_in), order(job_in.order), kit(job_in.kit), frame(job_in.frame), bed(bed_in) {
  bed.track = plan_track(order, kit);
  const FrameTabs& t = frame.tabs;
  bed.track.standoff =
      t.style == TabStyle::plate ? t.plate->plate_thickness + t.plate->pad_thickness : t.clip->standoff;
}

Mm Builder::main_length() const {
  return frame.main.length ? *frame.main.length
                           : bed.track.total_length + frame.main.front_overhang + frame.main.rear_overhang;
}

int Builder::add(const Identity& id, const std::string& material, Origin origin, Form form) {
  // All that the shop makes, and all it buys but hardware, is the frame's.
  if (stands(frame) && !std::holds_alternative<Hardware>(form) &&
      (origin == Origin::made || origin == Origin::bought)) {
    origin = Origin::standing;
    if (Plate* plate = std::get_if<Plate>(&form))
      for (Hole& hole : plate->holes) hole.process = Process::as_bought;
    // But for what the frame's file asks to be drilled in its mains.
    if (Member* member = std::get_if<Member>(&form))
      for (FaceHole& hole : member->holes)
        if (hole.hole.process != Process::on_site) hole.hole.process = Process::as_bought;
  }
  return add_new(id, material, origin, std::move(form));
}

int Builder::add_new(const Identity& id, const std::string& material, Origin origin, Form form) {
  if (Plate* plate = std::get_if<Plate>(&form); plate && origin == Origin::made) {
    // Too small for the table: it marks the centre and the drill makes the hole. A
    // slot is left to the table; a rule says whether it can cut it.
    for (Hole& hole : plate->holes)
      if (hole.process == Process::cut && !hole.slotted() &&
          hole.diameter < order.limits.table_hole * plate->thickness - same_place)
        hole.process = Process::drilled;
  }
  return bed.add_part({id, material, origin, std::move(form)});
}

int Builder::place(int part, const Identity& id, Placement placement) {
  Item item;
  item.part = part;
  item.id = id;
  item.placement = placement;
  return bed.add_item(item);
}

void Builder::weld(int a, int b, Mm leg, WeldLine line, WeldSteel steel, std::vector<WeldRun> runs) {
  Mm length = 0;
  for (const WeldRun& run : runs) length += run.length();
  bed.welds.push_back({a, b, leg, tidy(length), line, steel.thinner, steel.edge, std::move(runs)});
}

void Builder::problem(const std::string& key, const std::string& what, const std::string& would_do) {
  Mark mark;
  mark.file = job.inputs.empty() ? "order" : job.inputs.front().path;
  mark.key = key;
  problems.push_back({mark, what, would_do});
}

// How much narrower the hole may be than stated when the bolt goes in.
Mm Builder::smaller(const Hole& hole) const {
  const Tolerances& t = order.tolerances;
  return (hole.process == Process::cut ? t.cut_size : t.hole_size) + 2 * t.finish;
}

Bolt Builder::assemble(const BoltPlan& p) {
  Bolt bolt;
  bolt.id = p.id;
  bolt.size = *job.catalog.bolt(p.size);
  bolt.seat = p.seat;
  bolt.direction = p.direction;
  bolt.stack_up = p.stack_up;
  bolt.finds_its_place = p.finds_its_place;
  bolt.shim = p.shim;
  bolt.under_head = {bolt.size.flat};
  for (const Through& t : p.plies) {
    Ply ply = ply_through(bed, t.item, t.hole);
    ply.smaller = smaller(hole_in_world(bed, ply).hole);
    ply.own = t.own;
    bolt.plies.push_back(std::move(ply));
  }
  // A slot, or a hole it does not cover with the bolt to one side, is not for a lock washer to lie on.
  const Hole last = hole_in_world(bed, bolt.plies.back()).hole;
  if (last.slotted() || 2 * last.diameter - bolt.size.diameter > bolt.size.lock.outside)
    bolt.under_nut.push_back(bolt.size.flat);
  bolt.under_nut.push_back(bolt.size.lock);
  return bolt;
}

void Builder::bolt(const BoltPlan& p) {
  Bolt bolt = assemble(p);
  bolt.length = p.length ? *p.length : choose_length(bolt, order.limits);
  const int index = static_cast<int>(bed.bolts.size());
  const Vec3 up = -bolt.direction;
  Mm depth = 0;  // below the seat; the head's washers stand above it
  const auto put = [&](HardwareKind kind, Piece piece, Mm at, Mm length) {
    const int part =
        add({Kind::hardware}, "", Origin::bought,
            Hardware{kind, bolt.size, length, is_washer(kind) ? std::string() : p.grade, p.coating});
    Identity id = p.id;
    id.piece = piece;
    const int item = place(part, id, hardware_frame(bolt.seat + at * bolt.direction, up));
    bed.items[item].bolt = index;
  };
  Mm above = 0;
  for (const Washer& w : bolt.under_head) {
    above += w.thickness;
    put(HardwareKind::flat_washer, Piece::head_washer, -above, 0);
  }
  put(HardwareKind::bolt, Piece::whole, -above, bolt.length);
  for (const Ply& ply : bolt.plies) depth += ply.thickness;
  for (std::size_t i = 0; i < bolt.under_nut.size(); ++i) {
    const bool lock = i + 1 == bolt.under_nut.size();
    put(lock ? HardwareKind::lock_washer : HardwareKind::flat_washer,
        lock ? Piece::lock_washer : Piece::lower_washer, depth, 0);
    depth += bolt.under_nut[i].thickness;
  }
  put(HardwareKind::nut, Piece::nut, depth, 0);
  bed.bolts.push_back(std::move(bolt));
}

void Builder::missing_bolt(const BoltPlan& p) {
  Bolt bolt = assemble(p);
  bolt.in_place = false;
  bed.bolts.push_back(std::move(bolt));
}

std::variant<Bed, std::vector<Problem>> lay_out(const Job& job) {
  Bed bed;
  Builder b(job, bed);
  try {
    for (void (*stage)(Builder&) :
         {lay_rails, lay_frame, lay_tabs, lay_bunks, lay_on_bunks, lay_head, lay_running_gear}) {
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
