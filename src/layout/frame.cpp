// The made frame: mains, cross members, front and rear members, tongue and
// corner gussets.
#include <fmt/format.h>

#include <cmath>

#include "bed/tongue_lap.h"
#include "layout/builder.h"

namespace bedwright {
namespace {

// How far a plate's edge is held in from the channel's under or over it, so that a
// fillet has a ledge to lie on.
constexpr Mm least_ledge = 6;
Mm plate_ledge(const Builder& b) { return std::max(least_ledge, b.frame.welds.leg + 1); }
// Room kept between a cross member and a jack's bolts for a wrench.
constexpr Mm cross_to_jack = inch;

// Flat height of a channel's web between its fillets: what a smaller channel
// has to fit into. The fillet's tangent point lies R tan(turn / 2) from the
// corner, the corner where the tapered inner face meets the web.
Mm clear_depth(const Section& s) {
  const Mm at_web = s.flange_thickness + channel_flange_slope * (s.flange - s.web) / 2;
  const Radians turn = 90 * degree - std::atan(channel_flange_slope);
  return s.depth - 2 * (at_web + s.root_radius * std::tan(turn / 2));
}

// The four holes of one jack in a main's web, by dx, then dz, in member coordinates (from the
// front end). They are drilled from a sheet in marks of the tape, so that is where they are:
// the rounding is a real offset from the jack's own holes, and the fit counts it.
std::vector<FaceHole> holes_of_jack(const Builder& b, Mm from_front_end, Process process) {
  const FrameJack& j = b.frame.jack;
  const Mm mark = b.order.order.tape, half = b.main_section().depth / 2;
  const Mm up = half - on_tape(half - j.bolt_z / 2, mark);
  std::vector<FaceHole> holes;
  for (double dx : {-0.5, 0.5})
    for (double dz : {-1.0, 1.0})
      holes.push_back({Face::web,
                       {{on_tape(from_front_end + dx * j.bolt_x, mark), tidy(dz * up)},
                        j.hole.diameter,
                        j.hole.slot.value_or(j.hole.diameter),
                        0,
                        process,
                        Kind::jack_bolt}});
  return holes;
}

// The holes of a main, sorted along it: those for jack bolts, of which the builder keeps which
// are each jack's four, and those of jacks that are there no more.
std::vector<FaceHole> main_holes(Builder& b) {
  struct Made {
    FaceHole hole;
    int jack;  // -1: of none that is there
    std::size_t of;
  };
  std::vector<Made> made;
  const auto add = [&](Mm at, Process process, int jack) {
    std::size_t of = 0;
    for (const FaceHole& hole : holes_of_jack(b, at, process)) made.push_back({hole, jack, of++});
  };
  for (std::size_t k = 0; k < b.order.jacks.size(); ++k) {
    const Mm at = b.order.jacks[k] - b.main_start();
    add(at, is_new_place(b.frame.jack, at) ? Process::in_place : Process::drilled, static_cast<int>(k));
  }
  for (const Mm at : places_left_by_jacks(b.frame.jack)) add(at, Process::as_bought, -1);
  std::stable_sort(made.begin(), made.end(), [](const Made& p, const Made& q) {
    return std::pair(p.hole.hole.at.x, p.hole.hole.at.y) < std::pair(q.hole.hole.at.x, q.hole.hole.at.y);
  });
  std::vector<FaceHole> holes;
  b.main_jack_holes.assign(b.order.jacks.size(), {});
  for (const Made& m : made) {
    if (m.jack >= 0)
      b.main_jack_holes[static_cast<std::size_t>(m.jack)][m.of] = static_cast<int>(holes.size());
    holes.push_back(m.hole);
  }
  return holes;
}

// The left and right mains are the same part turned over, because every hole
// pattern in their webs is even about mid depth.
void lay_mains(Builder& b) {
  const Section& s = b.main_section();
  const int part =
      b.add({Kind::main}, b.frame.grade, Origin::made, Member{s, tidy(b.main_length()), 0, 0, main_holes(b)});
  for (Side side : both_sides) {
    b.place(part, {Kind::main, side},
            {{b.main_start(), b.web_back(side), -s.depth / 2}, {1, 0, 0}, {0, -outward(side), 0}});
  }
}

// Where the back of a cross member's web may not stand: its flange or web within a jack's
// bolts and the room for a wrench.
struct Taken {
  Mm from = 0, to = 0;
};
std::vector<Taken> taken_by_jacks(const Builder& b, Mm flange) {
  std::vector<Taken> taken;
  const Mm reach = b.frame.jack.bolt_x / 2 + cross_to_jack;
  for (Mm jack : b.order.jacks) taken.push_back({jack - reach, jack + reach + flange});
  return taken;
}

bool is_free(const std::vector<Taken>& taken, Mm x) {
  return std::none_of(taken.begin(), taken.end(),
                      [&](const Taken& t) { return x > t.from + same_place && x < t.to - same_place; });
}

// The mark of the tape at `x` or, where that is taken, the next free one that way.
Mm free_mark(const std::vector<Taken>& taken, Mm x, Mm mark, double way) {
  x = way < 0 ? down_to_tape(x, mark) : -down_to_tape(-x, mark);
  while (!is_free(taken, x)) x = tidy(x + way * mark);
  return x;
}

// The fewest places, evenly where they can be, each no further than `most` from the one
// before and the last from the mains' rear end, and none at a jack. Empty where jacks
// leave none: the rule CROSS-SPACING then tells how far apart they came.
std::vector<Mm> within_spacing(const std::vector<Taken>& taken, Mm start, Mm end, Mm most, Mm mark) {
  // From the rear: how far forward each may stand so that those behind it still reach.
  std::vector<Mm> least;
  for (Mm at = end; at - most > start + same_place;) {
    const Mm x = free_mark(taken, at - most, mark, 1);
    if (x >= at - same_place) return {};
    least.insert(least.begin(), x);
    at = x;
  }
  std::vector<Mm> places;
  Mm before = start;
  const auto n = static_cast<double>(least.size());
  for (std::size_t i = 0; i < least.size(); ++i) {
    const Mm wanted = on_tape(start + (end - start) * static_cast<double>(i + 1) / (n + 1), mark);
    const Mm last = before + most, x = std::clamp(wanted, least[i], std::max(least[i], last));
    const Mm forward = free_mark(taken, x, mark, -1), rearward = free_mark(taken, x, mark, 1);
    const bool may_forward = forward >= least[i] - same_place, may_rearward = rearward <= last + same_place;
    const bool nearer = x - forward <= rearward - x;
    before = may_forward && (nearer || !may_rearward) ? forward : may_rearward ? rearward : least[i];
    places.push_back(before);
  }
  return places;
}

std::vector<Mm> cross_positions(const Builder& b, const Section& s) {
  const FrameCross& cross = b.frame.cross_member;
  const Mm start = b.main_start(), end = b.main_end(), mark = b.order.order.tape;
  std::vector<Mm> places;
  if (!cross.existing.empty()) {
    for (Mm x : cross.existing) places.push_back(tidy(start + x));
    return places;
  }
  // What stands was not built around this order's jacks.
  const bool standing = stands(b.frame);
  const std::vector<Taken> taken = standing ? std::vector<Taken>{} : taken_by_jacks(b, s.flange);
  places = within_spacing(taken, start, end, cross.max_spacing, mark);
  if (!places.empty() || end - start <= cross.max_spacing + same_place) return places;
  places = evenly(start, end, cross.max_spacing);
  places.erase(places.begin());
  places.pop_back();
  for (Mm& x : places) x = on_tape(x, mark);
  return places;
}

// Up both faces of a cross member's web, between its flanges, on the main's web.
std::vector<WeldRun> web_runs(const Builder& b, const Section& s, Side side, Mm x) {
  const Mm y = outward(side) * (b.frame.main.spacing / 2 - b.main_section().web),
           middle = -b.main_section().depth / 2, half = s.depth / 2 - s.flange_thickness;
  const auto run = [&](Mm at, double way) {
    return WeldRun{{at, y, middle - half}, {at, y, middle + half}, {0, -outward(side), 0}, {way, 0, 0}};
  };
  return {run(x, 1), run(x - s.web, -1)};
}

void lay_cross_members(Builder& b) {
  const Section& main = b.main_section();
  const Section& s = b.section(b.frame.cross_member.section);
  if (s.depth > clear_depth(main)) {
    b.problem(
        "frame.cross_member.section",
        fmt::format("{} is {:.1f} mm deep and does not fit between the flanges of {}, which leave {:.1f} mm",
                    s.name, s.depth, main.name, clear_depth(main)),
        "name a shallower channel, or a deeper main");
    return;
  }
  // What goes between two things is cut to the mark below, never above: the rest is
  // gap, half at each end.
  const Mm length = down_to_tape(b.frame.main.spacing - 2 * main.web, b.order.order.tape);
  const int part = b.add({Kind::cross_member}, b.frame.grade, Origin::made, Member{s, length, 0, 0, {}});
  int number = 0;
  for (Mm x : cross_positions(b, s)) {
    const int item = b.place(part, {Kind::cross_member, Side::middle, ++number},
                             {{x, -length / 2, -main.depth / 2}, {0, 1, 0}, {-1, 0, 0}});
    for (Side side : both_sides)
      b.weld(item, b.main(side), b.frame.welds.leg, WeldLine::web_sides, {std::min(s.web, main.web), 0},
             web_runs(b, s, side, x));
  }
}

// Round the inside of a main's end, at `x`: under its top flange, down its web, over its
// bottom flange. `inward`: which way along the bed the main lies.
std::vector<WeldRun> inside_runs(const Builder& b, Side side, Mm x, double inward) {
  const Section& s = b.main_section();
  const double out = outward(side);
  const Mm drop = channel_flange_slope * (s.flange - s.web) / 2, web = b.web_back(side) - out * s.web,
           toe = b.web_back(side) - out * s.flange, top = -(s.flange_thickness + drop),
           top_at_toe = -(s.flange_thickness - drop);
  const Vec3 along{inward, 0, 0};
  return {{{x, toe, top_at_toe}, {x, web, top}, {0, 0, -1}, along},
          {{x, web, top}, {x, web, -s.depth - top}, {0, -out, 0}, along},
          {{x, web, -s.depth - top}, {x, toe, -s.depth - top_at_toe}, {0, 0, 1}, along}};
}

// Across the mains' ends, web against them, toes away from the bed. Front and
// rear are one part when they are of one section.
void lay_end_members(Builder& b) {
  const Mm depth = b.main_section().depth;
  const Mm half = b.frame.main.spacing / 2;
  const bool alike = b.frame.front_member.section.text == b.frame.rear_member.section.text;
  const auto lay = [&](Kind kind, const Name& section, Placement at) {
    const Section& s = b.section(section);
    const int part = b.add({alike ? Kind::end_member : kind}, b.frame.grade, Origin::made,
                           Member{s, tidy(2 * half), 0, 0, {}});
    const int item = b.place(part, {kind}, at);
    // The outside faces are flush, so only the inside has a corner for a fillet.
    for (Side side : both_sides)
      b.weld(item, b.main(side), b.frame.welds.leg, WeldLine::inside_end,
             {std::min(s.web, b.main_section().web), 0}, inside_runs(b, side, at.origin.x, -at.y_axis.x));
  };
  lay(Kind::front_member, b.frame.front_member.section,
      {{b.main_start(), -half, -depth / 2}, {0, 1, 0}, {-1, 0, 0}});
  lay(Kind::rear_member, b.frame.rear_member.section,
      {{b.main_end(), half, -depth / 2}, {0, -1, 0}, {1, 0, 0}});
}

// Each channel to the main it lies under, and to the front member, which it crosses
// askew.
void lay_tongue_welds(Builder& b, int item, Side side) {
  const FrameTongue& t = b.frame.tongue;
  const Section &s = b.section(t.section), &main = b.main_section(),
                &nose = b.section(b.frame.front_member.section);
  const Mm leg = tongue_leg(s, b.frame.welds.leg, b.order.order.figures().step());
  const TongueLap lap =
      tongue_lap({t.length, t.back, t.angle}, s, main, b.main_start(), b.main_end(), b.frame.main.spacing);
  const std::vector<LapRun> runs = lap_runs(lap, leg);
  const double out = outward(side);
  const auto run_at = [&](const LapRun& r, Mm z) {
    return WeldRun{
        {r.from.x, out * r.from.y, z}, {r.to.x, out * r.to.y, z}, {0, 0, -1}, {r.out.x, out * r.out.y, 0}};
  };
  const int over = b.main(side);
  // A rolled flange is thinnest where it ends: at the weld the thinner steel is the toe.
  const Mm toe = toe_thickness(s);
  const Builder::WeldSteel steel{std::min(toe, main.flange_thickness), toe};
  for (const LapRun& run : runs) b.weld(item, over, leg, run.what, steel, {run_at(run, -main.depth)});
  // Wanted all the same, so that WELD-CONTACT stops it.
  if (runs.empty()) b.weld(item, over, leg, WeldLine::under_main, steel, {});
  // Both edges, where they cross the front member and leave the fillet a ledge on it.
  std::vector<WeldRun> crossing;
  const Mm z = -main.depth / 2 - nose.depth / 2, askew = leg * std::sin(t.angle);
  for (const double edge : {1.0, -1.0}) {  // outer, inner
    const auto at = [&](Mm x) {
      return Vec2{x, lap.web_at_front + (x - lap.front) * std::tan(lap.angle) - (edge < 0 ? lap.toe : 0)};
    };
    const Mm from = b.main_start() - nose.flange, to = b.main_start();
    crossing.push_back(
        run_at({WeldLine::flange_edges, at(edge > 0 ? from + askew : from), at(edge > 0 ? to : to - askew),
                edge * Vec2{-std::sin(t.angle), std::cos(t.angle)}},
               z));
  }
  b.weld(item, b.bed.item({Kind::front_member}), leg, WeldLine::flange_edges,
         {std::min(toe, nose.flange_thickness), toe}, crossing);
}

// Two channels under the frame, toes inward, both ends cut square to the bed.
// Left and right are one part: a channel is even about mid depth.
void lay_tongue(Builder& b) {
  const FrameTongue& t = b.frame.tongue;
  const Section& s = b.section(t.section);
  const double cosine = std::cos(t.angle), sine = std::sin(t.angle);
  const Mm front = b.main_start() - t.length;
  const Mm web_at_front = s.flange / cosine + tongue_toe_gap;
  const Mm length = tidy((t.length + t.back) / cosine);
  const int part =
      b.add({Kind::tongue}, b.frame.grade, Origin::made, Member{s, length, -t.angle, -t.angle, {}});
  for (Side side : both_sides) {
    const double out = outward(side);
    const int item = b.place(part, {Kind::tongue, side},
                             {{front, out * web_at_front, -b.main_section().depth - s.depth / 2},
                              {cosine, out * sine, 0},
                              {sine, -out * cosine, 0}});
    lay_tongue_welds(b, item, side);
  }
}

// Three bolt holes and the tube's, on a plate across the tongue.
void lay_tongue_plate(Builder& b) {
  const FrameTongue& t = b.frame.tongue;
  const FrameTongueJack& j = b.frame.tongue_jack;
  const Section& s = b.section(t.section);
  const double slope = std::tan(t.angle);
  const Mm web_at_front = s.flange / std::cos(t.angle) + tongue_toe_gap;
  const auto half_width = [&](Mm behind) { return web_at_front + behind * slope - plate_ledge(b); };
  const Mm near = half_width(j.behind_front - j.plate_length / 2),
           far = half_width(j.behind_front + j.plate_length / 2);
  if (near <= j.centre_hole) {
    b.problem("frame.tongue_jack.behind_front", "the tongue is too narrow there for the jack's plate",
              "put the jack further back");
    return;
  }
  Plate plate;
  plate.thickness = j.plate_thickness;
  const Mm half = j.plate_length / 2;
  plate.outline = polygon({{-half, tidy(-near)}, {half, tidy(-far)}, {half, tidy(far)}, {-half, tidy(near)}});
  plate.holes.push_back({{0, 0}, j.centre_hole, j.centre_hole, 0, Process::cut, Kind::jack_tube});
  for (double turn : {60.0, 180.0, 300.0}) {
    const Vec2 at{tidy(j.bolt_circle / 2 * std::cos(turn * degree)),
                  tidy(j.bolt_circle / 2 * std::sin(turn * degree))};
    plate.holes.push_back({at, j.hole.diameter, j.hole.slot.value_or(j.hole.diameter), 0, Process::cut,
                           Kind::tongue_jack_bolt});
  }
  const int part = b.add({Kind::tongue_plate}, b.frame.grade, Origin::made, plate);
  const int item = b.place(
      part, {Kind::tongue_plate},
      {{b.main_start() - t.length + j.behind_front, 0, -b.main_section().depth}, {1, 0, 0}, {0, 1, 0}});
  const Vec3 middle = b.bed.items[item].placement.origin;
  for (Side side : both_sides) {
    const double out = outward(side);
    const WeldRun edge{middle + Vec3{-half, out * near, 0},
                       middle + Vec3{half, out * far, 0},
                       {0, 0, 1},
                       {-std::sin(t.angle), out * std::cos(t.angle), 0}};
    b.weld(item, b.bed.item({Kind::tongue, side}), b.frame.welds.leg, WeldLine::outer_edge,
           {std::min(j.plate_thickness, s.flange_thickness), j.plate_thickness}, {edge});
  }
}

// A triangle under each rear corner, sharp ends cut off. The front corners have
// the tongue, which braces them already.
void lay_corner_gussets(Builder& b) {
  const FrameCornerGusset& g = b.frame.corner_gusset;
  Plate plate;
  plate.thickness = g.thickness;
  plate.outline =
      g.corner_cut > same_place
          ? polygon({{0, 0}, {g.leg, 0}, {g.leg, g.corner_cut}, {g.corner_cut, g.leg}, {0, g.leg}})
          : polygon({{0, 0}, {g.leg, 0}, {0, g.leg}});
  const int part = b.add({Kind::corner_gusset}, b.frame.grade, Origin::made, plate);
  // In from the main's web back and from the rear member's toes, so that a fillet
  // has a ledge to lie on.
  const Mm ledge = plate_ledge(b);
  const Section& rear_member = b.section(b.frame.rear_member.section);
  const Mm x = b.main_end() + rear_member.flange - ledge;
  const Mm z = -b.main_section().depth - g.thickness;
  const int right = b.place(part, {Kind::corner_gusset, Side::right},
                            {{x, b.web_back(Side::right) - ledge, z}, {-1, 0, 0}, {0, -1, 0}});
  const int left = b.place(part, {Kind::corner_gusset, Side::left},
                           {{x, b.web_back(Side::left) + ledge, z}, {0, 1, 0}, {-1, 0, 0}});
  for (int item : {left, right}) {
    const auto steel = [&](const Section& s) {
      return Builder::WeldSteel{std::min(g.thickness, s.flange_thickness), g.thickness};
    };
    const Side side = item == left ? Side::left : Side::right;
    const double out = outward(side);
    const Mm edge = b.web_back(side) - out * ledge, under = -b.main_section().depth,
             rear = -b.main_section().depth / 2 - rear_member.depth / 2;
    std::vector<WeldRun> along;
    if (x - g.leg < b.main_end() - same_place)
      along.push_back({{x - g.leg, edge, under}, {b.main_end(), edge, under}, {0, 0, -1}, {0, out, 0}});
    b.weld(item, b.main(side), b.frame.welds.leg, WeldLine::edge_under_main, steel(b.main_section()), along);
    b.weld(item, b.bed.item({Kind::rear_member}), b.frame.welds.leg, WeldLine::edge_under_rear,
           steel(rear_member), {{{x, edge, rear}, {x, edge - out * g.leg, rear}, {0, 0, -1}, {1, 0, 0}}});
  }
}

}  // namespace

void lay_frame(Builder& b) {
  lay_mains(b);
  lay_cross_members(b);
  lay_end_members(b);
  lay_tongue(b);
  lay_tongue_plate(b);
  lay_corner_gussets(b);
}

}  // namespace bedwright
