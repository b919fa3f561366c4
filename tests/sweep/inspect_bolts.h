// Holes, what bears beside them, and the bolts through them.
#pragma once

#include <array>
#include <map>

#include "sweep/faces.h"
#include "sweep/rejects.h"

namespace bedwright::sweep {

// Steel beside a hole, in bolt diameters or thicknesses, would be a designer's limit. This
// one only asks whether there is a strip that a saw or a torch leaves standing: common
// practice, no published source.
inline constexpr Mm least_strip = 2;

inline void inspect_holes(Inspected& in, const std::string& part, const FlatSteel& steel, int from_hole) {
  for (std::size_t i = 0; i < steel.holes.size(); ++i) {
    const Hole& h = steel.holes[i];
    const Line2 l = middle_line(h);
    const Mm strip = std::min(steel.to_edge(l.a), steel.to_edge(l.b)) - h.diameter / 2;
    if (strip < least_strip)
      in.reject(strip < 0 ? "hole out of its part" : "hole at its part's edge",
                fmt::format("{} hole {}: {:.2f} mm of steel to the edge", part,
                            from_hole + static_cast<int>(i) + 1, strip));
    for (std::size_t k = 0; k < i; ++k) {
      const Hole& g = steel.holes[k];
      const Mm apart = between(l, middle_line(g)) - (h.diameter + g.diameter) / 2;
      if (apart < least_strip)
        in.reject(apart < 0 ? "holes run together" : "holes nearly run together",
                  fmt::format("{} holes {} and {}: {:.2f} mm of steel between", part, k + 1, i + 1, apart));
    }
  }
}

inline void inspect_all_holes(Inspected& in) {
  for (const Part& part : in.bed.parts) {
    const std::string called = name(part);
    if (const auto* plate = std::get_if<Plate>(&part.form)) inspect_holes(in, called, steel_of(*plate), 0);
    if (const auto* m = std::get_if<Member>(&part.form))
      for (const Face face :
           {Face::web, Face::top_flange, Face::bottom_flange, Face::flat_leg, Face::standing_leg}) {
        if ((m->section.shape == Shape::angle) != (face == Face::flat_leg || face == Face::standing_leg))
          continue;
        inspect_holes(in, called, steel_of(*m, face, Where::hole), 0);
      }
    if (const auto* b = std::get_if<Bought>(&part.form))
      if (!b->lugs.empty()) inspect_holes(in, called, steel_of(*b, b->lugs.front()), 0);
  }
}

// The face a bolt's head or nut lies on, and the bolt's axis there.
struct Seat {
  FlatSteel steel;
  Vec2 axis;
};

inline Seat seat_on(const Bed& bed, const Bolt& bolt, const Ply& ply, bool at_head) {
  const Item& item = bed.items.at(static_cast<std::size_t>(ply.item));
  const Vec3 p = item.placement.local_point(bolt.seat), d = item.placement.local_direction(bolt.direction);
  const Form& form = bed.parts[static_cast<std::size_t>(item.part)].form;
  if (const auto* plate = std::get_if<Plate>(&form)) return {steel_of(*plate), {p.x, p.y}};
  if (const auto* m = std::get_if<Member>(&form)) {
    const Face face = m->holes.at(static_cast<std::size_t>(ply.hole)).face;
    const bool upright = face == Face::web || face == Face::standing_leg;
    // Which way steel lies from the outer face.
    const double inward = upright ? d.y : face == Face::top_flange ? -d.z : d.z;
    const bool outer = (inward > 0) == at_head;
    return {steel_of(*m, face, outer ? Where::outer_face : Where::inner_face),
            upright ? Vec2{p.x, p.z} : Vec2{p.x, p.y}};
  }
  const auto& b = std::get<Bought>(form);
  const Lug& lug = b.lugs.at(static_cast<std::size_t>(ply.hole));
  return {steel_of(b, lug), std::abs(lug.direction.z) > 0.5 ? Vec2{p.x, p.y} : Vec2{p.x, p.z}};
}

// Most bolts of a bed sit in like holes of one part: each way of sitting is measured once.
class Bearings {
 public:
  Bearing of(const Bed& bed, const Bolt& bolt, const Ply& ply, bool at_head, Mm inside, Mm outside) {
    const Item& item = bed.items.at(static_cast<std::size_t>(ply.item));
    const Vec3 p = item.placement.local_point(bolt.seat), d = item.placement.local_direction(bolt.direction);
    const auto rounded = [](double v) { return std::llround(v * 1e4); };
    const auto [at, fresh] =
        known_.try_emplace({item.part, ply.hole, at_head, rounded(p.x), rounded(p.y), rounded(p.z),
                            rounded(d.x), rounded(d.y), rounded(d.z), rounded(inside), rounded(outside)});
    if (fresh) {
      const Seat seat = seat_on(bed, bolt, ply, at_head);
      at->second = bearing(seat.steel, seat.axis, inside, outside);
    }
    return at->second;
  }

 private:
  std::map<std::array<long long, 11>, Bearing> known_;
};

inline void inspect_bearing(Inspected& in, Bearings& bearings, const Bolt& bolt, bool at_head) {
  const std::vector<Washer>& washers = at_head ? bolt.under_head : bolt.under_nut;
  Mm inside = bolt.size.diameter, outside = at_head ? bolt.size.head_flats : bolt.size.nut_flats;
  if (!washers.empty()) {
    const Washer& w = at_head ? washers.back() : washers.front();
    inside = w.inside;
    outside = w.outside;
  }
  const Bearing b =
      bearings.of(in.bed, bolt, at_head ? bolt.plies.front() : bolt.plies.back(), at_head, inside, outside);
  const std::string what = fmt::format(
      "{} at its {}: {:.1f} mm ring on {:.0f} % steel, a hole {:.2f} mm past its rim, {:.2f} mm past an edge "
      "or "
      "in a fillet",
      name(bolt.id), at_head ? "head" : "nut", outside, 100 * b.share, b.uncovered, b.overhang);
  // Past a quarter millimetre a ring rides on an edge or a fillet: common practice, no
  // published source.
  if (b.overhang > 0.25) in.reject("ring past an edge or in a fillet", what);
  // A washer covers a slot from end to end where it is put in: RCSC section 6, AISC 360 J3
  // (from memory). To a hundredth of a millimetre: one drawn to end with the slot covers it.
  else if (b.uncovered > 0.01)
    in.reject("ring over a hole's end", what);
  // Under a third of its face it bears on corners: common practice, no published source.
  else if (b.share < 1.0 / 3)
    in.reject("ring on little steel", what);
}

// A tube as seen along a bolt.
inline Line2 seen_along(const Tube& t, Vec3 direction) {
  const bool up = std::abs(direction.z) > 0.5;
  const auto flat = [&](Vec3 v) { return up ? Vec2{v.x, v.y} : Vec2{v.x, v.z}; };
  return {flat(t.a), flat(t.b)};
}

inline void inspect_passage(Inspected& in, const Bolt& bolt) {
  const auto tube = [&](const Ply& p) -> const Tube& {
    return in.bodies[static_cast<std::size_t>(p.item)].tubes.at(static_cast<std::size_t>(p.hole));
  };
  const Mm d = bolt.size.diameter;
  const bool up = std::abs(bolt.direction.z) > 0.5;
  // A part on two bolts, a wide way apart across the bed, goes on by sliding and turning along
  // the bed: nothing there is left to take.
  const auto held_by = std::count_if(in.bed.bolts.begin(), in.bed.bolts.end(), [&](const Bolt& b) {
    return b.plies.front().item == bolt.plies.front().item;
  });
  const bool slides = bolt.finds_its_place && held_by == 2;
  Vec2 plus, minus;
  if (in.job.order.limits.fit_basis == FitBasis::worst_case)
    for (const Contribution& c : bolt.stack_up) {
      plus = plus + Vec2{slides ? 0 : c.x_plus, up ? c.y_plus : c.z_plus};
      minus = minus + Vec2{slides ? 0 : c.x_minus, up ? c.y_minus : c.z_minus};
    }
  for (std::size_t i = 0; i < bolt.plies.size(); ++i)
    for (std::size_t k = i + 1; k < bolt.plies.size(); ++k) {
      const Tube &s = tube(bolt.plies[i]), &t = tube(bolt.plies[k]);
      const Line2 a = seen_along(s, bolt.direction), b = seen_along(t, bolt.direction);
      Mm worst = 0;
      for (const double x : {-1.0, 1.0})
        for (const double y : {-1.0, 1.0}) {
          const Vec2 off = i > 0 ? Vec2{} : Vec2{x > 0 ? plus.x : -minus.x, y > 0 ? plus.y : -minus.y};
          worst = std::max(worst, between({a.a + off, a.b + off}, b));
        }
      const Mm play = s.radius + t.radius - d;
      if (worst > play + 1e-3)
        in.reject("bolt does not go in", fmt::format("{}: holes out of line by {:.2f} mm, play {:.2f} mm",
                                                     name(bolt.id), worst, play));
    }
}

inline void inspect_stack(Inspected& in, const Bolt& bolt) {
  const BoltSize& s = bolt.size;
  Mm at = 0, washers = 0;
  for (const Ply& p : bolt.plies) {
    const Tube& t = in.bodies[static_cast<std::size_t>(p.item)].tubes.at(static_cast<std::size_t>(p.hole));
    const Mm one = dot(t.a - bolt.seat, bolt.direction), other = one + t.depth * dot(t.axis, bolt.direction);
    if (p.slope == 0 && std::abs(std::min(one, other) - at) > 0.02)
      in.reject("parts of a stack do not meet",
                fmt::format("{}: {} starts {:.2f} mm along, the part before it ends at {:.2f}", name(bolt.id),
                            in.called(p.item), std::min(one, other), at));
    at += p.thickness;
  }
  for (const Washer& w : bolt.under_head) washers += w.thickness;
  for (const Washer& w : bolt.under_nut) washers += w.thickness;
  const Mm past = bolt.length - s.tolerance(bolt.length).minus - (at + washers + s.nut_height);
  if (past < s.pitch * in.job.order.limits.threads_past_nut - 1e-3)
    in.reject("bolt too short", fmt::format("{}: {:.2f} mm past the nut", name(bolt.id), past));
  const Mm plain = std::max(0.0, bolt.length - s.thread_length);
  if (plain > at + washers + 1e-3)
    in.reject("nut on plain shank",
              fmt::format("{}: {:.2f} mm plain in a stack of {:.2f} mm", name(bolt.id), plain, at + washers));
  if (bolt.plies.back().slope > 0 || bolt.plies.front().slope > 0)
    in.reject("seat askew", fmt::format("{} seats on a tapered face", name(bolt.id)));
}

inline void inspect_bolts(Inspected& in) {
  inspect_all_holes(in);
  Bearings bearings;
  for (const Bolt& bolt : in.bed.bolts) {
    if (!bolt.in_place) {
      in.reject("hole with no bolt", name(bolt.id));
      continue;
    }
    inspect_bearing(in, bearings, bolt, true);
    inspect_bearing(in, bearings, bolt, false);
    inspect_passage(in, bolt);
    inspect_stack(in, bolt);
  }
}

}  // namespace bedwright::sweep
