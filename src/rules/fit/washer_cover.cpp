// WASHER-COVER: a head or nut must not be able to pull through its hole, and must have
// steel enough under it.
#include <fmt/format.h>

#include <map>
#include <numbers>

#include "rules/fit/bearing.h"
#include "rules/fit/bolt_fit.h"
#include "rules/fit/washer_flat.h"
#include "rules/rule_list.h"
#include "rules/scene.h"

namespace bedwright {
namespace {

// What bears on the steel at one end of a bolt.
struct Bearing {
  Footprint ring;
  const char* what = "";  // "washer", "nut"
  const char* end = "";   // "head", "nut"
  Mm flats = 0;           // of the head or nut that presses
};

Bearing at_head(const Bolt& bolt) {
  const BoltSize& s = bolt.size;
  if (bolt.under_head.empty()) return {{s.diameter, s.head_flats}, "head", "head", s.head_flats};
  const Washer& w = bolt.under_head.back();  // the last is against the steel
  return {{w.inside, w.outside}, "washer under the head", "head", s.head_flats};
}

Bearing at_nut(const Bolt& bolt) {
  const BoltSize& s = bolt.size;
  if (bolt.under_nut.empty()) return {{s.diameter, s.nut_flats}, "nut", "nut", s.nut_flats};
  const Washer& w = bolt.under_nut.front();
  return {{w.inside, w.outside}, "washer under the nut", "nut", s.nut_flats};
}

// The face of head or nut about its bolt: a washer hands on no more pressure than it gets
// when it lies on as much steel.
Mm2 face_of(const Bearing& bearing, Mm bolt_diameter) {
  return std::numbers::pi / 4 * (bearing.flats * bearing.flats - bolt_diameter * bolt_diameter);
}

// A bolt may lie against one side of a hole of width h; its washer, centred on
// the bolt of diameter d, must still reach past the other side: half its outside
// diameter >= h - d / 2.
bool reaches_across(const Scene& scene, const Bolt& bolt, const Ply& ply, const Bearing& bearing,
                    std::vector<Finding>& findings) {
  const Hole hole = hole_in_world(scene.bed, ply).hole;
  const Mm needed = 2 * hole.diameter - bolt.size.diameter;
  if (bearing.ring.outside >= needed - same_place) return true;
  Finding f = finding_of("WASHER-COVER", Severity::stop, bolt, bolt.seat);
  f.subjects.push_back(scene.bed.items[ply.item]);
  f.measured = bearing.ring.outside;
  f.limit = needed;
  f.margin = f.measured - needed;
  const Figures& say = scene.figures;
  f.message =
      fmt::format("the {} is {} across and does not cover a hole {} wide in {} with the bolt to one side",
                  bearing.what, say.say(bearing.ring.outside), say.say(hole.diameter), f.subjects[1].name);
  f.remedy = fmt::format("make the hole at most {} wide, or use a washer {} across",
                         say.say((bearing.ring.outside + bolt.size.diameter) / 2), say.say(needed));
  findings.push_back(std::move(f));
  return false;
}

// The face about a hole of a part, and every hole in it.
struct HoledSteel {
  Outline steel;
  std::vector<Hole> holes;
  std::size_t which = 0;  // of the holes
};

HoledSteel steel_about(const Part& part, int hole) {
  const std::vector<HoleOnFace> all = holes_on_faces(part);
  HoledSteel about{steel_of(part, all.at(hole)), {}, 0};
  for (const HoleOnFace& h : all) {
    if (h.face != all.at(hole).face) continue;
    if (h.index == hole) about.which = about.holes.size();
    about.holes.push_back(h.hole);
  }
  return about;
}

// Works each like place out once: twenty-four track bolts are one sum.
class Areas {
 public:
  explicit Areas(const Bed& bed) : bed_(bed) {}

  Mm2 of(const Ply& ply, Mm bolt_diameter, const Footprint& ring) {
    const int part = bed_.items[ply.item].part;
    const auto [at, fresh] =
        known_.try_emplace({part, ply.hole, bolt_diameter, ring.inside, ring.outside}, 0.0);
    if (fresh) at->second = with(ply, bolt_diameter, ring, [](Hole&) {});
    return at->second;
  }

  // Were the bolt's hole another.
  template <class Alter>
  Mm2 with(const Ply& ply, Mm bolt_diameter, const Footprint& ring, Alter alter) const {
    HoledSteel about = steel_about(bed_.part_of(ply.item), ply.hole);
    alter(about.holes[about.which]);
    return least_bearing(about.steel, about.holes, about.which, bolt_diameter, ring);
  }

 private:
  const Bed& bed_;
  std::map<std::tuple<int, int, Mm, Mm, Mm>, Mm2> known_;
};

// The longest slot under which enough steel is left, or a standard hole, where either does and
// the hole is still to be made.
void suggest_hole(const Scene& scene, const Areas& areas, const Bolt& bolt, const Ply& ply,
                  const Bearing& bearing, Mm2 needed, Finding& f) {
  const Figures& say = scene.figures;
  const Hole hole = hole_in_world(scene.bed, ply).hole;
  const Kind kind = scene.bed.items[ply.item].id.kind;
  const bool tab = kind == Kind::tab || kind == Kind::tab_pad;
  const std::string key = bolt_use(bolt.id.kind).hole_key;
  const auto enough = [&](Mm width, Mm length) {
    return areas.with(ply, bolt.size.diameter, bearing.ring, [&](Hole& h) {
      h.diameter = width;
      h.length = length;
    }) >= needed;
  };
  const auto to_cover_one = [&](Mm length) {
    HoleInWorld slot = hole_in_world(scene.bed, ply);
    slot.hole.length = length;
    return to_cover(bolt, slot);
  };
  const auto covers = [&](Mm length) { return to_cover_one(length) <= bearing.ring.outside + same_place; };
  const bool to_make = scene.bed.part_of(ply.item).origin != Origin::standing;
  if (hole.slotted() && to_make) {
    Mm length = std::floor(std::min(hole.length, bearing.ring.outside) / say.step() + fit_hair) * say.step();
    while (length > hole.diameter + same_place && !(covers(length) && enough(hole.diameter, length)))
      length -= say.step();
    if (length > hole.diameter + same_place) {
      f.remedy = fmt::format("make the slot at most {} long", say.say(length));
      f.changes.push_back({tab ? "frame.tabs.slot_length" : key + ".slot", say.set(length)});
    }
  }
  const Mm width = bolt.size.standard_hole;
  const bool long_enough = !hole.slotted() || covers(hole.length);
  if (to_make && long_enough && width < hole.diameter - same_place &&
      enough(width, std::max(width, hole.length))) {
    f.remedy += fmt::format("{}make the hole {} wide, the standard hole for that bolt",
                            f.remedy.empty() ? "" : "; or ", say.say(width));
    f.changes.push_back({tab ? "frame.tabs.hole_diameter" : key + ".diameter", say.set(width)});
  }
  f.remedy += f.remedy.empty() ? "" : "; or ";
  if (long_enough)
    f.remedy += "put a wider washer against the steel";
  else
    f.remedy +=
        fmt::format("use a washer at least {} across under the {}: flat of {} in the file of fasteners",
                    say.say(say.round_up(to_cover_one(hole.length))), bearing.end, bolt.size.name);
}

// RCSC section 6.1 and AISC 360 section J3.2, from memory: a washer over a slot in an outer
// ply covers the whole slot once it is put in, so where the bolt is laid out counts.
bool reaches_along(const Scene& scene, Areas& areas, const Bolt& bolt, const Ply& ply, const Bearing& bearing,
                   std::vector<Finding>& findings) {
  const HoleInWorld hole = hole_in_world(scene.bed, ply);
  if (!hole.hole.slotted()) return true;
  const Mm needed = to_cover(bolt, hole);
  if (bearing.ring.outside >= needed - same_place) return true;
  const auto which = static_cast<std::size_t>(&bolt - scene.bed.bolts.data());
  if (!fits(measure_pairs(scene, which), bolt, scene.limits.fit_basis)) return true;  // HOLE-FIT's to say
  Finding f = finding_of("WASHER-COVER", Severity::stop, bolt, bolt.seat);
  f.subjects.push_back(scene.bed.items[ply.item]);
  f.measured = bearing.ring.outside;
  f.limit = needed;
  f.margin = f.measured - f.limit;
  const Figures& say = scene.figures;
  const Vec3 off = bolt.seat - hole.centre;
  const Mm from_middle = norm(off - dot(off, bolt.direction) * bolt.direction);
  f.message =
      fmt::format("the {}, {} across, does not cover the slot in {}, {} long, with the bolt {}", bearing.what,
                  say.say(bearing.ring.outside), f.subjects[1].name, say.say(hole.hole.length),
                  from_middle < same_place
                      ? "in its middle"
                      : fmt::format("where it is laid out, {} from its middle", say.say(from_middle)));
  suggest_hole(scene, areas, bolt, ply, bearing, face_of(bearing, bolt.size.diameter), f);
  findings.push_back(std::move(f));
  return false;
}

void bears_enough(const Scene& scene, Areas& areas, const Bolt& bolt, const Ply& ply, const Bearing& bearing,
                  std::vector<Finding>& findings) {
  const Mm2 needed = face_of(bearing, bolt.size.diameter),
            area = areas.of(ply, bolt.size.diameter, bearing.ring);
  // Two thousandths for the slices.
  if (area >= needed * 0.998) return;
  Finding f = finding_of("WASHER-COVER", Severity::stop, bolt, bolt.seat);
  f.subjects.push_back(scene.bed.items[ply.item]);
  f.unit = "%";
  f.measured = 100 * area / needed;
  f.limit = 100;
  f.margin = f.measured - 100;
  const Footprint& ring = bearing.ring;
  const double whole = std::numbers::pi / 4 * (ring.outside * ring.outside - ring.inside * ring.inside);
  f.message = fmt::format(
      "the {} lies on the steel of {} with {:.0f} % of its own face, which is {:.0f} % of the {}'s; the rest "
      "is "
      "over the hole or past the edge",
      bearing.what, f.subjects[1].name, 100 * area / whole, f.measured, bearing.end);
  suggest_hole(scene, areas, bolt, ply, bearing, needed, f);
  findings.push_back(std::move(f));
}

}  // namespace

void check_washer_cover(const Scene& scene, std::vector<Finding>& findings) {
  Areas areas(scene.bed);
  for (const Bolt& bolt : scene.bed.bolts) {
    if (!bolt.in_place || bolt.plies.empty()) continue;
    for (const bool head : {true, false}) {
      const Ply& ply = head ? bolt.plies.front() : bolt.plies.back();
      const Bearing bearing = head ? at_head(bolt) : at_nut(bolt);
      lies_flat(scene, bolt, ply,
                {bearing.what, bearing.ring.outside, head ? -1 * bolt.direction : bolt.direction}, findings);
      if (reaches_across(scene, bolt, ply, bearing, findings) &&
          reaches_along(scene, areas, bolt, ply, bearing, findings))
        bears_enough(scene, areas, bolt, ply, bearing, findings);
    }
  }
}

}  // namespace bedwright
