// The made frame: mains, cross members, front and rear members, tongue and
// corner gussets.
#include <fmt/format.h>

#include <cmath>

#include "bed/tongue_lap.h"
#include "layout/builder.h"
#include "units/steps.h"

namespace bedwright {
namespace {

// How far a plate's edge is held in from the channel's under or over it, so that a
// fillet has a ledge to lie on.
constexpr Mm plate_ledge = 6;
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

// Of a tapered flange at its free edge.
Mm toe_thickness(const Section& s) {
  return s.flange_thickness - channel_flange_slope * (s.flange - s.web) / 2;
}

// The holes of a main: jack bolts, in member coordinates (from the front end).
// They are drilled from a sheet in marks of the tape, so that is where they are:
// the rounding is a real offset from the jack's own holes, and the fit counts it.
// Sorted along the main; the builder keeps which of them are each jack's four.
std::vector<FaceHole> main_holes(Builder& b) {
  const FrameJack& j = b.frame.jack;
  const Mm mark = b.order.order.tape, half = b.main_section().depth / 2;
  const Mm up = half - on_tape(half - j.bolt_z / 2, mark);
  struct Made {
    FaceHole hole;
    std::size_t jack, of;
  };
  std::vector<Made> made;
  for (std::size_t k = 0; k < b.order.jacks.size(); ++k) {
    std::size_t of = 0;
    for (double dx : {-0.5, 0.5})
      for (double dz : {-1.0, 1.0})
        made.push_back({{Face::web,
                         {{on_tape(b.order.jacks[k] - b.main_start() + dx * j.bolt_x, mark), tidy(dz * up)},
                          j.hole.diameter,
                          j.hole.slot.value_or(j.hole.diameter),
                          0,
                          Process::drilled,
                          Kind::jack_bolt}},
                        k,
                        of++});
  }
  std::stable_sort(made.begin(), made.end(), [](const Made& p, const Made& q) {
    return std::pair(p.hole.hole.at.x, p.hole.hole.at.y) < std::pair(q.hole.hole.at.x, q.hole.hole.at.y);
  });
  std::vector<FaceHole> holes;
  b.main_jack_holes.assign(b.order.jacks.size(), {});
  for (Made& m : made) {
    b.main_jack_holes[m.jack][m.of] = static_cast<int>(holes.size());
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

bool near_a_jack(const Builder& b, Mm x, Mm flange) {
  const Mm reach = b.frame.jack.bolt_x / 2 + cross_to_jack;
  for (Mm jack : b.order.jacks)
    if (x > jack - reach + same_place && x - flange < jack + reach - same_place) return true;
  return false;
}

// Even spacing, on the tape; one that falls at a jack moves to the nearest inch
// that leaves its bolts free.
std::vector<Mm> cross_positions(const Builder& b, const Section& s) {
  std::vector<Mm> places = evenly(b.main_start(), b.main_end(), b.frame.cross_member.max_spacing);
  places.erase(places.begin());
  places.pop_back();
  for (Mm& x : places) {
    const Mm wanted = on_tape(x, b.order.order.tape);
    x = wanted;
    for (int i = 1; near_a_jack(b, x, s.flange) && i <= 24; ++i)
      x = wanted - steps_out(i) * inch;  // forward first
  }
  return places;
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
      b.weld(item, b.main(side), b.frame.welds.leg, 2 * (s.depth - 2 * s.flange_thickness),
             WeldLine::web_sides, {std::min(s.web, main.web), 0});
  }
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
    const Section& main = b.main_section();
    const Mm inside = main.depth - 2 * main.flange_thickness + 2 * (main.flange - main.web);
    for (Side side : both_sides)
      b.weld(item, b.main(side), b.frame.welds.leg, inside, WeldLine::inside_end,
             {std::min(s.web, main.web), 0});
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
  const Mm leg = b.frame.welds.leg, across = 1 / std::cos(t.angle);
  const TongueLap lap =
      tongue_lap({t.length, t.back, t.angle}, s, main, b.main_start(), b.main_end(), b.frame.main.spacing);
  const std::vector<LapRun> runs = lap_runs(lap, least_fillet_legs * leg);
  const int over = b.main(side);
  const Builder::WeldSteel steel{std::min(s.flange_thickness, main.flange_thickness), toe_thickness(s)};
  for (const LapRun& run : runs) b.weld(item, over, leg, run.length(), run.what, steel);
  // Wanted all the same, so that WELD-CONTACT stops it.
  if (runs.empty()) b.weld(item, over, leg, 0, WeldLine::under_main, steel);
  b.weld(item, b.bed.item({Kind::front_member}), leg, 2 * nose.flange * across, WeldLine::flange_edges,
         {std::min(s.flange_thickness, nose.flange_thickness), toe_thickness(s)});
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
  const auto half_width = [&](Mm behind) { return web_at_front + behind * slope - plate_ledge; };
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
  for (Side side : both_sides)
    b.weld(item, b.bed.item({Kind::tongue, side}), b.frame.welds.leg, j.plate_length / std::cos(t.angle),
           WeldLine::outer_edge, {std::min(j.plate_thickness, s.flange_thickness), j.plate_thickness});
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
  const Mm flange = b.section(b.frame.rear_member.section).flange;
  const Mm x = b.main_end() + flange - plate_ledge;
  const Mm z = -b.main_section().depth - g.thickness;
  const int right = b.place(part, {Kind::corner_gusset, Side::right},
                            {{x, b.web_back(Side::right) - plate_ledge, z}, {-1, 0, 0}, {0, -1, 0}});
  const int left = b.place(part, {Kind::corner_gusset, Side::left},
                           {{x, b.web_back(Side::left) + plate_ledge, z}, {0, 1, 0}, {-1, 0, 0}});
  for (int item : {left, right}) {
    const auto steel = [&](const Section& s) {
      return Builder::WeldSteel{std::min(g.thickness, s.flange_thickness), g.thickness};
    };
    b.weld(item, b.main(item == left ? Side::left : Side::right), b.frame.welds.leg,
           std::max(0.0, g.leg + plate_ledge - flange), WeldLine::edge_under_main, steel(b.main_section()));
    b.weld(item, b.bed.item({Kind::rear_member}), b.frame.welds.leg, g.leg, WeldLine::edge_under_rear,
           steel(b.section(b.frame.rear_member.section)));
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
