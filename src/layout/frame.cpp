// The made frame: mains, cross members, front and rear members, and corner gussets.
#include <fmt/format.h>

#include <cmath>

#include "layout/builder.h"

namespace bedwright {
namespace {

// Room kept between a cross member and a jack's bolts for a wrench.
constexpr Mm cross_to_jack = inch;

// The holes that drain a tube, in its underside, the same from either end.
std::vector<FaceHole> drains(const Builder& b, const Section& s, Mm length, Mm from_end) {
  const Mm diameter = b.frame.drain_hole;
  if (!is_closed(s) || diameter <= 0) return {};
  const Mm in = on_tape(from_end, b.order.order.tape);
  std::vector<FaceHole> holes;
  for (const Mm x : {in, tidy(length - in)})
    holes.push_back({Face::bottom_flange,
                     {{x, tidy(s.flange / 2)}, diameter, diameter, 0, Process::drilled, Kind::drain}});
  return holes;
}
// From a cross member's end, and from where something lies under a main: room for the drill.
constexpr Mm drain_room = 2 * inch;

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
// A tube has none: its jacks' plates are welded on, for no nut goes inside. It drains behind the
// tongue and ahead of the corner gussets.
std::vector<FaceHole> main_holes(Builder& b) {
  if (is_closed(b.main_section()))
    return drains(b, b.main_section(), b.main_length(),
                  std::max(b.frame.tongue.back, b.frame.corner_gusset.leg) + drain_room);
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
    const Process process = is_new_place(b.frame.jack, at)  ? Process::on_site
                            : b.frame.jack.drilled_in_place ? Process::in_place
                                                            : Process::drilled;
    add(at, process, static_cast<int>(k));
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

// The left and right mains are the same part: channels turned over, because every hole
// pattern in their webs is even about mid depth; tubes turned end for end, because their
// drains are to lie underneath.
void lay_mains(Builder& b) {
  const Section& s = b.main_section();
  const Mm length = tidy(b.main_length());
  const int part = b.add({Kind::main}, b.frame.grade, Origin::made, Member{s, length, 0, 0, main_holes(b)});
  for (Side side : both_sides) {
    const bool ends_changed = is_closed(s) && side == Side::right;
    b.place(part, {Kind::main, side},
            {{b.main_start() + (ends_changed ? length : 0), b.web_back(side), -s.depth / 2},
             {ends_changed ? -1.0 : 1.0, 0, 0},
             {0, -outward(side), 0}});
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

// The inner face of a main at that side: of a channel's web, or of a tube's inner wall.
Mm inner_face(const Builder& b, Side side) {
  const Section& main = b.main_section();
  return b.web_back(side) - outward(side) * (is_closed(main) ? main.flange : main.web);
}

// Up both faces of a cross member's web, between its flanges, on the main's web; of a tube,
// up both of its sides where they are flat.
std::vector<WeldRun> web_runs(const Builder& b, const Section& s, Side side, Mm x) {
  const Mm y = inner_face(b, side), middle = -b.main_section().depth / 2,
           half = is_closed(s) ? clear_depth(s) / 2 : s.depth / 2 - s.flange_thickness;
  const auto run = [&](Mm at, double way) {
    return WeldRun{{at, y, middle - half}, {at, y, middle + half}, {0, -outward(side), 0}, {way, 0, 0}};
  };
  return {run(x, 1), run(x - (is_closed(s) ? s.flange : s.web), -1)};
}

void lay_cross_members(Builder& b) {
  const Section& main = b.main_section();
  const Section& s = b.section(b.frame.cross_member.section);
  if (s.depth > clear_depth(main)) {
    b.problem("frame.cross_member.section",
              fmt::format("{} is {:.1f} mm deep and does not fit between the {} of {}, which leave {:.1f} mm",
                          s.name, s.depth, is_closed(main) ? "rounded edges" : "flanges", main.name,
                          clear_depth(main)),
              "name a shallower section, or a deeper main");
    return;
  }
  // What goes between two things is cut to the mark below, never above: the rest is
  // gap, half at each end.
  const Mm length = down_to_tape(2 * inner_face(b, Side::right), b.order.order.tape);
  const int part = b.add({Kind::cross_member}, b.frame.grade, Origin::made,
                         Member{s, length, 0, 0, drains(b, s, length, drain_room)});
  int number = 0;
  for (Mm x : cross_positions(b, s)) {
    const int item = b.place(part, {Kind::cross_member, Side::middle, ++number},
                             {{x, -length / 2, -main.depth / 2}, {0, 1, 0}, {-1, 0, 0}});
    for (Side side : both_sides)
      b.weld(item, b.main(side), b.frame.welds.of(b.frame.welds.cross_member),
             is_closed(s) ? WeldLine::tube_sides : WeldLine::web_sides, {std::min(s.web, main.web), 0},
             web_runs(b, s, side, x));
  }
}

// Round the inside of a main's end, at `x`: under its top flange, down its web, over its
// bottom flange; of a tube, up its inner side. `inward`: which way along the bed the main lies.
std::vector<WeldRun> inside_runs(const Builder& b, const Section& end_member, Side side, Mm x,
                                 double inward) {
  const Section& s = b.main_section();
  const double out = outward(side);
  const Vec3 along{inward, 0, 0};
  if (is_closed(s)) {
    const Mm half = std::min(clear_depth(s) / 2, end_member.depth / 2 - outer_corner(end_member)),
             y = inner_face(b, side);
    return {{{x, y, -s.depth / 2 + half}, {x, y, -s.depth / 2 - half}, {0, -out, 0}, along}};
  }
  const Mm web = b.web_back(side) - out * s.web, toe = b.web_back(side) - out * s.flange,
           top = -flange_thickness_at(s, s.web), top_at_toe = -flange_thickness_at(s, s.flange);
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
      b.weld(item, b.main(side), b.frame.welds.of(b.frame.welds.end_member),
             is_closed(b.main_section()) ? WeldLine::inner_side : WeldLine::inside_end,
             {std::min(s.web, b.main_section().web), 0}, inside_runs(b, s, side, at.origin.x, -at.y_axis.x));
  };
  lay(Kind::front_member, b.frame.front_member.section,
      {{b.main_start(), -half, -depth / 2}, {0, 1, 0}, {-1, 0, 0}});
  lay(Kind::rear_member, b.frame.rear_member.section,
      {{b.main_end(), half, -depth / 2}, {0, -1, 0}, {1, 0, 0}});
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
  // has a flat ledge to lie on.
  const Section& rear_member = b.section(b.frame.rear_member.section);
  const Mm leg = b.frame.welds.of(b.frame.welds.corner_gusset),
           ledge = plate_ledge(leg) + outer_corner(b.main_section()),
           x = b.main_end() + rear_member.flange - plate_ledge(leg) - outer_corner(rear_member);
  const Mm z = -b.main_section().depth - g.thickness;
  const int right = b.place(part, {Kind::corner_gusset, Side::right},
                            {{x, b.web_back(Side::right) - ledge, z}, {-1, 0, 0}, {0, -1, 0}});
  const int left = b.place(part, {Kind::corner_gusset, Side::left},
                           {{x, b.web_back(Side::left) + ledge, z}, {0, 1, 0}, {-1, 0, 0}});
  for (int item : {left, right}) {
    const auto steel = [&](const Section& s) {
      return Builder::WeldSteel{std::min(g.thickness, flange_steel(s)), g.thickness};
    };
    const Side side = item == left ? Side::left : Side::right;
    const double out = outward(side);
    const Mm edge = b.web_back(side) - out * ledge, under = -b.main_section().depth,
             rear = -b.main_section().depth / 2 - rear_member.depth / 2;
    std::vector<WeldRun> along;
    if (x - g.leg < b.main_end() - same_place)
      along.push_back({{x - g.leg, edge, under}, {b.main_end(), edge, under}, {0, 0, -1}, {0, out, 0}});
    b.weld(item, b.main(side), leg, WeldLine::edge_under_main, steel(b.main_section()), along);
    b.weld(item, b.bed.item({Kind::rear_member}), leg, WeldLine::edge_under_rear, steel(rear_member),
           {{{x, edge, rear}, {x, edge - out * g.leg, rear}, {0, 0, -1}, {1, 0, 0}}});
  }
}

}  // namespace

void lay_frame(Builder& b) {
  lay_mains(b);
  lay_cross_members(b);
  lay_end_members(b);
  lay_tongue(b);
  lay_corner_gussets(b);
}

}  // namespace bedwright
